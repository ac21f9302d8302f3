package milp

import (
	"errors"
	"fmt"
	"math"
)

// Model is a linear program with named variables and rows, some of the variables integers. Build it by
// one goroutine; once built, several goroutines may Solve it at the same time.
//
// Building never stops in mid-sentence: the first error is kept and returned by Err, Solve and WriteMPS.
type Model struct {
	name     string
	cols     []column
	rows     []row
	obj      []entry // merged, no zeros, in order of first use
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

// row is one constraint, its constant already moved to the right-hand side.
type row struct {
	name    string
	entries []entry
	rel     Rel
	rhs     float64 // as asked for, less moved
	moved   float64 // the expression's constant
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

// Row is a handle to a row of one model. The zero Row belongs to no model.
type Row struct {
	m   *Model
	row int
}

// Rel says how a row's left-hand side stands to its right-hand side.
type Rel int

// The three relations.
const (
	AtMost  Rel = iota + 1 // <=
	AtLeast                // >=
	Equal                  // =
)

// String returns "<=", ">=" or "=".
func (r Rel) String() string {
	switch r {
	case AtMost:
		return "<="
	case AtLeast:
		return ">="
	case Equal:
		return "="
	}
	return fmt.Sprintf("Rel(%d)", int(r))
}

// LargestCoefficient bounds the size of every coefficient, right-hand side and finite bound. The engine
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

// tooLarge reports whether a finite number is out of the range the engine is trusted with.
func tooLarge(v float64) bool { return math.Abs(v) > LargestCoefficient && !math.IsInf(v, 0) }

// Row adds the constraint "e rel rhs" and returns its handle. A constant in e is moved to the right.
func (m *Model) Row(name string, e Expr, rel Rel, rhs float64) Row {
	m.claim("r", "row", name)
	if rel != AtMost && rel != AtLeast && rel != Equal {
		m.fail("row %q: unknown relation %d", name, int(rel))
	}
	m.checkNumber("row", name, "right-hand side", rhs)
	m.checkNumber("row", name, "constant", e.constant)
	m.rows = append(m.rows, row{name: name, entries: m.merge("row", name, e), rel: rel,
		rhs: rhs - e.constant, moved: e.constant})
	return Row{m: m, row: len(m.rows) - 1}
}

// Minimize makes e the objective, to be made least. The last call of Minimize or Maximize counts.
func (m *Model) Minimize(e Expr) { m.objective(e, false) }

// Maximize makes e the objective, to be made greatest. The last call of Minimize or Maximize counts.
func (m *Model) Maximize(e Expr) { m.objective(e, true) }

func (m *Model) objective(e Expr, maximize bool) {
	m.checkNumber("objective of", m.name, "constant", e.constant)
	m.obj, m.objConst, m.maximize = m.merge("objective of", m.name, e), e.constant, maximize
}

func (m *Model) checkNumber(kind, name, what string, v float64) {
	if math.IsNaN(v) || math.IsInf(v, 0) || tooLarge(v) {
		m.fail("%s %q: %s %v; want a number of at most %g", kind, name, what, v, LargestCoefficient)
	}
}

// merge sums the coefficients of each variable, in order of first use, and drops those that vanish.
func (m *Model) merge(kind, name string, e Expr) []entry {
	merged := make([]entry, 0, len(e.terms))
	for _, t := range e.terms {
		if t.v.m != m {
			m.fail("%s %q: a variable of another model", kind, name)
			continue
		}
		if at := m.seen[t.v.col]; at > 0 {
			merged[at-1].coef += t.coef
			continue
		}
		merged = append(merged, entry{col: t.v.col, coef: t.coef})
		m.seen[t.v.col] = len(merged)
	}
	kept := merged[:0]
	for _, x := range merged {
		m.seen[x.col] = 0
		if math.IsNaN(x.coef) || math.IsInf(x.coef, 0) || tooLarge(x.coef) {
			m.fail("%s %q: coefficient %v of %q; want a number of at most %g", kind, name, x.coef,
				m.cols[x.col].name, LargestCoefficient)
		}
		if x.coef != 0 {
			kept = append(kept, x)
		}
	}
	return kept
}

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

// SetRHS replaces the right-hand side of a row; a constant of its expression stays counted.
func (m *Model) SetRHS(r Row, rhs float64) {
	if r.m != m {
		m.fail("SetRHS: a row of another model")
		return
	}
	m.checkNumber("row", m.rows[r.row].name, "right-hand side", rhs)
	m.rows[r.row].rhs = rhs - m.rows[r.row].moved
}

// index returns the column of a handle and panics on a handle of another model: where no error can be
// returned, a wrong number would be worse.
func (m *Model) index(v Var) int {
	if v.m != m {
		panic("milp: a variable of another model")
	}
	return v.col
}
