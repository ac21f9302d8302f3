// Package planner answers what the page asks: it is the program behind it.
package planner

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"cartwright/catalog"
	"cartwright/catalog/problem"
	"cartwright/cmd/cartwright/deal"
	"cartwright/cmd/cartwright/page"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/cmd/cartwright/report"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/compare"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/why"
	"cartwright/scenarios"
)

// Planner is a page.Planner.
type Planner struct {
	again *optimize.Again
	today func() time.Time
}

// New returns a planner; today is the day that prices are judged against.
func New(today func() time.Time) *Planner { return &Planner{&optimize.Again{}, today} }

// problemOf is a scenario and its catalogue as they are asked about.
func problemOf(s *scenarios.Scenario, c *catalog.Catalog) question.Problem {
	return question.Problem{Scenario: s, Catalog: c}
}

// Check says in which a scenario does not fit its catalogue.
func (*Planner) Check(s *scenarios.Scenario, c *catalog.Catalog) error {
	return optimize.Check(problemOf(s, c))
}

// Rank ranks plans.
func (p *Planner) Rank(ctx context.Context, s *scenarios.Scenario, c *catalog.Catalog, first func(*page.Answer), tell func(cells, found int)) (*page.Answer, error) {
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
	answer := &page.Answer{Plans: r.Plans, Cautions: r.Cautions, Proof: view.Proved(r)}
	if len(r.Plans) == 0 {
		answer.None = view.NoPlan(s, r)
	}
	return answer
}

// Prices says what a step of each limit costs.
func (*Planner) Prices(ctx context.Context, s *scenarios.Scenario, c *catalog.Catalog) ([]page.Price, error) {
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
func (*Planner) Compare(ctx context.Context, s *scenarios.Scenario, c *catalog.Catalog, buy []string) (*page.Compared, error) {
	ctx, cancel := context.WithTimeout(ctx, time.Duration(s.Solver.TimeLimitS*float64(time.Second)))
	defer cancel()
	var choices [][]compare.Line
	for _, text := range buy {
		one, misread := compare.Read(c, text)
		if misread != nil {
			return nil, fmt.Errorf("%s; %s", misread.Wrong, misread.Right)
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
func (*Planner) Bought(s *scenarios.Scenario, c *catalog.Catalog, p *plan.Plan) (scenarios.Owned, error) {
	return deal.OfPlan(p, nil).Answer(problemOf(s, c)).Owned, nil
}

// BoughtPart returns what is owned once some of a part is bought for a sum in all.
func (*Planner) BoughtPart(s *scenarios.Scenario, c *catalog.Catalog, part, count, paid string) (scenarios.Owned, error) {
	d, err := scenarios.ReadDeal(c, part, count, paid)
	if err != nil {
		return scenarios.Owned{}, inWords(err)
	}
	owned, _ := s.AfterBuying(d) // what it cost beyond the money in hand came from elsewhere
	return owned, nil
}

// Sold returns what is owned once some of a part is sold for a sum in all; the last of a cable goes with its ends.
func (*Planner) Sold(s *scenarios.Scenario, c *catalog.Catalog, part, count, sum string) (scenarios.Owned, error) {
	d, err := scenarios.ReadDeal(c, part, count, sum)
	if err != nil {
		return scenarios.Owned{}, inWords(err)
	}
	for _, h := range s.Have {
		if h.PartID == part && h.Count <= d.Count {
			d.Ends = h.Ends
		}
	}
	return s.AfterSelling(d)
}

// inWords returns mistakes that were typed, and so have no place in a file.
func inWords(err error) error {
	var mistakes *problem.Error
	if !errors.As(err, &mistakes) {
		return err
	}
	var all []string
	for _, m := range mistakes.Problems {
		all = append(all, m.Wrong+"; "+m.Right)
	}
	return errors.New(strings.Join(all, ". "))
}

// Report gathers what is written about a plan.
func (p *Planner) Report(s *scenarios.Scenario, c *catalog.Catalog, answer *page.Answer, show int) *report.Report {
	return &report.Report{Scenario: s, Catalog: c, Plans: answer.Plans, Show: show, Proof: answer.Proof, Cautions: answer.Cautions, AsOf: p.today()}
}
