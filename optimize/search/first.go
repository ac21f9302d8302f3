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

// First returns the best plan, or just any; nil where there is none.
func First(ctx context.Context, p question.Problem, before *bench.Before, by question.By, anyPlan bool) (*plan.Plan, error) {
	b, err := bench.Lay(ctx, p, "", before)
	if err != nil {
		return nil, err
	}
	o := question.Options{Plans: 1, By: by}.WithDefaults(p)
	r := &ranking{search: newSearch(ctx, b, by), o: o, anyPlan: anyPlan}
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
	if r.stopped || r.gaveUp {
		return nil, question.ErrUnknown
	}
	return nil, nil
}
