package milp

import (
	"fmt"
	"math"
	"unsafe"
)

// program is a model in the engine's shape: to be minimised, rows flattened, columns counted from 1.
type program struct {
	begin   []int32 // where each row starts in colno and coef; one more at the end
	colno   []int32
	coef    []float64
	kind    []int32 // 1: at most, 2: at least, 3: equal
	rhs     []float64
	objcol  []int32
	objcoef []float64
	lo, hi  []float64
	isint   []uint8
}

// engineRel is how the engine's header numbers the relations.
var engineRel = map[Rel]int32{AtMost: 1, AtLeast: 2, Equal: 3}

// program flattens the model. Rows without terms are left out: empty says whether they hold.
func (m *Model) program() (p *program, empty bool) {
	n := 0
	for i := range m.rows {
		n += len(m.rows[i].entries)
	}
	p = &program{
		begin: make([]int32, 1, len(m.rows)+2),
		colno: make([]int32, 0, n+len(m.obj)), coef: make([]float64, 0, n+len(m.obj)),
		kind: make([]int32, 0, len(m.rows)+1), rhs: make([]float64, 0, len(m.rows)+1),
		lo: make([]float64, len(m.cols)), hi: make([]float64, len(m.cols)), isint: make([]uint8, len(m.cols)),
	}
	empty = true
	for i := range m.rows {
		r := &m.rows[i]
		if len(r.entries) == 0 {
			empty = empty && r.holdsEmpty()
			continue
		}
		p.addRow(r.entries, 1, r.rel, r.rhs)
	}
	sign := 1.0
	if m.maximize {
		sign = -1
	}
	for _, e := range m.obj {
		p.objcol = append(p.objcol, int32(e.col+1))
		p.objcoef = append(p.objcoef, sign*e.coef)
	}
	for j, c := range m.cols {
		p.lo[j], p.hi[j] = toEngine(c.lo), toEngine(c.hi)
		if c.integer {
			p.isint[j] = 1
		}
	}
	return p, empty
}

// holdsEmpty reports whether 0 stands to the right-hand side as the row asks.
func (r *row) holdsEmpty() bool {
	slack := feasTol * math.Max(1, math.Abs(r.rhs))
	switch r.rel {
	case AtMost:
		return r.rhs >= -slack
	case AtLeast:
		return r.rhs <= slack
	}
	return math.Abs(r.rhs) <= slack
}

// addRow appends a row, its coefficients times sign.
func (p *program) addRow(entries []entry, sign float64, rel Rel, rhs float64) {
	for _, e := range entries {
		p.colno = append(p.colno, int32(e.col+1))
		p.coef = append(p.coef, sign*e.coef)
	}
	p.begin = append(p.begin, int32(len(p.colno)))
	p.kind = append(p.kind, engineRel[rel])
	p.rhs = append(p.rhs, rhs)
}

// check is the last gate before C, which trusts every index and length.
func (p *program) check() error {
	cols := int32(len(p.lo))
	if len(p.hi) != len(p.lo) || len(p.isint) != len(p.lo) || len(p.begin) != len(p.kind)+1 ||
		len(p.rhs) != len(p.kind) || len(p.coef) != len(p.colno) || len(p.objcoef) != len(p.objcol) ||
		p.begin[len(p.begin)-1] != int32(len(p.colno)) {
		return fmt.Errorf("milp: internal: lengths of the flattened model disagree")
	}
	for _, list := range [2][]int32{p.colno, p.objcol} {
		for _, c := range list {
			if c < 1 || c > cols {
				return fmt.Errorf("milp: internal: column %d of %d", c, cols)
			}
		}
	}
	for _, list := range [5][]float64{p.coef, p.objcoef, p.rhs, p.lo, p.hi} {
		for _, v := range list {
			if math.IsNaN(v) || math.Abs(v) > engineInfinity {
				return fmt.Errorf("milp: internal: number %v", v)
			}
		}
	}
	return nil
}

// first returns the address of a slice's first element, nil for an empty one.
func first[T any](s []T) *T { return unsafe.SliceData(s) }

func unsafePointer[T any](p *T) unsafe.Pointer { return unsafe.Pointer(p) }
