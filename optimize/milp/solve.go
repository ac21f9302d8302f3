package milp

import (
	"context"
	"math"
	"time"

	"cartwright/optimize/milp/branch"
	"cartwright/optimize/milp/engine"
	"cartwright/optimize/milp/proof"
)

// Solve searches for the best point. It returns an error where the model or the options are wrong or an engine
// failed; everything else is a Status. A cancelled context and a limit of work are no error: the status is Best or
// Stopped then, and Ended is set.
//
// Where the context does not end it, the same model gives the same solution every time.
func (m *Model) Solve(ctx context.Context, o Options) (Solution, error) {
	if m.err != nil {
		return Solution{}, m.err
	}
	if err := o.check(); err != nil {
		return Solution{}, err
	}
	start := time.Now()
	s := newSearch(m, o)
	if err := s.run(ctx); err != nil {
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
	p       *proof.Program
	sign    float64 // 1 to minimise, -1 to maximise
	spacing float64 // see Model.spacing
	points  engine.Engine
	prover  engine.Engine
	top     ceiling
	at      float64 // what the best point comes to
	bound   float64 // no point is below
	sol     Solution
}

func newSearch(m *Model, o Options) *search {
	s := &search{m: m, o: o, p: m.program(o.Relax), sign: m.sign(), spacing: m.spacing(), points: o.Points,
		prover: branch.Engine{}, top: noCeiling(), bound: math.Inf(-1)}
	if s.points == nil {
		s.points = Points()
	}
	if o.Relax {
		s.spacing = 0
	}
	if o.HasCutoff {
		s.top = s.cutoff()
	}
	s.sol.model, s.sol.Program = m, s.p
	return s
}

// run looks for points with the engine that finds, where there is one, and hands over to the one that proves.
func (s *search) run(ctx context.Context) error {
	if s.points != nil {
		if err := s.find(ctx); err != nil {
			return err
		}
	}
	a, err := s.ask(ctx, s.prover, s.p, s.top, 0, s.o.Work)
	if err != nil {
		return err
	}
	switch {
	case a.Claim == engine.Unbounded && s.sol.values == nil:
		return s.limitless(ctx)
	case a.Claim == engine.None || a.Claim == engine.Best:
		s.certify(s.p, &a)
	case !math.IsInf(a.Bound, 1): // open: what is left of it bounds the rest
		s.bound = math.Max(s.bound, a.Bound)
	}
	s.end(&a)
	return nil
}

// How many pivots the engine that finds points has for each setting, and how many settings are tried: what takes one
// order of branching minutes takes another one milliseconds, and nobody can tell beforehand which.
const (
	firstPivots = 600 // and
	pivotsADim  = 3   // for each row and column: a large relaxation is no sign of trouble
	mostTurns   = 3
)

// find asks for a point, a setting after the other, until one is taken.
func (s *search) find(ctx context.Context) error {
	pivots := int64(firstPivots + pivotsADim*(len(s.p.Rows)+len(s.p.Cost)))
	for turn := range mostTurns {
		a, err := s.ask(ctx, s.points, s.p, s.top, turn, pivots)
		if err != nil || s.sol.values != nil || a.Ended {
			return err
		}
	}
	return nil
}

// ask puts a question to an engine and takes the point, where there is a better one.
func (s *search) ask(ctx context.Context, e engine.Engine, p *proof.Program, top ceiling, turn int, work int64) (engine.Answer, error) {
	gap := 0.0
	if s.o.Resolution > 0 || s.spacing > 0 {
		gap = gapPart * s.better(0)
	}
	s.sol.Solves++
	a, err := e.Search(ctx, p, engine.Query{Ceiling: top.limit, Accept: top.accept, Gap: gap, Work: work, Turn: turn})
	if err != nil {
		return a, err
	}
	s.sol.Ended = s.sol.Ended || a.Ended && e == s.prover
	if a.Trouble != "" {
		s.note(e, a.Trouble)
	}
	if a.Point != nil {
		return a, s.take(ctx, e, a.Point, top)
	}
	return a, nil
}

// end sets the status.
func (s *search) end(a *engine.Answer) {
	open := a.Claim == engine.Open
	s.sol.Ended = s.sol.Ended || open && a.Trouble == ""
	proved := s.sol.Proof != nil
	switch {
	case s.sol.values == nil && proved:
		s.sol.Status = Infeasible
	case s.sol.values == nil && s.sol.Ended:
		s.sol.Status = Stopped
	case s.sol.values == nil:
		s.sol.Status = GaveUp
	case proved && s.o.Prove && s.at-s.bound <= s.better(s.at):
		s.sol.Status = Proved
	default:
		s.sol.Status = Best
	}
}

// limitless ends a search whose relaxation has no limit. Where there is a point at all, the integers have no limit
// either, as all coefficients are rational.
func (s *search) limitless(ctx context.Context) error {
	costless := free(s.p)
	a, err := s.ask(ctx, s.prover, costless, noCeiling(), 0, s.o.Work)
	if err != nil {
		return err
	}
	if s.sol.values != nil {
		s.sol.Status, s.sol.values, s.sol.Objective = Unbounded, nil, 0
		return nil
	}
	if a.Claim == engine.None {
		s.certify(s.p, &a) // costs do not matter where nothing is possible
	}
	s.end(&a)
	return nil
}

// note records trouble that was met.
func (s *search) note(e engine.Engine, trouble string) {
	s.sol.Retries = append(s.sol.Retries, e.Name()+": "+trouble)
}
