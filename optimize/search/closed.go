package search

import (
	"context"
	"slices"

	"cartwright/optimize/bench"
	"cartwright/optimize/market"
	"cartwright/optimize/milp"
	"cartwright/optimize/model"
)

// mostClosed is how often, for each core, the offers are looked for whose want leaves it without a plan.
const mostClosed = 8

// wants notes why a core has no plan at some orders. Whether parts fit each other and the cart does not depend on what
// they cost, so it is either that some offers are closed, or nothing to do with orders at all. Vendor after vendor all
// offers are opened, and stay open where the core has no plan even then: with no more open than in the end there is none
// at any other orders either. Not asked where a dear plan may have been left out.
func (r *ranking) wants(ctx context.Context, n *node) error {
	key := n.core.Key()
	if n.orders == nil || r.mostOf(n) > 0 || r.most > 0 || len(r.closed[key]) == mostClosed {
		return nil
	}
	open := slices.Clone(n.orders.Open)
	for vendor, all := range r.b.Market.AnyOrder().Open {
		level := open[vendor]
		if level == all {
			continue
		}
		open[vendor] = all
		a := model.Solve(ctx, r.b, &n.core, model.Ask{By: r.by, Market: r.b.Market.At(open), Keep: r.o.Witness != nil})
		if r.count(&n.core, &a); a.Err != nil {
			return a.Err
		}
		if a.Status != milp.Infeasible {
			open[vendor] = level
		}
	}
	r.closed[key] = append(r.closed[key], open)
	return nil
}

// wanting reports whether a core is known to have no plan at some orders, for want of offers.
func (r *ranking) wanting(c *bench.Core, orders *market.Orders) bool {
	return orders != nil && slices.ContainsFunc(r.closed[c.Key()], func(open market.Open) bool {
		for vendor, level := range orders.Open {
			if level > open[vendor] {
				return false
			}
		}
		return true
	})
}
