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
// Where neither ends the search, the same model gives the same solution every time. Of integers the engine
// branches on those first that were added first, so it pays to add the great decisions before what follows
// from them.
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
	s := newSearch(m, o, w)
	if err := s.run(); err != nil {
		return Solution{}, err
	}
	s.sol.Bound = s.sign*s.bound + m.objConst
	s.sol.Seconds = time.Since(start).Seconds()
	return s.sol, nil
}

// search is one Solve under way. Objectives in it are to be minimised and without the model's constant.
type search struct {
	m       *Model
	o       Options
	w       *watch
	sign    float64 // 1 to minimise, -1 to maximise
	spacing float64 // see Model.spacing
	bound   float64 // no point is below
	engine  engine
	sol     Solution
}

// engine runs a program once: (*program).run, or what a test puts in its place.
type engine func(p *program, s *setting, gap float64, pivots int64, w *watch) (outcome, error)

func newSearch(m *Model, o Options, w *watch) *search {
	s := &search{m: m, o: o, w: w, sign: m.sign(), spacing: m.spacing(), bound: math.Inf(-1),
		engine: (*program).run}
	if o.Relax {
		s.spacing = 0
	}
	s.sol.model = m
	return s
}

// run settles what needs no engine and hunts for the rest.
func (s *search) run() error {
	p, holds := s.m.flatten(s.o.Relax)
	switch {
	case !holds:
		s.sol.Status = Infeasible
		return nil
	case len(s.m.obj) == 0 && s.o.HasCutoff && s.sign*s.m.objConst > s.sign*s.o.Cutoff:
		s.sol.Status = Infeasible
		return nil
	case len(s.m.cols) == 0:
		s.constant()
		return nil
	}
	top := noCeiling()
	if s.o.HasCutoff && len(s.m.obj) > 0 {
		top = s.cutoff()
	}
	h := &hunt{search: s, p: p, top: top, points: 1, none: 2}
	if s.o.Prove {
		h.points = 2
	}
	if s.o.TrustInfeasible {
		h.none = 1
	}
	if err := h.run(); err != nil {
		return err
	}
	s.sol.Status, s.sol.values = h.status, h.values
	if h.values == nil {
		return nil
	}
	s.sol.Objective = s.m.objectiveAt(h.values)
	if h.status == Best && h.claims >= 2 && s.o.Prove {
		s.sol.Status, s.bound = Proved, h.top.limit
	}
	return nil
}

// constant settles a model without variables.
func (s *search) constant() {
	s.bound = 0
	s.sol.Status, s.sol.Objective, s.sol.values = Best, s.m.objConst, []float64{}
	if s.o.Prove {
		s.sol.Status = Proved
	}
}

// value returns the objective of a point as the search counts it.
func (s *search) value(values []float64) float64 {
	return s.sign * (s.m.objectiveAt(values) - s.m.objConst)
}
