package view

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/told"
)

// Parts shows what a catalogue holds.
type Parts struct {
	Where   string // the folder, or what the embedded one is called
	Catalog *catalog.Catalog
	Kind    catalog.Kind // only this kind; "" for all and the offers
	AsOf    time.Time    // day by which the age of prices is judged
	Units   told.Units   // what masses and lengths are told in
}

func (p Parts) units() units { return units{p.Units} }

// staleMark follows a price that is too old.
const staleMark = "*"

// staleNote says what the mark means.
func staleNote(day time.Time) string {
	return fmt.Sprintf("%s price older than %d days on %s: ask again before you buy.", staleMark, catalog.StaleAfter, day.Format(time.DateOnly))
}

// price returns a price, marked where it is stale.
func price(amount string, stale bool) string {
	if stale {
		return amount + staleMark
	}
	// The place of the mark is kept free, so that the digits of a column stand below each other.
	return amount + " "
}

// sheet has a table for each kind of part that there is, and one of the offers.
func (p Parts) sheet() sheet {
	var out sheet
	for _, k := range partKinds(p.units()) {
		if p.Kind != "" && p.Kind != k.kind {
			continue
		}
		t := &table{columns: k.columns}
		k.fill(p, t)
		if len(t.rows) > 0 {
			out = append(out, section{title: fmt.Sprintf("%s: %d", k.title, len(t.rows)), table: t})
		}
	}
	if p.Kind == "" && len(p.Catalog.Offers) > 0 {
		out = append(out, p.offers())
	}
	return append(out, p.summary())
}

// summary says how much there is, in which money, and what is stale.
func (p Parts) summary() section {
	all, stale := p.entries(), 0
	for _, e := range all {
		if e.Stale(p.AsOf) {
			stale++
		}
	}
	offers := 0
	if p.Kind == "" {
		for _, o := range p.Catalog.Offers {
			if o.Stale(p.AsOf) {
				offers++
			}
		}
	}
	lines := []string{
		fmt.Sprintf("%s in %s: no mistakes found. Prices are in the scenario's currency.",
			count(len(all), "part", "parts"), p.Where),
	}
	if stale+offers > 0 {
		old := count(stale, "part", "parts")
		if offers > 0 {
			old += " and " + count(offers, "offer", "offers")
		}
		lines = append(lines, fmt.Sprintf("%s price older than %d days on %s: %s.", staleMark, catalog.StaleAfter,
			p.AsOf.Format(time.DateOnly), old))
	}
	if own := p.own(); own != "" {
		lines = append(lines, "Columns of your own, not read: "+own+".")
	}
	return section{title: "Catalogue", prose: lines}
}

// own lists a person's own columns, which are not read, each with where it stands.
func (p Parts) own() string {
	var list []string
	for _, c := range p.Catalog.Own {
		list = append(list, c.Name+" ("+c.Pos.String()+")")
	}
	return strings.Join(list, ", ")
}

// entries returns the parts that are shown.
func (p Parts) entries() []catalog.Entry {
	return slices.DeleteFunc(p.Catalog.All(), func(e catalog.Entry) bool { return p.Kind != "" && e.Kind != p.Kind })
}

// partRecord is what every kind of part has in common, in JSON.
type partRecord struct {
	ID     string  `json:"id"`
	Kind   string  `json:"kind"`
	Name   string  `json:"name"`
	Price  float64 `json:"price"` // each, or of a metre of what is bought by length
	Unit   string  `json:"unit"`  // "each" or "m"
	MassKg float64 `json:"mass_kg"`
	Vendor string  `json:"vendor"`
	AsOf   string  `json:"as_of"` // "" where not stated
	Stale  bool    `json:"stale"`
	Notes  string  `json:"notes"`
}

// list returns the parts that are shown by what they have in common.
func (p Parts) list() []partRecord {
	list := []partRecord{}
	for _, e := range p.entries() {
		r := partRecord{ID: e.ID, Kind: string(e.Kind), Name: e.Name, Price: e.Price.Units(), Unit: "each",
			MassKg: e.MassKg, Vendor: e.Vendor, Stale: e.Stale(p.AsOf), Notes: e.Notes}
		if !e.AsOf.IsZero() {
			r.AsOf = e.AsOf.Format(time.DateOnly)
		}
		if e.Kind.ByLength() {
			r.Unit = "m"
			r.Price, r.MassKg = p.aMetre(e.ID)
		}
		list = append(list, r)
	}
	return list
}

// aMetre returns the price and the mass of a metre of what is bought by length.
func (p Parts) aMetre(id string) (units, kg float64) {
	for _, c := range p.Catalog.Cables {
		if c.ID == id {
			return c.CentsPerM / 100, c.KgPerM
		}
	}
	for _, c := range p.Catalog.Conduits {
		if c.ID == id {
			return c.CentsPerM / 100, c.KgPerM
		}
	}
	for _, s := range p.Catalog.Sections {
		if s.ID == id {
			return s.CentsPerM / 100, s.KgPerM
		}
	}
	return 0, 0
}

// record holds the parts by what they have in common.
func (p Parts) record() any {
	return struct {
		Format  int          `json:"format"`
		Command string       `json:"command"`
		AsOf    string       `json:"as_of"`
		Parts   []partRecord `json:"parts"`
	}{jsonFormat, "parts", p.AsOf.Format(time.DateOnly), p.list()}
}

// records holds one part a row.
func (p Parts) records() [][]string {
	rows := [][]string{{"id", "kind", "name", "price", "unit", "mass_kg", "vendor", "as_of", "stale", "notes"}}
	for _, r := range p.list() {
		rows = append(rows, []string{r.ID, r.Kind, r.Name, exact(r.Price), r.Unit, exact(r.MassKg), r.Vendor, r.AsOf,
			fmt.Sprint(r.Stale), r.Notes})
	}
	return rows
}
