package branch

import "math"

// fewMoves is how many variables may move to their bounds one by one; beyond, the point is computed afresh.
const fewMoves = 8

// settle puts every variable that is not basic at the bound that its reduced cost asks for, and the basic ones
// where that moves them. Where the bound is infinite the cost is shifted until it does not matter.
func (t *tableau) settle() {
	moves := t.moves[:0]
	for j, v := range t.others {
		if to := t.side(j); to != t.x[v] {
			moves = append(moves, move{j, to})
		}
	}
	t.moves = moves
	if len(moves) <= fewMoves {
		for _, m := range moves {
			t.shift(m.column, m.to)
		}
		return
	}
	for _, m := range moves {
		t.x[t.others[m.column]] = m.to
	}
	t.compute()
}

// move is where the variable of a column goes.
type move struct {
	column int
	to     float64
}

// side returns where the variable of a column has to stand.
func (t *tableau) side(j int) float64 {
	v := t.others[j]
	lo, hi := t.lo[v], t.hi[v]
	if d := t.d[j]; lo != hi && (d > optimal && math.IsInf(lo, 0) || d < -optimal && math.IsInf(hi, 0)) {
		t.prices[v] -= d
		t.d[j], t.shifted = 0, true
	}
	d := t.d[j]
	switch {
	case d > optimal:
		return lo
	case d < -optimal:
		return hi
	case !math.IsInf(hi, 0) && t.x[v] == hi:
		return hi
	case !math.IsInf(lo, 0):
		return lo
	case !math.IsInf(hi, 0):
		return hi
	}
	return 0
}

// compute computes the basic variables from the others.
func (t *tableau) compute() {
	for i, v := range t.basic {
		sum := 0.0
		for j, a := range t.row(i) {
			if a != 0 {
				sum += a * t.x[t.others[j]]
			}
		}
		t.x[v] = sum
	}
	t.work += int64(len(t.a))
}
