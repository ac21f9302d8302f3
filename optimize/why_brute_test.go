package optimize_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/why"
	"cartwright/scenarios"
)

// casesOfWhyPart are the random questions after a part that are compared with an enumeration.
const casesOfWhyPart = 80

// The cheapest plan that has a part, and the highest price at which a cheapest plan has it, are those of an
// enumeration of all plans and a scan over all prices in whole cents. In every other case everything costs
// whole cents, so that nothing is rounded and the figures have to be the same to the cent.
func TestBruteForceWhyPart(t *testing.T) {
	priced, stays, kept := 0, 0, 0
	for asked, seed := 0, uint64(7e6); asked < casesOfWhyPart; seed++ {
		p := randomProblem(seed)
		if seed%2 == 0 {
			wholeCents(p)
		}
		all := p.Catalog.All()
		id := all[newDice(seed).IntN(len(all))].ID
		if seed%3 == 0 {
			spendAll(t, p)
		}
		got, err := why.ExplainPart(context.Background(), p, id)
		if err != nil {
			t.Errorf("seed %d, %s: %v", seed, id, err)
			continue
		}
		if got.Best == nil {
			continue // nothing to enter
		}
		asked++
		same := sameWith(t, seed, p, got)
		if got.With == nil {
			kept += checkObstacles(t, seed, p, got)
		}
		if !same || got.InBest {
			continue
		}
		switch {
		case got.Priced:
			priced++
			checkEntry(t, seed, p, got)
		case got.StaysOut:
			stays++
			checkEntry(t, seed, p, got)
		case boughtOf(got.With.Bill, id) > 0:
			t.Errorf("seed %d, %s: neither a price nor a reason for none", seed, id)
		}
	}
	t.Logf("%d have a price, %d stay out even as a gift, %d are kept out by a limit", priced, stays, kept)
	if priced < casesOfWhyPart/6 || stays == 0 || kept == 0 {
		t.Errorf("%d parts with a price, %d that stay out and %d that are kept out are too few to tell much", priced, stays, kept)
	}
}

// spendAll makes the budget just enough for the best plan, so that any dearer one is beyond it.
func spendAll(t *testing.T, p question.Problem) {
	t.Helper()
	r, err := optimize.Rank(context.Background(), p, question.Options{Plans: 1})
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Plans) > 0 {
		p.Scenario.Limits.Budget = catalog.Cents(r.Plans[0].Cost) - p.Scenario.Sold
	}
}

// wholeCents changes a problem's prices a little, so that whatever is bought costs whole cents: there is no
// tax, and an eighth of a metre of cable costs whole cents.
func wholeCents(p question.Problem) {
	whole := func(centsPerM *float64) { *centsPerM = eighths * math.Round(*centsPerM/eighths) }
	p.Scenario.Tax = 0
	for i := range p.Catalog.Cables {
		whole(&p.Catalog.Cables[i].CentsPerM)
	}
	for i := range p.Catalog.Offers {
		whole(&p.Catalog.Offers[i].CentsPerM)
	}
	for i := range p.Scenario.Have {
		whole(&p.Scenario.Have[i].SellCentsPerM)
	}
}

// roundedBy returns by how many cents a plan's bill may differ from one that is not rounded.
func roundedBy(_ uint64, p *plan.Plan) float64 {
	return roundingCents(p) // by the slack of cables even whole cents a metre have fractions
}

// sameWith compares the cheapest plan and the cheapest that has the part with the enumeration, and reports
// whether there is one to go on with.
func sameWith(t *testing.T, seed uint64, p question.Problem, got *why.PartAnswer) bool {
	t.Helper()
	least := leastByQuantity(t, p, got.Part)
	with, any := math.Inf(1), math.Inf(1)
	for q, cost := range least {
		any = min(any, cost)
		if q > 0 {
			with = min(with, cost)
		}
	}
	rounding := roundedBy(seed, got.Best)
	if math.Abs(float64(got.Best.Cost)-any) > rounding {
		t.Errorf("seed %d: the best plan costs %s; the enumeration's %g cents", seed, got.Best.Cost, any)
		return false
	}
	if got.With == nil || math.IsInf(with, 1) {
		if got.With != nil || !math.IsInf(with, 1) {
			t.Errorf("seed %d, %s: a plan with it: %v; in the enumeration for %g cents", seed, got.Part, got.With != nil, with)
		}
		return false
	}
	rounding = roundedBy(seed, got.With)
	if math.Abs(float64(got.With.Cost)-with) > rounding {
		t.Errorf("seed %d, %s: the cheapest plan with it costs %s; in the enumeration %g cents", seed, got.Part, got.With.Cost, with)
		return false
	}
	if got.InBest && with > any+rounding {
		t.Errorf("seed %d, %s: said to be in the best plan, but plans with it cost %g cents, without %g", seed, got.Part, with, any)
	}
	return true
}

// checkEntry scans all prices in whole cents for the highest at which a cheapest plan has the part.
func checkEntry(t *testing.T, seed uint64, p question.Problem, got *why.PartAnswer) {
	t.Helper()
	free := unpriced(p, got.Part)
	target := float64(got.Best.Cost)
	var some []cheapest // plans that have it
	for q, base := range leastByQuantity(t, free, got.Part) {
		if q > 0 {
			some = append(some, cheapest{q, base})
		}
	}
	owned := ownedPart(p.Scenario, got.Part)
	at := func(price float64) float64 {
		cost := math.Inf(1)
		for _, c := range some {
			cost = min(cost, c.base+owned.cents(c.quantity, price))
		}
		return cost
	}
	const dearest = 200000 // cents, far above any price drawn
	last := -1.0
	for price := 0.0; price <= dearest; price++ {
		if at(price) > target+hair {
			break // more of a price never makes anything cheaper
		}
		last = price
	}
	have := -1.0
	if got.Priced {
		have = math.Round(100 * got.EntersAt)
	}
	// Where bills are rounded and the enumeration is not, and only that decides, either price is right.
	rounding := roundedBy(seed, got.Best) + roundedBy(seed, got.With)
	if e, _ := p.Catalog.Find(got.Part); e.Kind == catalog.KindCable {
		rounding++ // a price in whole cents a metre
	}
	if rounding < 1 {
		rounding = -1 // nothing is rounded
	}
	for price := min(have, last) + 1; price <= max(have, last); price++ {
		if math.Abs(at(price)-target) > rounding {
			t.Errorf("seed %d, %s: enters at %g cents, by the scan at %g; a plan with it costs %g cents at %g, the best without %g",
				seed, got.Part, have, last, at(price), price, target)
			return
		}
	}
	if got.Priced && boughtOf(got.At.Bill, got.Part) <= 0 {
		t.Errorf("seed %d, %s: the plan at its price does not buy it", seed, got.Part)
	}
}

// unpriced returns a problem in which a part costs nothing, is not owned and has no offers.
func unpriced(p question.Problem, id string) question.Problem {
	s, c := *p.Scenario, p.Catalog.Clone()
	s.Have = slices.DeleteFunc(slices.Clone(s.Have), func(h scenarios.Holding) bool { return h.PartID == id })
	c.Offers = slices.DeleteFunc(c.Offers, func(o catalog.Offer) bool { return o.PartID == id })
	for i := range c.Cables {
		if c.Cables[i].ID == id {
			c.Cables[i].CentsPerM = 0
		}
	}
	e, _ := c.Find(id)
	e.Price = 0
	return question.Problem{Scenario: &s, Catalog: c}
}

// cheapest is the least cost of a plan that has so much of a part installed, the part left aside.
type cheapest struct{ quantity, base float64 }

// pledge is what is owned of a part, and what one of it sells for.
type pledge struct{ have, worth, tax float64 }

// ownedPart returns what is owned of a part.
func ownedPart(s *scenarios.Scenario, id string) pledge {
	p := pledge{tax: s.Tax}
	for _, h := range s.Have {
		if h.PartID != id {
			continue
		}
		p.have += h.Count
		if h.Sell != nil {
			if p.worth = float64(*h.Sell); h.ByLength {
				p.worth = h.SellCentsPerM
			}
		}
	}
	return p
}

// cents returns what so much of the part costs at a price in cents, with tax, less what is owned of it and
// sold: all owned pieces are used, or none where it is better to sell them.
func (p pledge) cents(quantity, price float64) float64 {
	with := func(used float64) float64 {
		return price*(1+p.tax)*(quantity-used) - p.worth*(p.have-used)
	}
	return min(with(0), with(min(p.have, quantity)))
}

// boughtOf returns how much of a part a bill buys.
func boughtOf(bill []plan.Line, id string) float64 {
	n := 0.0
	for _, l := range bill {
		if l.Part == id && l.Kind != "cable-end" {
			n += l.Buy
		}
	}
	return n
}
