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
tell what they stand for. Money is in units of the currency, energy in kWh, mass
in kg, length in m, current in A, fault current in kA. How large the program is
is told before it is written.

--proofs ranks the scenario's plans and writes each program that the ranking
rests on to a folder, beside the proof of what is its best; --check checks such
a folder, with no solver, in exact arithmetic. README.txt in it says how.

The scenario is a demo's name, a folder, or a scenario.yaml; without one the
current folder is meant.`

const modelExample = `  cartwright model cider-shed --out cider-shed.mps
  cartwright model cider-shed --proofs cider-shed-proofs
  cartwright model --check cider-shed-proofs`

// modelCommand exports the integer program, or the proofs.
func (a *app) modelCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "model [scenario]",
		Short:             "Write the integer program as free MPS; write and check proofs",
		Long:              modelHelp,
		Example:           modelExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	by := addChoice(cmd, "by", "what is least: cost or mass", []string{string(question.ByCost), string(question.ByMass)})
	out := cmd.Flags().String("out", "-", "`file` to write; - is standard output")
	proofs := cmd.Flags().String("proofs", "", "`folder` to make for the proofs of the ranking")
	check := cmd.Flags().String("check", "", "`folder` of proofs to check")
	limit := addTimeLimit(cmd)
	cmd.MarkFlagsMutuallyExclusive("out", "proofs", "check")
	cmd.MarkFlagsMutuallyExclusive("by", "check")
	cmd.MarkFlagsMutuallyExclusive("time-limit", "check")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if *check != "" {
			if len(args) > 0 {
				return wrong("name the folder alone: cartwright model --check "+*check, "--check takes no scenario")
			}
			return a.checkProofs(*check)
		}
		p, err := a.open(args)
		if err != nil {
			return err
		}
		if *proofs != "" {
			ctx, cancel, err := limit.context(cmd, p)
			if err != nil {
				return err
			}
			defer cancel()
			return a.writeProofs(ctx, p, question.By(by.value), *proofs)
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
