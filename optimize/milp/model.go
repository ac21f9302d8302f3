package milp

import (
	"errors"
	"fmt"
	"math"
)

// Model is a linear program with named variables and rows, some of the variables integers. Build it by
// one goroutine; once built, several goroutines may Solve it at the same time.
//
// Building goes on after an error: the first one is kept and returned by Err, Solve and WriteMPS.
type Model struct {
	name     string
	cols     []column
	rows     []row
	obj      []entry // merged, no zeros, by column
	objConst float64
	maximize bool
	taken    map[string]bool // names of variables and rows, each with its kind in front
	seen     []int           // scratch of merge: 1 + place in the merged list, by column
	err      error
}

// column is one variable. An integer's bounds are whole numbers or infinite.
type column struct {
	name    string
	lo, hi  float64
	integer bool
}

// entry is a coefficient at a column.
type entry struct {
	col  int
	coef float64
}

// Var is a handle to a variable of one model. The zero Var belongs to no model.
type Var struct {
	m   *Model
	col int
}

// LargestCoefficient bounds the size of every coefficient, right-hand side and finite bound. lp_solve
// takes 1e30 for infinity; numbers close to it, or sums of them, would turn into infinity unnoticed.
const LargestCoefficient = 1e15

// roundBound is how far a bound of an integer variable may stand beyond a whole number and still be taken
// for it: 2.9999999999 modules, computed from a sum, are three modules.
const roundBound = 1e-9

// New returns an empty model, to be minimised with objective 0. The name is only written to files.
func New(name string) *Model {
	return &Model{name: name, taken: map[string]bool{}}
}

// Name returns the name the model was made with.
func (m *Model) Name() string { return m.name }

// Size returns the number of variables and of rows.
func (m *Model) Size() (vars, rows int) { return len(m.cols), len(m.rows) }

// Entries returns the number of coefficients in the rows.
func (m *Model) Entries() int {
	n := 0
	for i := range m.rows {
		n += len(m.rows[i].entries)
	}
	return n
}

// Err returns the first error made in building the model, or nil.
func (m *Model) Err() error { return m.err }

// fail keeps the first error.
func (m *Model) fail(format string, args ...any) {
	if m.err == nil {
		m.err = errors.New("milp: " + fmt.Sprintf(format, args...))
	}
}

// Continuous adds a variable that takes any value from lo to hi; -Inf and +Inf mean no bound.
func (m *Model) Continuous(name string, lo, hi float64) Var { return m.add(name, lo, hi, false) }

// Integer adds a variable that takes the whole numbers from lo to hi; -Inf and +Inf mean no bound.
func (m *Model) Integer(name string, lo, hi float64) Var { return m.add(name, lo, hi, true) }

// Binary adds a variable that is 0 or 1.
func (m *Model) Binary(name string) Var { return m.add(name, 0, 1, true) }

func (m *Model) add(name string, lo, hi float64, integer bool) Var {
	m.claim("v", "variable", name)
	lo, hi = m.bounds(name, lo, hi, integer)
	m.cols = append(m.cols, column{name: name, lo: lo, hi: hi, integer: integer})
	m.seen = append(m.seen, 0)
	return Var{m: m, col: len(m.cols) - 1}
}

// claim notes a name and refuses an empty or repeated one.
func (m *Model) claim(prefix, kind, name string) {
	if name == "" {
		m.fail("a %s without a name", kind)
	}
	key := prefix + name
	if m.taken[key] {
		m.fail("two %ss are named %q", kind, name)
	}
	m.taken[key] = true
}

// bounds checks a pair of bounds and, for an integer, moves them to whole numbers.
func (m *Model) bounds(name string, lo, hi float64, integer bool) (float64, float64) {
	switch {
	case math.IsNaN(lo) || math.IsNaN(hi):
		m.fail("variable %q: a bound is not a number", name)
	case math.IsInf(lo, 1) || math.IsInf(hi, -1):
		m.fail("variable %q: bounds %v to %v leave no value", name, lo, hi)
	case tooLarge(lo) || tooLarge(hi):
		m.fail("variable %q: bounds %v to %v; finite ones are at most %g", name, lo, hi, LargestCoefficient)
	}
	if integer {
		lo, hi = math.Ceil(lo-roundBound), math.Floor(hi+roundBound)
	}
	if lo > hi {
		m.fail("variable %q: lower bound %v above upper bound %v", name, lo, hi)
	}
	return lo + 0, hi + 0 // + 0 turns the negative zero of Ceil(-0.3) into 0
}

// tooLarge reports whether a finite number is out of the range that engines are trusted with.
func tooLarge(v float64) bool { return math.Abs(v) > LargestCoefficient && !math.IsInf(v, 0) }

// SetBounds replaces the bounds of a variable.
func (m *Model) SetBounds(v Var, lo, hi float64) {
	if v.m != m {
		m.fail("SetBounds: a variable of another model")
		return
	}
	c := &m.cols[v.col]
	c.lo, c.hi = m.bounds(c.name, lo, hi, c.integer)
}

// Bounds returns the bounds of a variable, those of an integer moved to whole numbers.
func (m *Model) Bounds(v Var) (lo, hi float64) {
	c := m.cols[m.index(v)]
	return c.lo, c.hi
}

// index returns the column of a handle and panics on a handle of another model: where no error can be
// returned, a wrong number would be worse.
func (m *Model) index(v Var) int {
	if v.m != m {
		panic("milp: a variable of another model")
	}
	return v.col
}
