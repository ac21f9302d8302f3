package cli

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"cartwright/optimize"
	"cartwright/optimize/question"
)

const modelHelp = `Writes the integer program behind the first plan of a scenario in free MPS, so
that any solver of such programs can check it. Columns and rows have names that
tell what they stand for; money is in whole cents, all else in SI units. How
large it is going to be is told before it is written.

The scenario is a demo's name, a folder, or a scenario.yaml; without one the
current folder is meant.`

const modelExample = `  cartwright model cider-shed --out cider-shed.mps`

// modelCommand exports the integer program.
func (a *app) modelCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "model [scenario]",
		Short:             "Write the integer program as free MPS",
		Long:              modelHelp,
		Example:           modelExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	by := addChoice(cmd, "by", "what is least: cost or mass", []string{string(question.ByCost), string(question.ByMass)})
	out := cmd.Flags().String("out", "-", "`file` to write; - is standard output")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		p, err := a.open(args)
		if err != nil {
			return err
		}
		m, err := optimize.FullModel(cmd.Context(), p, question.Options{By: question.By(by.value)})
		switch {
		case errors.Is(err, question.ErrUnknown):
			return stopped(err)
		case err != nil:
			return &outcome{code: codeNo, err: err, hint: "\"cartwright plan\" says what would have to change"}
		}
		variables, rows := m.Size()
		fmt.Fprintf(a.stderr, "cartwright: the program has %d variables, %d rows and %d coefficients\n", variables, rows, m.Entries())
		return a.writeFile(cmd.Context(), target{path: *out, inputs: inputs(p)}, func(w io.Writer) error { return m.WriteMPS(w) })
	}
	return cmd
}
