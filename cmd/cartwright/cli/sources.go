package cli

import (
	"github.com/spf13/cobra"

	"cartwright/cmd/cartwright/view"
	"cartwright/optimize/audit"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/wiring"
)

const sourcesHelp = `Lists every table, formula, rule and habit of the trade that plans and audits
stand on: what it gives, where it is published and how far it is confirmed.`

const sourcesExample = `  cartwright sources
  cartwright sources --format csv`

// sourcesCommand lists what the figures stand on.
func (a *app) sourcesCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:     "sources",
		Short:   "List where every table, formula and rule comes from",
		Long:    sourcesHelp,
		Example: sourcesExample,
		Args:    noArguments,
	}
	format := addFormat(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		answer := view.Sources{
			{Room: "wiring", Sources: wiring.Sources()},
			{Room: "energy", Sources: energy.Sources()},
			{Room: "chassis", Sources: chassis.Sources()},
			{Room: "audit", Sources: audit.Sources()},
		}
		return a.show(answer, format)
	}
	return cmd
}
