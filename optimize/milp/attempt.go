package milp

import (
	"fmt"
	"math"
)

// verdict is an answer that stood its check: Best with values, Infeasible, Unbounded, Stopped, GaveUp.
type verdict struct {
	status Status
	values []float64
}

// ceiling is what the objective, to be minimised and without its constant, may be at most.
type ceiling struct {
	limit  float64 // the row's right-hand side; infinite for none
	accept float64 // above it a point is refused; between the two it is rounding
}

func noCeiling() ceiling { return ceiling{math.Inf(1), math.Inf(1)} }

// attempt searches a program for points below a ceiling. It runs one setting after the other until an
// answer stands its check.
func (s *search) attempt(p *program, top ceiling, order []*setting) (verdict, error) {
	if !math.IsInf(top.limit, 1) {
		q := *p // shares the rows of p: what is appended here is not seen there
		q.addRow(s.m.obj, s.sign, int32(AtMost), top.limit)
		q.fine = top.accept - top.limit
		p = &q
	}
	bounds := len(p.objcol) == len(s.m.obj) // the relaxation bounds the objective of the whole search
	var claimed *setting                    // the first to say that there is no point
	for _, set := range order {
		if s.w.due() {
			s.sol.Ended = true
			return verdict{status: Stopped}, nil
		}
		out, err := s.once(p, set)
		if err != nil {
			return verdict{}, err
		}
		if bounds && out.code != codeInfeasible && out.code != codeUnbounded && !math.IsNaN(out.root) {
			s.bound = math.Max(s.bound, out.root)
		}
		trouble := ""
		switch {
		case out.values != nil:
			if trouble, err = s.settle(p, set, out.values, top); err != nil {
				return verdict{}, err
			}
			if trouble == "" {
				if claimed != nil {
					s.note(claimed, "found none where "+set.name+" found a point")
				}
				return verdict{Best, out.values}, nil
			}
		case out.code == codeAborted || out.code == codeTimeout:
			s.sol.Ended = true
			return verdict{status: Stopped}, nil
		case out.code == codeInfeasible && out.cut:
			trouble = "branched too deep to exclude anything"
		case out.code == codeInfeasible:
			// In a proof one claim is enough: it is the second opinion on what found the point.
			if claimed != nil || s.o.TrustInfeasible || s.sol.values != nil {
				return verdict{status: Infeasible}, nil
			}
			claimed = set
			continue
		case out.code == codeUnbounded:
			v, err := s.unbounded(p, order)
			if err != nil || v.status != GaveUp {
				return v, err
			}
			trouble = "no limit to the objective, and no point"
		default:
			trouble = fmt.Sprintf("the engine returned %d", out.code)
		}
		s.note(set, trouble)
	}
	if claimed != nil {
		s.note(claimed, "found none, and no other setting came to an answer")
	}
	return verdict{status: GaveUp}, nil
}

// once runs the engine one time and keeps its books.
func (s *search) once(p *program, set *setting) (outcome, error) {
	set = s.adjusted(set)
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
	out, err := p.run(set, gap, s.w)
	if err != nil {
		return outcome{}, err
	}
	if out.code == codeSuboptimal && s.w.due() {
		s.sol.Ended = true
	}
	out.root /= scale
	return out, nil
}

// gapPart is the part of the least improvement that matters which the engine is told to look for: less
// than all of it, so that rounding does not lose one that is just large enough.
const gapPart = 0.9

// adjusted returns the setting with the caller's tolerance for integers, where one is given.
func (s *search) adjusted(set *setting) *setting {
	if s.o.IntTol == 0 {
		return set
	}
	own := *set
	own.intTol = s.o.IntTol
	return &own
}

// note records trouble that was met.
func (s *search) note(set *setting, trouble string) {
	s.sol.Retries = append(s.sol.Retries, set.name+": "+trouble)
}

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
	out, err := s.once(q, set)
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
	if at := s.sign * (s.m.objectiveAt(values) - s.m.objConst); at > top.accept {
		return fmt.Sprintf("an objective of %.12g against a limit of %.12g", at, top.limit)
	}
	return ""
}

// unbounded checks a claim that the objective has no limit: there must be a point at all. Then, as all
// coefficients are rational, the integers have no limit either where the relaxation has none.
func (s *search) unbounded(p *program, order []*setting) (verdict, error) {
	if len(p.objcol) == 0 {
		return verdict{status: GaveUp}, nil
	}
	q := *p
	q.objcol, q.objcoef = nil, nil
	v, err := s.attempt(&q, noCeiling(), order)
	if err != nil {
		return verdict{}, err
	}
	if v.status == Best {
		v = verdict{status: Unbounded}
	}
	return v, nil
}
