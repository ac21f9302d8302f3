package next

import (
	"context"
	"errors"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/bound"
	"cartwright/optimize/choice"
	"cartwright/optimize/energy"
	"cartwright/optimize/milp"
	"cartwright/optimize/model"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// findStages finds every core that makes a safe cart from owned parts, with a set of the early sales made, and from parts
// of the target; and for each the least of the target's parts it needs. It reports false where some may lack, or need
// less, since the context ended or the solver gave up.
func (w *way) findStages(ctx context.Context, sold int) (list []stage, whole bool, err error) {
	b, err := w.partialBench(ctx, w.holdings(nil, sold))
	switch {
	case errors.Is(err, question.ErrUnknown):
		return nil, false, nil
	case err != nil:
		return nil, false, err
	case len(b.Reasons) > 0:
		return nil, true, nil
	}
	if sold == 0 {
		w.noteUnfit(b)
	}
	whole = true
	o := bound.New(b)
	for v := range b.Supplies {
		for g, members := range b.Groups {
			counts := make([]int, len(members))
			for next(counts, func(j int) int { return b.Stacks[members[j]].Most }) {
				if ctx.Err() != nil {
					return list, false, nil
				}
				c := bench.CoreOf(v, g, counts)
				f := o.Of(&c)
				if o.Hopeless(f) || !o.Serves(&c, f) {
					if sold == 0 {
						w.note(b, o, &c, f)
					}
					continue
				}
				a := model.Solve(ctx, b, &c, model.Ask{By: question.ByCost})
				if a.Err != nil {
					return nil, false, a.Err
				}
				whole = whole && (a.Status == milp.Proved || a.Status == milp.Infeasible)
				switch {
				case a.Status.HasPoint():
					list = append(list, stage{usable: f.UsableWh, needs: w.needsOf(b, &a.Choice), plan: w.owned(choice.Finish(b, &a.Choice))})
				case a.Status == milp.Infeasible && sold == 0:
					w.note(b, o, &c, f)
				}
			}
		}
	}
	return list, whole, nil
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
// loads' peaks need not be met yet. The target's lines can be bought at the target's prices, at most as many of each as
// the target buys.
func (w *way) partialBench(ctx context.Context, have []scenarios.Holding) (*bench.Bench, error) {
	s := *w.p.Scenario
	s.Have, s.AutonomyH, s.Recharge = have, 0, nil
	b, err := bench.New(question.Problem{Scenario: &s, Catalog: w.p.Catalog}, &bench.Before{})
	if err != nil {
		return nil, err
	}
	b.Partial = true
	for i := range b.Market.Articles {
		a := &b.Market.Articles[i]
		a.Offers, a.Buyable = nil, 0
		if plan.IsEnd(a.Kind) && a.Cents == 0 {
			a.Buyable = math.Inf(1)
		}
	}
	for _, l := range w.lines {
		a := b.Market.Part(l.bill.Part)
		if plan.IsEnd(l.bill.Kind) {
			a = b.Market.End(l.bill.Part)
		}
		a.Buyable += l.bill.Buy
		a.Cents = 100 * l.bill.UnitPrice
	}
	return b, b.LayAll(ctx)
}

// needsOf returns how much of each line of the target a choice buys. Where the target has two lines of a part, the first
// is used up before the second.
func (w *way) needsOf(b *bench.Bench, c *choice.Choice) []float64 {
	needs := make([]float64, len(w.lines))
	quantities := choice.Quantities(b, c)
	for i := range b.Market.Articles {
		a := &b.Market.Articles[i]
		buy := quantities[i]
		if got, special := c.Bought[i]; special {
			buy = 0
			for _, n := range got.Buy {
				buy += n
			}
		}
		for j := range w.lines {
			l := &w.lines[j].bill
			if l.Part != a.ID || l.Kind != a.Kind || buy <= 0 {
				continue
			}
			needs[j] = math.Min(buy, l.Buy)
			buy -= needs[j]
		}
	}
	return needs
}

// owned turns a plan into one whose parts are all owned: what it says to buy has been bought by then.
// Ends are never owned; they remain the plan's only cost.
func (w *way) owned(p plan.Plan) plan.Plan {
	var bill []plan.Line
	was := p.Cost
	p.Spend, p.Shipping, p.Credit = 0, 0, 0
	for _, l := range p.Bill {
		if l.Quantity <= 0 {
			continue
		}
		l.Sell, l.Credit = 0, 0
		if !plan.IsEnd(l.Kind) {
			l.Have, l.Buy, l.Line, l.Vendor = l.Quantity, 0, 0, ""
		}
		p.Spend += l.Line
		bill = append(bill, l)
	}
	p.Bill = bill
	p.Tax = catalog.RoundCents(w.p.Scenario.Tax * float64(p.Spend))
	p.Cost = p.Spend + p.Tax
	p.CostPerUsableKWh = p.Cost.Units() / p.UsableKWh
	p.CostPerExtraKWh = energy.CostPerExtraKWh(p.Cost.Units(), 1000*p.UsableKWh, energy.OwnedWh(w.p.Scenario, w.p.Catalog))
	if was != 0 {
		p.CostPerLifetimeKWh *= p.Cost.Units() / was.Units()
	}
	return p
}
