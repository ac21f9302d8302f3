package branch

import (
	"math"
	"slices"
)

// ratio is a column that can make up for a basic variable: how far the reduced costs can go until its own
// changes sign, and how fast it goes there.
type ratio struct {
	column     int
	at, within float64 // |d| / size, and the same with the tolerance added to d
	size       float64
}

// entering chooses the column that takes the place of row r, -1 where all of them together cannot make up for
// what is short. Those passed on the way change sides.
func (t *tableau) entering(r int, short float64, bland bool) int {
	sign := 1.0
	if short < 0 {
		sign = -1
	}
	list := t.ratios[:0]
	for j, a := range t.row(r) {
		if math.Abs(a) <= leastPivot {
			continue
		}
		v := t.others[j]
		lo, hi := t.lo[v], t.hi[v]
		if lo == hi {
			continue
		}
		size := sign * a
		free := math.IsInf(lo, 0) && math.IsInf(hi, 0)
		if up := t.x[v] < hi && (t.x[v] == lo || free); up && size > 0 || t.x[v] == hi && size < 0 || free {
			size, d := math.Abs(size), math.Abs(t.d[j])
			list = append(list, ratio{column: j, at: d / size, within: (d + optimal) / size, size: size})
		}
	}
	t.ratios = list
	t.work += int64(t.n)
	slices.SortFunc(list, func(a, b ratio) int {
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		}
		return a.column - b.column
	})
	left := math.Abs(short)
	for from := 0; from < len(list); {
		// All that come as early as the first, within the tolerance, are one group.
		reach, to := list[from].within, from
		for k := from; k < len(list) && list[k].at <= reach; k++ {
			reach = min(reach, list[k].within)
		}
		after := left
		for to = from; to < len(list) && list[to].at <= reach; to++ {
			v := t.others[list[to].column]
			after -= list[to].size * (t.hi[v] - t.lo[v])
		}
		if after <= 0 || bland {
			best := from
			for k := from; k < to; k++ {
				if x, y := list[k], list[best]; bland && t.others[x.column] < t.others[y.column] || !bland && x.size > y.size {
					best = k
				}
			}
			if bland && list[best].size < goodPivot {
				for k := from; k < to; k++ {
					if list[k].size > list[best].size {
						best = k
					}
				}
			}
			t.flip(list[:from])
			return list[best].column
		}
		left, from = after, to
	}
	if left > feasible*max(1, math.Abs(short)) {
		return -1
	}
	// Together they just make up for it: rounding must not decide.
	if len(list) == 0 {
		return -1
	}
	t.flip(list[:len(list)-1])
	return list[len(list)-1].column
}

// flip puts columns at their other bound.
func (t *tableau) flip(list []ratio) {
	for _, c := range list {
		v := t.others[c.column]
		to := t.lo[v]
		if t.x[v] == to {
			to = t.hi[v]
		}
		t.shift(c.column, to)
	}
}

// shift moves the variable of a column to a value, and the basic ones with it.
func (t *tableau) shift(q int, to float64) {
	v := t.others[q]
	by := to - t.x[v]
	t.x[v] = to
	if by == 0 {
		return
	}
	for i, b := range t.basic {
		if a := t.a[i*t.n+q]; a != 0 {
			t.x[b] += a * by
		}
	}
	t.work += int64(t.rows)
}
