package search

import (
	"context"
	"slices"

	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// Still returns the best plan of a problem which allows nothing better than a plan that is given, where it is that plan;
// nil where that is not known. Limits that are tighter than those it was the best of are one such problem, limits between
// those and looser ones that it is the best of, too, another. Of plans that are as good none comes first that did not
// before. So one core is solved, at the orders it was bought at, instead of all searched.
func Still(ctx context.Context, p question.Problem, before *bench.Before, by question.By, best *plan.Plan) (*plan.Plan, error) {
	b, err := bench.Lay(ctx, p, "", before)
	if err != nil {
		return nil, err
	}
	r := &ranking{search: unopened(b, by, 1), o: question.Options{Plans: 1, By: by}.WithDefaults(p)}
	core, ok := b.CoreLike(&best.Core)
	if r.search.o == nil || !ok {
		return nil, nil
	}
	was, then := r.planScore(best)
	r.worst = was
	r.admit(core, r.search.o.Of(&core))
	if len(r.nodes) == 0 {
		return nil, nil
	}
	if n := r.nodes[0]; !r.leavesOrders() {
		orders := b.Market.Just(func(vendor string) float64 { return float64(best.ShippingBy[vendor]) })
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
