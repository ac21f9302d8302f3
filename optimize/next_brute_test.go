package optimize_test

import (
	"context"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// casesOfNext are the tiny problems whose purchase sequence is compared with all timings there are.
const casesOfNext = 60

// The purchase sequence reaches a whole cart in the first month possible, for the least outlay, with the
// most energy on the way: nothing that could be bought and sold in those months does better.
func TestBruteForceNext(t *testing.T) {
	cases, onTheWay := 0, 0
	for seed := uint64(8e6); cases < casesOfNext; seed++ {
		p := tinyProblem(seed)
		carts := everyCart(t, p)
		g, ok := newTimings(p, carts)
		if !ok {
			continue
		}
		least := g.leastOutlay()
		if math.IsInf(least, 1) && seed%8 != 0 {
			continue // enough of those
		}
		cases++
		p.Scenario.Savings = tinySavings(seed, least)
		if comparedNext(t, seed, p, g, least) {
			onTheWay++
		}
	}
	if onTheWay < casesOfNext/3 {
		t.Errorf("in %d of %d cases something stands on the way: too few to tell much", onTheWay, cases)
	}
}

// tinySavings draws savings with which an amount is there after a few months.
func tinySavings(seed uint64, cents float64) *scenarios.Savings {
	d := newDice(seed + 1)
	if math.IsInf(cents, 1) {
		return &scenarios.Savings{PerMonth: 100}
	}
	months := d.from(1, 5)
	s := &scenarios.Savings{Now: catalog.Cents(100 * math.Floor(cents*d.between(0.2, 0.9, 0.1)/100))}
	if s.Now = max(0, s.Now); months > 0 {
		s.PerMonth = catalog.Cents(100 * math.Ceil((cents-float64(s.Now))/float64(months)/100))
	}
	s.PerMonth = max(100, s.PerMonth)
	return s
}

// comparedNext compares one case, and reports whether something stands on the cart on the way.
func comparedNext(t *testing.T, seed uint64, p question.Problem, g *timings, least float64) bool {
	t.Helper()
	got, err := next.Find(context.Background(), p, next.Options{})
	if err != nil {
		t.Errorf("seed %d: %v", seed, err)
		return false
	}
	if math.IsInf(least, 1) || got.Target == nil {
		if got.Target != nil || !math.IsInf(least, 1) {
			t.Errorf("seed %d: a target: %v; the least outlay there is is %g cents", seed, got.Target != nil, least)
		}
		return false
	}
	now, perMonth := float64(p.Scenario.Savings.Now), float64(p.Scenario.Savings.PerMonth)
	if got.Reached > 8 {
		return false // the price of being cheap: hundreds of months at a unit each
	}
	month, outlay, energy, reached := g.best(now, perMonth, got.Reached)
	const kilo = 1000
	switch {
	case !reached || month != got.Reached:
		t.Errorf("seed %d: reached in month %d, %v in %d by the timings", seed, got.Reached, reached, month)
	case math.Abs(float64(got.Target.Cost)-outlay) > hair:
		t.Errorf("seed %d: costs %s, by the timings %g cents", seed, got.Target.Cost, outlay)
	case math.Abs(kilo*got.EnergyOnTheWay-energy) > 1e-6*max(1, energy):
		t.Errorf("seed %d: in %d months %.6f kWh on the way, by the timings %.6f", seed, month, got.EnergyOnTheWay, energy/kilo)
	}
	checkMonths(t, seed, p, got)
	return got.EnergyOnTheWay > 0
}

// checkMonths adds up the months of a sequence: cash is never below zero, and what is bought and sold makes
// the target's bill.
func checkMonths(t *testing.T, seed uint64, p question.Problem, got *next.Sequence) {
	t.Helper()
	var outlay plan.Money
	bought := map[string]float64{}
	for i := range got.Months {
		m := &got.Months[i]
		cash := plan.Money(p.Scenario.Savings.Now+p.Scenario.Sold) + plan.Money(m.Month)*plan.Money(p.Scenario.Savings.PerMonth) - outlay
		left := cash - m.Shipping - m.Tax
		for _, b := range m.Buy {
			left -= b.Line
			bought[b.Part+" "+b.Kind] += b.Quantity
		}
		for _, b := range m.Sell {
			left += b.Line
		}
		outlay += cash - left
		if m.Month != i || m.Cash != cash || m.Left != left || m.Outlay != outlay || left < 0 {
			t.Errorf("seed %d, month %d: cash %s, %s left, outlay %s; added up %s, %s and %s", seed, m.Month, m.Cash, m.Left, m.Outlay, cash, left, outlay)
		}
	}
	if outlay != got.Target.Cost {
		t.Errorf("seed %d: the months add up to %s, the target costs %s", seed, outlay, got.Target.Cost)
	}
	for _, l := range got.Target.Bill {
		if math.Abs(bought[l.Part+" "+l.Kind]-billed(got.Target, l.Part, l.Kind)) > 1e-9 {
			t.Errorf("seed %d: %g of %s are bought, the target's bill has %g", seed, bought[l.Part+" "+l.Kind], l.Part, l.Buy)
		}
	}
}

// billed returns how much of a part a bill buys in all its lines.
func billed(p *plan.Plan, part, kind string) float64 {
	n := 0.0
	for _, l := range p.Bill {
		if l.Part == part && l.Kind == kind {
			n += l.Buy
		}
	}
	return n
}
