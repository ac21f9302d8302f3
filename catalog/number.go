package catalog

import (
	"errors"
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
	example string   // a plausible number of them
	tens    int      // SI = number * 10^tens; for money, cents for SI
	factor  *big.Rat // SI = number * factor, where it is no power of ten; else nil
}

// scale is what a column measures: in which unit, in which second one if any, and between which bounds.
// The bounds are no limits of the trade. They keep every later sum and quotient finite, and catch numbers
// in a wrong unit that is off by a lot.
type scale struct {
	metric unit
	us     *unit   // nil: no second unit
	least  float64 // of a number that is not zero, in SI units or cents
	most   float64
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

// square and cube return powers, for units of areas and volumes.
func square(a *big.Rat) *big.Rat { return new(big.Rat).Mul(a, a) }
func cube(a *big.Rat) *big.Rat   { return new(big.Rat).Mul(square(a), a) }

// Units of a header that come alone. The bounds behind each are in SI units.
var (
	volts         = &scale{unit{"volts", "", "51.2", 0, nil}, nil, 1e-3, 1e4}
	amperes       = &scale{unit{"amperes", "", "100", 0, nil}, nil, 1e-3, 1e6}
	shortCircuit  = &scale{unit{"amperes", "", "2500", 0, nil}, nil, 1e-6, 1e10} // most volts over least ohms
	watts         = &scale{unit{"watts", "", "3000", 0, nil}, nil, 1e-3, 1e7}
	kilowattHours = &scale{unit{"kilowatt-hours", "", "5.12", 3, nil}, nil, 1e-3, 1e7}
	milliohms     = &scale{unit{"milliohms", "", "22", -3, nil}, nil, 1e-6, 1e3}
	fraction      = &scale{unit{"a fraction", "", "0.93 for 93 %", 0, nil}, nil, 1e-3, 1}
	years         = &scale{unit{"years", "", "15", 0, nil}, nil, 0.1, 100}
	degreesC      = &scale{unit{"degrees Celsius", "", "45", 0, nil}, nil, 20, 100}
	megapascals   = &scale{unit{"megapascals", "", "235", 6, nil}, nil, 1e6, 1e10}
	cycles        = &scale{unit{"cycles", "", "4000", 0, nil}, nil, 1, 1e6}
	percentPerC   = &scale{unit{"percent per degree", "", "-0.28", 0, nil}, nil, -5, 5}
	currency      = &scale{unit{"units of currency", "", "1290.50", 2, nil}, nil, 0, maxCents}
	quantities    = &scale{unit{"pieces or metres", "", "4", 0, nil}, nil, 1e-3, 1e6}
)

// maxCents is the highest price that is read, a thousand million units of currency: a thousand each of a thousand
// parts at that price still add up in an int64.
const maxCents = 1e9 * 100

// Units of a header that come in pairs, metric and US.
var (
	kilograms = &scale{unit{"kilograms", "_kg", "45", 0, nil},
		&unit{"pounds", "_lb", "99", 0, per("lb", quantity.Mass)}, 1e-6, 1e5}
	millimetres = &scale{unit{"millimetres", "_mm", "442", -3, nil},
		&unit{"inches", "_in", "17.4", 0, per("in", quantity.Length)}, 1e-6, 100}
	millilitres = &scale{unit{"millilitres", "_ml", "295", -6, nil},
		&unit{"cubic inches", "_in3", "18", 0, cube(per("in", quantity.Length))}, 1e-9, 10}
	squareMillimetres = &scale{unit{"square millimetres", "_mm2", "343", 0, nil}, // areas stay in mm2, as conductors' do
		&unit{"square inches", "_in2", "0.533", 0, square(quotient(per("in", quantity.Length), per("mm", quantity.Length)))}, 1, 1e6}
	metres = &scale{unit{"metres", "_m", "10", 0, nil},
		&unit{"feet", "_ft", "30", 0, per("ft", quantity.Length)}, 1e-3, 1e6}
	kilogramsPerMetre = &scale{unit{"kilograms per metre", "_kg_per_m", "0.35", 0, nil},
		&unit{"pounds per foot", "_lb_per_ft", "0.23", 0, quotient(per("lb", quantity.Mass), per("ft", quantity.Length))}, 1e-6, 1e3}
	currencyPerMetre = &scale{unit{"units of currency a metre", "_per_m", "8.70", 2, nil},
		&unit{"units of currency a foot", "_per_ft", "2.65", 0, quotient(big.NewRat(100, 1), per("ft", quantity.Length))}, 1e-4, 10 * maxCents} // so that maxCents a foot fits
)

// maxNumber is the longest number read, in bytes: more digits than a float64 holds.
const maxNumber = 64

// fractions reports whether a tape measure in the unit has fractions.
func (u unit) fractions() bool { return u.suffix == "_in" || u.suffix == "_ft" }

// toSI reads a decimal number of the unit and returns it in SI units (money: in cents), rounded once. Inches and feet
// may have a fraction. Units, thousands separators and currency signs are refused. The error is strconv.ErrSyntax or
// strconv.ErrRange.
func (u unit) toSI(text string) (float64, error) {
	if u.factor != nil {
		if x, rest, ok := quantity.Fraction(text); ok && rest == "" && u.fractions() {
			si, _ := x.Mul(x, u.factor).Float64()
			return si, nil
		}
	}
	if len(text) > maxNumber || strings.Trim(text, "0123456789+-.eE") != "" {
		return 0, strconv.ErrSyntax
	}
	// ParseFloat bounds the exponent, so that the rational below cannot grow without limit.
	rough, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, err
	}
	if u.factor == nil {
		return shifted(text, u.tens)
	}
	x := new(big.Rat)
	if rough != 0 {
		x.SetString(text)
	}
	si, _ := x.Mul(x, u.factor).Float64()
	return si, nil
}

// shifted returns a decimal number times 10^tens, by writing another exponent behind it: a multiplication
// would round a second time.
func shifted(text string, tens int) (float64, error) {
	if i := strings.IndexAny(text, "eE"); i >= 0 {
		e, err := strconv.Atoi(text[i+1:])
		if err != nil {
			return 0, err
		}
		text, tens = text[:i], tens+e
	}
	return strconv.ParseFloat(text+"e"+strconv.Itoa(tens), 64)
}

// signs says which numbers a column takes.
type signs int

const (
	positive   signs = iota // those between the bounds of its scale, but not 0
	zeroToo                 // those, and 0
	eitherSign              // those; the bounds may be negative
)

// grouped matches an amount of money as a spreadsheet shows it: with a currency sign, or with commas between thousands
// and a point behind them. Without either "1,249" might be a little more than one.
var grouped = regexp.MustCompile(`^([$€£]?) ?([0-9]{1,3}(?:,[0-9]{3})+|[0-9]+)(\.[0-9]+)? ?([€£]?)$`)

// plain takes currency sign and thousands separators off an amount of money that is unmistakable, and returns any other
// text as it is.
func (s *scale) plain(text string) string {
	if s != currency && s != currencyPerMetre {
		return text
	}
	m := grouped.FindStringSubmatch(text)
	if m == nil || m[1] != "" && m[4] != "" {
		return text
	}
	if m[1] == "" && m[4] == "" && m[3] == "" && s != currency { // a part of a cent is no price of a piece
		return text
	}
	return strings.ReplaceAll(m[2], ",", "") + m[3]
}

// read returns the number in a cell in SI units (money: in cents), rounded once.
func (s *scale) read(in entry, allow signs) (float64, *flaw) {
	u := s.in(in.us)
	v, err := u.toSI(s.plain(in.text))
	if err != nil {
		wrong := "is not a number"
		if errors.Is(err, strconv.ErrRange) {
			wrong = "is too large"
		}
		return 0, &flaw{fmt.Sprintf("%s %s %s", in.header, quote(in.text), wrong),
			fmt.Sprintf("write %s, for example %s", u.name, u.example)}
	}
	if v >= s.least && v <= s.most && !(v == 0 && allow == positive) || v == 0 && allow == zeroToo {
		return v, nil
	}
	wrong := "is too large"
	switch {
	case v < 0 && allow != eitherSign:
		wrong = "is negative"
	case v == 0:
		wrong = "is zero"
	case v < s.least:
		wrong = "is too small"
	}
	return 0, &flaw{fmt.Sprintf("%s %s %s", in.header, in.text, wrong), s.right(u, allow, wrong)}
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
	one, _ := u.toSI("1")
	short, _ := strconv.ParseFloat(strconv.FormatFloat(si/one, 'g', 6, 64), 64)
	return strconv.FormatFloat(short, 'f', -1, 64)
}

// write returns v, which is in SI units or cents, as a number of the metric unit that reads back to the
// very same float64. It moves the decimal point in the shortest spelling of v; a division would round.
func (s *scale) write(v float64) string {
	mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(math.Abs(v), 'e', -1, 64), "e")
	e, _ := strconv.Atoi(exponent)
	digits, point := strings.Replace(mantissa, ".", "", 1), e-s.metric.tens+1
	sign := ""
	if v < 0 {
		sign = "-"
	}
	switch {
	case v == 0:
		return "0"
	case point < -20 || point > 20:
		return fmt.Sprintf("%s%se%d", sign, mantissa, e-s.metric.tens)
	case point <= 0:
		return sign + "0." + strings.Repeat("0", -point) + digits
	case point >= len(digits):
		return sign + digits + strings.Repeat("0", point-len(digits))
	}
	return sign + digits[:point] + "." + digits[point:]
}

// ParseMoney reads an amount of money in whole cents, as a price in a catalogue: "1290.50", "$1,249.00".
func ParseMoney(text string) (Cents, error) {
	var c Cents
	bad := money("amount", func(*struct{}) *Cents { return &c }).read(nil, entry{cell: cell{text: strings.TrimSpace(text)}, header: "amount"})
	if bad != nil {
		return 0, errors.New(bad.wrong)
	}
	return c, nil
}
