package why

import (
	"context"
	"errors"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/rank"
	"cartwright/optimize/relax"
	"cartwright/optimize/search"
)

// PartAnswer says why a part is or is not in the best plan.
type PartAnswer struct {
	Part   string
	Best   *plan.Plan
	InBest bool
	// With is the cheapest plan that has the part, whatever the budget; nil where no plan can have it.
	With *plan.Plan
	// Costs is how much more With costs than Best, in currency units.
	Costs float64
	// Price is the part's price now, the lowest that a vendor asks where there are offers, and EntersAt the
	// highest whole-cent price, shipping included, at which some best plan has it; both in currency units for one
	// piece, or a metre of what is bought by length. EntersAt is meaningless unless Priced.
	Price    float64
	EntersAt float64
	Priced   bool
	// StaysOut says that the part is in no best plan even if it is free.
	StaysOut bool
	// KeptOutBy names, where no plan can have the part, the limits each of which alone keeps it out: without that
	// limit some plan could have it. Where there are none, Unfit says that no plan has it whatever the limits: it does
	// not fit the bus, the loads or the rules, or nothing asks for it.
	KeptOutBy []string
	Unfit     bool
	// Reasons says, where no plan can have the part and no limit is to blame, which condition it does not meet:
	// the figures, and where in the files they are.
	Reasons []string
	// At is the best plan with the part at the price EntersAt: the quantity may differ from With's.
	At *plan.Plan
}

// ExplainPart finds the cheapest plan that has a part, and the price below which the part is worth buying. Both ignore
// the budget, which a low enough price meets; the price also ignores offers of the part.
func ExplainPart(ctx context.Context, p question.Problem, id string) (*PartAnswer, error) {
	best, err := search.First(ctx, p, &bench.Before{}, question.ByCost, false)
	if err != nil {
		return nil, err
	}
	a := &PartAnswer{Part: id, Best: best, InBest: best != nil && installed(best, id) > 0}
	a.Price = priceNow(p, id) / 100
	p = relax.With(p, []relax.Lever{relax.BudgetLever(p.Scenario)}, []float64{math.Inf(1)})
	if a.With, err = planWith(ctx, p, id); err != nil {
		return nil, err
	}
	switch {
	case a.With == nil:
		open, err := bench.Lay(ctx, relax.Opened(p, relax.Levers(p.Scenario)), "", &bench.Before{})
		if err != nil {
			return nil, err
		}
		if a.Reasons = open.WhyNot(id); len(a.Reasons) > 0 {
			a.Unfit = true
			return a, nil
		}
		return a, a.findObstacles(ctx, p)
	case best == nil:
		return a, nil
	}
	a.Costs = (a.With.Cost - best.Cost).Units()
	if a.InBest {
		return a, nil
	}
	if bought(a.With, id) == 0 {
		return a, nil // it is owned already, so its price does not matter
	}
	return a, a.findPrice(ctx, p)
}

// findObstacles finds the limits that keep a part out of every plan. What is not known in the time given is left out.
func (a *PartAnswer) findObstacles(ctx context.Context, p question.Problem) error {
	all := relax.Levers(p.Scenario)
	var ends []float64
	for i := range all {
		ends = append(ends, all[i].End)
		found, err := planWith(ctx, relax.With(p, all[i:i+1], ends[i:]), a.Part)
		if err != nil && !errors.Is(err, question.ErrUnknown) {
			return err
		}
		if found != nil {
			a.KeptOutBy = append(a.KeptOutBy, all[i].Name)
		}
	}
	if len(a.KeptOutBy) > 0 {
		return nil
	}
	found, err := planWith(ctx, relax.With(p, all, ends), a.Part)
	if errors.Is(err, question.ErrUnknown) {
		return nil
	}
	a.Unfit = err == nil && found == nil
	return err
}

// planWith returns the cheapest plan that has a part, nil where there is none.
func planWith(ctx context.Context, p question.Problem, id string) (*plan.Plan, error) {
	r, err := rank.Plans(ctx, p, question.Options{Plans: 1, Must: id})
	if err != nil {
		return nil, err
	}
	if len(r.Plans) == 0 {
		if r.Solver.Status != question.Infeasible {
			return nil, question.ErrUnknown
		}
		return nil, nil
	}
	return &r.Plans[0], nil
}

// installed returns how much of a part a plan has, bought how much of it a bill buys.
func installed(p *plan.Plan, id string) float64 {
	n := 0.0
	for _, l := range p.Bill {
		if l.Part == id && !plan.IsEnd(l.Kind) {
			n += l.Quantity
		}
	}
	return n
}

func bought(p *plan.Plan, id string) float64 {
	n := 0.0
	for _, l := range p.Bill {
		if l.Part == id && !plan.IsEnd(l.Kind) {
			n += l.Buy
		}
	}
	return n
}

// findPrice finds EntersAt. The cost of the cheapest plan with the part is a concave, piecewise linear function of
// its price, with the quantity bought as the slope. So Newton's step from a price that is too high lands at or below
// the price looked for, and those after it climb to it, in no more steps than there are quantities. Prices are whole
// cents: at the end one cent more is too much.
func (a *PartAnswer) findPrice(ctx context.Context, p question.Problem) error {
	target := a.Best.Cost
	price := math.Round(100 * a.Price) // of one, in cents
	low, high := -1.0, math.Inf(1)     // the part is in a best plan at low, if that is a price, in none at high
	for high-low > 1 {
		at, err := planWith(ctx, priced(p, a.Part, price), a.Part)
		if err != nil || at == nil {
			return err
		}
		n := bought(at, a.Part) * (1 + p.Scenario.Tax)
		if at.Cost <= target {
			low = price
			a.EntersAt, a.Priced, a.At = price/100, true, at
		} else {
			high = price
		}
		switch {
		case n > 0:
			price += math.Floor(float64(target-at.Cost)/n + 1e-9)
			price = math.Min(math.Max(price, low+1), high-1)
		case math.IsInf(high, 1):
			return nil // owned pieces serve at any price
		default: // so dear that owned pieces are used instead of sold: there is no slope to go by
			price = math.Floor((low + high) / 2)
		}
	}
	a.StaysOut = high == 0
	return nil
}

// priceNow returns the price of a part in cents: its own, or the lowest that a vendor asks.
func priceNow(p question.Problem, id string) float64 {
	a := market.New(p.Scenario, p.Catalog).Part(id)
	if len(a.Offers) == 0 {
		return a.Cents
	}
	least := math.Inf(1)
	for _, o := range a.Offers {
		least = math.Min(least, a.OfferCents(o))
	}
	return least
}

// priced returns a copy of a problem in which a part has another price, in cents, and no offers.
func priced(p question.Problem, id string, cents float64) question.Problem {
	c := p.Catalog.Clone()
	if e, ok := c.Find(id); ok {
		e.Part.Price = catalog.Cents(cents)
	}
	if m, byLength := c.Metre(id); byLength {
		*m.Price, *m.Cents = 0, cents
	}
	kept := c.Offers[:0]
	for _, o := range c.Offers {
		if o.PartID != id {
			kept = append(kept, o)
		}
	}
	c.Offers = kept
	p.Catalog = c
	return p
}
