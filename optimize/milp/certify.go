package milp

import (
	"context"
	"fmt"
	"math"

	"cartwright/optimize/milp/engine"
	"cartwright/optimize/milp/proof"
)

// certify believes an answer where its certificate passes the checker.
func (s *search) certify(p *proof.Program, a *engine.Answer) {
	if a.Tree == nil || s.sol.values == nil && a.Claim == engine.Best {
		return
	}
	if s.sol.values != nil && !s.o.Prove {
		s.bound = math.Max(s.bound, a.Bound) // as the engine says
		return
	}
	if err := proof.Check(p, a.Tree, a.Bound); err != nil {
		s.note(s.prover, err.Error())
		return
	}
	if s.sol.values == nil && a.Bound < s.top.limit {
		return // what is proved is less than that nothing is possible
	}
	s.sol.Proof = &proof.Certificate{Bound: a.Bound, Tree: a.Tree, Point: s.sol.Values()}
	s.sol.Checked++
	if s.sol.values != nil || !math.IsInf(a.Bound, 1) {
		s.bound = math.Max(s.bound, a.Bound)
	}
}

// take makes a point the best one where it passes the checker, with the variables that need not be whole solved for
// once more where it does not at first.
func (s *search) take(ctx context.Context, e engine.Engine, at []float64, top ceiling) error {
	err := s.hold(e, at, top)
	if err == nil || e == s.prover || !numbers(at) {
		if err != nil {
			s.note(e, err.Error())
		}
		return nil
	}
	a, failed := s.prover.Search(ctx, whole(s.p, at), engine.Query{Ceiling: top.limit, Accept: top.accept})
	s.sol.Solves++
	if failed != nil {
		return failed
	}
	if a.Point != nil {
		err = s.hold(e, a.Point, top)
	}
	if err != nil {
		s.note(e, err.Error())
	}
	return nil
}

// numbers reports whether all of a list are numbers, and finite.
func numbers(list []float64) bool {
	for _, v := range list {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// hold takes a point as it stands, or says what is wrong with it.
func (s *search) hold(e engine.Engine, at []float64, top ceiling) error {
	exact, err := proof.CheckPoint(s.p, at)
	if err != nil {
		return err
	}
	value, _ := exact.Float64()
	if value > top.accept {
		return fmt.Errorf("an objective of %.12g against a limit of %.12g", value, top.limit)
	}
	if s.sol.values != nil && value >= s.at {
		return fmt.Errorf("an objective of %.12g, no better than %.12g", value, s.at)
	}
	s.at = value
	s.sol.values, s.sol.Engine = at, e.Name()
	s.sol.Objective = s.m.objectiveAt(at)
	s.top = s.under(value)
	return nil
}
