package cli

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"cartwright/cmd/cartwright/deal"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

const boughtHelp = `Shows what becomes of a scenario's file once something is bought: parts that are
bought are owned (have), parts that are sold are gone, the money in hand (sold,
savings.now) is what is left. With --write the file is rewritten in place:
comments, order and every other line stay as they are. Without it nothing is
written.

What is bought is the first plan, or plan N with --plan N; with --month M it is
what "cartwright next" buys and sells up to and including month M, with what is
saved until then in hand; with --part ID it is a purchase that no plan made:
--count of it (of what is bought by length, a length with its unit), for which
--paid was paid in all.

What is paid comes from what is sold now, then from what was sold before, then
from savings. Where that is not enough the rest came from elsewhere, and
savings.now is left as it is.

The scenario is a folder or a scenario.yaml; without one the current folder is
meant. A demo can be looked at, but not written to.`

const boughtExample = `  cartwright bought star-party
  cartwright bought star-party --month 1
  cartwright bought star-party --part lfp-24-50 --count 2 --paid 590
  cartwright new my-cart
  cartwright bought my-cart --plan 2 --write`

// boughtFlags is what can be bought.
type boughtFlags struct {
	rank, month       int
	part, count, paid string
	write             bool
}

// boughtCommand turns what is bought into what is owned.
func (a *app) boughtCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "bought [scenario]",
		Short:             "Turn what is bought into what is owned",
		Long:              boughtHelp,
		Example:           boughtExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	var f boughtFlags
	cmd.Flags().IntVar(&f.rank, "plan", 1, "`rank` of the plan that is bought")
	cmd.Flags().IntVar(&f.month, "month", 0, "last `month` of the purchase sequence that is bought")
	cmd.Flags().StringVar(&f.part, "part", "", "`id` of a part bought outside any plan")
	cmd.Flags().StringVar(&f.count, "count", "1", "`number` of it, or a length of cable like \"12 ft\"")
	cmd.Flags().StringVar(&f.paid, "paid", "", "`sum` paid for it, with shipping and tax")
	cmd.Flags().BoolVar(&f.write, "write", false, "rewrite the scenario's file")
	limit := addTimeLimit(cmd)
	format := addFormat(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := f.check(cmd); err != nil {
			return err
		}
		p, err := a.open(args)
		if err != nil {
			return err
		}
		if f.write && p.Scenario.Dir == "" {
			return wrong("\"cartwright new my-cart\" makes a scenario of your own; without --write a demo shows what would change",
				"the demo %s is part of the program and cannot be written to", args[0])
		}
		before, err := ownText(p.Scenario)
		if err != nil {
			return err
		}
		if f.write {
			if err := writable(p.Scenario.File); err != nil {
				return err
			}
		}
		ctx, cancel, err := limit.context(cmd, p)
		if err != nil {
			return err
		}
		defer cancel()
		d, err := a.dealOf(ctx, cmd, p, f)
		if err != nil {
			return err
		}
		return a.bought(p, d, before, f.write, format)
	}
	return cmd
}

// check checks which flags were given, and their numbers.
func (f boughtFlags) check(cmd *cobra.Command) error {
	switch flags := cmd.Flags(); {
	case flags.Changed("month") && flags.Changed("plan"):
		return wrong("give one of them", "--plan buys one plan, --month what the months up to it buy; both were given")
	case flags.Changed("part") && (flags.Changed("plan") || flags.Changed("month")):
		return wrong("give one of them", "--part buys a part outside any plan, --plan and --month what was planned; both were given")
	case f.rank < 1 || f.rank > mostPlans:
		return wrong("write for example --plan 2", "--plan is %d, but has to be from 1 to %d", f.rank, mostPlans)
	case flags.Changed("month") && (f.month < 0 || f.month > mostMonths):
		return wrong("write for example --month 0", "--month is %d, but has to be from 0 to %d", f.month, mostMonths)
	case !flags.Changed("part") && (flags.Changed("count") || flags.Changed("paid")):
		return wrong("name the part: --part ID", "--count and --paid go with --part")
	case flags.Changed("part") && !flags.Changed("paid"):
		return wrong("say what was paid in all, for example --paid 1190", "--paid is missing: what %s cost is not known", f.part)
	}
	return nil
}

// dealOf returns what is bought and sold.
func (a *app) dealOf(ctx context.Context, cmd *cobra.Command, p question.Problem, f boughtFlags) (deal.Deal, error) {
	switch {
	case cmd.Flags().Changed("part"):
		d, err := deal.OfPart(p, f.part, f.count, f.paid)
		return d, asFlags(err)
	case cmd.Flags().Changed("month"):
		return dealOfMonth(ctx, p, f.month)
	}
	return a.dealOfPlan(ctx, p, f.rank)
}

// bought shows what a deal changes and, where asked for, rewrites the file. Before is the file as it was read
// when the run began: where it has changed since, it is left alone.
func (a *app) bought(p question.Problem, d deal.Deal, before []byte, write bool, format *choice) error {
	s := p.Scenario
	answer := d.Answer(p)
	after, changes, err := scenarios.EditOwned(before, s.File, answer.Owned)
	if err != nil {
		return err
	}
	answer.Changes, answer.Writes = changes, write
	if err := a.show(answer, format); err != nil {
		return err
	}
	if !write || len(changes) == 0 {
		return nil
	}
	same := func() error {
		if now, err := ownText(s); err != nil || !bytes.Equal(now, before) {
			return wrong("run it again", "%s has changed in the meantime; nothing was written", s.File)
		}
		return nil
	}
	err = a.writeFile(context.Background(), target{path: s.File, ready: same}, func(w io.Writer) error {
		_, err := w.Write(after)
		return err
	})
	if err == nil {
		fmt.Fprintf(a.stderr, "cartwright: %s is rewritten\n", s.File)
	}
	return err
}

// writable refuses a file that its owner has made read-only: a new file put in its place would ignore that.
func writable(file string) error {
	info, err := os.Stat(file)
	if err == nil && info.Mode().Perm()&0o222 == 0 {
		return wrong("make it writable first, or leave --write out", "%s is read-only", file)
	}
	return nil
}

// ownText returns the text of a scenario's own file.
func ownText(s *scenarios.Scenario) ([]byte, error) {
	if s.Dir == "" {
		return fs.ReadFile(scenarios.DemoFS(), s.File)
	}
	text, err := os.ReadFile(s.File)
	if err != nil {
		return nil, wrong("make sure that it is there and may be read", "%s cannot be read again: %v", s.File, err)
	}
	return text, nil
}
