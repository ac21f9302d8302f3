package why

import (
	"context"
	"errors"
	"slices"

	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/relax"
	"cartwright/optimize/search"
)

// effects finds what a step of each limit does. Most do nothing, which is found without a search for each: a plan that is
// the best under looser limits is the best under all limits between; and under tighter limits if it still meets them.
type effects struct {
	p      question.Problem
	before *bench.Before
	best   *plan.Plan
	list   []Effect
	levers []relax.Lever // by effect
	known  []bool        // by effect
}

// effectsOf returns what a step of each limit does, looser first, where the limit can move that far; if it is stopped,
// what is known by then.
func effectsOf(ctx context.Context, p question.Problem, before *bench.Before, best *plan.Plan) (list []Effect, whole bool, err error) {
	x := &effects{p: p, before: before, best: best}
	var looser []int
	for _, l := range relax.Levers(p.Scenario) {
		for _, loosens := range []bool{true, false} {
			from := l.Get(p.Scenario)
			to, ok := l.Moved(from, loosens)
			if !ok {
				continue
			}
			if loosens {
				looser = append(looser, len(x.list))
			}
			x.list = append(x.list, Effect{Limit: l.Name, From: from, To: to, Unit: l.Unit, Looser: loosens})
			x.levers = append(x.levers, l)
		}
	}
	x.known = make([]bool, len(x.list))
	for i := range x.list {
		if !x.list[i].Looser && err == nil {
			err = x.find(ctx, i, true)
		}
	}
	if err == nil {
		err = x.loosen(ctx, looser)
	}
	if err != nil && (!errors.Is(err, question.ErrUnknown) || ctx.Err() == nil) {
		return nil, false, err
	}
	for i := range x.list {
		if x.known[i] {
			list = append(list, x.list[i])
		}
	}
	return list, err == nil, nil
}

// changed returns the problem with some of the limits moved together.
func (x *effects) changed(which []int) question.Problem {
	var levers []relax.Lever
	var to []float64
	for _, i := range which {
		levers, to = append(levers, x.levers[i]), append(to, x.list[i].To)
	}
	return relax.With(x.p, levers, to)
}

// loosen finds what some looser limits do. If all of them together save nothing, none does; else it tries each half.
func (x *effects) loosen(ctx context.Context, which []int) error {
	if len(which) <= 2 {
		for _, i := range which {
			if err := x.find(ctx, i, false); err != nil {
				return err
			}
		}
		return nil
	}
	found, err := search.First(ctx, x.changed(which), x.before, question.ByCost, false)
	switch {
	case errors.Is(err, question.ErrUnknown) && ctx.Err() == nil: // for each alone it may be known
	case err != nil:
		return err
	case found != nil && found.Cost == x.best.Cost && found.MassKg == x.best.MassKg && slices.Equal(found.Bill, x.best.Bill):
		for _, i := range which {
			if err := x.find(ctx, i, true); err != nil {
				return err
			}
		}
		return nil
	}
	half := len(which) / 2
	if err := x.loosen(ctx, which[:half]); err != nil {
		return err
	}
	return x.loosen(ctx, which[half:])
}

// find works out one effect. Where the best plan may remain the best, that is tried first.
func (x *effects) find(ctx context.Context, i int, stays bool) error {
	q := x.changed([]int{i})
	var found *plan.Plan
	var err error
	if stays {
		found, err = search.Still(ctx, q, x.before, question.ByCost, x.best)
	}
	if found == nil && err == nil {
		found, err = search.First(ctx, q, x.before, question.ByCost, false)
	}
	if err != nil {
		return err
	}
	if found != nil {
		x.list[i].Saves = (x.best.Cost - found.Cost).Units()
	}
	x.list[i].Plan, x.known[i] = found, true
	return nil
}
