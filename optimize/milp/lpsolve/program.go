package lpsolve

import (
	"fmt"
	"math"

	"cartwright/optimize/milp/proof"
)

// program is a program in the shape that the library takes in: columns counted from 1, one side a row.
type program struct {
	begin        []int32 // where each row starts in cols and coefs; one more at the end
	cols         []int32
	coefs        []float64
	kinds        []int32 // by row, as the header numbers them
	sides        []float64
	costCols     []int32
	costs        []float64
	lower, upper []float64
	integer      []bool
	fine         float64 // where the last row is the ceiling: the difference that matters in it; else 0
}

// The kinds of rows of the header.
const (
	atMost  = 1
	atLeast = 2
	equal   = 3
)

// newProgram flattens a program. Rows that ask nothing are left out, those of two sides become two.
func newProgram(p *proof.Program) *program {
	n := len(p.Cost)
	f := &program{begin: make([]int32, 1, len(p.Rows)+2), integer: append([]bool(nil), p.Integer...),
		lower: make([]float64, n), upper: make([]float64, n)}
	for _, r := range p.Rows {
		switch noLower, noUpper := math.IsInf(r.Lower, -1), math.IsInf(r.Upper, 1); {
		case len(r.Cols) == 0 || noLower && noUpper:
		case r.Lower == r.Upper:
			f.add(r.Cols, r.Coefs, equal, r.Lower)
		default:
			if !noLower {
				f.add(r.Cols, r.Coefs, atLeast, r.Lower)
			}
			if !noUpper {
				f.add(r.Cols, r.Coefs, atMost, r.Upper)
			}
		}
	}
	for j, cost := range p.Cost {
		if cost != 0 {
			f.costCols, f.costs = append(f.costCols, int32(j+1)), append(f.costs, cost)
		}
		f.lower[j], f.upper[j] = math.Max(p.Lower[j], -infinite), math.Min(p.Upper[j], infinite)
	}
	return f
}

func (f *program) add(cols []int, coefs []float64, kind int32, side float64) {
	for _, j := range cols {
		f.cols = append(f.cols, int32(j+1))
	}
	f.coefs = append(f.coefs, coefs...)
	f.begin = append(f.begin, int32(len(f.cols)))
	f.kinds, f.sides = append(f.kinds, kind), append(f.sides, side)
}

// under adds a row that keeps the cost at or below a ceiling.
func (f *program) under(ceiling, accept float64) {
	f.cols, f.coefs = append(f.cols, f.costCols...), append(f.coefs, f.costs...)
	f.begin = append(f.begin, int32(len(f.cols)))
	f.kinds, f.sides = append(f.kinds, atMost), append(f.sides, ceiling)
	f.fine = accept - ceiling
}

// scale multiplies each row and the cost by a power of 2 that brings the geometric mean of its smallest and
// largest coefficient to about 1, and returns the factor of the cost. Powers of 2 change no digit. Columns are left
// alone: an integer stays one. A ceiling is kept so large that what matters in it stands out of the tolerances.
func (f *program) scale() float64 {
	for i := range f.kinds {
		row := f.coefs[f.begin[i]:f.begin[i+1]]
		by := factor(row)
		if i == len(f.kinds)-1 && f.fine > 0 {
			by = math.Max(by, math.Exp2(math.Ceil(math.Log2(standsOut/f.fine))))
		}
		if math.Abs(f.sides[i])*by < infinite/2 { // a large side must not come near infinity
			multiply(row, by)
			f.sides[i] *= by
		}
	}
	by := factor(f.costs)
	multiply(f.costs, by)
	return by
}

// standsOut is what a difference must be in a scaled row to be seen: a row may be off by up to the smallest pivot
// where no way is found to mend that.
const standsOut = 100 * smallestPivot

// factor returns the power of 2 by which to multiply coefficients.
func factor(coefs []float64) float64 {
	least, most := math.Inf(1), 0.0
	for _, c := range coefs {
		least, most = math.Min(least, math.Abs(c)), math.Max(most, math.Abs(c))
	}
	if most == 0 {
		return 1
	}
	return math.Exp2(-math.Round((math.Log2(least) + math.Log2(most)) / 2))
}

func multiply(coefs []float64, by float64) {
	for i := range coefs {
		coefs[i] *= by
	}
}

// check is the last gate before C, which trusts every index and number.
func (f *program) check() error {
	if err := f.ascending(f.costCols); err != nil {
		return err
	}
	for i := range f.kinds {
		if err := f.ascending(f.cols[f.begin[i]:f.begin[i+1]]); err != nil {
			return err
		}
	}
	for _, list := range [5][]float64{f.coefs, f.costs, f.sides, f.lower, f.upper} {
		for _, v := range list {
			if !(math.Abs(v) <= infinite) {
				return fmt.Errorf("lpsolve: a number of %v", v)
			}
		}
	}
	return nil
}

// ascending checks that columns are within range, once each and in order.
func (f *program) ascending(cols []int32) error {
	before := int32(0)
	for _, j := range cols {
		if j <= before || int(j) > len(f.lower) {
			return fmt.Errorf("lpsolve: column %d of %d after column %d", j, len(f.lower), before)
		}
		before = j
	}
	return nil
}
