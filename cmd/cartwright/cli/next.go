package cli

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"cartwright/catalog/problem"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

const nextHelp = `Says what to buy next: from what is owned and the savings of the scenario, month
by month, what to buy and sell so that the cheapest plan is complete in the
earliest month, for the least money in all, with the most usable energy on the
cart on the way.

In every month what stands on the cart is safe: only its autonomy, its power and
its recharge may still be short of what is asked. Cash never goes below zero; it
takes the place of the scenario's budget. Month 0 is now.

The scenario is a demo's name, a folder, or a scenario.yaml; without one the
current folder is meant. It has to say what is saved, for example
  savings: {now: 500, per_month: 200}

--plan N saves for the N-th plan of the ranking, not for the first. Owned
batteries, inverters and solar modules that the target does not use are listed
on top.

--show M adds how the cart of month M is wired, where things stand and what is
left of its limits. --format csv writes the months, or with --show M the
shopping list of month M. The exit status is 1 where no plan is possible, or
none can be paid for within the months looked at.`

const nextExample = `  cartwright next star-party
  cartwright next lantern-market --months 12 --show 6
  cartwright next star-party --show 0 --format csv`

// mostMonths is the longest horizon that can be asked for: fifty years.
const mostMonths = 600

// nextCommand tells what to buy next.
func (a *app) nextCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "next [scenario]",
		Short:             "Say what to buy next, month by month",
		Long:              nextHelp,
		Example:           nextExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	months := cmd.Flags().Int("months", next.DefaultMonths, "`number` of months to look ahead")
	rank := cmd.Flags().Int("plan", 1, "`rank` of the plan to reach")
	show := cmd.Flags().Int("show", 0, "`month` whose cart to show in full (default none)")
	limit := addTimeLimit(cmd)
	format := addFormat(cmd)
	asOf := addAsOf(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		switch flags := cmd.Flags(); {
		case *months < 1 || *months > mostMonths:
			return wrong("write for example --months 12", "--months is %d, but has to be from 1 to %d", *months, mostMonths)
		case *rank < 1 || *rank > mostPlans:
			return wrong("write for example --plan 2", "--plan is %d, but has to be a rank from 1 to %d", *rank, mostPlans)
		case flags.Changed("show") && *show < 0:
			return wrong("write for example --show 0", "--show is %d, but has to be a month from 0 on", *show)
		case !flags.Changed("show"):
			*show = -1
		}
		p, err := a.open(args)
		if err != nil {
			return err
		}
		ctx, cancel, err := limit.context(cmd, p)
		if err != nil {
			return err
		}
		defer cancel()
		q, err := sequence(ctx, p, next.Options{Months: *months, Plan: *rank})
		if err != nil {
			return err
		}
		if n := min(len(q.Months)-1, *months); *show > n && n >= 0 {
			return wrong(fmt.Sprintf("give --show a month from 0 to %d", n), "there is no month %d", *show)
		}
		answer := view.Next{Scenario: p.Scenario, Catalog: p.Catalog, Sequence: q, Show: *show, Cautions: q.Cautions, Notices: optimize.Notices(p)}
		if q.Target != nil {
			answer.Cautions = append(answer.Cautions, view.StalePrices(p.Catalog, &question.Result{Plans: []plan.Plan{*q.Target}}, asOf.or(a.today))...)
			if !q.Within {
				answer.PerMonth = next.PerMonthWithin(p.Scenario, q.Target.Cost, *months)
			}
		}
		if err := a.show(answer, format); err != nil {
			return err
		}
		return sequenceEnding(p, q, answer.PerMonth)
	}
	return cmd
}

// sequence finds the purchase sequence. A scenario without savings is a mistake in its file.
func sequence(ctx context.Context, p question.Problem, o next.Options) (*next.Sequence, error) {
	q, err := next.Find(ctx, p, o)
	var none *next.NoRankError
	if errors.As(err, &none) {
		return nil, wrong(fmt.Sprintf("give --plan a rank from 1 to %d", none.Plans), "there is no plan %d", none.Asked)
	}
	if errors.Is(err, next.ErrNoSavings) {
		var list problem.List
		list.Add(p.Scenario.Pos("savings"), "the scenario does not say what is saved", "add savings: {now: 500, per_month: 200}")
		return nil, list.Err()
	}
	return q, stopped(err)
}

// sequenceEnding returns how a purchase sequence ended: nil where the target is reached in time, and all is proved.
func sequenceEnding(p question.Problem, q *next.Sequence, perMonth plan.Money) error {
	more := fmt.Sprintf("save %s %s every month", perMonth, p.Scenario.Currency)
	switch {
	case q.Target == nil:
		return &outcome{code: codeNo, err: fmt.Errorf("no plan for %s meets all limits", p.Scenario.Name),
			hint: "\"cartwright why\" says which limits contradict each other"}
	case !q.Target.Proven:
		return stoppedBefore("it was known whether another plan costs less")
	case !q.Complete && len(q.Months) == 0:
		return stoppedBefore("the order of purchases was found")
	case !q.Complete:
		return stoppedBefore("the order of purchases was proved the best")
	case q.Never:
		return &outcome{code: codeNo, err: errors.New("the money is never there"), hint: more}
	case !q.Within:
		return &outcome{code: codeNo, err: fmt.Errorf("the money is not there before month %d", q.Reached),
			hint: fmt.Sprintf("look ahead with --months %d, or %s", q.Reached, more)}
	}
	return nil
}
