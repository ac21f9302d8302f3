package view

import (
	"slices"
	"strings"

	"cartwright/optimize/market"
	"cartwright/optimize/plan"
)

// remarks returns what the catalogue notes of the parts that are installed, those of the same note together:
// "a, b: second-hand. c: also a switch".
func (p Plans) remarks(bill []plan.Line) string {
	var notes []string
	parts := map[string][]string{}
	for _, l := range bill {
		e, ok := p.Catalog.Find(l.Part)
		if !ok || e.Notes == "" || l.Quantity <= 0 || plan.IsEnd(l.Kind) || slices.Contains(parts[e.Notes], l.Part) {
			continue
		}
		if len(parts[e.Notes]) == 0 {
			notes = append(notes, e.Notes)
		}
		parts[e.Notes] = append(parts[e.Notes], l.Part)
	}
	for i, note := range notes {
		notes[i] = strings.Join(parts[note], ", ") + ": " + strings.TrimRight(note, ".")
	}
	return strings.Join(notes, ". ")
}

// stale reports whether a line is bought at a price that is too old.
func (p Plans) stale(l plan.Line) bool {
	return !p.AsOf.IsZero() && market.StalePrice(p.Catalog, l, p.AsOf)
}

// overbought lists what is bought beyond what is installed, as a quantity break can make it.
func (u units) overbought(bought []plan.Line) []string {
	const hair = 1e-6 // of a metre; rounding of sums of lengths
	var over []string
	for _, l := range bought {
		switch spare := l.Buy + l.Have - l.Quantity; {
		case spare <= hair:
		case plan.IsEnd(l.Kind):
			over = append(over, short(spare, 0)+" ends of "+l.Part)
		case l.Unit == "m":
			over = append(over, short(u.figure(spare, "m"), 2)+" "+u.unit("m")+" of "+l.Part)
		default:
			over = append(over, short(spare, 0)+" x "+l.Part)
		}
	}
	return over
}

// seller returns the vendor's name, or words for none.
func seller(vendor string) string {
	if vendor == "" {
		return "any seller"
	}
	return vendor
}

// vendorsOf returns the lines that buy something and their vendors by name, none last.
func vendorsOf(bill []plan.Line) (vendors []string, bought []plan.Line) {
	for _, l := range bill {
		if l.Buy <= 0 {
			continue
		}
		bought = append(bought, l)
		if !slices.Contains(vendors, l.Vendor) {
			vendors = append(vendors, l.Vendor)
		}
	}
	slices.SortFunc(vendors, func(a, b string) int {
		switch {
		case a == "" && b != "":
			return 1
		case b == "" && a != "":
			return -1
		}
		return strings.Compare(a, b)
	})
	return vendors, bought
}

// describe returns what a line of the bill is, in words.
func (p Plans) describe(l plan.Line) string {
	switch l.Kind {
	case plan.KindCableEnd:
		return "crimped ends"
	case plan.KindConduitEnd:
		return "fittings for its ends"
	}
	return p.name(l.Part)
}

// notes returns the remark of the catalogue on a line's part.
func (p Plans) notes(l plan.Line) string {
	if e, ok := p.Catalog.Find(l.Part); ok {
		return e.Notes
	}
	return ""
}
