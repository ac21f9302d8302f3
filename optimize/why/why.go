// Package why explains a best plan: what each limit costs, and why a part is or is not in it.
package why

import (
	"context"
	"errors"

	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/relax"
	"cartwright/optimize/search"
)

// Effect is what one change of one limit does to the best plan, found by solving again.
type Effect struct {
	Limit  string
	From   float64
	To     float64
	Unit   string
	Looser bool
	Plan   *plan.Plan // nil: no plan is possible then
	// Saves is how much less the best plan costs, in currency units; negative: how much more.
	Saves float64
}

// Explanation says why the best plan is what it is.
type Explanation struct {
	Best    *plan.Plan // nil: none is possible
	Effects []Effect
	// Complete says that every limit was looked into; else the search was stopped before that.
	Complete bool
	// Conflict is, where no plan is possible, a smallest set of limits that contradict each other.
	Conflict []question.LimitChange
	// WaysOut are the changes that make a plan possible, the cheapest plan first.
	WaysOut []WayOut
	Reasons []string
}

// WayOut is a change of limits and the cheapest plan it allows.
type WayOut struct {
	Change question.Change
	Plan   *plan.Plan
}

// Explain solves again with each limit a little looser and a little tighter; where no plan is possible it
// finds the limits that contradict each other and the ways out.
func Explain(ctx context.Context, p question.Problem) (*Explanation, error) {
	before := &bench.Before{}
	best, err := search.First(ctx, p, before, question.ByCost, false)
	if err != nil {
		return nil, err
	}
	if best == nil {
		return explainNone(ctx, p, before)
	}
	effects, whole, err := effectsOf(ctx, p, before, best)
	if err != nil {
		return nil, err
	}
	return &Explanation{Best: best, Effects: effects, Complete: whole}, nil
}

// explainNone explains why no plan is possible.
func explainNone(ctx context.Context, p question.Problem, before *bench.Before) (*Explanation, error) {
	b, err := bench.Lay(ctx, p, "", before)
	if err != nil {
		return nil, err
	}
	out := &Explanation{Reasons: relax.Obstacles(b), Complete: true}
	conflict, err := relax.Conflict(ctx, p, before)
	if err != nil {
		return nil, err
	}
	for i := range conflict {
		out.Conflict = append(out.Conflict, conflict[i].Change(p, conflict[i].Get(p.Scenario)))
	}
	list, err := relax.Changes(ctx, p, before)
	if err != nil {
		return nil, err
	}
	switch {
	case len(list) > 0:
		facts, err := relax.Facts(ctx, p, before)
		if err != nil {
			return nil, err
		}
		out.Reasons = append(out.Reasons, facts...)
	case len(out.Reasons) == 0:
		if out.Reasons, err = relax.Obstruct(ctx, p); err != nil {
			return nil, err
		}
	}
	for _, c := range list {
		found, err := search.First(ctx, relax.Changed(p, c), before, question.ByCost, false)
		if err != nil {
			return nil, err
		}
		if found == nil {
			return nil, errors.New("internal error: a change of limits that was found to be enough is not")
		}
		out.WaysOut = append(out.WaysOut, WayOut{c, found})
	}
	sortWaysOut(out.WaysOut)
	return out, nil
}

// sortWaysOut sorts by cost; equals keep their order.
func sortWaysOut(w []WayOut) {
	for i := 1; i < len(w); i++ {
		for j := i; j > 0 && w[j].Plan.Cost < w[j-1].Plan.Cost; j-- {
			w[j], w[j-1] = w[j-1], w[j]
		}
	}
}
