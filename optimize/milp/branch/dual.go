package branch

import "math"

// ending is how a simplex ended.
type ending int

const (
	solved    ending = iota // at the optimum
	exceeded                // the cost is above the ceiling for certain
	empty                   // nothing keeps rows and bounds: the row that shows it is tableau.shows
	limitless               // the cost falls for ever
	stuck                   // given up for rounding, or too long
	halted                  // as many pivots as were asked for
)

// stall is after how many pivots without a gain, for each row, the rule changes to the first index, which
// cannot cycle.
const stall = 3

// dual makes the basic variables keep their bounds while the reduced costs stay right, after Lemke, with the
// ratio test that lets boxed variables change sides (Maros 2003). It ends early once the cost exceeds a ceiling.
func (t *tableau) dual(ceiling float64, most int) (ending, int) {
	best, idle := math.Inf(-1), 0
	barred := -1
	for count := 0; ; count++ {
		if t.pivots >= mostPivots {
			t.renew()
		}
		at := t.cost()
		if at > ceiling {
			return exceeded, -1
		}
		if at > best+1e-12*max(1, math.Abs(best)) {
			best, idle = at, 0
		} else {
			idle++
		}
		bland := idle > stall*t.rows+50
		r, short := t.leaving(bland, barred)
		switch {
		case r < 0 && barred < 0:
			if t.drifted() {
				continue
			}
			return solved, -1
		case r < 0, count > 50*(t.rows+t.n)+1000:
			return stuck, -1
		case count >= most:
			return halted, -1
		}
		q := t.entering(r, short, bland)
		if q < 0 {
			if t.pivots > 0 && t.error() > feasible {
				t.renew()
				continue
			}
			return empty, r
		}
		if size := math.Abs(t.row(r)[q]); size < goodPivot {
			if t.pivots > 0 {
				t.renew()
				continue
			}
			if size < leastPivot {
				barred = r
				continue
			}
		}
		barred = -1
		t.step(r, q, short)
	}
}

// renew makes the table afresh, reduced costs and point included.
func (t *tableau) renew() {
	t.refresh()
	t.settle()
	t.compute()
}

// drifted mends a point that small moves have taken off the rows, and reports whether it was.
func (t *tableau) drifted() bool {
	if t.error() <= feasible {
		return false
	}
	if t.compute(); t.error() <= feasible {
		return true
	}
	if t.pivots == 0 {
		return false
	}
	t.renew()
	return true
}

// leaving chooses the basic variable that is farthest beyond a bound, by the weights; short is by how much it
// has to rise, negative where it has to fall.
func (t *tableau) leaving(bland bool, barred int) (r int, short float64) {
	r = -1
	most := 0.0
	for i, v := range t.basic {
		off := 0.0
		x := t.x[v]
		if lo := t.lo[v]; x < lo-feasible && x < lo-feasible*math.Abs(lo) {
			off = lo - x
		} else if hi := t.hi[v]; x > hi+feasible && x > hi+feasible*math.Abs(hi) {
			off = hi - x
		} else {
			continue
		}
		if i == barred {
			continue
		}
		score := off * off / t.weight[i]
		if bland {
			score = 1 / float64(v+1)
		}
		if score > most {
			most, r, short = score, i, off
		}
	}
	t.work += int64(t.rows)
	return r, short
}

// step lets row r leave at the bound that it was beyond, and column q enter.
func (t *tableau) step(r, q int, short float64) {
	v := t.basic[r]
	to := t.lo[v]
	if short < 0 {
		to = t.hi[v]
	}
	pivot := t.row(r)[q]
	t.shift(q, t.x[t.others[q]]+(to-t.x[v])/pivot)
	t.x[v] = to
	t.reweigh(r, q, pivot)
	t.pivot(r, q)
	// What the tolerance let pass goes to the side that its reduced cost now asks for.
	for _, j := range t.nonzero {
		t.mend(j)
	}
	t.mend(q)
}

// mend puts the variable of a column to the bound that its reduced cost asks for.
func (t *tableau) mend(j int) {
	if math.Abs(t.d[j]) > optimal {
		t.shift(j, t.side(j))
	}
}

// heaviest is where weights start again at 1: they are estimates, and would grow for ever.
const heaviest = 1e7

// reweigh updates the weights before row r and column q are exchanged.
func (t *tableau) reweigh(r, q int, pivot float64) {
	own, most := t.weight[r], 0.0
	for i := range t.weight {
		if a := t.a[i*t.n+q]; a != 0 && i != r {
			f := a / pivot
			t.weight[i] = max(t.weight[i], f*f*own)
			most = max(most, t.weight[i])
		}
	}
	t.weight[r] = max(own/(pivot*pivot), 1)
	if max(most, t.weight[r]) > heaviest {
		for i := range t.weight {
			t.weight[i] = 1
		}
	}
}
