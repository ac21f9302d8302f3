package optimize

import (
	"context"
	"math"

	"cartwright/optimize/milp"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// findStages finds every core that can stand safely on the cart from what is owned, with a set of the
// early sales made, and from parts of the target; and for each the least of the target's parts it needs.
func (w *way) findStages(ctx context.Context, sold int) ([]stage, error) {
	b, err := w.partialBench(w.holdings(nil, sold))
	if err != nil || len(b.reasons) > 0 {
		return nil, err
	}
	var list []stage
	o := newBounds(b, b.market)
	for v := range b.supplies {
		for g, members := range b.groups {
			counts := make([]int, len(members))
			for next(counts, func(j int) int { return b.stacks[members[j]].most }) {
				c := coreOf(v, g, counts)
				f := o.of(&c)
				if o.hopeless(f) || !o.serves(&c, f) {
					continue
				}
				a := b.solve(ctx, &c, ask{by: ByCost})
				if a.err != nil {
					return nil, a.err
				}
				if a.status == milp.Stopped || a.status == milp.GaveUp {
					return nil, ErrUnknown
				}
				if a.status.HasPoint() {
					list = append(list, stage{usable: f.usableWh, needs: w.needsOf(b, &a.choice), plan: w.owned(b.finish(&a.choice))})
				}
			}
		}
	}
	return list, nil
}

// next counts up like an odometer whose j-th wheel goes up to most(j); it reports false after the last.
func next(counts []int, most func(j int) int) bool {
	for j := range counts {
		if counts[j] < most(j) {
			counts[j]++
			return true
		}
		counts[j] = 0
	}
	return false
}

// partialBench lays out the carts on the way: all limits of safety hold, but autonomy, recharge and the
// loads' peaks need not be met yet. The target's lines can be bought at the target's prices, no more of
// each than the target has.
func (w *way) partialBench(have []scenarios.Holding) (*bench, error) {
	s := *w.p.Scenario
	s.Have, s.AutonomyH, s.Recharge = have, 0, nil
	b, err := newBench(Problem{&s, w.p.Catalog}, &laidBefore{})
	if err != nil {
		return nil, err
	}
	b.partial = true
	for i := range b.market.articles {
		a := &b.market.articles[i]
		a.offers, a.buyable = nil, 0
		if a.kind == kindCableEnd && a.cents == 0 {
			a.buyable = math.Inf(1)
		}
	}
	for _, l := range w.lines {
		a := b.market.part(l.bill.Part)
		if l.bill.Kind == kindCableEnd {
			a = b.market.end(l.bill.Part)
		}
		a.buyable += l.bill.Buy
		a.cents = 100 * l.bill.UnitPrice
	}
	b.layAll()
	return b, nil
}

// needsOf returns how much of each line of the target a choice buys. A part of which the target has two
// lines takes from the first as far as it goes.
func (w *way) needsOf(b *bench, c *choice) []float64 {
	needs := make([]float64, len(w.lines))
	quantities := b.quantities(c)
	for i := range b.market.articles {
		a := &b.market.articles[i]
		buy := quantities[i]
		if got, special := c.bought[i]; special {
			buy = 0
			for _, n := range got.buy {
				buy += n
			}
		}
		for j := range w.lines {
			l := &w.lines[j].bill
			if l.Part != a.id || l.Kind != a.kind || buy <= 0 {
				continue
			}
			needs[j] = math.Min(buy, l.Buy)
			buy -= needs[j]
		}
	}
	return needs
}

// owned makes a plan one of parts that are all owned: what it says to buy is bought by the time it stands.
// Crimped ends are never owned; they stay the plan's only cost.
func (w *way) owned(p plan.Plan) plan.Plan {
	var bill []plan.Line
	was := p.Cost
	p.Spend, p.Shipping, p.Credit = 0, 0, 0
	for _, l := range p.Bill {
		if l.Quantity <= 0 {
			continue
		}
		l.Sell, l.Credit = 0, 0
		if l.Kind != kindCableEnd {
			l.Have, l.Buy, l.Line, l.Vendor = l.Quantity, 0, 0, ""
		}
		p.Spend += l.Line
		bill = append(bill, l)
	}
	p.Bill = bill
	p.Tax = plan.Money(math.Round(w.p.Scenario.Tax * float64(p.Spend)))
	p.Cost = p.Spend + p.Tax
	p.CostPerUsableKWh = p.Cost.Units() / p.UsableKWh
	if was != 0 {
		p.CostPerLifetimeKWh *= p.Cost.Units() / was.Units()
	}
	return p
}
