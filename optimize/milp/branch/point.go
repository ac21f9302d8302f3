package branch

import "math"

// try rounds a point and takes it where it keeps the rows and is better; where rounding the integers has moved
// the rows, with the other variables solved for once more around them.
func (s *search) try(x []float64) bool {
	y := make([]float64, len(x)) // not nil, even of no columns
	copy(y, x)
	for j := range y {
		if s.p.Integer[j] {
			y[j] = math.Round(y[j])
		}
	}
	if s.take(y) {
		return true
	}
	if len(s.real) == 0 {
		return false
	}
	lo, hi := append([]float64(nil), s.lo...), append([]float64(nil), s.hi...)
	for _, j := range s.choice.columns {
		s.bound(j, y[j], y[j])
	}
	taken := false
	for range 2 {
		if end, _ := s.t.optimise(s.ceiling()); end != solved {
			break
		}
		again := s.values()
		for _, j := range s.choice.columns {
			again[j] = y[j]
		}
		if taken = s.take(again); taken {
			break
		}
		s.t.refresh()
	}
	for _, j := range s.choice.columns {
		s.bound(j, lo[j], hi[j])
	}
	return taken
}

// nothing is what a value is taken for 0 at: what is left over where terms cancel.
const nothing = 1e-11

// take makes a point the best one where it keeps bounds and rows and is better than what is known.
func (s *search) take(x []float64) bool {
	for j := range x {
		lo, hi := s.p.Lower[j], s.p.Upper[j]
		if math.Abs(x[j]) < nothing {
			x[j] = 0 // and never the negative zero
		}
		if x[j] < lo && lo-x[j] <= offRow*max(1, math.Abs(lo)) {
			x[j] = lo
		}
		if x[j] > hi && x[j]-hi <= offRow*max(1, math.Abs(hi)) {
			x[j] = hi
		}
		if !(x[j] >= lo && x[j] <= hi) {
			return false
		}
	}
	for i := range s.p.Rows {
		r := &s.p.Rows[i]
		sum, largest := 0.0, 0.0
		for k, j := range r.Cols {
			term := r.Coefs[k] * x[j]
			sum += term
			largest = max(largest, math.Abs(term))
		}
		if r.Lower-sum > offRow*max(largest, math.Abs(r.Lower)) || sum-r.Upper > offRow*max(largest, math.Abs(r.Upper)) {
			return false
		}
	}
	cost := 0.0
	for j, c := range s.p.Cost {
		cost += c * x[j]
	}
	if s.point == nil && cost >= s.ask.Accept || s.point != nil && cost >= s.cost-s.ask.Step(s.cost)/2 {
		return false
	}
	s.point, s.cost = x, cost
	s.below = min(s.below, cost-s.ask.Step(cost))
	if s.prove.open {
		s.prove.box = newBox(s.p, s.below)
	}
	return true
}
