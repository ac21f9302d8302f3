package search

import (
	"context"

	"cartwright/optimize/audit"
	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// Feasible finds out whether a problem has any plan: the first one met, or nil. It is an error where time
// ran out or the solver gave up before that was known.
func Feasible(ctx context.Context, p question.Problem) (*plan.Plan, error) {
	return First(ctx, p, &bench.Before{}, question.ByCost, true)
}

// Work is how much of a search there may be, or was. It is counted and not measured, so that what it decides is the same
// on every machine: children of cells that are looked at, and for each core solved as many as it takes the time of.
type Work int

// What a core solved counts, and how much the solver may do for one where work is limited.
const (
	coreWork  Work  = 250
	coreLimit int64 = 400
)

// Reachable finds out whether a problem has any plan with so much work at the most, and tells how much it was. It is an
// error where that was not known by then.
func Reachable(ctx context.Context, p question.Problem, before *bench.Before, most Work) (bool, Work, error) {
	r, err := begun(ctx, p, before, question.ByCost)
	if err != nil {
		return false, 0, err
	}
	r.anyPlan, r.most = true, most
	err = r.toTheEnd(ctx)
	return len(r.ranked) > 0, r.work(), err
}

// begun lays a problem out for a search of one plan.
func begun(ctx context.Context, p question.Problem, before *bench.Before, by question.By) (*ranking, error) {
	b, err := bench.Lay(ctx, p, "", before)
	if err != nil {
		return nil, err
	}
	o := question.Options{Plans: 1, By: by}.WithDefaults(p)
	return &ranking{search: newSearch(ctx, b, o.By, o.Plans), o: o}, nil
}

// toTheEnd searches. Where no plan was found, it is an error not to know that there is none.
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

// First returns the best plan, or just any; nil where there is none.
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
	if !found.Proven { // it is told as the best, and shown
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
