package milp

import (
	"context"
	"errors"
	"fmt"
	"math"
	"time"
)

// Options say how far to search. The zero Options search without limit of time, take the engine's first
// answer as the best found, and check "impossible" twice.
type Options struct {
	TimeLimit time.Duration // 0: none
	// Cutoff, where HasCutoff, asks only for points whose objective is at most Cutoff (at least, when
	// maximising).
	Cutoff    float64
	HasCutoff bool
	// Prove searches again for a point better by Resolution, until there is none.
	Prove bool
	// Resolution is the smallest difference of the objective that matters, in its own unit: 0.005 for
	// money in units of 0.01. 0 stands for relativeResolution times the larger of 1 and |objective|.
	Resolution float64
	// IntTol is how far the engine's integers may be off a whole number before they are rounded;
	// 0 stands for 1e-7.
	IntTol float64
	// TrustInfeasible leaves out the second search, under another setting, that an answer of
	// "impossible" without a point in hand is otherwise checked by.
	TrustInfeasible bool
}

// Tolerances.
const (
	// relativeResolution guards a proof from chasing improvements that are rounding only.
	relativeResolution = 1e-6
	// feasTol is how far a row may be off at the rounded point, relative to its largest term. It guards
	// against a point that is feasible in the engine's scaled arithmetic only.
	feasTol = 1e-7
)

// Solve searches for the best point. An error means that the model or the options are wrong (Err), or that
// there was no memory; everything else is a Status.
func (m *Model) Solve(ctx context.Context, o Options) (Solution, error) {
	if m.err != nil {
		return Solution{}, m.err
	}
	if math.IsNaN(o.Cutoff) || math.IsInf(o.Cutoff, 0) || math.IsNaN(o.Resolution) || o.Resolution < 0 ||
		math.IsNaN(o.IntTol) || o.IntTol < 0 || o.IntTol >= 0.5 || o.TimeLimit < 0 {
		return Solution{}, errors.New("milp: options: negative or no number")
	}
	w, err := newWatch(ctx, o.TimeLimit)
	if err != nil {
		return Solution{}, err
	}
	defer w.free()
	start := time.Now()
	s := &search{m: m, o: o, w: w, sol: Solution{Bound: math.Inf(-1), model: m}}
	if m.maximize {
		s.sol.Bound = math.Inf(1)
	}
	err = s.run()
	s.sol.Seconds = time.Since(start).Seconds()
	return s.sol, err
}

// search is one Solve under way.
type search struct {
	m   *Model
	o   Options
	w   *watch
	sol Solution
}

func (s *search) run() error {
	p, ok := s.m.program()
	if !ok {
		s.sol.Status = Infeasible
		return nil
	}
	if s.o.HasCutoff {
		s.cut(p, s.o.Cutoff)
	}
	st, values, err := s.attempt(p, !s.o.TrustInfeasible)
	if err != nil {
		return err
	}
	s.sol.Status = st
	if st != Best {
		return nil
	}
	s.take(values)
	for s.o.Prove && !s.sol.Ended {
		p, _ := s.m.program()
		s.cut(p, s.sol.Objective-s.sign()*s.step())
		st, values, err := s.attempt(p, false)
		if err != nil {
			return err
		}
		switch st {
		case Infeasible:
			s.sol.Status, s.sol.Bound = Proved, s.sol.Objective-s.sign()*s.step()
			return nil
		case Best:
			s.take(values)
		default:
			return nil
		}
	}
	return nil
}

func (s *search) sign() float64 {
	if s.m.maximize {
		return -1
	}
	return 1
}

func (s *search) step() float64 {
	if s.o.Resolution > 0 {
		return s.o.Resolution
	}
	return relativeResolution * math.Max(1, math.Abs(s.sol.Objective))
}

func (s *search) take(values []float64) {
	s.sol.values, s.sol.Objective = values, s.m.objectiveAt(values)
}

// cut adds the row that the objective be at most (maximising: at least) limit.
func (s *search) cut(p *program, limit float64) {
	p.addRow(s.m.obj, s.sign(), AtMost, s.sign()*(limit-s.m.objConst))
}

// attempt runs the engine under one setting after the other until an answer stands its check.
func (s *search) attempt(p *program, twice bool) (Status, []float64, error) {
	claims := 0
	for i := range settings {
		if s.w.due() {
			s.sol.Ended = true
			return Stopped, nil, nil
		}
		set := settings[i]
		if s.o.IntTol > 0 {
			set.intTol = s.o.IntTol
		}
		s.sol.Solves++
		out, err := p.run(&set, s.w)
		if err != nil {
			return 0, nil, err
		}
		if s.w.due() {
			s.sol.Ended = true
		}
		if out.values != nil {
			if trouble := s.round(out.values); trouble != "" {
				s.retry(&set, trouble)
				continue
			}
			return Best, out.values, nil
		}
		switch out.code {
		case codeInfeasible:
			claims++
			if claims == 2 || !twice {
				return Infeasible, nil, nil
			}
		case codeUnbounded:
			return Unbounded, nil, nil
		case codeAborted, codeTimeout:
			s.sol.Ended = true
			return Stopped, nil, nil
		default:
			s.retry(&set, fmt.Sprintf("return value %d", out.code))
		}
	}
	if claims > 0 {
		return Infeasible, nil, nil
	}
	return GaveUp, nil, nil
}

func (s *search) retry(set *setting, trouble string) {
	s.sol.Retries = append(s.sol.Retries, set.name+": "+trouble)
}

// round puts integers on whole numbers and says what the point then does not keep.
func (s *search) round(values []float64) string {
	for j, c := range s.m.cols {
		if c.integer {
			values[j] = math.Round(values[j]) + 0
		}
		values[j] = math.Max(c.lo, math.Min(c.hi, values[j]))
	}
	if v := Violations(s.m, values, feasTol); len(v) > 0 {
		return v[0].String()
	}
	return ""
}
