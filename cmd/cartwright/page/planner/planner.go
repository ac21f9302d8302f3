// Package planner answers what the page asks: it is the program behind it.
package planner

import (
	"context"
	"errors"
	"fmt"
	"slices"
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
	Today func() time.Time // the day that prices are judged against
	// Pause is called wherever a search looks whether it has to stop, also by several goroutines at once; nil for nothing.
	Pause func()
	again optimize.Again
}

// pausing is a context that calls pause whenever it is asked whether it has ended: on one thread nobody would hear that
// it has.
type pausing struct {
	context.Context
	pause func()
}

// Err pauses, and says whether the context has ended since.
func (p pausing) Err() error {
	p.pause()
	return p.Context.Err()
}

// within returns the context of a search.
func (p *Planner) within(ctx context.Context) context.Context {
	if p.Pause == nil {
		return ctx
	}
	return pausing{ctx, p.Pause}
}

// problemOf is a scenario and its catalogue as they are asked about.
func problemOf(s *scenarios.Scenario, c *catalog.Catalog) question.Problem {
	return question.Problem{Scenario: s, Catalog: c}
}

// Check says where a scenario does not fit its catalogue.
func (*Planner) Check(s *scenarios.Scenario, c *catalog.Catalog) error {
	return optimize.Check(problemOf(s, c))
}

// Rank ranks plans.
func (p *Planner) Rank(ctx context.Context, s *scenarios.Scenario, c *catalog.Catalog, first func(*page.Answer), tell func(cells, found int)) (*page.Answer, error) {
	ctx, cancel := context.WithTimeout(ctx, time.Duration(s.Solver.TimeLimitS*float64(time.Second)))
	defer cancel()
	r, err := p.again.Plans(p.within(ctx), problemOf(s, c), question.Options{
		First: func(r *question.Result) { first(answerOf(s, c, r)) },
		Watch: func(at question.Progress) { tell(at.Looked, at.Found) },
	})
	if err != nil {
		return nil, err
	}
	return answerOf(s, c, r), nil
}

// answerOf is a ranking as the page shows it.
func answerOf(s *scenarios.Scenario, c *catalog.Catalog, r *question.Result) *page.Answer {
	answer := &page.Answer{Result: r, Plans: r.Plans, Cautions: r.Cautions, Proof: view.Proved(r)}
	if len(r.Plans) == 0 {
		answer.None = view.NoPlan(s, r)
		for _, n := range optimize.Notices(problemOf(s, c)) {
			answer.None = append(answer.None, n+".")
		}
	}
	return answer
}

// Prices says what a step of each limit costs.
func (p *Planner) Prices(ctx context.Context, s *scenarios.Scenario, c *catalog.Catalog) ([]page.Price, error) {
	e, err := why.Explain(p.within(ctx), problemOf(s, c))
	if err != nil {
		return nil, err
	}
	u := told.UnitsOf(s)
	var list []page.Price
	for _, x := range e.Effects {
		one := page.Price{Limit: x.Limit, Step: stepText(u.Figure(x.To, x.Unit)) + " " + u.Unit(x.Unit)}
		switch {
		case x.Plan == nil:
			one.Cost = "no plan is possible"
		case x.Saves > 0:
			one.Cost = "saves " + told.Fixed(x.Saves, 2)
		case x.Saves < 0:
			one.Cost = "costs " + told.Fixed(-x.Saves, 2) + " more"
		default:
			one.Cost = "the same"
		}
		list = append(list, one)
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
func (p *Planner) Compare(ctx context.Context, s *scenarios.Scenario, c *catalog.Catalog, buy []string) (*page.Compared, error) {
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
	t, err := compare.Find(p.within(ctx), problemOf(s, c), choices)
	if err != nil {
		return nil, err
	}
	out := &page.Compared{Note: fmt.Sprintf("Each extra kWh: cost over the usable kWh beyond the %s kWh of the batteries owned today.", told.Fixed(t.OwnedKWh, 2))}
	if !t.Complete {
		out.Note += " Stopped before every choice was worked out."
	}
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

// JSON writes an answer as "cartwright plan" does.
func (p *Planner) JSON(s *scenarios.Scenario, c *catalog.Catalog, answer *page.Answer) ([]byte, error) {
	r := *answer.Result
	r.Cautions = slices.Concat(r.Cautions, view.StalePrices(c, &r, p.Today()))
	return view.Render(view.Plans{Scenario: s, Catalog: c, Result: &r, By: question.ByCost, Distinct: question.DistinctCore, AsOf: p.Today(),
		Notices: optimize.Notices(problemOf(s, c))}, view.JSON, view.Width)
}

// Report gathers what is written about a plan.
func (p *Planner) Report(s *scenarios.Scenario, c *catalog.Catalog, answer *page.Answer, show int) *report.Report {
	return &report.Report{Scenario: s, Catalog: c, Plans: answer.Plans, Show: show, Proof: answer.Proof, Cautions: answer.Cautions,
		Notices: optimize.Notices(problemOf(s, c)), AsOf: p.Today()}
}
