package milp

import (
	"fmt"
	"math"
)

// program is a model in the engine's shape: to be minimised, rows flattened, columns counted from 1.
type program struct {
	begin   []int32 // where each row starts in colno and coef; one more at the end
	colno   []int32
	coef    []float64
	kind    []int32 // by row, as the engine's header numbers them: 1 at most, 2 at least, 3 equal
	rhs     []float64
	objcol  []int32
	objcoef []float64
	lo, hi  []float64
	isint   []uint8
	fine    float64 // where the last row is a limit of the objective: the difference that matters in it; else 0
}

// flatten returns the model in the engine's shape, one row short of full, for a cutoff. Rows without
// terms are left out; holds says whether they hold.
func (m *Model) flatten(relax bool) (p *program, holds bool) {
	n := len(m.obj)
	for i := range m.rows {
		n += len(m.rows[i].entries)
	}
	p = &program{
		begin: make([]int32, 1, len(m.rows)+2),
		colno: make([]int32, 0, n), coef: make([]float64, 0, n),
		kind: make([]int32, 0, len(m.rows)+1), rhs: make([]float64, 0, len(m.rows)+1),
		objcol: make([]int32, 0, len(m.obj)), objcoef: make([]float64, 0, len(m.obj)),
		lo: make([]float64, len(m.cols)), hi: make([]float64, len(m.cols)), isint: make([]uint8, len(m.cols)),
	}
	holds = true
	for i := range m.rows {
		r := &m.rows[i]
		if len(r.entries) == 0 {
			holds = holds && r.off(0) <= feasTol*math.Max(1, math.Abs(r.rhs))
			continue
		}
		p.addRow(r.entries, 1, int32(r.rel), r.rhs)
	}
	sign := m.sign()
	for _, e := range m.obj {
		p.objcol = append(p.objcol, int32(e.col+1))
		p.objcoef = append(p.objcoef, sign*e.coef)
	}
	for j, c := range m.cols {
		p.lo[j] = math.Max(c.lo, -engineInfinity)
		p.hi[j] = math.Min(c.hi, engineInfinity)
		if c.integer && !relax {
			p.isint[j] = 1
		}
	}
	return p, holds
}

// addRow appends a row, its coefficients times sign.
func (p *program) addRow(entries []entry, sign float64, kind int32, rhs float64) {
	for _, e := range entries {
		p.colno = append(p.colno, int32(e.col+1))
		p.coef = append(p.coef, sign*e.coef)
	}
	p.begin = append(p.begin, int32(len(p.colno)))
	p.kind = append(p.kind, kind)
	p.rhs = append(p.rhs, rhs)
}

// check is the last gate before C, which trusts every index and length.
func (p *program) check() error {
	cols, rows := len(p.lo), len(p.kind)
	if len(p.hi) != cols || len(p.isint) != cols || len(p.begin) != rows+1 || len(p.rhs) != rows ||
		len(p.coef) != len(p.colno) || len(p.objcoef) != len(p.objcol) ||
		p.begin[0] != 0 || int(p.begin[rows]) != len(p.colno) {
		return fmt.Errorf("milp: internal: lengths of the flattened model disagree")
	}
	for i, k := range p.kind {
		if k < int32(AtMost) || k > int32(Equal) || p.begin[i] > p.begin[i+1] {
			return fmt.Errorf("milp: internal: row %d is of kind %d", i, k)
		}
		if err := ascending(p.colno[p.begin[i]:p.begin[i+1]], cols); err != nil {
			return err
		}
	}
	if err := ascending(p.objcol, cols); err != nil {
		return err
	}
	for _, list := range [5][]float64{p.coef, p.objcoef, p.rhs, p.lo, p.hi} {
		for _, v := range list {
			if !(math.Abs(v) <= engineInfinity) {
				return fmt.Errorf("milp: internal: a number of %v", v)
			}
		}
	}
	return nil
}

// ascending checks that columns are within range, once each and in order. An index out of range makes the
// engine write where it must not; of columns that come twice it keeps the last.
func ascending(list []int32, cols int) error {
	before := int32(0)
	for _, c := range list {
		if c <= before || int(c) > cols {
			return fmt.Errorf("milp: internal: column %d of %d after column %d", c, cols, before)
		}
		before = c
	}
	return nil
}

// finite returns a number of the engine's, NaN where it stands for infinity.
func finite(v float64) float64 {
	if math.Abs(v) >= engineInfinity {
		return math.NaN()
	}
	return v
}
