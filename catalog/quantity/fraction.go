package quantity

import (
	"fmt"
	"math/big"
	"regexp"
)

// fraction matches a whole number and a fraction as a tape measure has them, or a fraction alone: "17 3/8", "17-3/8",
// "3/8". Denominators end at three digits; a tape has 64 at most.
var fraction = regexp.MustCompile(`^([+-]?)(?:([0-9]{1,9})(?: +|-))?([0-9]{1,3})/([0-9]{1,3})`)

// Fraction reads the whole number and the fraction that a text begins with, exactly, and returns what stands behind
// them. It is false where there is none, or one that is not below 1.
func Fraction(text string) (value *big.Rat, rest string, ok bool) {
	m := fraction.FindStringSubmatch(text)
	if m == nil {
		return nil, text, false
	}
	part, whole := new(big.Rat), new(big.Rat)
	if _, ok := part.SetString(m[3] + "/" + m[4]); !ok || part.Cmp(big.NewRat(1, 1)) >= 0 { // x/0 is none
		return nil, text, false
	}
	if m[2] != "" {
		whole.SetString(m[2])
	}
	value = whole.Add(whole, part)
	if m[1] == "-" {
		value.Neg(value)
	}
	return value, text[len(m[0]):], true
}

// feet matches feet with inches behind them, "3 ft 6 1/2 in".
var feet = regexp.MustCompile(`^([+-]?[0-9]{1,6}) *(?:ft|foot|feet) *([0-9].*?) *(?:in|inch|inches)$`)

// compound splits a length in feet and inches, where it is one.
func compound(text string, d Dimension) (whole, inches string, ok bool) {
	m := feet.FindStringSubmatch(text)
	if m == nil || d != Length {
		return "", "", false
	}
	return m[1], m[2], true
}

// feetAndInches returns a length in metres; the sign of the feet is that of the whole.
func feetAndInches(text, whole, inches string) (float64, error) {
	part, rest, ok := Fraction(inches)
	if !ok {
		part, rest = new(big.Rat), ""
		if digits := number.FindString(inches); digits != inches || len(digits) > 12 {
			rest = inches
		} else {
			part.SetString(digits)
		}
	}
	if rest != "" {
		return 0, &Error{fmt.Sprintf("%q is not a number of feet and inches", text), `write for example "3 ft 6 in" or "3 ft 6 1/2 in"`}
	}
	if part.Cmp(big.NewRat(12, 1)) >= 0 {
		return 0, &Error{fmt.Sprintf("%q has 12 inches or more beside the feet", text), `write for example "3 ft 6 in"`}
	}
	total, _ := new(big.Rat).SetString(whole)
	total.Abs(total.Mul(total, big.NewRat(12, 1)))
	total.Add(total, part)
	if whole[0] == '-' {
		total.Neg(total)
	}
	v, _ := total.Mul(total, rational("0.0254")).Float64()
	return v, nil
}
