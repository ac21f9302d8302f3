package cli

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/optimize/frontier"
	"cartwright/optimize/question"
)

const frontierHelp = `Trades cost against autonomy, mass or sun, exactly: every step of the staircase,
from the cheapest plan there is to the last that is possible, with the plan on
each. All limits but the budget and the one that is traded hold.

--of autonomy: for each number of hours the cheapest plan. --of mass: for each
mass the cheapest plan that is no heavier. --of served: for each share of the
year that the sun is to serve the cheapest plan. --of budget: for each budget
the longest autonomy. The knee is the step that lies farthest below the straight
line from the first to the last: before it much is gained for little money,
after it little for much.

--svg and --png draw the staircase into a file; what stands there is replaced.
The scenario is a demo's name, a folder, or a scenario.yaml; without one the
current folder is meant.`

const frontierExample = `  cartwright frontier lantern-market
  cartwright frontier lantern-market --of mass --svg mass.svg --png mass.png`

// frontierCommand trades cost against another figure.
func (a *app) frontierCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "frontier [scenario]",
		Short:             "Trade cost against autonomy, mass or sun, step by step",
		Long:              frontierHelp,
		Example:           frontierExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	of := addChoice(cmd, "of", "what is traded", []string{string(frontier.AxisAutonomy), string(frontier.AxisMass), string(frontier.AxisServed), string(frontier.AxisBudget)})
	svg := cmd.Flags().String("svg", "", "`file` to draw the staircase into, as SVG")
	png := cmd.Flags().String("png", "", "`file` to draw the staircase into, as PNG")
	limit := addTimeLimit(cmd)
	format := addFormat(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		charts := []chart{{"svg", *svg, cmd.Flags().Changed("svg")}, {"png", *png, cmd.Flags().Changed("png")}}
		if err := checkCharts(charts); err != nil {
			return err
		}
		p, err := a.open(args)
		if err != nil {
			return err
		}
		if frontier.Axis(of.value) == frontier.AxisServed && p.Scenario.Sun == nil {
			return wrong("add sun to it, or trade something else", "%s has no sun, and so no share of a year that it serves", p.Scenario.Name)
		}
		ctx, cancel, err := limit.context(cmd, p)
		if err != nil {
			return err
		}
		defer cancel()
		f, err := a.staircase(ctx, p, frontier.Axis(of.value))
		if err != nil {
			return err
		}
		answer := view.Frontier{Scenario: p.Scenario, Staircase: f, Cautions: optimize.Cautions()}
		if err := a.draw(p, f, charts); err != nil {
			return err
		}
		if err := a.show(answer, format); err != nil {
			return err
		}
		return frontierEnding(p, f)
	}
	return cmd
}

// staircase finds the steps, telling on a terminal how many there are.
func (a *app) staircase(ctx context.Context, p question.Problem, of frontier.Axis) (*frontier.Staircase, error) {
	bar := a.progress()
	f, err := frontier.Find(ctx, p, of, bar.steps)
	bar.clear()
	return f, stopped(err)
}

// steps tells how many steps were found so far.
func (p *progress) steps(at question.Progress) {
	if p.bar != nil {
		p.bar.Describe(fmt.Sprintf("searching: %d steps found", at.Found))
		// A terminal that takes no progress takes no answer either, and that failure is told.
		_ = p.bar.Set(at.Found)
	}
}

// frontierEnding returns how a frontier ended: nil where every step was found.
func frontierEnding(p question.Problem, f *frontier.Staircase) error {
	switch {
	case !f.Complete:
		return stoppedBefore("the last step was found")
	case len(f.Steps) == 0:
		return &outcome{code: codeNo, err: fmt.Errorf("no plan for %s meets all limits, whatever it costs", p.Scenario.Name),
			hint: "\"cartwright why\" says which limits contradict each other"}
	}
	return nil
}

// chart is a picture that was asked for.
type chart struct {
	form  string // "svg" or "png"
	path  string
	given bool
}

// checkCharts checks, before long work begins, that the charts can be written.
func checkCharts(charts []chart) error {
	for _, c := range charts {
		if !c.given {
			continue
		}
		flag := "--" + c.form
		example := fmt.Sprintf("write for example %s steps.%s", flag, c.form)
		switch info, err := os.Stat(c.path); {
		case c.path == "" || c.path == "-":
			return wrong(example, "%s needs the name of a file, but got %q", flag, c.path)
		case (err != nil || info.Mode().IsRegular()) && !strings.EqualFold(filepath.Ext(c.path), "."+c.form):
			return wrong(example, "%s draws a picture of that format, but %s does not end in .%s", flag, c.path, c.form)
		case err == nil && info.IsDir():
			return wrong(fmt.Sprintf("give the name of a file in it: %s %s", flag, filepath.Join(c.path, "steps."+c.form)),
				"%s is a folder", c.path)
		}
		if folder, err := os.Stat(filepath.Dir(c.path)); err != nil || !folder.IsDir() {
			return wrong("make it first, or give another", "there is no folder %s for %s", filepath.Dir(c.path), c.path)
		}
	}
	return nil
}

// draw writes the charts that were asked for, each whole or not at all, and says so. Where there is no step
// there is nothing to draw.
func (a *app) draw(p question.Problem, f *frontier.Staircase, charts []chart) error {
	for _, c := range charts {
		if !c.given || len(f.Steps) == 0 {
			continue
		}
		drawn, err := drawnAs(tradeoff(p.Scenario, f).Scene(), c.form)
		if err != nil {
			return err
		}
		if err := a.replace(p, c.path, drawn); err != nil {
			return err
		}
	}
	return nil
}
