package told

import (
	"strings"

	"cartwright/catalog/quantity"
)

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

// Unit returns the unit that an SI unit is told in: "lb" for "kg". Of a quotient each part is told: "lb/kWh" for
// "kg/kWh". What is the same everywhere stays: volts, watts, hours, money.
func (u Units) Unit(si string) string {
	if top, bottom, ok := strings.Cut(si, "/"); ok {
		return u.Unit(top) + "/" + u.Unit(bottom)
	}
	if unit, _, ok := american(si); ok && u == US {
		return unit
	}
	return si
}

// Figure returns a figure in an SI unit in the unit it is told in.
func (u Units) Figure(v float64, si string) float64 {
	if top, bottom, ok := strings.Cut(si, "/"); ok {
		return u.Figure(v, top) / u.Figure(1, bottom)
	}
	if _, each, ok := american(si); ok && u == US {
		return v * each
	}
	return v
}
