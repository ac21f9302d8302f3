package optimize

import (
	"context"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
)

// PartAnswer says why a part is or is not in the best plan.
type PartAnswer struct {
	Part   string     `json:"part"`
	Best   *plan.Plan `json:"best"`
	InBest bool       `json:"in_best"`
	// With is the cheapest plan that has the part; nil where no plan can have it.
	With *plan.Plan `json:"with,omitempty"`
	// Costs is how much more With costs than Best, in currency units.
	Costs float64 `json:"costs_more"`
	// Price is the part's price now, and EntersAt the highest whole-cent price at which some best plan has
	// it; both for one piece, or a metre of cable. EntersAt is below 0 where it would have to be paid for
	// taking, and meaningless unless Priced.
	Price    float64 `json:"price"`
	EntersAt float64 `json:"enters_at"`
	Priced   bool    `json:"priced"`
	// At is the best plan with the part at that price: the quantity may differ from With's.
	At *plan.Plan `json:"at,omitempty"`
}

// ExplainPart finds the cheapest plan that has a part, and the price at which the part would enter the
// best plan. Offers of the part are left aside for that price.
func ExplainPart(ctx context.Context, p Problem, id string) (*PartAnswer, error) {
	best, err := firstPlan(ctx, p, wiredOptions{}, ByCost, false)
	if err != nil {
		return nil, err
	}
	a := &PartAnswer{Part: id, Best: best, InBest: best != nil && installed(best, id) > 0}
	if a.With, err = planWith(ctx, p, id); err != nil || a.With == nil || best == nil {
		return a, err
	}
	a.Costs = (a.With.Cost - best.Cost).Units()
	if a.InBest {
		return a, nil
	}
	if bought(a.With, id) == 0 {
		return a, nil // it is owned already: no price stands in its way
	}
	return a, a.findPrice(ctx, p)
}

// planWith returns the cheapest plan that has a part, nil where there is none.
func planWith(ctx context.Context, p Problem, id string) (*plan.Plan, error) {
	r, err := Rank(ctx, p, Options{Plans: 1, Must: id})
	if err != nil {
		return nil, err
	}
	if len(r.Plans) == 0 {
		if r.Solver.Status != Infeasible {
			return nil, ErrUnknown
		}
		return nil, nil
	}
	return &r.Plans[0], nil
}

// installed returns how much of a part a plan has, bought how much of it a bill buys.
func installed(p *plan.Plan, id string) float64 {
	n := 0.0
	for _, l := range p.Bill {
		if l.Part == id && l.Kind != kindCableEnd {
			n += l.Quantity
		}
	}
	return n
}

func bought(p *plan.Plan, id string) float64 {
	n := 0.0
	for _, l := range p.Bill {
		if l.Part == id && l.Kind != kindCableEnd {
			n += l.Buy
		}
	}
	return n
}

// findPrice finds the price at which the part enters. The cost of the cheapest plan with the part is a
// concave, piecewise linear function of its price, with the quantity bought as the slope. So Newton's
// step from a price that is too high lands at or below the price looked for, and those after it climb to
// it, in no more steps than there are quantities. Prices are whole cents: at the end one cent more is one too
// many.
func (a *PartAnswer) findPrice(ctx context.Context, p Problem) error {
	target := a.Best.Cost
	own, ok := p.Catalog.Find(a.Part)
	if !ok {
		return nil
	}
	price := math.Round(p.centsOf(own)) // of one, in cents
	a.Price = p.centsOf(own) / 100
	low, high := math.Inf(-1), math.Inf(1) // the part is in a best plan at low, in none at high
	for high-low > 1 {
		at, err := planWith(ctx, p.priced(a.Part, price), a.Part)
		if err != nil || at == nil {
			return err
		}
		n := bought(at, a.Part) * (1 + p.Scenario.Tax)
		if n == 0 {
			break // at this price owned pieces are not sold but used
		}
		if at.Cost <= target {
			low = price
			a.EntersAt, a.Priced, a.At = price/100, true, at
		} else {
			high = price
		}
		price += math.Floor(float64(target-at.Cost)/n + 1e-9)
		price = math.Min(math.Max(price, low+1), high-1)
	}
	return nil
}

// centsOf returns a part's own price in cents, of a metre for a cable.
func (p Problem) centsOf(e catalog.Entry) float64 {
	for i := range p.Catalog.Cables {
		if c := &p.Catalog.Cables[i]; c.ID == e.ID {
			return c.CentsPerM
		}
	}
	return float64(e.Price)
}

// priced returns a copy of a problem in which a part has another price, in cents, and no offers.
func (p Problem) priced(id string, cents float64) Problem {
	c := p.Catalog.Clone()
	if e, ok := c.Find(id); ok {
		e.Part.Price = catalog.Cents(cents)
	}
	for i := range c.Cables {
		if c.Cables[i].ID == id {
			c.Cables[i].Price, c.Cables[i].CentsPerM = 0, cents
		}
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
