package cli

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/question"
)

const planHelp = `Ranks complete, buildable shopping plans for a scenario and proves that the
first is the best: what to buy, what is used of what is owned, how it is wired,
where it stands, what is left of every limit. Every plan shown has passed an
audit that recomputes it from the parts.

The scenario is a demo's name, a folder, or a scenario.yaml; without one the
current folder is meant. Where no plan is possible, it says which change of a
limit would make one possible.

The screen shows what is needed to decide and to shop; --full shows everything:
ampacity, drop and fault current of every run, every limit, the year by month.

--format csv writes the ranking, or with --show N the whole bill of plan N.`

const planExample = `  cartwright plan cider-shed
  cartwright plan lantern-market --by mass --plans 3
  cartwright plan star-party --show 2 --format csv`

// mostPlans is the longest ranking that can be asked for; nobody reads a longer one.
const mostPlans = 1000

// What may have to vary from rank to rank.
const (
	varyCore  = "core"  // batteries and their number, inverter, array
	varyKinds = "kinds" // the kinds of battery
)

// varied returns what makes plans different.
func varied(vary string) question.Distinct {
	if vary == varyKinds {
		return question.DistinctBattery
	}
	return question.DistinctCore
}

// planCommand ranks shopping plans.
func (a *app) planCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "plan [scenario]",
		Short:             "Rank shopping plans and prove the first the best",
		Long:              planHelp,
		Example:           planExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	by := addChoice(cmd, "by", "what is best: least cost, least mass, least cost for a lifetime kWh, or most usable energy",
		[]string{string(question.ByCost), string(question.ByMass), string(question.ByLife), string(question.ByEnergy)})
	vary := addChoice(cmd, "vary", "what differs from rank to rank: the core (batteries, inverter, array and how many of each), or only the kinds of battery", []string{varyCore, varyKinds})
	plans := cmd.Flags().Int("plans", 0, "`number` of plans to rank (default: the scenario's)")
	show := cmd.Flags().Int("show", 0, "`rank` of the plan to show (default 1)")
	full := cmd.Flags().Bool("full", false, "show everything of the plan")
	limit := addTimeLimit(cmd)
	format := addFormat(cmd)
	asOf := addAsOf(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := checkPlanFlags(cmd, *plans, *show); err != nil {
			return err
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
		o := question.Options{Plans: *plans, By: question.By(by.value), Distinct: varied(vary.value)}
		r, err := a.rank(ctx, p, o)
		if err != nil {
			return err
		}
		if n := len(r.Plans); n > 0 && *show > n {
			return fewer(*show, r, ending(p, r))
		}
		r.Cautions = append(r.Cautions, view.StalePrices(p.Catalog, r, asOf.or(a.today))...)
		answer := view.Plans{Scenario: p.Scenario, Catalog: p.Catalog, Result: r, By: o.By, Distinct: o.Distinct, Show: *show, Full: *full, Asked: *plans > 0,
			AsOf: asOf.or(a.today), Notices: optimize.Notices(p)}
		if err := a.show(answer, format); err != nil {
			return err
		}
		if f := view.Format(format.value); f == view.Table || f == view.Markdown {
			fmt.Fprintf(a.stderr, "cartwright: took %.2f s\n", r.Solver.Seconds)
		}
		return ending(p, r)
	}
	return cmd
}

// checkPlanFlags checks the numbers of the plan command that were given.
func checkPlanFlags(cmd *cobra.Command, plans, show int) error {
	switch flags := cmd.Flags(); {
	case flags.Changed("plans") && (plans < 1 || plans > mostPlans):
		return wrong("write for example --plans 10", "--plans is %d, but has to be from 1 to %d", plans, mostPlans)
	case flags.Changed("show") && show < 1:
		return wrong("write for example --show 2", "--show is %d, but has to be a rank from 1 on", show)
	}
	return nil
}

// rank has the scenario's plans ranked, telling of progress on a terminal.
func (a *app) rank(ctx context.Context, p question.Problem, o question.Options) (*question.Result, error) {
	bar := a.progress()
	o.Watch = bar.tell
	r, err := optimize.Rank(ctx, p, o)
	bar.clear()
	if errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) || errors.Is(err, question.ErrUnknown) {
		return nil, &outcome{code: codeUnproven, err: errors.New("stopped before it was known whether there is a plan"),
			hint: moreTime}
	}
	return r, err
}

// moreTime is the hint after a search that was stopped.
const moreTime = "give it more time, for example --time-limit 10m, or ask for fewer plans with --plans"

// ending returns how a ranking ended: nil where it is proved.
func ending(p question.Problem, r *question.Result) error {
	switch r.Solver.Status {
	case question.Optimal:
		return nil
	case question.Infeasible:
		hint := "make one of the changes above in the scenario, or add parts to the catalogue"
		switch {
		case len(r.Changes) == 0 && r.ChangesUnknown:
			hint = "give it more time to look for changes that help, for example --time-limit 10m"
		case len(r.Changes) == 0:
			hint = "change the scenario, or add parts to the catalogue"
		}
		return &outcome{code: codeNo, err: fmt.Errorf("no plan for %s meets all limits", p.Scenario.Name), hint: hint}
	case question.TimeLimit:
		return &outcome{code: codeUnproven, err: errors.New("stopped before the proof was complete"),
			hint: moreTime}
	case question.MemoryLimit:
		return &outcome{code: codeUnproven, err: errors.New("more choices were open at once than memory is kept for: the proof is not complete"),
			hint: "ask for fewer plans with --plans, or take parts out of the catalogue that you would not buy"}
	default:
		return &outcome{code: codeUnproven, err: fmt.Errorf("the solver ended with %q before the proof was complete", r.Solver.Status),
			hint: "write the program with \"cartwright model\" and have another solver check it"}
	}
}
