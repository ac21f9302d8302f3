package cli

import (
	"github.com/spf13/cobra"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/audit"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/energy/sun"
	"cartwright/optimize/energy/year"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
	"cartwright/scenarios/sky"
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
		return a.show(allSources(), format)
	}
	return cmd
}

// allSources lists the sources of every room that has some, in the order in which data flows.
func allSources() view.Sources {
	return view.Sources{
		{Room: "catalog", Sources: catalog.Sources()},
		{Room: "scenarios", Sources: scenarios.Sources()},
		{Room: "sky", Sources: sky.Sources()},
		{Room: "wiring", Sources: wiring.Sources()},
		{Room: "energy", Sources: energy.Sources()},
		{Room: "sun", Sources: sun.Sources()},
		{Room: "year", Sources: year.Sources()},
		{Room: "chassis", Sources: chassis.Sources()},
		{Room: "audit", Sources: audit.Sources()},
		{Room: "planning", Sources: optimize.Sources()},
		{Room: "drawings", Sources: picture.Sources()},
	}
}
