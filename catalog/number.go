package catalog

import (
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"

	"cartwright/catalog/quantity"
)

// unit is a unit that stands in a header.
type unit struct {
	name    string   // for messages: "pounds"
	suffix  string   // of the header: "_lb"; "" where the header has no second unit
	factor  *big.Rat // SI units, or cents, in one
	example string   // a plausible number of them
}

// scale is what a column measures: in which unit, perhaps in which second one, and between which bounds.
// The bounds are no limits of the trade. They keep every later sum and quotient finite, and they catch
// a number in the wrong unit when it is wrong by a lot.
type scale struct {
	metric unit
	us     *unit // nil: no second unit
	tens   int   // SI = metric number * 10^tens
	least  float64
	most   float64 // bounds of a number that is not zero, in SI units or cents
}

// in returns the unit a header asks for.
func (s *scale) in(us bool) unit {
	if us {
		return *s.us
	}
	return s.metric
}

// per returns how many of the SI unit of a dimension are in one of the named unit. Those factors have at
// most eight digits, so that the shortest decimal spelling of the float64 is the factor itself.
func per(name string, d quantity.Dimension) *big.Rat {
	v, err := quantity.Parse("1 "+name, d)
	if err != nil {
		panic("catalog: " + err.Error()) // a unit misspelt in this package
	}
	r, _ := new(big.Rat).SetString(strconv.FormatFloat(v, 'g', -1, 64))
	return r
}

// quotient returns a / b, for units such as pounds per foot.
func quotient(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

// tens returns 10^n.
func tens(n int) *big.Rat {
	r, _ := new(big.Rat).SetString("1e" + strconv.Itoa(n))
	return r
}

// Units of a header that come alone. Each has its bounds in SI units beside it.
var (
	volts   = &scale{unit{"volts", "", tens(0), "51.2"}, nil, 0, 1e-3, 1e4}
	amperes = &scale{unit{"amperes", "", tens(0), "100"}, nil, 0, 1e-3, 1e6}
	// shortCircuit has room for the greatest max_v over the least resistance.
	shortCircuit  = &scale{unit{"amperes", "", tens(0), "2500"}, nil, 0, 1e-6, 1e10}
	watts         = &scale{unit{"watts", "", tens(0), "3000"}, nil, 0, 1e-3, 1e7}
	kilowattHours = &scale{unit{"kilowatt-hours", "", tens(3), "5.12"}, nil, 3, 1e-3, 1e7}
	milliohms     = &scale{unit{"milliohms", "", tens(-3), "22"}, nil, -3, 1e-6, 1e3}
	fraction      = &scale{unit{"a fraction", "", tens(0), "0.93 for 93 %"}, nil, 0, 1e-3, 1}
	cycles        = &scale{unit{"cycles", "", tens(0), "4000"}, nil, 0, 1, 1e6}
	percentPerC   = &scale{unit{"percent per degree", "", tens(0), "-0.28"}, nil, 0, -5, 5}
	currency      = &scale{unit{"units of currency", "", tens(2), "1290.50"}, nil, 2, 0, maxCents}
)

// maxCents is the highest price that is read, one thousand million units of currency: a thousand parts
// of that price, a thousand each, still add up in an int64.
const maxCents = 1e9 * 100

// Units of a header that come in pairs, metric and US.
var (
	kilograms = &scale{unit{"kilograms", "_kg", tens(0), "45"},
		&unit{"pounds", "_lb", per("lb", quantity.Mass), "99"}, 0, 1e-6, 1e5}
	millimetres = &scale{unit{"millimetres", "_mm", tens(-3), "442"},
		&unit{"inches", "_in", per("in", quantity.Length), "17.4"}, -3, 1e-6, 100}
	kilogramsPerMetre = &scale{unit{"kilograms per metre", "_kg_per_m", tens(0), "0.35"},
		&unit{"pounds per foot", "_lb_per_ft", quotient(per("lb", quantity.Mass), per("ft", quantity.Length)), "0.23"}, 0, 1e-6, 1e3}
	currencyPerMetre = &scale{unit{"units of currency a metre", "_per_m", tens(2), "8.70"},
		&unit{"units of currency a foot", "_per_ft", quotient(tens(2), per("ft", quantity.Length)), "2.65"}, 2, 1e-4, maxCents}
	metres = &scale{unit{"metres", "_m", tens(0), "10"},
		&unit{"feet", "_ft", per("ft", quantity.Length), "30"}, 0, 1e-3, 1e6}
)

// decimal matches the numbers that are read: no units, no thousands separators, no currency signs.
var decimal = regexp.MustCompile(`^[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?$`)

// maxNumber is the longest number read, in bytes: more digits than a float64 holds.
const maxNumber = 64

// exact returns the number in a cell, multiplied by the unit's factor.
func (u unit) exact(header, text string) (*big.Rat, *flaw) {
	if len(text) > maxNumber || !decimal.MatchString(text) {
		return nil, &flaw{fmt.Sprintf("%s %s is not a number", header, quote(text)),
			fmt.Sprintf("write %s, for example %s", u.name, u.example)}
	}
	// ParseFloat bounds the exponent, so that the rational cannot grow without limit.
	rough, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return nil, &flaw{fmt.Sprintf("%s %s is too large", header, quote(text)),
			fmt.Sprintf("write %s, for example %s", u.name, u.example)}
	}
	x := new(big.Rat)
	if rough != 0 {
		x.SetString(text)
	}
	return x.Mul(x, u.factor), nil
}

// signs says which numbers a column takes beside those between the bounds of its scale.
type signs int

const (
	positive   signs = iota // no zero
	zeroToo                 // zero and the bounds
	eitherSign              // the bounds only, which may be negative
)

// read returns the number in a cell in SI units (money: in cents), rounded once.
func (s *scale) read(in entry, allow signs) (*big.Rat, *flaw) {
	u := s.in(in.us)
	x, bad := u.exact(in.header, in.text)
	if bad != nil {
		return nil, bad
	}
	v, _ := x.Float64()
	switch {
	case v >= s.least && v <= s.most && !(v == 0 && allow == positive):
		return x, nil
	case x.Sign() == 0 && allow == zeroToo:
		return x, nil
	}
	wrong := "is too large"
	switch {
	case v < 0 && allow != eitherSign:
		wrong = "is negative"
	case x.Sign() == 0:
		wrong = "is zero"
	case v < s.least:
		wrong = "is too small"
	}
	return nil, &flaw{fmt.Sprintf("%s %s %s", in.header, in.text, wrong), s.right(u, allow, wrong)}
}

// right says which numbers a column takes, in the unit of its header.
func (s *scale) right(u unit, allow signs, wrong string) string {
	low := inUnit(s.least, u)
	if allow == zeroToo {
		if wrong == "is too small" {
			return fmt.Sprintf("write 0, or at least %s %s", low, u.name)
		}
		low = "0"
	}
	return fmt.Sprintf("write %s from %s to %s, for example %s", u.name, low, inUnit(s.most, u), u.example)
}

// inUnit returns a bound in a unit, to six digits.
func inUnit(si float64, u unit) string {
	x := new(big.Rat).SetFloat64(si)
	v, _ := x.Quo(x, u.factor).Float64()
	short, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	return strconv.FormatFloat(short, 'f', -1, 64)
}

// write returns v, which is in SI units or cents, as a number of the metric unit that reads back to the
// very same float64. It moves the decimal point in the shortest spelling of v; a division would round.
func (s *scale) write(v float64) string {
	mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(math.Abs(v), 'e', -1, 64), "e")
	e, _ := strconv.Atoi(exponent)
	digits, point := strings.Replace(mantissa, ".", "", 1), e-s.tens+1
	sign := ""
	if v < 0 {
		sign = "-"
	}
	switch {
	case v == 0:
		return "0"
	case point < -20 || point > 20:
		return fmt.Sprintf("%s%se%d", sign, mantissa, e-s.tens)
	case point <= 0:
		return sign + "0." + strings.Repeat("0", -point) + digits
	case point >= len(digits):
		return sign + digits + strings.Repeat("0", point-len(digits))
	}
	return sign + digits[:point] + "." + digits[point:]
}
