package cli

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"cartwright/cmd/cartwright/picture"
	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/frontier"
	"cartwright/optimize/question"
)

const drawHelp = `Draws a plan into a file, as SVG or PNG by the file's ending; what stands there
is replaced.

--what cart: from the side, from the end and from above, to scale, with every
module where it stands, the centre of gravity, what the wheels carry and the
angle at which it tips. --what wiring: the one-line diagram with the symbols of
IEC 60617 or IEEE 315, each run with its conductors, length, fuse or breaker and
the current a short circuit would draw. --what year: the day's load and the
store of energy over it, and with sun the year hour by hour. --what costs: what
a usable kWh costs in each plan, and cost against autonomy.

The scenario is a demo's name, a folder, or a scenario.yaml; without one the
current folder is meant.`

const drawExample = `  cartwright draw cider-shed --what cart --out cart.svg
  cartwright draw cider-shed --what wiring --show 2 --out wiring.png`

// The drawings there are.
const (
	drawCart   = "cart"
	drawWiring = "wiring"
	drawYear   = "year"
	drawCosts  = "costs"
)

// drawCommand draws a plan.
func (a *app) drawCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "draw [scenario]",
		Short:             "Draw the cart, its wiring, its year or its costs",
		Long:              drawHelp,
		Example:           drawExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	what := addChoice(cmd, "what", "what is drawn", []string{drawCart, drawWiring, drawYear, drawCosts})
	out := cmd.Flags().String("out", "", "`file` to draw into, ending in .svg or .png")
	show := cmd.Flags().Int("show", 1, "`rank` of the plan to draw")
	limit := addTimeLimit(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := checkDrawing(*out, *show); err != nil {
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
		drawing, ended, err := a.drawing(ctx, p, what.value, *show)
		if err != nil {
			return err
		}
		if err := a.writeDrawing(p, drawing, *out); err != nil {
			return err
		}
		return ended
	}
	return cmd
}

// checkDrawing checks, before long work begins, that a drawing can be written and which plan it is of.
func checkDrawing(out string, show int) error {
	switch ending := strings.ToLower(filepath.Ext(out)); {
	case out == "":
		return wrong("write for example --out cart.svg", "--out has to name a file to draw into")
	case ending != ".svg" && ending != ".png":
		return wrong("end it in .svg or .png, for example --out cart.svg", "--out is %s, which says neither SVG nor PNG", out)
	case show < 1 || show > mostPlans:
		return wrong("write for example --show 2", "--show is %d, but has to be a rank from 1 to %d", show, mostPlans)
	}
	return checkPlace(out)
}

// drawing ranks plans and draws one of them. Ended is how the ranking ended, nil where it is proven.
func (a *app) drawing(ctx context.Context, p question.Problem, what string, show int) (drawn *scene.Scene, ended, err error) {
	o := question.Options{Plans: show}
	if what == drawCosts {
		o.Plans = max(show, p.Scenario.Solver.Plans)
	}
	r, err := a.rank(ctx, p, o)
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
	q := &picture.Subject{Scenario: p.Scenario, Catalog: p.Catalog, Plan: &r.Plans[show-1], Units: told.UnitsOf(p.Scenario)}
	switch what {
	case drawWiring:
		return picture.Wiring(q), ended, nil
	case drawYear:
		drawn, err = picture.Year(q)
		return drawn, ended, err
	case drawCosts:
		f, err := a.staircase(ctx, p, frontier.AxisAutonomy)
		if err != nil {
			return nil, nil, err
		}
		if ended == nil {
			ended = frontierEnding(p, f)
		}
		return picture.Costs(p.Scenario.Name, p.Scenario.Currency, r.Plans, tradeoff(p.Scenario, f)), ended, nil
	default:
		return picture.Cart(q), ended, nil
	}
}

// fewer is the outcome where a plan is asked for that is not among those found. Where the search was stopped, that is
// the reason, and no mistake of the user's.
func fewer(show int, r *question.Result, ended error) error {
	if ended != nil {
		return ended
	}
	return wrong(fmt.Sprintf("give --show a rank from 1 to %d", len(r.Plans)), "there is no plan %d", show)
}

// writeDrawing writes a drawing in the form that its file's ending says, whole or not at all.
func (a *app) writeDrawing(p question.Problem, drawing *scene.Scene, out string) error {
	drawn, err := drawnAs(drawing, strings.TrimPrefix(strings.ToLower(filepath.Ext(out)), "."))
	if err != nil {
		return err
	}
	return a.replace(p, out, drawn)
}

// drawnAs returns a drawing as a file of a form, "svg" or "png".
func drawnAs(drawing *scene.Scene, form string) ([]byte, error) {
	const dots = 2.5 // a unit; 240 an inch, sharp in print
	if form == "png" {
		return drawing.PNG(dots)
	}
	return drawing.SVG(), nil
}
