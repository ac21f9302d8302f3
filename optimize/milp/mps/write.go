package mps

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"

	"cartwright/optimize/milp/proof"
)

// Write writes a file. A row of two different sides can't be written.
func Write(w io.Writer, f *File) error {
	b := bufio.NewWriter(w)
	for _, line := range f.Comments {
		fmt.Fprintln(b, "*", line)
	}
	fmt.Fprintf(b, "NAME %s FREE\nROWS\n N %s\n", cleanName(f.Name), Objective)
	for i, r := range f.Program.Rows {
		letter, _, err := side(r)
		if err != nil {
			return fmt.Errorf("mps: row %q: %w", f.Rows[i], err)
		}
		fmt.Fprintf(b, " %s %s\n", letter, f.Rows[i])
	}
	writeColumns(b, f)
	fmt.Fprintln(b, "RHS")
	for i, r := range f.Program.Rows {
		if _, v, _ := side(r); v != 0 {
			fmt.Fprintf(b, " RHS %s %s\n", f.Rows[i], number(v))
		}
	}
	fmt.Fprintln(b, "BOUNDS")
	for j, name := range f.Columns {
		writeBounds(b, name, &f.Program, j)
	}
	fmt.Fprintln(b, "ENDATA")
	return b.Flush()
}

// side returns the letter of a row's kind and its side.
func side(r proof.Row) (letter string, v float64, err error) {
	noLower, noUpper := math.IsInf(r.Lower, -1), math.IsInf(r.Upper, 1)
	switch {
	case r.Lower == r.Upper:
		return "E", r.Upper, nil
	case noLower && !noUpper:
		return "L", r.Upper, nil
	case noUpper && !noLower:
		return "G", r.Lower, nil
	}
	return "", 0, fmt.Errorf("sides of %v and %v; want one", r.Lower, r.Upper)
}

// writeColumns writes the matrix by columns, the integers between markers.
func writeColumns(b io.Writer, f *File) {
	type cell struct {
		row  string
		coef float64
	}
	cells := make([][]cell, len(f.Columns))
	for j, cost := range f.Program.Cost {
		if cost != 0 {
			cells[j] = append(cells[j], cell{Objective, cost})
		}
	}
	for i, r := range f.Program.Rows {
		for k, j := range r.Cols {
			cells[j] = append(cells[j], cell{f.Rows[i], r.Coefs[k]})
		}
	}
	fmt.Fprintln(b, "COLUMNS")
	markers, inside := 0, false
	marker := func(kind string) {
		fmt.Fprintf(b, " M%d 'MARKER' '%s'\n", markers, kind)
		markers, inside = markers+1, !inside
	}
	for j, name := range f.Columns {
		switch integer := f.Program.Integer[j]; {
		case integer && !inside:
			marker("INTORG")
		case !integer && inside:
			marker("INTEND")
		}
		if len(cells[j]) == 0 { // a variable in no row still has to be declared
			fmt.Fprintf(b, " %s %s 0\n", name, Objective)
		}
		for _, x := range cells[j] {
			fmt.Fprintf(b, " %s %s %s\n", name, x.row, number(x.coef))
		}
	}
	if inside {
		marker("INTEND")
	}
}

// writeBounds writes both bounds of a variable, leaving out the format's default of 0 to infinity for
// continuous ones.
func writeBounds(b io.Writer, name string, p *proof.Program, j int) {
	lower, upper := p.Lower[j], p.Upper[j]
	noLower, noUpper := math.IsInf(lower, -1), math.IsInf(upper, 1)
	switch {
	case noLower && noUpper:
		fmt.Fprintf(b, " FR BND %s\n", name)
	case lower == upper:
		fmt.Fprintf(b, " FX BND %s %s\n", name, number(lower))
	default:
		if noLower {
			fmt.Fprintf(b, " MI BND %s\n", name)
		} else if lower != 0 || p.Integer[j] {
			fmt.Fprintf(b, " LO BND %s %s\n", name, number(lower))
		}
		if !noUpper {
			fmt.Fprintf(b, " UP BND %s %s\n", name, number(upper))
		} else if p.Integer[j] {
			fmt.Fprintf(b, " PL BND %s\n", name)
		}
	}
}

// number writes the shortest text that reads back as the same number.
func number(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
