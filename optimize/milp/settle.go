package milp

import (
	"fmt"
	"math"
)

// noEnd is more pivots than any search makes.
const noEnd = math.MaxInt64

// once runs the engine one time and keeps its books.
func (s *search) once(p *program, set *setting, pivots int64) (outcome, error) {
	if s.o.IntTol > 0 {
		own := *set
		own.intTol = s.o.IntTol
		set = &own
	}
	gap, scale := gapPart*s.better(0), 1.0
	if s.o.Resolution == 0 && s.spacing == 0 {
		gap = 0
	}
	switch {
	case set.ownScale:
		p, scale = p.scaled()
		gap *= scale
	case set.scaling != noScaling:
		gap = 0
	}
	s.sol.Solves++
	out, err := s.engine(p, set, gap, pivots, s.w)
	if err != nil {
		return outcome{}, err
	}
	if out.code != codeOptimal && !out.spent && s.w.due() {
		s.sol.Ended = true
	}
	out.root /= scale
	return out, nil
}

// gapPart is the part of the least improvement that matters which the engine is told to look for: less
// than all of it, so that rounding does not lose one that is just large enough.
const gapPart = 0.9

// settle rounds a point in place and says what is wrong with it, "" for nothing. Where rounding the
// integers has pushed a row over its limit, the other variables are solved for once more around them.
func (s *search) settle(p *program, set *setting, values []float64, top ceiling) (string, error) {
	trouble := s.round(values, top)
	if trouble == "" || s.w.due() {
		return trouble, nil
	}
	q, mixed := p.fixed(values)
	if !mixed {
		return trouble, nil
	}
	out, err := s.once(q, set, noEnd)
	if err != nil || out.values == nil {
		return trouble, err
	}
	again := s.round(out.values, top)
	if again == "" {
		copy(values, out.values)
	}
	return again, nil
}

// fixed returns the program with its integers fixed at their rounded values, and whether there are both
// integers and other variables.
func (p *program) fixed(values []float64) (q *program, mixed bool) {
	q = new(program)
	*q = *p
	q.lo, q.hi = append([]float64(nil), p.lo...), append([]float64(nil), p.hi...)
	q.isint = make([]uint8, len(p.isint))
	whole, real := false, false
	for j, is := range p.isint {
		if is == 0 {
			real = true
			continue
		}
		whole = true
		q.lo[j], q.hi[j] = values[j], values[j]
	}
	return q, whole && real
}

// round puts integers on whole numbers and what is beyond a bound by no more than rounding on the bound.
// It says what the point then does not keep.
func (s *search) round(values []float64, top ceiling) string {
	for j, c := range s.m.cols {
		x := values[j]
		if c.integer && !s.o.Relax {
			x = math.Round(x)
		}
		if x < c.lo && c.lo-x <= feasTol*math.Max(1, math.Abs(c.lo)) {
			x = c.lo
		}
		if x > c.hi && x-c.hi <= feasTol*math.Max(1, math.Abs(c.hi)) {
			x = c.hi
		}
		values[j] = x + 0 // never the negative zero
	}
	if v := violations(s.m, values, feasTol, !s.o.Relax); len(v) > 0 {
		return v[0].String()
	}
	if at := s.value(values); at > top.accept {
		return fmt.Sprintf("an objective of %.12g against a limit of %.12g", at, top.limit)
	}
	return ""
}
