package branch

import (
	"context"
	"fmt"
	"math"

	"cartwright/optimize/milp/engine"
	"cartwright/optimize/milp/proof"
)

// Engine is the engine of this package. It has no state: the zero Engine is ready.
type Engine struct{}

// Name returns the engine's name.
func (Engine) Name() string { return "cartwright" }

// Version returns the engine's version.
func (Engine) Version() string { return "1" }

// The least gain that is looked for, relative to the cost: where a gap is asked for, what double arithmetic tells
// apart; where none is, more, so that it is not rounding that is chased.
const (
	finestGap = 4e-9
	anyGap    = 1e-7
)

// Search looks for the best point, with a certificate. It knows one way only, whatever the turn.
func (Engine) Search(ctx context.Context, p *proof.Program, q engine.Query) (engine.Answer, error) {
	least := finestGap
	if q.Gap == 0 {
		least = anyGap
	}
	got := Solve(ctx, p, Ask{Below: q.Ceiling, Accept: q.Accept, Work: q.Work, Step: func(cost float64) float64 {
		return max(q.Gap, least*max(1, math.Abs(cost)))
	}})
	a := engine.Answer{Point: got.Point, Tree: got.Tree, Bound: got.Bound, Work: got.Work, Ended: got.Ending == Halted}
	switch got.Ending {
	case Closed, Left:
		if a.Claim = engine.Best; got.Point == nil {
			a.Claim = engine.None
		}
		if got.Ending == Left {
			a.Trouble = fmt.Sprintf("proves %.12g only", got.Bound)
		}
	case Limitless:
		a.Claim = engine.Unbounded
	}
	return a, nil
}
