package search

import (
	"context"
	"math"
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
// offers are opened, and stay open where the core has no plan even then: with these offers or fewer the core has no plan,
// whatever is paid for shipping. Not asked where a dear plan may have been left out.
func (r *ranking) wants(ctx context.Context, n *node) error {
	key := n.core.Key()
	if n.orders == nil || r.mostOf(n) > 0 || r.most > 0 || len(r.closed[key]) == mostClosed {
		return nil
	}
	open := slices.Clone(n.orders.Open)
	if r.b.Scenario.Limits.Budget != math.MaxInt64 { // it may be the shipping that is too much
		if none, err := r.hasNone(ctx, &n.core, open); err != nil || !none {
			return err
		}
	}
	for vendor, all := range r.b.Market.AnyOrder().Open {
		level := open[vendor]
		if level == all {
			continue
		}
		open[vendor] = all
		none, err := r.hasNone(ctx, &n.core, open)
		if err != nil {
			return err
		}
		if !none {
			open[vendor] = level
		}
	}
	r.closed[key] = append(r.closed[key], open)
	return nil
}

// hasNone reports whether it is proved that a core has no plan at some offers without any shipping.
func (r *ranking) hasNone(ctx context.Context, c *bench.Core, open market.Open) (bool, error) {
	a := model.Solve(ctx, r.b, c, model.Ask{By: r.by, Market: r.b.Market.At(open), Keep: r.o.Witness != nil})
	r.count(c, &a)
	return a.Status == milp.Infeasible, a.Err
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
