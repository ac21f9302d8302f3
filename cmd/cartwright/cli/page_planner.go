package cli

import (
	"context"
	"fmt"
	"time"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/page"
	"cartwright/cmd/cartwright/picture/told"
	paper "cartwright/cmd/cartwright/report"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/compare"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/why"
	"cartwright/scenarios"
)

// parts is a catalogue.
type parts = catalog.Catalog

// planner answers what the page asks.
type planner struct {
	a     *app
	again *optimize.Again
}

// Check says where a scenario does not fit its catalogue.
func (planner) Check(s *scenarios.Scenario, c *parts) error { return optimize.Check(problemOf(s, c)) }

// Rank ranks plans.
func (p planner) Rank(ctx context.Context, s *scenarios.Scenario, c *parts, first func(*page.Answer), tell func(cells, found int)) (*page.Answer, error) {
	ctx, cancel := context.WithTimeout(ctx, time.Duration(s.Solver.TimeLimitS*float64(time.Second)))
	defer cancel()
	r, err := p.again.Plans(ctx, problemOf(s, c), question.Options{
		First: func(r *question.Result) { first(answerOf(s, r)) },
		Watch: func(at question.Progress) { tell(at.Looked, at.Found) },
	})
	if err != nil {
		return nil, err
	}
	return answerOf(s, r), nil
}

// answerOf is a ranking as the page shows it.
func answerOf(s *scenarios.Scenario, r *question.Result) *page.Answer {
	answer := &page.Answer{Plans: r.Plans, Cautions: r.Cautions, Proof: proofOf(r)}
	if len(r.Plans) == 0 {
		answer.None = view.NoPlan(s, r)
	}
	return answer
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
		p := page.Price{Limit: x.Limit, Step: stepText(u.Figure(x.To, x.Unit)) + " " + u.Unit(x.Unit)}
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

// stepText words the limit a step away, as finely as it is of use: 862 lb, 43.3 lbf, 9.5 h.
func stepText(x float64) string {
	switch {
	case x >= 100:
		return told.Number(x, 0)
	case x >= 20:
		return told.Number(x, 1)
	}
	return told.Number(x, 2)
}

// Compare puts purchases side by side, as the command of that name does.
func (planner) Compare(ctx context.Context, s *scenarios.Scenario, c *parts, buy []string) (*page.Compared, error) {
	ctx, cancel := context.WithTimeout(ctx, time.Duration(s.Solver.TimeLimitS*float64(time.Second)))
	defer cancel()
	var choices [][]compare.Line
	for _, text := range buy {
		one, wrong := boughtLines(c, text)
		if wrong != nil {
			return nil, fmt.Errorf("%s; %s", wrong.wrong, wrong.right)
		}
		choices = append(choices, one)
	}
	t, err := compare.Find(ctx, problemOf(s, c), choices)
	if err != nil {
		return nil, err
	}
	out := &page.Compared{Note: fmt.Sprintf("Each extra kWh: cost over the usable kWh beyond the %s kWh of the batteries owned today.", told.Fixed(t.OwnedKWh, 2))}
	out.Choices, out.Rows = view.Compare{Scenario: s, Table: t}.Columns()
	return out, nil
}

// Bought returns what is owned once a plan is bought.
func (planner) Bought(s *scenarios.Scenario, c *parts, p *plan.Plan) (scenarios.Owned, error) {
	return planDeal(p, nil).answer(problemOf(s, c)).Owned, nil
}

// BoughtPart returns what is owned once some of a part is bought for a sum in all.
func (planner) BoughtPart(s *scenarios.Scenario, c *parts, part, count, paid string) (scenarios.Owned, error) {
	d, err := scenarios.ReadDeal(c, part, count, paid)
	if err != nil {
		return scenarios.Owned{}, asFlags(err)
	}
	owned, _ := s.AfterBuying(d) // what it cost beyond the money in hand came from elsewhere
	return owned, nil
}

// Sold returns what is owned once some of a part is sold for a sum in all; the last of a cable goes with its ends.
func (planner) Sold(s *scenarios.Scenario, c *parts, part, count, sum string) (scenarios.Owned, error) {
	d, err := scenarios.ReadDeal(c, part, count, sum)
	if err != nil {
		return scenarios.Owned{}, asFlags(err)
	}
	for _, h := range s.Have {
		if h.PartID == part && h.Count <= d.Count {
			d.Ends = h.Ends
		}
	}
	return s.AfterSelling(d)
}

// Report gathers what is written about a plan.
func (p planner) Report(s *scenarios.Scenario, c *parts, answer *page.Answer, show int) *paper.Report {
	return &paper.Report{Scenario: s, Catalog: c, Plans: answer.Plans, Show: show, Proof: answer.Proof, Cautions: answer.Cautions, AsOf: p.a.today()}
}
