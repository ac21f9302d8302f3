// Package quantity reads amounts that people write with a unit, "450 lb" or "18 h", into SI, and writes
// them back.
//
// The unit is chosen where an amount enters and is then forgotten: past Parse a length is in metres, a
// mass in kilograms. A bare number is refused, since nobody can tell 20 inches from 20 centimetres
// afterwards. Spelling of a unit is strict in case, because mm and Mm, kW and kw are not the same thing.
//
// Factors are exact by definition (see units.go), conversions are done in rational arithmetic and rounded
// once, so "25.4 mm" and "1 in" are the same float64. Fractions ("17 3/8 in") and feet with inches ("3 ft 6 in")
// are read; decimal commas are not: the error says how to write them.
package quantity

import (
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"

	"cartwright/catalog/problem"
)

// Dimension is a kind of amount: what can be added to what.
type Dimension int

// The dimensions, each with the unit that Parse returns it in.
const (
	Mass        Dimension = iota // kilograms
	Length                       // metres
	Duration                     // hours
	Current                      // amperes
	Voltage                      // volts
	Power                        // watts
	Energy                       // watt-hours
	Temperature                  // degrees Celsius
	Ratio                        // 1 for 100 %
	Force                        // newtons
	Angle                        // degrees
)

// String returns the dimension's name, "mass" for Mass.
func (d Dimension) String() string { return dimensions[d].name }

// article returns the name with its article, "a mass".
func (d Dimension) article() string { return dimensions[d].art + " " + dimensions[d].name }

// Units returns the units that fit, the usual ones first, in their first spelling.
func (d Dimension) Units() []string {
	var names []string
	for _, u := range dimensions[d].units {
		names = append(names, u.spellings[0])
	}
	return names
}

// Example returns a plausible amount as it would be written, `18 h` for Duration.
func (d Dimension) Example() string { return dimensions[d].example }

// Error says why a text is not an amount.
type Error struct {
	Wrong string // what is wrong
	Right string // what would be right
}

// Error returns both halves, "what is wrong; what would be right".
func (e *Error) Error() string { return e.Wrong + "; " + e.Right }

// maxText is the longest amount read, in bytes: far more digits than a float64 holds, and short enough
// that rational arithmetic stays cheap.
const maxText = 80

// number matches what stands before the unit.
var number = regexp.MustCompile(`^[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?`)

// Parse reads a number and a unit of dimension d, with or without space between them, and returns the
// amount in d's SI unit (see the constants). The result is finite; its sign and range are the caller's
// matter, but for a temperature below absolute zero. Any error is an *Error.
func Parse(text string, d Dimension) (float64, error) {
	t := strings.TrimSpace(text)
	if len(t) > maxText {
		return 0, &Error{fmt.Sprintf("an amount of %d characters is too long", len(t)), "write for example " + quoted(d)}
	}
	if feet, inches, ok := compound(t, d); ok {
		return feetAndInches(text, feet, inches)
	}
	exact, digits, rest, err := leading(text, t, d)
	if err != nil {
		return 0, err
	}
	u, err := find(text, digits, strings.TrimSpace(rest), d)
	if err != nil {
		return 0, err
	}
	v, _ := u.toSI(exact).Float64()
	if math.IsInf(v, 0) {
		return 0, tooLarge(text, d)
	}
	if d == Temperature && v < absoluteZeroC {
		return 0, &Error{fmt.Sprintf("%q is below absolute zero, %g C", text, absoluteZeroC), "write for example " + quoted(d)}
	}
	return v, nil
}

// leading reads the number that t, the trimmed text, begins with: exactly, as it is written, and what stands behind.
func leading(text, t string, d Dimension) (exact *big.Rat, digits, rest string, err error) {
	if exact, rest, ok := Fraction(t); ok {
		return exact, t[:len(t)-len(rest)], rest, nil
	}
	digits = number.FindString(t)
	if digits == "" {
		return nil, "", "", &Error{fmt.Sprintf("%q is not a number with a unit", text), "write for example " + quoted(d)}
	}
	// ParseFloat bounds the exponent, so that the rational below cannot grow without limit.
	rough, err := strconv.ParseFloat(digits, 64)
	exact = new(big.Rat)
	if rough != 0 && err == nil {
		exact.SetString(digits)
	}
	if err != nil {
		// The unit may be wrong as well, and is reported first.
		if _, wrong := find(text, digits, strings.TrimSpace(t[len(digits):]), d); wrong != nil {
			return nil, "", "", wrong
		}
		return nil, "", "", tooLarge(text, d)
	}
	return exact, digits, t[len(digits):], nil
}

// find returns the unit called name, or an error that names what would fit.
func find(text, digits, name string, d Dimension) (unit, error) {
	for _, u := range dimensions[d].units {
		for _, s := range u.spellings {
			if s == name {
				return u, nil
			}
		}
	}
	fitting := oneOf(d.Units())
	if name == "" {
		return unit{}, &Error{
			fmt.Sprintf("%q has no unit", text),
			fmt.Sprintf("add %s, for example %q", fitting, likely(digits, d)),
		}
	}
	if strings.ContainsAny(name[:1], "0123456789.,'_/+-") {
		return unit{}, &Error{fmt.Sprintf("%q is not a number with a unit", text), "write for example " + quoted(d)}
	}
	for other := range dimensions {
		for _, u := range dimensions[other].units {
			for _, s := range u.spellings {
				if s == name {
					o := Dimension(other)
					return unit{}, &Error{
						fmt.Sprintf("%q is %s, not %s", text, o.article(), d.article()),
						fmt.Sprintf("write %s, for example %s", fitting, quoted(d)),
					}
				}
			}
		}
	}
	right := "write " + fitting
	if near := problem.Nearest(name, spellings(d)); near != "" {
		right = fmt.Sprintf("did you mean %q? Write %s", near, fitting)
	}
	return unit{}, &Error{fmt.Sprintf("unknown unit %q in %q", name, text), right}
}

// likely returns a bare number with the unit that was probably meant: of a ratio below 1 the percent it stands for, of
// a length with a fraction inches.
func likely(digits string, d Dimension) string {
	if v, err := strconv.ParseFloat(digits, 64); err == nil && d == Ratio && v > 0 && v < 1 {
		return Format(v, Ratio)
	}
	if strings.Contains(digits, "/") && d == Length {
		return digits + " in"
	}
	return digits + " " + d.Units()[0]
}

// spellings returns every spelling of every unit of d.
func spellings(d Dimension) []string {
	var all []string
	for _, u := range dimensions[d].units {
		all = append(all, u.spellings...)
	}
	return all
}

// oneOf returns "a", "a or b", "a, b or c".
func oneOf(names []string) string {
	if len(names) == 1 {
		return names[0]
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " or " + names[last]
}

func quoted(d Dimension) string { return strconv.Quote(d.Example()) }

func tooLarge(text string, d Dimension) error {
	return &Error{fmt.Sprintf("%q is too large a number", text), "write for example " + quoted(d)}
}
