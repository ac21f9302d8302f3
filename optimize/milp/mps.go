package milp

import (
	"io"
	"math"

	"cartwright/optimize/milp/mps"
	"cartwright/optimize/milp/proof"
)

// WriteMPS writes the model in free MPS, as package mps describes it. To maximise is written as to minimise the
// negated objective, which a comment tells. Names are made fit by mps.UniqueNames.
func (m *Model) WriteMPS(w io.Writer) error {
	if m.err != nil {
		return m.err
	}
	return mps.Write(w, m.file())
}

// file returns the model with the names it has in a file.
func (m *Model) file() *mps.File {
	f := &mps.File{Name: m.name, Program: m.exact(), Names: m.fileNames()}
	if m.maximize {
		f.Comments = []string{"maximise: the objective is written negated, to be minimised"}
	}
	if m.objConst != 0 {
		p := &f.Program
		p.Cost, p.Integer = append(p.Cost, m.sign()*m.objConst), append(p.Integer, false)
		p.Lower, p.Upper = append(p.Lower, 1), append(p.Upper, 1)
		f.Columns = append(f.Columns, mps.Constant)
	}
	return f
}

func (m *Model) fileNames() proof.Names {
	return proof.Names{
		Columns: mps.UniqueNames(len(m.cols), mps.Constant, func(j int) string { return m.cols[j].name }),
		Rows:    mps.UniqueNames(len(m.rows), mps.Objective, func(i int) string { return m.rows[i].name }),
	}
}

// exact returns the model as certificates speak of it: to be minimised, without the objective's constant.
func (m *Model) exact() proof.Program {
	n := len(m.cols)
	p := proof.Program{Cost: make([]float64, n), Lower: make([]float64, n), Upper: make([]float64, n),
		Integer: make([]bool, n), Rows: make([]proof.Row, len(m.rows))}
	for _, e := range m.obj {
		p.Cost[e.col] = m.sign() * e.coef
	}
	for j, c := range m.cols {
		p.Lower[j], p.Upper[j], p.Integer[j] = c.lo, c.hi, c.integer
	}
	for i := range m.rows {
		r := &m.rows[i]
		to := proof.Row{Lower: r.rhs, Upper: r.rhs, Cols: make([]int, len(r.entries)), Coefs: make([]float64, len(r.entries))}
		switch r.rel {
		case AtMost:
			to.Lower = math.Inf(-1)
		case AtLeast:
			to.Upper = math.Inf(1)
		}
		for k, e := range r.entries {
			to.Cols[k], to.Coefs[k] = e.col, e.coef
		}
		p.Rows[i] = to
	}
	return p
}
