package cli

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"cartwright/catalog/problem"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/question"
	"cartwright/optimize/why"
)

const whyHelp = `Says why the cheapest plan is what it is: which limits bind, and what one more
hour, ten more kilograms, a hundred more of budget and a natural step of every
other limit would change, each way, found by solving again. Where no plan is
possible: a smallest set of limits that contradict each other, and the ways out
with what the cheapest plan then costs.

With --part: why that part is not in the cheapest plan, the cheapest plan that
has it, and the highest price, in whole cents, at which a cheapest plan would
have it. The quantity may differ then.

The scenario is a demo's name, a folder, or a scenario.yaml; without one the
current folder is meant. The exit status is 1 where no plan is possible, or none
that has the part.`

const whyExample = `  cartwright why star-party
  cartwright why star-party --part lfp-24-100`

// whyCommand explains the best plan, or a part.
func (a *app) whyCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "why [scenario]",
		Short:             "Say what limits the plan, or why a part is not in it",
		Long:              whyHelp,
		Example:           whyExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	part := cmd.Flags().String("part", "", "`id` of the part to ask about")
	limit := addTimeLimit(cmd)
	format := addFormat(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		p, err := a.open(args)
		if err != nil {
			return err
		}
		if cmd.Flags().Changed("part") {
			if err := knownPart(p, *part); err != nil {
				return err
			}
		}
		ctx, cancel, err := limit.context(cmd, p)
		if err != nil {
			return err
		}
		defer cancel()
		if *part != "" {
			return a.whyPart(ctx, p, *part, format)
		}
		return a.whyPlan(ctx, p, format)
	}
	return cmd
}

// knownPart checks that the catalogue has a part.
func knownPart(p question.Problem, id string) error {
	if _, ok := p.Catalog.Find(id); ok {
		return nil
	}
	hint := "\"cartwright parts\" lists the parts of a catalogue"
	if near := problem.Nearest(id, p.Catalog.IDs()); near != "" {
		hint = fmt.Sprintf("did you mean %q?", near)
	}
	return wrong(hint, "the catalogue has no part %q", id)
}

// whyPlan explains the best plan, or why there is none.
func (a *app) whyPlan(ctx context.Context, p question.Problem, format *choice) error {
	e, err := why.Explain(ctx, p)
	if err != nil {
		return stopped(err)
	}
	if err := a.show(view.Why{Scenario: p.Scenario, Explanation: e, Cautions: optimize.Cautions()}, format); err != nil {
		return err
	}
	if e.Best == nil {
		hint := "take one of the ways out above, or add parts to the catalogue"
		if len(e.WaysOut) == 0 {
			hint = "change the scenario, or add parts to the catalogue"
		}
		return &outcome{code: codeNo, err: fmt.Errorf("no plan for %s meets all limits", p.Scenario.Name), hint: hint}
	}
	if !e.Complete {
		return stoppedBefore("every limit was looked into")
	}
	return nil
}

// whyPart explains why a part is or is not in the best plan.
func (a *app) whyPart(ctx context.Context, p question.Problem, id string, format *choice) error {
	answer, err := why.ExplainPart(ctx, p, id)
	if err != nil {
		return stopped(err)
	}
	if err := a.show(view.WhyPart{Scenario: p.Scenario, Catalog: p.Catalog, Answer: answer, Cautions: optimize.Cautions()}, format); err != nil {
		return err
	}
	switch {
	case answer.Best == nil:
		return &outcome{code: codeNo, err: fmt.Errorf("no plan for %s meets all limits", p.Scenario.Name),
			hint: "\"cartwright why\" without --part says which limits contradict each other"}
	case answer.With == nil:
		return &outcome{code: codeNo, err: fmt.Errorf("no plan for %s that has %s meets all limits", p.Scenario.Name, id),
			hint: "\"cartwright parts\" shows its voltages and ratings, \"cartwright plan\" what the others leave of the limits"}
	}
	return nil
}
