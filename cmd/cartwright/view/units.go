package view

import (
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/quantity"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// units tells figures in the units a person asked for. Everything that is shown to a person is converted here
// and nowhere else; volts, amperes, watts, hours and money are the same everywhere.
type units struct {
	us bool
}

// unitsOf returns the units of a scenario's answers.
func unitsOf(s *scenarios.Scenario) units { return units{us: s.Units == scenarios.US} }

// american returns the unit that stands for an SI unit in the United States, and what of it makes one of the
// SI unit. Factors are those that quantities are read with.
func american(si string) (unit string, each float64, ok bool) {
	switch si {
	case "kg":
		return "lb", 1 / inSI("1 lb", quantity.Mass), true
	case "m":
		return "ft", 1 / inSI("1 ft", quantity.Length), true
	case "mm":
		return "in", 0.001 / inSI("1 in", quantity.Length), true
	case "N":
		return "lbf", 1 / inSI("1 lbf", quantity.Force), true
	case "l":
		foot := inSI("1 ft", quantity.Length)
		return "ft3", 0.001 / (foot * foot * foot), true
	}
	return "", 0, false
}

// inSI returns an amount in the SI unit of its dimension. The amounts are those above; a test reads each.
func inSI(amount string, d quantity.Dimension) float64 {
	v, _ := quantity.Parse(amount, d)
	return v
}

// unit returns the unit that an SI unit is told in: "lb" for "kg". Of a quotient or a product each part is
// told: "lb/kWh" for "kg/kWh".
func (u units) unit(si string) string {
	if top, bottom, ok := strings.Cut(si, "/"); ok {
		return u.unit(top) + "/" + u.unit(bottom)
	}
	if unit, _, ok := american(si); ok && u.us {
		return unit
	}
	return si
}

// figure returns a figure in SI as it is told.
func (u units) figure(v float64, si string) float64 {
	if v >= endless || v <= -endless {
		return v
	}
	if top, bottom, ok := strings.Cut(si, "/"); ok {
		return u.figure(v, top) / u.figure(1, bottom)
	}
	if _, each, ok := american(si); ok && u.us {
		return v * each
	}
	return v
}

// fixed returns a figure in SI as it is told, without its unit, to as many decimals as its unit is shown with.
func (u units) fixed(v float64, si string) string {
	return fixed(u.figure(v, si), decimalsOf(u.unit(si)))
}

// with returns a figure in SI as it is told, with its unit: "616.2 lb".
func (u units) with(v float64, si string) string { return withUnit(u.fixed(v, si), u.unit(si)) }

// line returns a line of a bill as it is told: cable by the foot or the metre.
func (u units) line(l plan.Line) plan.Line {
	l.Quantity, l.Have = u.figure(l.Quantity, l.Unit), u.figure(l.Have, l.Unit)
	l.Buy, l.Sell = u.figure(l.Buy, l.Unit), u.figure(l.Sell, l.Unit)
	l.UnitPrice /= u.figure(1, l.Unit)
	l.Unit = u.unit(l.Unit)
	return l
}

// byLength reports whether a part is bought by the metre.
func byLength(c *catalog.Catalog, id string) bool {
	e, ok := c.Find(id)
	return ok && (e.Kind == catalog.KindCable || e.Kind == catalog.KindConduit || e.Kind == catalog.KindSection)
}

// countedIn returns the SI unit that a part is counted in: "each", or "m".
func countedIn(c *catalog.Catalog, id string) string {
	if byLength(c, id) {
		return "m"
	}
	return "each"
}
