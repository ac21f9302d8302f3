package milp

import (
	"math"

	"cartwright/optimize/milp/proof"
)

// program returns the model as engines and the checker take it: to be minimised, without its constant. Columns and
// rows stand in the model's order.
func (m *Model) program(relax bool) *proof.Program {
	n := len(m.cols)
	p := &proof.Program{Cost: make([]float64, n), Lower: make([]float64, n), Upper: make([]float64, n),
		Integer: make([]bool, n), Rows: make([]proof.Row, len(m.rows))}
	for j, c := range m.cols {
		p.Lower[j], p.Upper[j], p.Integer[j] = c.lo, c.hi, c.integer && !relax
	}
	for _, e := range m.obj {
		p.Cost[e.col] = m.sign() * e.coef
	}
	for i := range m.rows {
		p.Rows[i] = m.rows[i].flat()
	}
	return p
}

// flat returns the row with its two sides.
func (r *row) flat() proof.Row {
	f := proof.Row{Cols: make([]int, len(r.entries)), Coefs: make([]float64, len(r.entries)), Lower: r.rhs, Upper: r.rhs}
	switch r.rel {
	case AtMost:
		f.Lower = math.Inf(-1)
	case AtLeast:
		f.Upper = math.Inf(1)
	}
	for k, e := range r.entries {
		f.Cols[k], f.Coefs[k] = e.col, e.coef
	}
	return f
}

// whole returns a program of which all integers are fixed at the whole numbers nearest to a point.
func whole(p *proof.Program, at []float64) *proof.Program {
	q := *p
	q.Lower, q.Upper = append([]float64(nil), p.Lower...), append([]float64(nil), p.Upper...)
	for j, is := range p.Integer {
		if is {
			x := math.Max(p.Lower[j], math.Min(math.Round(at[j]), p.Upper[j]))
			q.Lower[j], q.Upper[j] = x, x
		}
	}
	return &q
}

// free returns a program without its costs: any point is as good as any other.
func free(p *proof.Program) *proof.Program {
	q := *p
	q.Cost = make([]float64, len(p.Cost))
	return &q
}
