// Package told writes amounts for people who hold a tape measure: in feet, inches and pounds, or in metres,
// millimetres and kilograms. It converts and rounds, and does nothing else.
package told

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cartwright/scenarios"
)

// Units are the units that amounts are written in.
type Units scenarios.Units

// The two systems.
const (
	US     = Units(scenarios.US)
	Metric = Units(scenarios.Metric)
)

// UnitsOf returns the units of a scenario: those it asks for, else US under nec and metric under iec.
func UnitsOf(s *scenarios.Scenario) Units {
	switch {
	case s.Units != "":
		return Units(s.Units)
	case s.Rules == scenarios.NEC:
		return US
	}
	return Metric
}

// Length words a length of timber, steel or a dimension, in metres: to the millimetre, or to 1/16 inch.
func (u Units) Length(m float64) string {
	if u == US {
		return inches(math.Round(u.Figure(m*1000, "mm")*16), 16) + " in"
	}
	return fixed(m*1000, 0) + " mm"
}

// Cut words a length to cut a cable to, in metres, rounded up so that no piece comes out short: to the
// millimetre, or to 1/16 inch.
func (u Units) Cut(m float64) string {
	const exact = 1e-6 // of a step; less is rounding of the computer and no length
	if u == US {
		const perFoot = 12 * 16
		parts := math.Ceil(u.Figure(m*1000, "mm")*16 - exact)
		feet := math.Floor(parts / perFoot)
		rest := parts - perFoot*feet
		switch {
		case feet == 0:
			return inches(rest, 16) + " in"
		case rest == 0:
			return fixed(feet, 0) + " ft"
		}
		return fixed(feet, 0) + " ft " + inches(rest, 16) + " in"
	}
	return trimmed(math.Ceil(m*1000-exact)/1000, 3) + " m"
}

// Mass words a mass in kilograms.
func (u Units) Mass(kg float64) string {
	if u == US {
		return fixed(u.Figure(kg, "kg"), 0) + " lb"
	}
	return trimmed(kg, 1) + " kg"
}

// Force words a force in newtons.
func (u Units) Force(n float64) string {
	if u == US {
		return fixed(u.Figure(n, "N"), 0) + " lbf"
	}
	return fixed(n, 0) + " N"
}

// Angle words an angle in degrees.
func Angle(deg float64) string { return fixed(deg, 1) + "°" }

// Amps words a current; short-circuit currents are told in kiloamperes.
func Amps(a float64) string {
	if a >= 1000 {
		return trimmed(a/1000, 1) + " kA"
	}
	return trimmed(a, 1) + " A"
}

// Number words a figure with at most so many decimals, none of them a trailing zero.
func Number(x float64, decimals int) string { return trimmed(x, decimals) }

// Fixed words a figure with so many decimals.
func Fixed(x float64, decimals int) string { return fixed(x, decimals) }

// inches writes whole parts of an inch as a mixed number in lowest terms.
func inches(parts float64, of int) string {
	sign := ""
	if parts < 0 {
		sign, parts = "-", -parts
	}
	whole, part := int(parts)/of, int(parts)%of
	for part > 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	switch {
	case part == 0:
		return sign + strconv.Itoa(whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, part, of)
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, part, of)
}

func fixed(x float64, decimals int) string {
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	return text
}

func trimmed(x float64, decimals int) string {
	text := fixed(x, decimals)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// LengthUnit is the unit that cable is sold by.
func (u Units) LengthUnit() string { return u.Unit("m") }

// PerLength returns a price for a foot or a metre from one for a metre.
func (u Units) PerLength(perM float64) float64 { return perM / u.Figure(1, "m") }
