package cli

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"cartwright/optimize/next"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

const boughtHelp = `Shows what becomes of a scenario's file once a plan is bought: parts that are
bought are owned (have), parts that are sold are gone, the money in hand (sold,
savings.now) is what is left. With --write the file is rewritten in place:
comments, order and every other line stay as they are. Without it nothing is
written.

With --month M it is what "cartwright next" buys and sells up to and with month
M that is bought, and what is put aside until then is in hand. Otherwise it is
the first plan, or plan N with --plan N.

What is paid comes from what is sold now, then from what was sold before, then
from savings. Where that is not enough the rest came from elsewhere, and
savings.now is left as it is.

The scenario is a folder or a scenario.yaml; without one the current folder is
meant. A demo can be looked at, but not written to.`

const boughtExample = `  cartwright bought star-party
  cartwright bought star-party --month 1
  cartwright new my-cart
  cartwright bought my-cart --plan 2 --write`

// boughtCommand turns what a plan buys into what is owned.
func (a *app) boughtCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "bought [scenario]",
		Short:             "Turn what a plan buys into what is owned",
		Long:              boughtHelp,
		Example:           boughtExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	rank := cmd.Flags().Int("plan", 1, "`rank` of the plan that is bought")
	month := cmd.Flags().Int("month", 0, "`month` of the purchase sequence up to which all is bought")
	write := cmd.Flags().Bool("write", false, "rewrite the scenario's file")
	limit := addTimeLimit(cmd)
	format := addFormat(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		switch flags := cmd.Flags(); {
		case flags.Changed("month") && flags.Changed("plan"):
			return wrong("give one of them", "--plan buys one plan, --month what the months up to it buy: both at once make no sense")
		case *rank < 1 || *rank > mostPlans:
			return wrong("write for example --plan 2", "--plan is %d, but has to be from 1 to %d", *rank, mostPlans)
		case flags.Changed("month") && (*month < 0 || *month > mostMonths):
			return wrong("write for example --month 0", "--month is %d, but has to be from 0 to %d", *month, mostMonths)
		}
		p, err := a.open(args)
		if err != nil {
			return err
		}
		if *write && p.Scenario.Dir == "" {
			return wrong("\"cartwright new my-cart\" makes a scenario of your own; without --write a demo shows what would change",
				"the demo %s is part of the program and cannot be written to", args[0])
		}
		ctx, cancel, err := limit.context(cmd, p)
		if err != nil {
			return err
		}
		defer cancel()
		var d deal
		if cmd.Flags().Changed("month") {
			d, err = dealOfMonth(ctx, p, *month)
		} else {
			d, err = a.dealOfPlan(ctx, p, *rank, limit)
		}
		if err != nil {
			return err
		}
		return a.bought(p, d, *write, format)
	}
	return cmd
}

// bought shows what a deal changes and, where asked for, rewrites the file. The file is read here once, and
// once more before it is replaced: what somebody wrote in the meantime is not lost.
func (a *app) bought(p question.Problem, d deal, write bool, format *choice) error {
	s := p.Scenario
	before, err := ownText(s)
	if err != nil {
		return err
	}
	answer := d.answer(p)
	after, changes, err := scenarios.EditOwned(before, s.File, answer.Owned)
	if err != nil {
		return err
	}
	answer.Changes, answer.Writes = changes, write
	if err := a.show(answer, format); err != nil {
		return err
	}
	if !write || len(changes) == 0 {
		return nil
	}
	if now, err := ownText(s); err != nil || !bytes.Equal(now, before) {
		return wrong("run it again", "%s has changed in the meantime; nothing was written", s.File)
	}
	err = a.writeFile(s.File, func(w io.Writer) error {
		_, err := w.Write(after)
		return err
	})
	if err == nil {
		fmt.Fprintf(a.stderr, "cartwright: %s is rewritten\n", s.File)
	}
	return err
}

// ownText returns the text of a scenario's own file.
func ownText(s *scenarios.Scenario) ([]byte, error) {
	if s.Dir == "" {
		return fs.ReadFile(scenarios.DemoFS(), s.File)
	}
	text, err := os.ReadFile(s.File)
	if err != nil {
		return nil, wrong("see that it is there and may be read", "%s cannot be read again: %v", s.File, err)
	}
	return text, nil
}

// dealOfPlan ranks plans and takes the one of a rank.
func (a *app) dealOfPlan(ctx context.Context, p question.Problem, rank int, limit *timeLimit) (deal, error) {
	r, err := a.rank(ctx, p, question.Options{Plans: rank, TimeLimit: limit.given})
	if err != nil {
		return deal{}, err
	}
	if r.Solver.Status == question.Infeasible {
		return deal{}, &outcome{code: codeNo, err: fmt.Errorf("no plan for %s meets all limits", p.Scenario.Name),
			hint: "\"cartwright plan\" says which change of a limit makes one possible"}
	}
	if err := ending(p, r); err != nil {
		return deal{}, err
	}
	if rank > len(r.Plans) {
		return deal{}, wrong(fmt.Sprintf("give --plan a rank from 1 to %d", len(r.Plans)), "there is no plan %d", rank)
	}
	return planDeal(&r.Plans[rank-1], r.Cautions), nil
}

// dealOfMonth finds the purchase sequence and takes its months up to one.
func dealOfMonth(ctx context.Context, p question.Problem, month int) (deal, error) {
	q, err := sequence(ctx, p, max(month, next.DefaultMonths))
	if err != nil {
		return deal{}, err
	}
	if len(q.Months) == 0 {
		return deal{}, sequenceEnding(p, q, 0)
	}
	if last := len(q.Months) - 1; month > last {
		return deal{}, wrong(fmt.Sprintf("give --month a month from 0 to %d", last), "there is no month %d: all is bought by month %d", month, last)
	}
	return monthsDeal(q.Months[:month+1], q.Cautions), nil
}
