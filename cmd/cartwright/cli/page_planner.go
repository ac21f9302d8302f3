package cli

import (
	"context"
	"fmt"
	"strconv"
	"time"

	"cartwright/catalog"
	"cartwright/catalog/quantity"
	"cartwright/cmd/cartwright/page"
	"cartwright/cmd/cartwright/picture/told"
	paper "cartwright/cmd/cartwright/report"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/why"
	"cartwright/scenarios"
)

// parts is a catalogue.
type parts = catalog.Catalog

// planner answers what the page asks.
type planner struct{ a *app }

// Check says in which a scenario does not fit its catalogue.
func (planner) Check(s *scenarios.Scenario, c *parts) error { return optimize.Check(problemOf(s, c)) }

// Rank ranks plans.
func (planner) Rank(ctx context.Context, s *scenarios.Scenario, c *parts, plans int, tell func(cells, found int)) (*page.Answer, error) {
	p := problemOf(s, c)
	ctx, cancel := context.WithTimeout(ctx, time.Duration(s.Solver.TimeLimitS*float64(time.Second)))
	defer cancel()
	r, err := optimize.Rank(ctx, p, question.Options{Plans: plans, Watch: func(at question.Progress) { tell(at.Looked, at.Found) }})
	if err != nil {
		return nil, err
	}
	answer := &page.Answer{Plans: r.Plans, Cautions: r.Cautions, Proof: proofOf(r)}
	if len(r.Plans) == 0 {
		answer.None = view.NoPlan(p.Scenario, r)
	}
	return answer, nil
}

// Prices says what a step of each limit costs.
func (planner) Prices(ctx context.Context, s *scenarios.Scenario, c *parts) ([]page.Price, error) {
	e, err := why.Explain(ctx, problemOf(s, c))
	if err != nil {
		return nil, err
	}
	u := told.UnitsOf(s)
	var list []page.Price
	for _, x := range e.Effects {
		to, unit := u.Figure(x.To, x.Unit)
		p := page.Price{Limit: x.Limit, Step: fmt.Sprintf("%s %s", told.Number(to, 2), unit)}
		switch {
		case x.Plan == nil:
			p.Cost = "no plan is possible"
		case x.Saves > 0:
			p.Cost = "saves " + told.Fixed(x.Saves, 2)
		case x.Saves < 0:
			p.Cost = "costs " + told.Fixed(-x.Saves, 2) + " more"
		default:
			p.Cost = "the same"
		}
		list = append(list, p)
	}
	return list, nil
}

// Bought returns what is owned once a plan is bought.
func (planner) Bought(s *scenarios.Scenario, c *parts, p *plan.Plan) (scenarios.Owned, error) {
	return planDeal(p, nil).answer(problemOf(s, c)).Owned, nil
}

// Sold returns what is owned once some of a part is sold.
func (planner) Sold(s *scenarios.Scenario, part, count, price string) (scenarios.Owned, error) {
	for _, h := range s.Have {
		if h.PartID != part {
			continue
		}
		one := next.Purchase{Part: part, Unit: "each"}
		var err error
		if h.ByLength {
			one.Unit = "m"
			one.Quantity, err = quantity.Parse(count, quantity.Length)
		} else {
			one.Quantity, err = strconv.ParseFloat(count, 64)
		}
		if err != nil || !(one.Quantity > 0 && one.Quantity <= h.Count) {
			return scenarios.Owned{}, fmt.Errorf("%q of %s cannot be sold: %s are owned", count, part, told.Number(h.Count, 3))
		}
		each, err := amount(price)
		if err != nil {
			return scenarios.Owned{}, fmt.Errorf("the price %q is no amount of money; write for example 380 or 380.50", price)
		}
		one.Line = plan.Money(catalog.CentsFrom(each.Units() * one.Quantity))
		return deal{sell: []next.Purchase{one}, credit: one.Line}.answer(problemOf(s, nil)).Owned, nil
	}
	return scenarios.Owned{}, fmt.Errorf("%s is not owned", part)
}

// Report gathers what is written about a plan.
func (p planner) Report(s *scenarios.Scenario, c *parts, answer *page.Answer, show int) *paper.Report {
	return &paper.Report{Scenario: s, Catalog: c, Plans: answer.Plans, Show: show, Proof: answer.Proof, Cautions: answer.Cautions, AsOf: p.a.today()}
}
