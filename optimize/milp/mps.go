package milp

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// WriteMPS writes the model in free MPS, as glpsol --freemps and cbc read it. To maximise is written as to
// minimise the negated objective, as readers differ on how to say it; a comment tells. The objective's
// constant stands in the RHS section with its sign turned, which both readers take as written here.
//
// Names keep their letters, digits and "_.[]"; every other character, and a leading one that is no
// letter, becomes "_"; a name that would then be taken has "_2", "_3"... added. Every integer has both
// bounds written, so that no reader puts its own default.
func (m *Model) WriteMPS(w io.Writer) error {
	if m.err != nil {
		return m.err
	}
	b := bufio.NewWriter(w)
	rowNames := uniqueNames(len(m.rows), "OBJ", func(i int) string { return m.rows[i].name })
	colNames := uniqueNames(len(m.cols), "RHS", func(j int) string { return m.cols[j].name })
	sign := 1.0
	if m.maximize {
		sign = -1
		fmt.Fprintln(b, "* maximise: the objective is written negated, to be minimised")
	}
	fmt.Fprintf(b, "NAME %s\nROWS\n N OBJ\n", cleanName(m.name))
	letter := [...]string{AtMost: "L", AtLeast: "G", Equal: "E"}
	for i := range m.rows {
		fmt.Fprintf(b, " %s %s\n", letter[m.rows[i].rel], rowNames[i])
	}
	m.writeColumns(b, sign, rowNames, colNames)
	fmt.Fprintln(b, "RHS")
	if m.objConst != 0 {
		fmt.Fprintf(b, " RHS OBJ %s\n", number(-sign*m.objConst))
	}
	for i := range m.rows {
		if m.rows[i].rhs != 0 {
			fmt.Fprintf(b, " RHS %s %s\n", rowNames[i], number(m.rows[i].rhs))
		}
	}
	fmt.Fprintln(b, "BOUNDS")
	for j, c := range m.cols {
		writeBounds(b, colNames[j], c)
	}
	fmt.Fprintln(b, "ENDATA")
	return b.Flush()
}

// writeColumns writes the matrix by columns, the integers between markers.
func (m *Model) writeColumns(b io.Writer, sign float64, rowNames, colNames []string) {
	type cell struct {
		row  string
		coef float64
	}
	cells := make([][]cell, len(m.cols))
	for _, e := range m.obj {
		cells[e.col] = append(cells[e.col], cell{"OBJ", sign * e.coef})
	}
	for i := range m.rows {
		for _, e := range m.rows[i].entries {
			cells[e.col] = append(cells[e.col], cell{rowNames[i], e.coef})
		}
	}
	fmt.Fprintln(b, "COLUMNS")
	markers, inside := 0, false
	marker := func(kind string) {
		fmt.Fprintf(b, " M%d 'MARKER' '%s'\n", markers, kind)
		markers, inside = markers+1, !inside
	}
	for j, c := range m.cols {
		switch {
		case c.integer && !inside:
			marker("INTORG")
		case !c.integer && inside:
			marker("INTEND")
		}
		if len(cells[j]) == 0 { // a variable in no row still has to be declared
			fmt.Fprintf(b, " %s OBJ 0\n", colNames[j])
		}
		for _, x := range cells[j] {
			fmt.Fprintf(b, " %s %s %s\n", colNames[j], x.row, number(x.coef))
		}
	}
	if inside {
		marker("INTEND")
	}
}

// writeBounds writes both bounds of a variable, leaving out the format's default of 0 to infinity for
// continuous ones.
func writeBounds(b io.Writer, name string, c column) {
	noLo, noHi := math.IsInf(c.lo, -1), math.IsInf(c.hi, 1)
	switch {
	case noLo && noHi:
		fmt.Fprintf(b, " FR BND %s\n", name)
	case c.lo == c.hi:
		fmt.Fprintf(b, " FX BND %s %s\n", name, number(c.lo))
	default:
		if noLo {
			fmt.Fprintf(b, " MI BND %s\n", name)
		} else if c.lo != 0 || c.integer {
			fmt.Fprintf(b, " LO BND %s %s\n", name, number(c.lo))
		}
		if !noHi {
			fmt.Fprintf(b, " UP BND %s %s\n", name, number(c.hi))
		} else if c.integer {
			fmt.Fprintf(b, " PL BND %s\n", name)
		}
	}
}

// number writes the shortest text that reads back as the same number.
func number(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// cleanName replaces what a reader of MPS might trip over.
func cleanName(name string) string {
	clean := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', strings.ContainsRune("_.[]", r):
			return r
		}
		return '_'
	}, name)
	if clean == "" || !(clean[0] >= 'a' && clean[0] <= 'z' || clean[0] >= 'A' && clean[0] <= 'Z') {
		clean = "_" + clean
	}
	return clean
}

// uniqueNames cleans n names and keeps them apart from each other and from a reserved one.
func uniqueNames(n int, reserved string, name func(int) string) []string {
	used := map[string]bool{reserved: true}
	names := make([]string, n)
	for i := range names {
		clean := cleanName(name(i))
		try := clean
		for k := 2; used[try]; k++ {
			try = clean + "_" + strconv.Itoa(k)
		}
		used[try], names[i] = true, try
	}
	return names
}
