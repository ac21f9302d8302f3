package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/audit"
)

const auditHelp = `Checks what a scenario lists as owned, as if it were all installed today,
against the same limits as a plan: every check with pass or fail and by how
much, and what is missing. Nothing is bought and no solver is used.

The exit status is 0 where all is there and passes, else 1.`

const auditExample = `  cartwright audit cider-shed`

// auditCommand checks what is owned.
func (a *app) auditCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "audit [scenario]",
		Short:             "Check what is owned today against the limits",
		Long:              auditHelp,
		Example:           auditExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	format := addFormat(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		p, err := a.open(args)
		if err != nil {
			return err
		}
		r, err := audit.Installed(p.Scenario, p.Catalog)
		if err != nil {
			return err
		}
		if err := a.show(view.Audit{Scenario: p.Scenario, Report: r, Cautions: optimize.Cautions()}, format); err != nil {
			return err
		}
		if !r.Passed {
			return &outcome{code: codeNo, err: fmt.Errorf("what is owned for %s does not pass", p.Scenario.Name),
				hint: "\"cartwright plan\" says what to buy"}
		}
		return nil
	}
	return cmd
}
