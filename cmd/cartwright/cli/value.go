package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/value"
)

const valueHelp = `Lists every battery of the catalogue that fits the scenario's bus with what a
usable kWh of it costs: by its price, landed (a string ready on the bus, with
cable, device, shipping and tax) and over its life; what a kWh weighs and how
much room it takes; and how many fit on the cart and what leaves no room for one
more string, found by solving. Those that do not fit the bus are listed with the
reason. What each figure means, with its source, stands below the tables.

--by sorts by any column: what is cheapest, lightest, smallest or most comes
first. Prices are of buying new; what is owned or for sale is marked.

The scenario is a demo's name, a folder, or a scenario.yaml; without one the
current folder is meant.`

const valueExample = `  cartwright value star-party
  cartwright value cider-shed --by life --format csv`

// valueCommand compares batteries by what their energy costs.
func (a *app) valueCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "value [scenario]",
		Short:             "Tell what a usable kWh of each battery costs and how many fit",
		Long:              valueHelp,
		Example:           valueExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	by := addColumn(cmd, view.ValueColumns())
	limit := addTimeLimit(cmd)
	format := addFormat(cmd)
	asOf := addAsOf(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		p, err := a.open(args)
		if err != nil {
			return err
		}
		ctx, cancel, err := limit.context(cmd, p)
		if err != nil {
			return err
		}
		defer cancel()
		t, err := value.Find(ctx, p)
		if err != nil {
			return stopped(err)
		}
		answer := view.Value{Scenario: p.Scenario, Table: t, By: by.value, AsOf: asOf.or(a.today), Cautions: optimize.Cautions(), Notices: optimize.Notices(p)}
		if err := a.show(answer, format); err != nil {
			return err
		}
		if len(t.Batteries) == 0 {
			return &outcome{code: codeNo, err: fmt.Errorf("no battery of the catalogue fits the bus of %s", p.Scenario.Name),
				hint: "add one to the catalogue, or see the reasons above"}
		}
		if !t.Complete {
			return stoppedBefore("every battery was counted")
		}
		return nil
	}
	return cmd
}

// columnChoice is a choice of a column; there are too many to be listed in place of the value.
type columnChoice struct {
	choice
}

// Type returns what the help text shows as the value.
func (c *columnChoice) Type() string { return "column" }

// addColumn gives a command the column to sort by, the first being the default.
func addColumn(cmd *cobra.Command, options []string) *columnChoice {
	c := &columnChoice{choice{value: options[0], options: options}}
	cmd.Flags().Var(c, "by", "column to sort by: "+strings.Join(options, ", "))
	// The only error is a flag that does not exist; it was made in the line above.
	_ = cmd.RegisterFlagCompletionFunc("by", cobra.FixedCompletions(options, cobra.ShellCompDirectiveNoFileComp))
	return c
}
