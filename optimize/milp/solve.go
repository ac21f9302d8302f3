package milp

import (
	"context"
	"math"
	"time"
)

// Solve searches for the best point. It returns an error where the model or the options are wrong or
// memory ran out; everything else is a Status. A cancelled context or a passed time limit is no error: the
// status is Best or Stopped then, and Ended is set.
//
// Of integers the engine branches on those that were added first, so it pays to add the great decisions
// before what follows from them.
func (m *Model) Solve(ctx context.Context, o Options) (Solution, error) {
	if m.err != nil {
		return Solution{}, m.err
	}
	if err := o.check(); err != nil {
		return Solution{}, err
	}
	w, err := newWatch(ctx, o.TimeLimit)
	if err != nil {
		return Solution{}, err
	}
	defer w.free()
	start := time.Now()
	s := &search{m: m, o: o, w: w, sign: m.sign(), spacing: m.spacing(), bound: math.Inf(-1)}
	if o.Relax {
		s.spacing = 0
	}
	s.sol.model = m
	if err := s.run(); err != nil {
		return Solution{}, err
	}
	s.sol.Bound = s.sign*s.bound + m.objConst
	s.sol.Seconds = time.Since(start).Seconds()
	return s.sol, nil
}

// search is one Solve under way.
type search struct {
	m       *Model
	o       Options
	w       *watch
	sign    float64 // 1 to minimise, -1 to maximise
	spacing float64 // see Model.spacing
	bound   float64 // no point is below; to be minimised and without the objective's constant
	sol     Solution
}

// run finds a point and, where asked, proves it.
func (s *search) run() error {
	p, holds := s.m.flatten(s.o.Relax)
	if !holds {
		s.sol.Status = Infeasible
		return nil
	}
	if len(s.m.cols) == 0 {
		return s.constant()
	}
	top := noCeiling()
	if s.o.HasCutoff {
		top = s.cutoff()
	}
	v, err := s.attempt(p, top, firstOrder)
	if err != nil {
		return err
	}
	s.sol.Status = v.status
	if v.status != Best {
		return nil
	}
	s.take(v.values)
	if s.o.Prove && !s.sol.Ended {
		return s.prove(p)
	}
	return nil
}

// constant settles a model without variables.
func (s *search) constant() error {
	s.bound = 0
	if s.o.HasCutoff && s.sign*s.m.objConst > s.sign*s.o.Cutoff {
		s.sol.Status = Infeasible
		return nil
	}
	s.take([]float64{})
	s.sol.Status = Best
	if s.o.Prove {
		s.sol.Status = Proved
	}
	return nil
}

// prove searches for better points until there is none.
func (s *search) prove(p *program) error {
	for {
		best := s.sign * (s.sol.Objective - s.m.objConst)
		// Half of what matters is the margin: a point that misses the limit by less is still better than
		// the one in hand, one that misses it by more is the one in hand again.
		matters := s.better(best)
		top := ceiling{limit: best - matters, accept: best - matters/2}
		if len(s.m.obj) == 0 { // every point is as good
			s.sol.Status, s.bound = Proved, best
			return nil
		}
		v, err := s.attempt(p, top, proofOrder)
		if err != nil {
			return err
		}
		switch {
		case v.status == Infeasible:
			s.sol.Status, s.bound = Proved, top.limit
			return nil
		case v.status == Best:
			s.take(v.values)
		default: // no time or no answer: what was found stays the best found
			return nil
		}
		if s.sol.Ended {
			return nil
		}
	}
}

// take makes a point the best one known.
func (s *search) take(values []float64) {
	s.sol.values, s.sol.Objective = values, s.m.objectiveAt(values)
}
