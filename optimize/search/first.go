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
	b, err := bench.Lay(ctx, p, "", before)
	if err != nil {
		return false, 0, err
	}
	o := question.Options{Plans: 1}.WithDefaults(p)
	r := &ranking{search: newSearch(ctx, b, o.By, o.Plans), o: o, anyPlan: true, most: most}
	if err := r.run(ctx); err != nil {
		return false, r.work(), err
	}
	if len(r.ranked) == 0 && (r.stopped || r.gaveUp || r.full) {
		err = question.ErrUnknown
	}
	return len(r.ranked) > 0, r.work(), err
}

// work returns how much a search has done.
func (r *ranking) work() Work { return Work(r.cells) + coreWork*Work(r.models) }

// First returns the best plan, or just any; nil where there is none.
func First(ctx context.Context, p question.Problem, before *bench.Before, by question.By, anyPlan bool) (*plan.Plan, error) {
	b, err := bench.Lay(ctx, p, "", before)
	if err != nil {
		return nil, err
	}
	o := question.Options{Plans: 1, By: by}.WithDefaults(p)
	r := &ranking{search: newSearch(ctx, b, by, o.Plans), o: o, anyPlan: anyPlan}
	if err := r.run(ctx); err != nil {
		return nil, err
	}
	if len(r.ranked) > 0 {
		found := &r.ranked[0].plan
		if !anyPlan { // it is told as the best, and shown
			if !found.Proven {
				return nil, question.ErrUnknown
			}
			found.Rank = 1
			if found.Audit = audit.Plan(p.Scenario, p.Catalog, found); !found.Audit.Passed {
				return nil, question.Disagreement(*found)
			}
		}
		return found, nil
	}
	if r.stopped || r.gaveUp || r.full {
		return nil, question.ErrUnknown
	}
	return nil, nil
}
