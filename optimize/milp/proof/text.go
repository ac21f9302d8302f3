package proof

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
)

// Certificate is what is claimed of a program, and the proof.
type Certificate struct {
	Bound float64   // no point costs less; +Inf: there is no point
	Point []float64 // a point, nil for none
	Tree  *Tree
}

// Names are the names of a program's variables and rows, each without white space.
type Names struct{ Columns, Rows []string }

// The text form of a certificate, line by line. Words stand apart by white space; what follows a # at the beginning
// of a line is a comment. Numbers are decimal and stand for the nearest double.
//
//	cartwright-proof 1
//	claim least 4481.425                no point costs less; or: claim impossible
//	point 2                             how many values follow; left out where there is no point
//	strings 2                           a variable and its value; what is not listed is 0
//	cost 4481.43
//	split strings 2                     the trees for strings <= 2 and for strings >= 3 follow, in this order
//	leaf 2                              how many multipliers follow
//	capacity 0.25                       a row and its multiplier
//	budget -1
//	impossible 0                        a leaf in which nothing is possible
//	end
const (
	firstLine = "cartwright-proof 1"
	lastLine  = "end"
)

// Write writes a certificate in its text form.
func Write(w io.Writer, names Names, c *Certificate) error {
	b := bufio.NewWriter(w)
	fmt.Fprintln(b, firstLine)
	if math.IsInf(c.Bound, 1) {
		fmt.Fprintln(b, "claim impossible")
	} else {
		fmt.Fprintln(b, "claim least", number(c.Bound))
	}
	if c.Point != nil {
		count := 0
		for _, v := range c.Point {
			if v != 0 {
				count++
			}
		}
		fmt.Fprintln(b, "point", count)
		for j, v := range c.Point {
			if v != 0 {
				fmt.Fprintln(b, names.Columns[j], number(v))
			}
		}
	}
	// A stack and no recursion: a tree may be deep.
	for open := []*Tree{c.Tree}; len(open) > 0; {
		t := open[len(open)-1]
		open = open[:len(open)-1]
		if t.Below != nil {
			fmt.Fprintln(b, "split", names.Columns[t.Column], t.At)
			open = append(open, t.Above, t.Below)
			continue
		}
		kind := "leaf"
		if t.Impossible {
			kind = "impossible"
		}
		fmt.Fprintln(b, kind, len(t.Multipliers))
		for _, m := range t.Multipliers {
			fmt.Fprintln(b, names.Rows[m.Row], number(m.Value))
		}
	}
	fmt.Fprintln(b, lastLine)
	return b.Flush()
}

// number writes the shortest decimal that is read back as the same double.
func number(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
