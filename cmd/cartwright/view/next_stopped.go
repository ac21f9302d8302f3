package view

import (
	"fmt"

	"cartwright/optimize/next"
)

// target names the plan that is saved for.
func (n Next) target() string {
	p := n.Sequence.Target
	switch {
	case p.Rank > 1 && !p.Proven:
		return fmt.Sprintf("plan %d as found so far", p.Rank)
	case p.Rank > 1:
		return fmt.Sprintf("plan %d", p.Rank)
	case !p.Proven:
		return "the cheapest plan found so far"
	}
	return "the cheapest plan"
}

// lacks says what is not known where the search was stopped.
func (n Next) lacks() []string {
	q := n.Sequence
	switch {
	case q.Complete || q.Target == nil:
		return nil
	case q.Target.Proven && len(q.Months) > 0:
		return []string{"NOT COMPLETE: stopped before it was known whether another order of purchases has more energy on the cart on the way. The plan, its cost and the month are proven."}
	case q.Target.Proven:
		return []string{"NOT COMPLETE: stopped before it was known in which order to buy the parts. The plan, its cost and the month are proven."}
	}
	words := "NOT PROVEN: stopped before it was known whether another plan costs less, and is reached sooner."
	if len(q.Months) == 0 {
		words += " In which order to buy the parts is not known either."
	}
	return []string{words}
}

// unordered shows what the target buys and sells in all, where it is not known in which month what.
func (n Next) unordered() section {
	t := n.Sequence.Target
	all := next.Month{Shipping: t.Shipping, Tax: t.Tax}
	for _, l := range t.Bill {
		one := next.Purchase{Part: l.Part, Kind: l.Kind, Unit: l.Unit, Vendor: l.Vendor, UnitPrice: l.UnitPrice}
		if one.Quantity, one.Line = l.Buy, l.Line; l.Buy > 0 {
			all.Buy = append(all.Buy, one)
		}
		if one.Quantity, one.Line = l.Sell, l.Credit; l.Sell > 0 {
			all.Sell = append(all.Sell, one)
		}
	}
	s := n.list(&all)
	s.title = "Shopping list for all of it"
	return s
}
