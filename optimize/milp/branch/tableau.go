package branch

import "math"

// tableau is a linear program at a basis. Variables are the columns 0..n-1 and, after them, one for each row:
// the row's left-hand side. As many variables as there are rows are basic, each written as a sum over the
// others:
//
//	x[basic[i]] = sum_j at(i, j) x[others[j]]     cost = sum_j d[j] x[others[j]]
//
// Of the variables that are not basic, each stands at one of its bounds. All of the table is kept, and exchanged
// at each pivot: for some dozens of rows and columns that is faster than a factorised basis, and every figure
// that branching asks for can be read from it.
type tableau struct {
	p         *program
	rows, n   int
	a         []float64 // row by row
	d         []float64
	prices    []float64 // cost by variable, the rows' included: as the program has them, or shifted
	shifted   bool
	basic     []int     // by row of the table
	others    []int     // by column of the table
	place     []int     // by variable: its row where it is basic, else -1 - its column
	lo, hi    []float64 // by variable
	x         []float64 // by variable
	weight    []float64 // by row: how far it reaches, by the rule of Devex
	exchanged int       // pivots in all
	pivots    int       // since the table was made from the program
	work      int64     // numbers touched
	nonzero   []int     // scratch of pivot
	ratios    []ratio   // scratch of entering
	moves     []move    // scratch of settle
}

// Tolerances of the simplex, in scaled rows.
const (
	feasible   = 1e-9  // how far a variable may be beyond a bound; guards against chasing rounding
	optimal    = 1e-9  // how far a reduced cost may be on the wrong side, likewise
	vanishing  = 1e-12 // what is taken for 0 in a row that is exchanged: left over where terms cancel
	leastPivot = 1e-9  // what no basis is changed on: the table would be rounding only
	goodPivot  = 1e-6  // below it the table is made afresh first, to see whether it is as small as it seems
	mostPivots = 400   // between two fresh tables
)

// newTableau starts with the rows' variables as the basis.
func newTableau(p *program) *tableau {
	rows, n := len(p.begin)-1, len(p.cost)
	t := &tableau{p: p, rows: rows, n: n,
		a: make([]float64, rows*n), d: make([]float64, n), prices: make([]float64, n+rows),
		basic: make([]int, rows), others: make([]int, n), place: make([]int, n+rows),
		lo: make([]float64, n+rows), hi: make([]float64, n+rows), x: make([]float64, n+rows),
		weight: make([]float64, rows),
	}
	copy(t.lo, p.lo)
	copy(t.hi, p.hi)
	copy(t.prices, p.cost)
	t.fill()
	t.price()
	t.settle()
	t.compute()
	return t
}

// fill writes the program into the table, at the basis of the rows' variables.
func (t *tableau) fill() {
	clear(t.a)
	for i := range t.rows {
		row := t.row(i)
		for k := t.p.begin[i]; k < t.p.begin[i+1]; k++ {
			row[t.p.col[k]] = t.p.coef[k]
		}
		t.basic[i], t.place[t.n+i], t.weight[i] = t.n+i, i, 1
	}
	for j := range t.n {
		t.others[j], t.place[j] = j, -1-j
	}
	t.pivots = 0
	t.work += int64(len(t.a))
}

// row returns a row of the table.
func (t *tableau) row(i int) []float64 { return t.a[i*t.n : (i+1)*t.n : (i+1)*t.n] }

// pivot exchanges the basic variable of row r with the variable of column q.
func (t *tableau) pivot(r, q int) {
	row := t.row(r)
	over := 1 / row[q]
	t.nonzero = t.nonzero[:0]
	for j, v := range row {
		switch {
		case j == q:
		case math.Abs(v) <= vanishing:
			row[j] = 0
		default:
			row[j] = -v * over
			t.nonzero = append(t.nonzero, j)
		}
	}
	row[q] = over
	exchanged := 1
	for i := range t.rows {
		if i == r {
			continue
		}
		if other := t.row(i); other[q] != 0 {
			t.exchange(other, row, q)
			exchanged++
		}
	}
	t.exchange(t.d, row, q)
	leaves, enters := t.basic[r], t.others[q]
	t.basic[r], t.others[q] = enters, leaves
	t.place[enters], t.place[leaves] = r, -1-q
	t.pivots++
	t.exchanged++
	t.work += int64(exchanged*len(t.nonzero) + t.rows + t.n)
}

// exchange puts the new row of the entering variable into another one.
func (t *tableau) exchange(other, row []float64, q int) {
	f := other[q]
	if math.Abs(f) <= vanishing {
		other[q] = 0
		return
	}
	for _, j := range t.nonzero {
		other[j] += f * row[j]
	}
	other[q] = f * row[q]
}

// price computes the reduced costs.
func (t *tableau) price() {
	for j, v := range t.others {
		t.d[j] = t.prices[v]
	}
	for i, v := range t.basic {
		if c := t.prices[v]; c != 0 {
			for j, a := range t.row(i) {
				t.d[j] += c * a
			}
		}
	}
	t.work += int64(len(t.a))
}

// unshift goes back to the costs of the program.
func (t *tableau) unshift() {
	clear(t.prices)
	copy(t.prices, t.p.cost)
	t.shifted = false
	t.price()
}

// cost returns the cost of the point, as the reduced costs count it: a lower bound while they are of right sign.
func (t *tableau) cost() float64 {
	sum := 0.0
	for j, v := range t.others {
		if t.d[j] != 0 {
			sum += t.d[j] * t.x[v]
		}
	}
	return sum
}

// error returns by how much the rows' variables differ from the rows at the point, relative to their terms.
func (t *tableau) error() float64 {
	worst := 0.0
	for i := range t.rows {
		sum, scale := 0.0, 1.0
		for k := t.p.begin[i]; k < t.p.begin[i+1]; k++ {
			term := t.p.coef[k] * t.x[t.p.col[k]]
			sum += term
			scale = max(scale, math.Abs(term))
		}
		worst = max(worst, math.Abs(sum-t.x[t.n+i])/scale)
	}
	t.work += int64(len(t.p.coef))
	return worst
}
