// Package catalog holds the parts a cart can be built from: their kinds, prices, masses and ratings, as
// a person keeps them in a folder of CSV files, one file per kind.
//
// Units are converted once, while reading: past this package everything is in SI units (metres,
// kilograms, volts, amperes, watts, watt-hours, ohms) and money is in whole cents.
//
// The files are CSV of RFC 4180 in UTF-8; lines that begin with # are comments. A header names the unit
// of its column, either one of a pair (mass_kg or mass_lb). The tables of columns in columns_*.go
// are the format: names, what must be there, what an empty cell stands for; Columns shows them to people.
// Conversions are exact and rounded once, so that either unit of a pair gives the same float64.
//
// Every mistake in every file is reported at once, with its place (package problem). What is accepted is
// finite and within bounds that no sum, product or quotient of it overflows; past Read it is trusted.
//
// Whether a conductor size or a device rating stands in a table of the codes is not judged here: that
// depends on the rule set of a scenario. Nor is a part of no use an error, for example a device that
// states no voltage.
package catalog

import (
	"iter"
	"slices"
	"sort"
)

// Entry is one part of any kind, seen by its common columns.
type Entry struct {
	*Part
	Kind Kind
}

// All returns every part of the catalogue in the order of a bill: by kind, then by row.
func (c *Catalog) All() []Entry { return slices.Collect(c.each()) }

// each goes through what All lists.
func (c *Catalog) each() iter.Seq[Entry] {
	return func(yield func(Entry) bool) {
		_ = eachOf(c.Batteries, KindBattery, yield) &&
			eachOf(c.Inverters, KindInverter, yield) &&
			eachOf(c.Cables, KindCable, yield) &&
			eachOf(c.Devices, KindDevice, yield) &&
			eachOf(c.Busbars, KindBusbar, yield) &&
			eachOf(c.Casters, KindCasters, yield) &&
			eachOf(c.Solar, KindSolar, yield) &&
			eachOf(c.Sundries, KindSundry, yield) &&
			eachOf(c.Conduits, KindConduit, yield) &&
			eachOf(c.Sections, KindSection, yield)
	}
}

// eachOf goes through the parts of a kind, and reports whether to go on.
func eachOf[T any, P interface {
	*T
	part() *Part
}](list []T, k Kind, yield func(Entry) bool) bool {
	for i := range list {
		if !yield(Entry{P(&list[i]).part(), k}) {
			return false
		}
	}
	return true
}

// part returns what a part of any kind has in common with all.
func (p *Part) part() *Part { return p }

// Find returns the part with the given id.
func (c *Catalog) Find(id string) (Entry, bool) {
	for e := range c.each() {
		if e.ID == id {
			return e, true
		}
	}
	return Entry{}, false
}

// Metre is the price of a metre of what is bought by length, to be read or set: in whole cents, unrounded, and its range.
type Metre struct {
	Price            *Cents
	Cents, Low, High *float64
}

// Metre returns the price of a metre of a part; false where it is not bought by length.
func (c *Catalog) Metre(id string) (Metre, bool) {
	for i := range c.Cables {
		if k := &c.Cables[i]; k.ID == id {
			return Metre{&k.Price, &k.CentsPerM, &k.LowCentsPerM, &k.HighCentsPerM}, true
		}
	}
	for i := range c.Conduits {
		if k := &c.Conduits[i]; k.ID == id {
			return Metre{&k.Price, &k.CentsPerM, &k.LowCentsPerM, &k.HighCentsPerM}, true
		}
	}
	for i := range c.Sections {
		if k := &c.Sections[i]; k.ID == id {
			return Metre{&k.Price, &k.CentsPerM, &k.LowCentsPerM, &k.HighCentsPerM}, true
		}
	}
	return Metre{}, false
}

// IDs returns every part id, sorted, for naming the nearest one to a misspelling.
func (c *Catalog) IDs() []string {
	var ids []string
	for _, e := range c.All() {
		ids = append(ids, e.ID)
	}
	sort.Strings(ids)
	return ids
}

// Clone returns a copy whose parts and offers can be changed without changing the original.
func (c *Catalog) Clone() *Catalog {
	d := *c
	d.Batteries = slices.Clone(c.Batteries)
	d.Inverters = slices.Clone(c.Inverters)
	d.Cables = slices.Clone(c.Cables)
	d.Devices = slices.Clone(c.Devices)
	d.Busbars = slices.Clone(c.Busbars)
	d.Casters = slices.Clone(c.Casters)
	d.Solar = slices.Clone(c.Solar)
	d.Sundries = slices.Clone(c.Sundries)
	d.Conduits = slices.Clone(c.Conduits)
	d.Sections = slices.Clone(c.Sections)
	d.Offers = slices.Clone(c.Offers)
	return &d
}

// HasRating reports whether some sundry of a role has exactly this rating, which is above 0.
func HasRating(sundries []Sundry, role string, ratingA float64) bool {
	return ratingA > 0 && slices.ContainsFunc(sundries, func(x Sundry) bool { return x.Role == role && x.RatingA == ratingA })
}
