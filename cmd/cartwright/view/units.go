package view

import (
	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// units shows figures in the units a person asked for. Everything shown to a person goes through here; the
// conversion itself is done by package told.
type units struct {
	told told.Units
}

// unitsOf returns the units of a scenario's answers.
func unitsOf(s *scenarios.Scenario) units { return units{told.UnitsOf(s)} }

// unit returns the unit that an SI unit is told in: "lb" for "kg".
func (u units) unit(si string) string { return u.told.Unit(si) }

// figure returns a figure in SI as it is told. What is beyond all bounds stays so.
func (u units) figure(v float64, si string) float64 {
	if v >= endless || v <= -endless {
		return v
	}
	return u.told.Figure(v, si)
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

// byLength reports whether a part is bought by length.
func byLength(c *catalog.Catalog, id string) bool {
	e, ok := c.Find(id)
	return ok && e.Kind.ByLength()
}

// countedIn returns the SI unit that a part is counted in: "each", or "m".
func countedIn(c *catalog.Catalog, id string) string {
	if byLength(c, id) {
		return "m"
	}
	return "each"
}
