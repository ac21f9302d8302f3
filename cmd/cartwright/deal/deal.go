// Package deal knows what becomes of what is owned, and of the money in hand, once something is bought or sold.
package deal

import (
	"slices"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Deal is what is bought and sold, from one plan, over some months, or by itself.
type Deal struct {
	Plan, Month                  int    // the rank of a plan, else the last of some months
	Part                         string // bought by itself
	Buy, Sell                    []next.Purchase
	Spend, Shipping, Tax, Credit plan.Money
	Cautions                     []string
}

// OfPlan is the deal of a plan's bill.
func OfPlan(p *plan.Plan, cautions []string) Deal {
	d := Deal{Plan: p.Rank, Spend: p.Spend, Shipping: p.Shipping, Tax: p.Tax, Credit: p.Credit, Cautions: cautions}
	for _, l := range p.Bill {
		one := next.Purchase{Part: l.Part, Kind: l.Kind, Unit: l.Unit, Vendor: l.Vendor, UnitPrice: l.UnitPrice}
		if l.Buy > 0 {
			one.Quantity, one.Line = l.Buy, l.Line
			d.Buy = append(d.Buy, one)
		}
		if l.Sell > 0 {
			one.Quantity, one.Line, one.Vendor, one.UnitPrice = l.Sell, l.Credit, "", l.Credit.Units()/l.Sell
			d.Sell = append(d.Sell, one)
		}
	}
	return d
}

// OfMonths is the deal of some months of a purchase sequence; what is bought of a part at one price in
// several months is one purchase.
func OfMonths(months []next.Month, cautions []string) Deal {
	d := Deal{Month: months[len(months)-1].Month, Cautions: cautions}
	add := func(list *[]next.Purchase, p next.Purchase) {
		i := slices.IndexFunc(*list, func(o next.Purchase) bool {
			return o.Part == p.Part && o.Kind == p.Kind && o.Vendor == p.Vendor && o.UnitPrice == p.UnitPrice
		})
		if i < 0 {
			*list = append(*list, p)
			return
		}
		(*list)[i].Quantity += p.Quantity
		(*list)[i].Line += p.Line
	}
	for _, m := range months {
		for _, p := range m.Buy {
			add(&d.Buy, p)
			d.Spend += p.Line
		}
		for _, p := range m.Sell {
			add(&d.Sell, p)
			d.Credit += p.Line
		}
		d.Shipping += m.Shipping
		d.Tax += m.Tax
	}
	return d
}

// Answer works out what is owned and in hand after the deal.
func (d Deal) Answer(p question.Problem) view.Bought {
	b := view.Bought{Scenario: p.Scenario, Catalog: p.Catalog, Plan: d.Plan, Month: d.Month, Part: d.Part, Buy: d.Buy, Sell: d.Sell,
		Spend: d.Spend, Shipping: d.Shipping, Tax: d.Tax, Credit: d.Credit, Cautions: d.Cautions}
	b.Owned.Have = d.holdings(p.Scenario.Have)
	s := p.Scenario
	paid := catalog.Cents(d.Spend + d.Shipping + d.Tax)
	hand := s.Sold + catalog.Cents(d.Credit)
	b.Owned.Sold = max(0, hand-paid)
	rest := max(0, paid-hand)
	if s.Savings == nil {
		b.Short = plan.Money(rest)
		return b
	}
	income := catalog.Cents(d.Month) * s.Savings.PerMonth
	b.Income = plan.Money(income)
	if rest > s.Savings.Now+income {
		b.Short = plan.Money(rest)
		return b
	}
	now := s.Savings.Now + income - rest
	b.Owned.SavingsNow = &now
	return b
}

// holdings returns what is owned after the deal: what was owned before in its order, then what is new in the
// order of the bill. A part of which nothing is left is owned no more.
func (d Deal) holdings(before []scenarios.Holding) []scenarios.Holding {
	have := slices.Clone(before)
	change := func(p next.Purchase, sign float64) {
		i := slices.IndexFunc(have, func(h scenarios.Holding) bool { return h.PartID == p.Part })
		if i < 0 {
			i = len(have)
			have = append(have, scenarios.Holding{PartID: p.Part, ByLength: p.Unit == "m" || plan.IsEnd(p.Kind)})
		}
		if plan.IsEnd(p.Kind) {
			have[i].Ends += int(sign * p.Quantity)
		} else {
			have[i].Count += sign * p.Quantity
		}
	}
	for _, p := range d.Sell {
		change(p, -1)
	}
	for _, p := range d.Buy {
		change(p, 1)
	}
	const hair = 1e-9 // m, against the rounding of sums
	return slices.DeleteFunc(have, func(h scenarios.Holding) bool { return h.Count <= hair && h.Ends <= 0 && sold(d, h.PartID) })
}

// sold reports whether some of a part is sold.
func sold(d Deal, id string) bool {
	return slices.ContainsFunc(d.Sell, func(p next.Purchase) bool { return p.Part == id })
}
