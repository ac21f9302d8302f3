package milp

import (
	"fmt"
	"math"
	"slices"
)

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

// row is one constraint, its constant already moved to the right-hand side.
type row struct {
	name    string
	entries []entry
	rel     Rel
	rhs     float64 // as asked for, less moved
	moved   float64 // the expression's constant
}

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

// merge sums the coefficients of each variable, drops those that vanish and sorts by column.
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
	slices.SortFunc(kept, func(a, b entry) int { return a.col - b.col })
	return kept
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

// objectiveAt returns the objective at a point, in the model's own sense and with its constant.
func (m *Model) objectiveAt(values []float64) float64 {
	sum := m.objConst
	for _, e := range m.obj {
		sum += e.coef * values[e.col]
	}
	return sum
}

// sign is 1 when minimising, -1 when maximising.
func (m *Model) sign() float64 {
	if m.maximize {
		return -1
	}
	return 1
}

// off returns by how much a left-hand side is off what the row asks, 0 or less where it keeps it.
func (r *row) off(lhs float64) float64 {
	switch r.rel {
	case AtMost:
		return lhs - r.rhs
	case AtLeast:
		return r.rhs - lhs
	}
	return math.Abs(lhs - r.rhs)
}
