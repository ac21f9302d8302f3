package catalog

import (
	"strconv"
	"strings"
)

// flaw is what is wrong with a cell and what would be right in it.
type flaw struct{ wrong, right string }

// entry is a cell under its header.
type entry struct {
	cell
	header string // as the file writes it
	us     bool   // the header asks for the second unit of its pair
}

// column is one column of a kind of row T: its name, what an empty cell means, and how a cell becomes a
// field and a field a cell. The tables of columns are the file format.
type column[T any] struct {
	name      string // with the metric unit, where it has a pair
	us        string // with the US unit; "" where it has none
	need      bool   // the column must be there and its cells filled
	sometimes bool   // a needed column whose cell may be empty where another column is filled instead
	fill      string // what an empty cell stands for, as if written there
	derive    func(*T)
	derived   string   // what an empty cell stands for, in words, where derive computes it
	expected  string   // what to write, for messages: "volts, for example 51.2"
	words     []string // the cells there can be, where they are few
	format    format   // what a spreadsheet takes the cells for
	read      func(*T, entry) *flaw
	write     func(*T) string
}

// format is what a spreadsheet takes the cells of a column for.
type format int

// The formats.
const (
	isText format = iota
	isNumber
	isDay
)

// must marks a column as required.
func (c column[T]) must() column[T] {
	c.need = true
	return c
}

// or states what an empty cell stands for.
func (c column[T]) or(text string) column[T] {
	c.fill = text
	return c
}

// orElse states what an empty cell stands for where that depends on other cells. Their columns
// must stand before this one in the table.
func (c column[T]) orElse(words string, derive func(*T)) column[T] {
	c.derived, c.derive = words, derive
	return c
}

// blankZero makes the column write an empty cell for zero: "not stated".
func (c column[T]) blankZero() column[T] {
	write := c.write
	c.write = func(v *T) string {
		if text := write(v); text != "0" {
			return text
		}
		return ""
	}
	return c
}

// mayBeEmpty marks a column that must be there, but whose cell may be empty where another column is filled instead.
func (c column[T]) mayBeEmpty() column[T] {
	c.need, c.sometimes = true, true
	return c
}

// onlyIf makes a column write empty cells for other rows.
func (c column[T]) onlyIf(is func(*T) bool) column[T] {
	write := c.write
	c.write = func(v *T) string {
		if is(v) {
			return write(v)
		}
		return ""
	}
	return c
}

// anyOf returns "a or b", or "a, b or c", of two names or more.
func anyOf(names []string) string {
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " or " + names[last]
}

// maxQuote is how much of a cell a message repeats, in bytes.
const maxQuote = 60

// quote returns a text in quotes, cut to maxQuote and with control characters escaped.
func quote(text string) string {
	if len(text) <= maxQuote {
		return strconv.Quote(text)
	}
	return strconv.Quote(strings.ToValidUTF8(text[:maxQuote], "")) + "..."
}
