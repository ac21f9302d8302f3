package scenarios

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"cartwright/catalog"
	"cartwright/catalog/problem"
	"cartwright/catalog/quantity"
)

// bound is the range a value must lie in, in SI.
type bound struct {
	low, high         float64
	openLow, openHigh bool // the end itself is out
}

// within takes both ends in, above leaves the lower end out, between leaves out both.
func within(low, high float64) bound  { return bound{low, high, false, false} }
func above(low, high float64) bound   { return bound{low, high, true, false} }
func between(low, high float64) bound { return bound{low, high, true, true} }

// holds reports whether v lies in the range.
func (b bound) holds(v float64) bool {
	return (v > b.low || v == b.low && !b.openLow) && (v < b.high || v == b.high && !b.openHigh)
}

// tell returns the range in words, with ends written by show.
func (b bound) tell(show func(float64) string) string {
	low, high := show(b.low), show(b.high)
	switch {
	case b.openLow && b.openHigh:
		return "more than " + low + " and less than " + high
	case b.openLow:
		return "more than " + low + ", up to " + high
	case b.openHigh:
		return low + " or more, less than " + high
	}
	return "from " + low + " to " + high
}

// quantity reads text with a unit into SI. Without def the key is required. It returns NaN for what cannot
// be read or lies out of bounds.
func (s section) quantity(key string, d quantity.Dimension, b bound, def ...float64) float64 {
	form := "text with a unit, for example " + key + ": " + d.Example()
	n := s.nodes[key]
	if n != nil && n.kind == isNumber {
		n = &node{kind: isText, pos: n.pos, value: n.value} // a bare number: let Parse name the units
	} else if n = s.value(key, isText, len(def) == 0, form); n == nil {
		return absent(s.has(key), def)
	}
	v, err := quantity.Parse(n.value, d)
	if err != nil {
		var e *quantity.Error
		if errors.As(err, &e) {
			s.wrong(key, fmt.Sprintf("%s: %s", key, e.Wrong), e.Right)
		}
		return math.NaN()
	}
	if !b.holds(v) {
		s.wrong(key, fmt.Sprintf("%s: %q is out of range", key, n.value),
			"write "+b.tell(func(v float64) string { return quantity.Format(v, d) }))
		return math.NaN()
	}
	return v
}

// absent returns the default of a key that does not stand there, and NaN after a mistake.
func absent(standsThere bool, def []float64) float64 {
	if standsThere || len(def) == 0 {
		return math.NaN()
	}
	return def[0]
}

// plainNumber matches the numbers read: decimal, without a leading zero that YAML 1.1 reads as octal.
var plainNumber = regexp.MustCompile(`^[+-]?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?$`)

// number reads an unquoted number. Without def the key is required. It returns NaN for what cannot be
// read or lies out of bounds.
func (s section) number(key string, b bound, example string, def ...float64) float64 {
	n := s.value(key, isNumber, len(def) == 0, "a number, for example "+key+": "+example)
	if n == nil {
		return absent(s.has(key), def)
	}
	v, err := strconv.ParseFloat(n.value, 64)
	if err != nil || !plainNumber.MatchString(n.value) {
		s.wrong(key, fmt.Sprintf("%s: %s is not a plain decimal number", key, n.source), "write for example "+key+": "+example)
		return math.NaN()
	}
	if !b.holds(v) {
		s.wrong(key, fmt.Sprintf("%s: %s is out of range", key, n.source), "write "+b.tell(plainText))
		return math.NaN()
	}
	return v
}

func plainText(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// integer reads an unquoted whole number. Without def the key is required. It returns -1 for what cannot
// be read or lies out of bounds.
func (s section) integer(key string, low, high int, def ...int) int {
	var fallback []float64
	for _, d := range def {
		fallback = append(fallback, float64(d))
	}
	example := strconv.Itoa(max(low, min(high, 4)))
	v := s.number(key, within(float64(low), float64(high)), example, fallback...)
	if math.IsNaN(v) {
		return -1
	}
	if v != math.Trunc(v) {
		s.wrong(key, fmt.Sprintf("%s: %s is not a whole number", key, s.nodes[key].source), "write for example "+key+": "+example)
		return -1
	}
	return int(v)
}

// maxMoney is the largest amount read, in currency units: far more than any cart costs, and small enough
// that sums of many are exact in cents.
const maxMoney = 1e9

// cents matches an amount of money: at most two decimals, so that none is rounded.
var cents = regexp.MustCompile(`^[+]?(0|[1-9][0-9]*)(\.[0-9]{1,2})?$`)

// money reads an amount of currency units, never negative. Without def the key is required.
func (s section) money(key string, def ...catalog.Cents) catalog.Cents {
	var fallback []float64
	for _, d := range def {
		fallback = append(fallback, float64(d)/100)
	}
	v := s.number(key, within(0, maxMoney), "1250.50", fallback...)
	if math.IsNaN(v) || !s.has(key) {
		if len(def) > 0 {
			return def[0]
		}
		return 0
	}
	if n := s.nodes[key]; !cents.MatchString(n.value) {
		s.wrong(key, fmt.Sprintf("%s: %s is no amount in whole cents", key, n.source),
			"write at most two decimals, for example "+key+": 1250.50")
	}
	return catalog.CentsFrom(v)
}

// truth reads true or false.
func (s section) truth(key string, def bool) bool {
	n := s.value(key, isTruth, false, "true or false, "+key+": "+strconv.FormatBool(!def))
	if n == nil {
		return def
	}
	return n.value == "true"
}

// maxWords is the longest text read, in bytes; it has to fit a table.
const maxWords = 200

// words reads a text of one line. Without def the key is required. It returns "" for what cannot be read.
func (s section) words(key, example string, def ...string) string {
	return s.line(key, "text, for example "+key+": "+example, def)
}

// line reads a text of one line; form is what would be right. A number will do: a load may well be called
// 42.
func (s section) line(key, form string, def []string) string {
	n := s.nodes[key]
	if n == nil || n.kind != isNumber {
		n = s.value(key, isText, len(def) == 0, form)
	}
	switch {
	case n == nil && len(def) > 0:
		return def[0]
	case n == nil:
		return ""
	case n.kind == isNumber:
		return n.source
	case strings.TrimSpace(n.value) == "":
		s.wrong(key, fmt.Sprintf("%q is blank", key), "write "+form)
	case len(n.value) > maxWords:
		s.wrong(key, fmt.Sprintf("%q has %d bytes", key, len(n.value)), fmt.Sprintf("write at most %d", maxWords))
	case strings.IndexFunc(n.value, unicode.IsControl) >= 0:
		s.wrong(key, fmt.Sprintf("%q has more than one line", key), "write "+form)
	default:
		return n.value
	}
	return ""
}

// choice reads one of a few words. Without def the key is required. It returns "" for any other.
func (s section) choice(key string, options []string, def ...string) string {
	form := strings.Join(options, " or ")
	if last := len(options) - 1; last > 1 {
		form = strings.Join(options[:last], ", ") + " or " + options[last]
	}
	v := s.line(key, form, def)
	if v == "" || contains(options, v) {
		return v
	}
	right := "write " + form
	if near := problem.Nearest(v, options); near != "" {
		right = fmt.Sprintf("did you mean %q? Write %s", near, form)
	}
	s.wrong(key, fmt.Sprintf("%s: %q is none of the choices", key, v), right)
	return ""
}

// timeOfDay reads "HH:MM" into minutes after midnight, or -1.
func (s section) timeOfDay(key string, endOfDay bool) int {
	n := s.value(key, isText, false, `text, for example `+key+`: "06:30"`)
	if n == nil {
		return -1
	}
	m, ok := clock(n.value)
	if !ok || m == dayMin && !endOfDay {
		right := `write hours and minutes as HH:MM, for example "06:30"`
		if m == dayMin {
			right = `write "00:00"; 24:00 is only an end`
		}
		s.wrong(key, fmt.Sprintf("%s: %q is not a time of day", key, n.value), right)
		return -1
	}
	return m
}

// dayMin is the number of minutes of a day.
const dayMin = 24 * 60

// clock reads "HH:MM" or "H:MM" from 0:00 to 24:00 into minutes after midnight.
func clock(t string) (minutes int, ok bool) {
	if len(t) == len("H:MM") {
		t = "0" + t
	}
	if len(t) != len("HH:MM") || t[2] != ':' {
		return 0, false
	}
	for _, i := range [...]int{0, 1, 3, 4} {
		if t[i] < '0' || t[i] > '9' {
			return 0, false
		}
	}
	h, m := int(t[0]-'0')*10+int(t[1]-'0'), int(t[3]-'0')*10+int(t[4]-'0')
	if m > 59 || h*60+m > dayMin {
		return 0, false
	}
	return h*60 + m, true
}
