package milp

import (
	"io"

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
	f := &mps.File{Name: m.name, Program: *m.program(false), Names: m.fileNames()}
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
