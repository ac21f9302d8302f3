package search

import (
	"context"
	"slices"

	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// Still returns the best plan of a problem that allows no better plan than a given one, where it is that plan; nil where
// that is not known. Such problems are those with tighter limits than a plan was the best under, and those with limits
// between two sets under both of which it is the best: of plans that tie, none comes first that did not before. So only
// one core is solved, at the orders of the plan, instead of a whole search.
func Still(ctx context.Context, p question.Problem, before *bench.Before, by question.By, best *plan.Plan) (*plan.Plan, error) {
	r, err := forOne(ctx, p, before, by)
	if err != nil || r.search.o == nil {
		return nil, err
	}
	core, ok := r.b.CoreLike(&best.Core)
	if !ok {
		return nil, nil
	}
	was, then := r.planScore(best)
	r.worst = was
	r.admit(core, r.search.o.Of(&core))
	if len(r.nodes) == 0 {
		return nil, nil
	}
	if n := r.nodes[0]; !r.leavesOrders() {
		orders := r.b.Market.Just(func(vendor string) float64 { return float64(best.ShippingBy[vendor]) })
		n.orders, n.sharp = &orders, true
	}
	if err := r.run(ctx); err != nil || len(r.ranked) == 0 {
		return nil, err
	}
	found := &r.ranked[0].plan
	if first, second := r.planScore(found); !found.Proven || first != was || second != then || !slices.Equal(found.Bill, best.Bill) {
		return nil, nil
	}
	return audited(p, found)
}
