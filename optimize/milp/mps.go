package milp

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// WriteMPS writes the model in free MPS, as both glpsol --freemps and cbc read it. What readers take in
// different ways is left out: to maximise is written as to minimise the negated objective, which a comment
// tells; the objective's constant is the cost of a column named CONSTANT that is fixed at 1, since a
// right-hand side of the objective is added by one reader and subtracted by the other; and every integer
// has both bounds.
//
// Names keep their letters, digits and "_.[]" up to longestName characters; every other character becomes
// "_"; a first character that is no letter gets "_" before it; a name that is then taken has "_2", "_3"...
// added, in the order of the model.
func (m *Model) WriteMPS(w io.Writer) error {
	if m.err != nil {
		return m.err
	}
	b := bufio.NewWriter(w)
	rowNames := uniqueNames(len(m.rows), objectiveName, func(i int) string { return m.rows[i].name })
	colNames := uniqueNames(len(m.cols), constantName, func(j int) string { return m.cols[j].name })
	sign := 1.0
	if m.maximize {
		sign = -1
		fmt.Fprintln(b, "* maximise: the objective is written negated, to be minimised")
	}
	fmt.Fprintf(b, "NAME %s FREE\nROWS\n N %s\n", cleanName(m.name), objectiveName)
	letter := [...]string{AtMost: "L", AtLeast: "G", Equal: "E"}
	for i := range m.rows {
		fmt.Fprintf(b, " %s %s\n", letter[m.rows[i].rel], rowNames[i])
	}
	m.writeColumns(b, sign, rowNames, colNames)
	if m.objConst != 0 {
		fmt.Fprintf(b, " %s %s %s\n", constantName, objectiveName, number(sign*m.objConst))
	}
	fmt.Fprintln(b, "RHS")
	for i := range m.rows {
		if m.rows[i].rhs != 0 {
			fmt.Fprintf(b, " RHS %s %s\n", rowNames[i], number(m.rows[i].rhs))
		}
	}
	fmt.Fprintln(b, "BOUNDS")
	for j, c := range m.cols {
		writeBounds(b, colNames[j], c)
	}
	if m.objConst != 0 {
		fmt.Fprintf(b, " FX BND %s 1\n", constantName)
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
		cells[e.col] = append(cells[e.col], cell{objectiveName, sign * e.coef})
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
			fmt.Fprintf(b, " %s %s 0\n", colNames[j], objectiveName)
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

// Names of our own in a file, and how long the others may be: glpsol reads 255 characters.
const (
	objectiveName = "OBJ"
	constantName  = "CONSTANT"
	longestName   = 200
)

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
	return clean[:min(len(clean), longestName)]
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
