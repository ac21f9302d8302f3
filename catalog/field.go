package catalog

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// number is a column of a quantity; the field is in SI units (for money, in cents and not rounded).
func number[T any](name string, s *scale, allow signs, field func(*T) *float64) column[T] {
	c := column[T]{name: name, format: isNumber, expected: fmt.Sprintf("%s, for example %s", s.metric.name, s.metric.example)}
	if s.us != nil {
		c.us = strings.TrimSuffix(name, s.metric.suffix) + s.us.suffix
		c.expected = fmt.Sprintf("%s (or %s under %s)", c.expected, s.us.name, c.us)
	}
	c.read = func(v *T, in entry) *flaw {
		x, bad := s.read(in, allow)
		if bad == nil {
			*field(v) = x
		}
		return bad
	}
	c.write = func(v *T) string { return s.write(*field(v)) }
	return c
}

// money is a column of an amount in whole cents.
func money[T any](name string, field func(*T) *Cents) column[T] {
	return column[T]{
		name:     name,
		format:   isNumber,
		expected: fmt.Sprintf("%s, for example %s", currency.metric.name, currency.metric.example),
		read: func(v *T, in entry) *flaw {
			x, bad := currency.read(in, zeroToo)
			switch {
			case bad != nil:
				return bad
			case x != math.Trunc(x):
				return &flaw{fmt.Sprintf("%s %s has a part of a cent", in.header, in.text),
					fmt.Sprintf("write %.2f or %.2f", math.Floor(x)/100, math.Ceil(x)/100)}
			}
			*field(v) = Cents(x)
			return nil
		},
		write: func(v *T) string { return currency.write(float64(*field(v))) },
	}
}

// count is a column of whole numbers.
func count[T any](name string, low, high int, field func(*T) *int) column[T] {
	right := fmt.Sprintf("a whole number from %d to %d", low, high)
	return column[T]{
		name:     name,
		format:   isNumber,
		expected: right,
		read: func(v *T, in entry) *flaw {
			n, err := strconv.Atoi(in.text)
			if err != nil {
				return &flaw{fmt.Sprintf("%s %s is not a whole number", in.header, quote(in.text)), "write " + right}
			}
			if n < low || n > high {
				return &flaw{fmt.Sprintf("%s %d is out of range", in.header, n), "write " + right}
			}
			*field(v) = n
			return nil
		},
		write: func(v *T) string { return strconv.Itoa(*field(v)) },
	}
}

// maxText is the longest text of a cell, in characters. Longer ones are a lost quote, not a remark.
const maxText = 500

// text is a column of words. White space inside, line breaks too, becomes single spaces.
func text[T any](name, example string, field func(*T) *string) column[T] {
	return column[T]{
		name:     name,
		expected: example,
		read: func(v *T, in entry) *flaw {
			words := strings.Join(strings.Fields(in.text), " ")
			if n := len([]rune(words)); n > maxText {
				return &flaw{fmt.Sprintf("%s has %d characters", in.header, n), fmt.Sprintf("write at most %d", maxText)}
			}
			if strings.ContainsFunc(words, unicode.IsControl) {
				return &flaw{fmt.Sprintf("%s %s has a control character in it", in.header, quote(words)), "write plain text"}
			}
			*field(v) = words
			return nil
		},
		write: func(v *T) string { return *field(v) },
	}
}

// grade is a column of one of a few numbers, for example temperatures.
func grade[T any](name string, known []float64, field func(*T) *float64) column[T] {
	words := make([]string, len(known))
	for i, k := range known {
		words[i] = strconv.FormatFloat(k, 'f', -1, 64)
	}
	return column[T]{
		name:     name,
		words:    words,
		format:   isNumber,
		expected: anyOf(words),
		read: func(v *T, in entry) *flaw {
			x, err := unit{}.toSI(in.text)
			if err != nil || !slices.Contains(known, x) {
				return &flaw{fmt.Sprintf("%s %s is none of the choices", in.header, quote(in.text)), "write " + anyOf(words)}
			}
			*field(v) = x
			return nil
		},
		write: func(v *T) string { return strconv.FormatFloat(*field(v), 'f', -1, 64) },
	}
}

// identity is the column of a part's id.
func identity[T any](name string, field func(*T) *string) column[T] {
	c := text(name, "a short word of your own, for example rack-5", field)
	plain := c.read
	c.read = func(v *T, in entry) *flaw {
		if bad := plain(v, in); bad != nil {
			return bad
		}
		first, _ := utf8.DecodeRuneInString(*field(v))
		if !unicode.IsLetter(first) && !unicode.IsDigit(first) {
			return &flaw{fmt.Sprintf("%s %s does not begin with a letter or a digit", in.header, quote(in.text)),
				"write a short word of your own, for example rack-5"}
		}
		if n := len([]rune(*field(v))); n > maxID {
			return &flaw{fmt.Sprintf("%s has %d characters", in.header, n), fmt.Sprintf("write at most %d", maxID)}
		}
		return nil
	}
	return c
}

// maxID is the longest part id, in characters: ids stand in narrow columns of tables.
const maxID = 64

// wheels is a column of how many of a set of casters have something: a number, or yes for all of them
// and no for none.
func wheels(name string, field func(*Casters) *int) column[Casters] {
	c := count(name, 0, maxWheels, field)
	number := c.read
	c.expected += ", or yes or no for all or none"
	c.read = func(v *Casters, in entry) *flaw {
		switch strings.ToLower(in.text) {
		case "yes":
			*field(v) = v.SetOf
		case "no":
			*field(v) = 0
		default:
			return number(v, in)
		}
		return nil
	}
	return c
}

// maxWheels is the largest set of casters that is read.
const maxWheels = 100
