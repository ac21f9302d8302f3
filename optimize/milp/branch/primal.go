package branch

import "math"

// optimise solves the program from whatever basis the table is at. It ends early once the cost is above a
// ceiling for certain.
func (t *tableau) optimise(ceiling float64) (ending, int) {
	for range mostRounds {
		if t.shifted {
			t.unshift()
		}
		t.settle()
		top := ceiling
		if t.shifted { // what falls without limit is left out until there is a point
			top = math.Inf(1)
		}
		if end, row := t.dual(top, math.MaxInt); end != solved || !t.shifted {
			return end, row
		}
		t.unshift()
		if end := t.primal(); end != solved {
			return end, -1
		}
	}
	return stuck, -1
}

// mostRounds is how often optimise goes from the dual to the primal simplex and back before it gives up.
const mostRounds = 5

// primal lowers the cost from a point that keeps its bounds until no column does.
func (t *tableau) primal() ending {
	best, idle := math.Inf(1), 0
	for range 50*(t.rows+t.n) + 1000 {
		if t.pivots >= mostPivots {
			t.refresh()
			t.compute()
		}
		at := t.cost()
		if at < best-1e-12*max(1, math.Abs(best)) {
			best, idle = at, 0
		} else {
			idle++
		}
		bland := idle > stall*t.rows+50
		q := t.cheapest(bland)
		if q < 0 {
			return solved
		}
		if !t.descend(q, bland) {
			return limitless
		}
	}
	return stuck
}

// cheapest chooses the column whose reduced cost promises most, -1 where none does.
func (t *tableau) cheapest(bland bool) int {
	q, most := -1, 0.0
	for j, v := range t.others {
		lo, hi, d := t.lo[v], t.hi[v], t.d[j]
		if lo == hi || math.Abs(d) <= optimal || d > 0 && t.x[v] <= lo || d < 0 && t.x[v] >= hi {
			continue
		}
		score := math.Abs(d)
		if bland {
			score = 1 / float64(v+1)
		}
		if score > most {
			q, most = j, score
		}
	}
	t.work += int64(t.n)
	return q
}

// descend moves the variable of column q until a bound stops it, and reports false where none does.
func (t *tableau) descend(q int, bland bool) bool {
	v := t.others[q]
	up := 1.0
	if t.d[q] > 0 {
		up = -1
	}
	// The bound of a basic variable may be passed by the tolerance; of those then in reach the largest pivot.
	reach := math.Inf(1)
	for i := range t.basic {
		if step, slope := t.room(i, q, up); slope > leastPivot {
			reach = min(reach, step+feasible/slope)
		}
	}
	r, size, exact := -1, 0.0, 0.0
	for i, b := range t.basic {
		step, slope := t.room(i, q, up)
		if slope <= leastPivot || step > reach {
			continue
		}
		if r < 0 || !bland && slope > size || bland && b < t.basic[r] {
			r, size, exact = i, slope, step
		}
	}
	if own := t.hi[v] - t.lo[v]; own <= exact || r < 0 {
		if math.IsInf(own, 0) {
			return false
		}
		to := t.hi[v]
		if up < 0 {
			to = t.lo[v]
		}
		t.shift(q, to)
		return true
	}
	leaves := t.basic[r]
	to := t.hi[leaves]
	if up*t.row(r)[q] < 0 {
		to = t.lo[leaves]
	}
	t.shift(q, t.x[v]+up*max(0, exact))
	t.x[leaves] = to
	t.pivot(r, q)
	t.work += int64(2 * t.rows)
	return true
}

// room returns how far the variable of column q can go until the basic one of row i meets a bound, and how fast
// the latter goes there.
func (t *tableau) room(i, q int, up float64) (step, slope float64) {
	b := t.basic[i]
	rate := up * t.a[i*t.n+q]
	if rate > 0 {
		return (t.hi[b] - t.x[b]) / rate, rate
	}
	if rate < 0 {
		return (t.lo[b] - t.x[b]) / rate, -rate
	}
	return math.Inf(1), 0
}
