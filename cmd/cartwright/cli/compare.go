package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/compare"
	"cartwright/optimize/question"
)

const compareHelp = `Puts purchases you think of side by side, after what is owned with nothing
bought. Each choice keeps the owned batteries that can stay, adds exactly what
--buy names, and lets the rest follow at least cost. How long it runs the loads
is an outcome; all other limits hold. The cost of each extra usable kWh is the
cost divided by the usable energy beyond that of the batteries owned today.

With two scenarios and no --buy, the first plans of both stand side by side.`

const compareExample = `  cartwright compare cider-shed --buy 2xlfp-rack-5 --buy 3xlfp-rack-5
  cartwright compare star-party cider-shed`

// compareCommand puts choices, or two scenarios, side by side.
func (a *app) compareCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "compare [scenario] [other scenario]",
		Short:             "Put purchases, or two scenarios, side by side",
		Long:              compareHelp,
		Example:           compareExample,
		Args:              twoScenarios,
		ValidArgsFunction: completeScenario,
	}
	buy := cmd.Flags().StringArray("buy", nil, "a `choice`, like \"2 lfp-rack-5\" or \"1 lfp-floor-16, 1 other\"; may be given several times")
	limit := addTimeLimit(cmd)
	format := addFormat(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) == 2 && len(*buy) > 0:
			return wrong("name one scenario with --buy, or two without", "--buy goes with one scenario, but got two")
		case len(args) < 2 && len(*buy) == 0:
			return wrong("write for example --buy \"2 lfp-rack-5\" --buy \"1 lfp-floor-16\", or name two scenarios", "there is nothing to compare")
		}
		if len(args) == 2 {
			return a.compareScenarios(cmd, args, limit, format)
		}
		p, err := a.open(args)
		if err != nil {
			return err
		}
		var choices [][]compare.Line
		for _, text := range *buy {
			one, misread := compare.Read(p.Catalog, text)
			if misread != nil {
				return wrong(misread.Right, "--buy %s", misread.Wrong)
			}
			choices = append(choices, one)
		}
		ctx, cancel, err := limit.context(cmd, p)
		if err != nil {
			return err
		}
		defer cancel()
		t, err := compare.Find(ctx, p, choices)
		if err != nil {
			return stopped(err)
		}
		if err := a.show(view.Compare{Scenario: p.Scenario, Table: t, Cautions: optimize.Cautions(), Notices: optimize.Notices(p)}, format); err != nil {
			return err
		}
		if !t.Complete {
			return stoppedBefore("every choice was worked out")
		}
		for i := range t.Outcomes[1:] {
			if t.Outcomes[i+1].Plan != nil {
				return nil
			}
		}
		return &outcome{code: codeNo, err: fmt.Errorf("no choice for %s is possible", p.Scenario.Name), hint: "see the reasons above"}
	}
	return cmd
}

// twoScenarios accepts at most two arguments.
func twoScenarios(cmd *cobra.Command, args []string) error {
	if len(args) > 2 {
		return wrong("put a choice in quotes: --buy \"2 lfp-rack-5\"", "compare takes at most two scenarios, but got %d", len(args))
	}
	return nil
}

// compareScenarios puts the first plans of two scenarios side by side.
func (a *app) compareScenarios(cmd *cobra.Command, args []string, limit *timeLimit, format *choice) error {
	var sides []view.Side
	for _, where := range args {
		p, err := a.open([]string{where})
		if err != nil {
			return err
		}
		ctx, cancel, err := limit.context(cmd, p)
		if err != nil {
			return err
		}
		r, err := a.rank(ctx, p, question.Options{Plans: 1})
		cancel()
		if err != nil {
			return err
		}
		if len(r.Plans) == 0 {
			return ending(p, r)
		}
		sides = append(sides, view.Side{Scenario: p.Scenario, Plan: &r.Plans[0]})
	}
	return a.show(view.CompareScenarios{Sides: sides, Cautions: optimize.Cautions()}, format)
}
