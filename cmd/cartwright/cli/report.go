package cli

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	paper "cartwright/cmd/cartwright/report"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/frontier"
	"cartwright/optimize/question"
)

const reportHelp = `Writes a plan as one HTML file to print and take to the shop: what to buy, the
cart and its wiring drawn, the shopping list by vendor with boxes to tick, what
to cut, labels for the cables, limits, alternatives, costs, cautions, sources.
The file needs no network and no script and prints on A4 and on Letter; what
stands there is replaced.

The scenario is a demo's name, a folder, or a scenario.yaml; without one the
current folder is meant.`

const reportExample = `  cartwright report cider-shed --out cider-shed.html
  cartwright report star-party --show 2 --out second.html`

// reportCommand writes a plan to print.
func (a *app) reportCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "report [scenario]",
		Short:             "Write a plan as one file to print",
		Long:              reportHelp,
		Example:           reportExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	out := cmd.Flags().String("out", "", "`file` to write, ending in .html")
	show := cmd.Flags().Int("show", 1, "`rank` of the plan to write in full")
	limit := addTimeLimit(cmd)
	asOf := addAsOf(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := checkReport(*out, *show); err != nil {
			return err
		}
		p, err := a.open(args)
		if err != nil {
			return err
		}
		ctx, cancel, err := limit.context(cmd, p)
		if err != nil {
			return err
		}
		defer cancel()
		r, ended, err := a.reportOf(ctx, p, *show)
		if err != nil {
			return err
		}
		r.AsOf = asOf.or(a.today)
		text, err := r.HTML()
		if err != nil {
			return err
		}
		if err := a.replace(p, *out, text); err != nil {
			return err
		}
		return ended
	}
	return cmd
}

// checkReport checks, before long work begins, that a report can be written and of which plan.
func checkReport(out string, show int) error {
	if show < 1 || show > mostPlans {
		return wrong("write for example --show 2", "--show is %d, but has to be a rank from 1 to %d", show, mostPlans)
	}
	return checkHTML("--out", out)
}

// checkHTML checks that what a flag names is a file of HTML that can be written.
func checkHTML(flag, path string) error {
	switch ending := strings.ToLower(filepath.Ext(path)); {
	case path == "":
		return wrong("write for example "+flag+" cart.html", "%s has to name a file to write", flag)
	case ending != ".html" && ending != ".htm":
		return wrong("end it in .html, for example "+flag+" cart.html", "%s is %s, which does not say HTML", flag, path)
	}
	return checkPlace(path)
}

// checkPlace checks that a file can stand at a path.
func checkPlace(out string) error {
	if info, err := os.Stat(out); err == nil && info.IsDir() {
		return wrong("give the name of a file in it", "%s is a folder", out)
	}
	if folder, err := os.Stat(filepath.Dir(out)); err != nil || !folder.IsDir() {
		return wrong("make it first, or give another", "there is no folder %s for %s", filepath.Dir(out), out)
	}
	return nil
}

// reportOf ranks plans and gathers what a report says. Ended is how the ranking ended, nil where it is proven.
func (a *app) reportOf(ctx context.Context, p question.Problem, show int) (out *paper.Report, ended, err error) {
	plans := max(show, p.Scenario.Solver.Plans)
	r, err := a.rank(ctx, p, question.Options{Plans: plans})
	if err != nil {
		return nil, nil, err
	}
	ended = ending(p, r)
	if len(r.Plans) == 0 {
		return nil, nil, ended
	}
	if show > len(r.Plans) {
		return nil, nil, fewer(show, r, ended)
	}
	f, err := a.staircase(ctx, p, frontier.AxisAutonomy)
	if err != nil {
		return nil, nil, err
	}
	if ended == nil {
		ended = frontierEnding(p, f)
	}
	out = &paper.Report{
		Scenario: p.Scenario, Catalog: p.Catalog, Plans: r.Plans, Show: show - 1, Proof: view.Proved(r), Cautions: r.Cautions,
		Notices: optimize.Notices(p), Tradeoff: tradeoff(p.Scenario, f),
	}
	for _, room := range allSources() {
		out.Sources = append(out.Sources, room.Sources...)
	}
	return out, ended, nil
}

// replace writes a file whole or not at all, and says that it was written.
func (a *app) replace(p question.Problem, path string, text []byte) error {
	done := "wrote"
	if _, err := os.Stat(path); err == nil {
		done = "replaced"
	}
	err := a.writeFile(context.Background(), target{path: path, inputs: inputs(p)}, func(w io.Writer) error {
		_, err := w.Write(text)
		return err
	})
	if err != nil {
		return err
	}
	fmt.Fprintf(a.stderr, "cartwright: %s %s\n", done, path)
	return nil
}
