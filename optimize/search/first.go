package search

import (
	"context"

	"cartwright/optimize/audit"
	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// Feasible returns any plan of a problem, or nil where there is none. The error is question.ErrUnknown where time ran
// out or the solver gave up before that was known.
func Feasible(ctx context.Context, p question.Problem) (*plan.Plan, error) {
	return First(ctx, p, &bench.Before{}, question.ByCost, true)
}

// Work is an amount of searching: the number of children of cells that are looked at, with each core solved counted as
// coreWork of them, which takes about as long. It is counted and not timed, so a limit has the same effect on every
// machine.
type Work int

// How much solving a core counts, and how much the solver may do for one where work is limited.
const (
	coreWork  Work  = 250
	coreLimit int64 = 400
)

// Reachable reports whether a problem has any plan, and how much work it took to find out. The error is
// question.ErrUnknown where that was not known after at most most work.
func Reachable(ctx context.Context, p question.Problem, before *bench.Before, most Work) (bool, Work, error) {
	r, err := begun(ctx, p, before, question.ByCost)
	if err != nil {
		return false, 0, err
	}
	r.anyPlan, r.most = true, most
	err = r.toTheEnd(ctx)
	return len(r.ranked) > 0, r.work(), err
}

// forOne lays a problem out for a search for one plan, which has no nodes yet.
func forOne(ctx context.Context, p question.Problem, before *bench.Before, by question.By) (*ranking, error) {
	b, err := bench.Lay(ctx, p, "", before)
	if err != nil {
		return nil, err
	}
	o := question.Options{Plans: 1, By: by}.WithDefaults(p)
	return newRanking(unopened(b, o.By, o.Plans), o), nil
}

// begun lays a problem out and begins a search for one plan.
func begun(ctx context.Context, p question.Problem, before *bench.Before, by question.By) (*ranking, error) {
	r, err := forOne(ctx, p, before, by)
	if err == nil {
		r.openAll(ctx)
	}
	return r, err
}

// toTheEnd runs the search. It returns question.ErrUnknown where it found no plan and does not know that there is none.
func (r *ranking) toTheEnd(ctx context.Context) error {
	if err := r.run(ctx); err != nil {
		return err
	}
	if len(r.ranked) == 0 && (r.stopped || r.gaveUp || r.full) {
		return question.ErrUnknown
	}
	return nil
}

// work returns how much a search has done.
func (r *ranking) work() Work { return Work(r.cells) + coreWork*Work(r.models) }

// First returns the best plan, audited, or with anyPlan any plan, not audited; nil where there is none.
func First(ctx context.Context, p question.Problem, before *bench.Before, by question.By, anyPlan bool) (*plan.Plan, error) {
	r, err := begun(ctx, p, before, by)
	if err != nil {
		return nil, err
	}
	r.anyPlan = anyPlan
	if err := r.toTheEnd(ctx); err != nil || len(r.ranked) == 0 {
		return nil, err
	}
	found := &r.ranked[0].plan
	if anyPlan {
		return found, nil
	}
	if !found.Proven { // callers show it as the best
		return nil, question.ErrUnknown
	}
	return audited(p, found)
}

// audited returns a plan as the first in rank; it is an error where it does not pass its audit.
func audited(p question.Problem, found *plan.Plan) (*plan.Plan, error) {
	found.Rank = 1
	if found.Audit = audit.Plan(p.Scenario, p.Catalog, found); !found.Audit.Passed {
		return nil, question.Disagreement(*found)
	}
	return found, nil
}
