package milp

import "math"

// spacing returns the g > 0 for which every value of the objective is a whole multiple of g beside its
// constant: the greatest common divisor of its coefficients, where all are whole numbers at integer
// variables; else 0.
func (m *Model) spacing() float64 {
	const exact = 1 << 53 // beyond it a float64 skips whole numbers
	g := 0.0
	for _, e := range m.obj {
		c := math.Abs(e.coef)
		if !m.cols[e.col].integer || c != math.Floor(c) || c > exact {
			return 0
		}
		for c != 0 {
			g, c = c, math.Mod(g, c)
		}
	}
	return g
}

// better returns by how much a point must beat the objective value at to be worth finding. Where values are regularly
// spaced it is a little less than the spacing, so that the next value lies clear of the limit.
func (s *search) better(at float64) float64 {
	scale := math.Max(1, math.Abs(at))
	res := s.o.Resolution
	if res == 0 {
		res = defaultResolution * scale
	}
	if g := s.spacing; latticeSlack*g > finestResolution*scale {
		res = math.Max(res, g) - latticeSlack*g
	}
	return math.Max(res, finestResolution*scale)
}

// cutoff turns the caller's cutoff into a ceiling, clear of the values that must pass and of those that
// must not.
func (s *search) cutoff() ceiling {
	limit := s.sign * (s.o.Cutoff - s.m.objConst)
	scale := math.Max(1, math.Abs(limit))
	if g := s.spacing; latticeSlack*g > finestResolution*scale {
		limit = g * (math.Floor(limit/g+finestResolution*scale/g) + latticeSlack)
		return ceiling{limit: limit, accept: limit + latticeSlack*g}
	}
	return ceiling{limit: limit + finestResolution*scale, accept: limit + 2*finestResolution*scale}
}

// ceiling is what the objective, to be minimised and without its constant, may be at most.
type ceiling struct {
	limit  float64 // infinite for none
	accept float64 // above it a point is refused; between the two it is rounding
}

func noCeiling() ceiling { return ceiling{math.Inf(1), math.Inf(1)} }

// under returns the ceiling of what is better than a point of such a value. Half of what matters is the margin: a
// point that misses the limit by less is still better than the one in hand, one that misses it by more is the one
// in hand again.
func (s *search) under(at float64) ceiling {
	matters := s.better(at)
	return ceiling{limit: at - gapPart*matters, accept: at - matters/2}
}
