package milp

import (
	"fmt"
	"math"
)

// Violation is a row, bound or integrality that a point does not keep.
type Violation struct {
	What  string  // "row", "lower bound", "upper bound", "integer" or "number"
	Name  string  // of the row or variable
	Value float64 // the row's left-hand side or the variable's value
	Limit float64 // the right-hand side, the bound, or the nearest whole number
	By    float64 // how far beyond the limit, in the row's or variable's own unit
}

// String returns the violation in words.
func (v Violation) String() string {
	return fmt.Sprintf("%s %q: %g against %g, off by %g", v.What, v.Name, v.Value, v.Limit, v.By)
}

// Violations evaluates every bound, integrality and row at a point, given by the variables in the order
// they were added, and lists what is not kept. Each may be off by tol times its scale; the scale of a
// row is the largest of 1, |rhs| and its terms |coef * value|, that of a bound the larger of 1 and
// |bound|, that of integrality 1. It panics where the number of values is not that of the variables.
func Violations(m *Model, values []float64, tol float64) []Violation {
	if len(values) != len(m.cols) {
		panic(fmt.Sprintf("milp: %d values for %d variables", len(values), len(m.cols)))
	}
	var found []Violation
	for j, c := range m.cols {
		x := values[j]
		switch {
		case math.IsNaN(x) || math.IsInf(x, 0):
			found = append(found, Violation{"number", c.name, x, 0, math.Inf(1)})
		case c.lo-x > tol*math.Max(1, math.Abs(c.lo)):
			found = append(found, Violation{"lower bound", c.name, x, c.lo, c.lo - x})
		case x-c.hi > tol*math.Max(1, math.Abs(c.hi)):
			found = append(found, Violation{"upper bound", c.name, x, c.hi, x - c.hi})
		}
		if off := math.Abs(x - math.Round(x)); c.integer && off > tol {
			found = append(found, Violation{"integer", c.name, x, math.Round(x), off})
		}
	}
	for i := range m.rows {
		r := &m.rows[i]
		lhs, scale := r.at(values)
		if off := r.off(lhs); !(off <= tol*scale) { // also true for NaN
			found = append(found, Violation{"row", r.name, lhs + r.moved, r.rhs + r.moved, off})
		}
	}
	return found
}

// at returns the left-hand side of a row at a point and the scale its error is measured by.
func (r *row) at(values []float64) (lhs, scale float64) {
	scale = math.Max(1, math.Abs(r.rhs))
	for _, e := range r.entries {
		term := e.coef * values[e.col]
		lhs += term
		scale = math.Max(scale, math.Abs(term))
	}
	return lhs, scale
}
