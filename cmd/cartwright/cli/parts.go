package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/cmd/cartwright/view"
	"cartwright/scenarios"
)

const partsHelp = `Checks a catalogue, a folder of CSV files or a workbook, and lists its parts by
kind. Without one the catalogue that comes with the program is listed; its parts
are invented. Prices that are too old are marked.`

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
	units := addChoice(cmd, "units", "units of masses and lengths", []string{string(told.Metric), string(told.US)})
	format := addFormat(cmd)
	asOf := addAsOf(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		answer := view.Parts{Where: "the catalogue that comes with the program", AsOf: asOf.or(a.today), Units: told.Units(units.value)}
		dir := ""
		if len(args) > 0 {
			dir, answer.Where = args[0], args[0]
		}
		c, err := readCatalog(dir, ".")
		if err != nil {
			return elsewhere(dir, err)
		}
		a.warn(c.Warnings)
		answer.Catalog = c
		if kind.value != allKinds {
			answer.Kind = catalog.Kind(kind.value)
		}
		return a.show(answer, format)
	}
	return cmd
}

// elsewhere adds to an error about a catalogue's folder where its parts are, if a scenario was named.
func elsewhere(dir string, err error) error {
	if _, missing := os.Stat(dir); missing != nil && slices.Contains(scenarios.DemoNames(), dir) {
		return &outcome{code: codeInput, err: err, hint: "the demos have the parts that come with the program: \"cartwright parts\""}
	}
	if _, missing := os.Stat(filepath.Join(dir, scenarios.FileName)); missing == nil {
		return &outcome{code: codeInput, err: err, hint: fmt.Sprintf("this is the folder of a scenario; its parts may be in a folder of their own, "+
			"like %q", "cartwright parts "+filepath.Join(dir, partsFolder))}
	}
	return err
}

// allKinds asks for every kind of part.
const allKinds = "all"
