// Package rank puts a whole answer together: the ranked plans with their cautions, or where none is possible,
// which limits have to change and why.
package rank

import (
	"context"
	"errors"
	"time"

	"cartwright/optimize/bench"
	"cartwright/optimize/question"
	"cartwright/optimize/relax"
	"cartwright/optimize/search"
)

// Check reports everything a scenario names that its catalogue lacks: parts and roles. Its error is a *problem.Error.
func Check(p question.Problem) error { return p.Scenario.Check(p.Catalog) }

// Plans finds the best plans in their order. Where none is possible the result says so, with the limits that have to
// change; that is not an error. If a plan fails its audit, the error is a *question.DisagreementError.
func Plans(ctx context.Context, p question.Problem, o question.Options) (*question.Result, error) {
	return plans(ctx, p, o, &bench.Before{})
}

// plans is Plans with what was laid out before.
func plans(ctx context.Context, p question.Problem, o question.Options, before *bench.Before) (*question.Result, error) {
	start := time.Now()
	if err := o.Check(p); err != nil {
		return nil, err
	}
	o = o.WithDefaults(p)
	b, err := bench.Lay(ctx, p, o.Must, before)
	switch {
	case errors.Is(err, question.ErrUnknown):
		none := search.Stopped()
		none.Cautions, none.Solver.Seconds = Cautions(), time.Since(start).Seconds()
		return none, nil
	case err != nil:
		return nil, err
	}
	if words := noLife(b, o.By); words != "" {
		return &question.Result{Solver: question.Solver{Status: question.Infeasible, Seconds: time.Since(start).Seconds()},
			Reasons: []string{words}, Cautions: cautions(b, nil)}, nil
	}
	if first := o.First; first != nil {
		o.First = func(r *question.Result) {
			r.Cautions = cautions(b, r.Plans)
			r.Solver.Seconds = time.Since(start).Seconds()
			first(r)
		}
	}
	result, err := search.Run(ctx, b, o)
	if err != nil {
		return nil, err
	}
	if result.Solver.Status == question.Infeasible {
		result.Reasons = relax.Obstacles(b)
	}
	if result.Solver.Status == question.Infeasible && o.Must == "" {
		if result.Changes, err = relax.Changes(ctx, p, before); err != nil && !errors.Is(err, question.ErrUnknown) {
			return nil, err
		}
		result.ChangesUnknown = err != nil
		if len(result.Changes) > 0 {
			facts, err := relax.Facts(ctx, p, before)
			if err != nil {
				return nil, err
			}
			result.Reasons = append(result.Reasons, facts...)
		}
		if len(result.Changes)+len(result.Reasons) == 0 && !result.ChangesUnknown {
			if result.Reasons, err = relax.Obstruct(ctx, p); err != nil {
				return nil, err
			}
		}
	}
	result.Cautions = cautions(b, result.Plans)
	result.Solver.Seconds = time.Since(start).Seconds()
	return result, nil
}

// noLife says, for a ranking by the cost of a lifetime kWh, that no battery that serves states its life: then no
// plan has such a cost, and no limit is to blame. Else "".
func noLife(b *bench.Bench, by question.By) string {
	if by != question.ByLife || len(b.Stacks) == 0 {
		return ""
	}
	for i := range b.Stacks {
		if bat := b.Stacks[i].Battery; bat.CycleLife > 0 || bat.CalendarYears > 0 {
			return ""
		}
	}
	return "no battery that fits states its life, so no plan has a cost per lifetime kWh: fill in batteries.csv, cycle_life or calendar_years"
}
