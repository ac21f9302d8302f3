package cli

import (
	"github.com/spf13/cobra"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/view"
)

const partsHelp = `Checks a catalogue, a folder of CSV files, and lists its parts by kind. Without
a folder the catalogue that comes with the program is listed; its parts are
invented. Prices that are too old are marked.`

const partsExample = `  cartwright parts
  cartwright parts --kind battery`

// partsCommand checks and lists a catalogue.
func (a *app) partsCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "parts [catalogue]",
		Short:             "Check a catalogue and list its parts",
		Long:              partsHelp,
		Example:           partsExample,
		Args:              oneArgument("catalogue"),
		ValidArgsFunction: completeFolder,
	}
	kinds := []string{allKinds}
	for _, k := range catalog.Kinds() {
		kinds = append(kinds, string(k))
	}
	kind := addChoice(cmd, "kind", "kind of part to list", kinds)
	format := addFormat(cmd)
	asOf := addAsOf(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		answer := view.Parts{Where: "the catalogue that comes with the program", AsOf: asOf.or(a.today)}
		dir := ""
		if len(args) > 0 {
			dir, answer.Where = args[0], args[0]
		}
		c, err := readCatalog(dir, ".")
		if err != nil {
			return err
		}
		answer.Catalog = c
		if kind.value != allKinds {
			answer.Kind = catalog.Kind(kind.value)
		}
		return a.show(answer, format)
	}
	return cmd
}

// allKinds asks for every kind of part.
const allKinds = "all"
