package cli

import (
	"slices"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// deal is what is bought and sold, from one plan, over some months, or by itself.
type deal struct {
	plan, month                  int    // the rank of a plan, else the last of some months
	part                         string // bought by itself
	buy, sell                    []next.Purchase
	spend, shipping, tax, credit plan.Money
	cautions                     []string
}

// planDeal is the deal of a plan's bill.
func planDeal(p *plan.Plan, cautions []string) deal {
	d := deal{plan: p.Rank, spend: p.Spend, shipping: p.Shipping, tax: p.Tax, credit: p.Credit, cautions: cautions}
	for _, l := range p.Bill {
		one := next.Purchase{Part: l.Part, Kind: l.Kind, Unit: l.Unit, Vendor: l.Vendor, UnitPrice: l.UnitPrice}
		if l.Buy > 0 {
			one.Quantity, one.Line = l.Buy, l.Line
			d.buy = append(d.buy, one)
		}
		if l.Sell > 0 {
			one.Quantity, one.Line, one.Vendor, one.UnitPrice = l.Sell, l.Credit, "", l.Credit.Units()/l.Sell
			d.sell = append(d.sell, one)
		}
	}
	return d
}

// monthsDeal is the deal of some months of a purchase sequence; what is bought of a part at one price in
// several months is one purchase.
func monthsDeal(months []next.Month, cautions []string) deal {
	d := deal{month: months[len(months)-1].Month, cautions: cautions}
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
			add(&d.buy, p)
			d.spend += p.Line
		}
		for _, p := range m.Sell {
			add(&d.sell, p)
			d.credit += p.Line
		}
		d.shipping += m.Shipping
		d.tax += m.Tax
	}
	return d
}

// answer works out what is owned and in hand after the deal.
func (d deal) answer(p question.Problem) view.Bought {
	b := view.Bought{Scenario: p.Scenario, Catalog: p.Catalog, Plan: d.plan, Month: d.month, Part: d.part, Buy: d.buy, Sell: d.sell,
		Spend: d.spend, Shipping: d.shipping, Tax: d.tax, Credit: d.credit, Cautions: d.cautions}
	b.Owned.Have = d.holdings(p.Scenario.Have)
	s := p.Scenario
	paid := catalog.Cents(d.spend + d.shipping + d.tax)
	hand := s.Sold + catalog.Cents(d.credit)
	b.Owned.Sold = max(0, hand-paid)
	rest := max(0, paid-hand)
	if s.Savings == nil {
		b.Short = plan.Money(rest)
		return b
	}
	income := catalog.Cents(d.month) * s.Savings.PerMonth
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
func (d deal) holdings(before []scenarios.Holding) []scenarios.Holding {
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
	for _, p := range d.sell {
		change(p, -1)
	}
	for _, p := range d.buy {
		change(p, 1)
	}
	const hair = 1e-9 // m, against the rounding of sums
	return slices.DeleteFunc(have, func(h scenarios.Holding) bool { return h.Count <= hair && h.Ends <= 0 && sold(d, h.PartID) })
}

// sold reports whether some of a part is sold.
func sold(d deal, id string) bool {
	return slices.ContainsFunc(d.sell, func(p next.Purchase) bool { return p.Part == id })
}
