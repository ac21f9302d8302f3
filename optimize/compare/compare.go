// Package compare puts possible purchases side by side: each choice with the owned batteries that can stay, exactly what
// it names, and the rest at least cost. How long a choice runs the loads is an outcome, not a limit.
package compare

import (
	"context"
	"errors"
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/audit"
	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// Line is a number of a part.
type Line struct {
	Part  string
	Count int
}

// Left is a number of an owned battery that a choice takes off the cart, and why.
type Left struct {
	Part   string
	Count  int
	Reason string
}

// Outcome is the result of a choice.
type Outcome struct {
	Buy  []Line // none: only what is owned
	Kept []Line // owned batteries that stay
	Left []Left
	Plan *plan.Plan // nil where the choice is not possible
	// Month is the first in which savings reach the cost, 0 being now; Reached says whether there is one.
	Month   int
	Reached bool
	Reasons []string          // why it is not possible
	Changes []question.Change // each of which makes it possible
}

// Table is all choices side by side.
type Table struct {
	OwnedKWh float64   // usable energy owned today, which extra energy is counted from
	Outcomes []Outcome // nothing bought first, then in the order asked
	Complete bool      // every choice was worked out; else it was stopped before that
}

// Find works out every choice, and before them what is owned with nothing bought.
func Find(ctx context.Context, p question.Problem, choices [][]Line) (*Table, error) {
	if err := (question.Options{}).Check(p); err != nil {
		return nil, err
	}
	t := &Table{OwnedKWh: energy.OwnedWh(p.Scenario, p.Catalog) / 1000}
	for _, buy := range append([][]Line{nil}, choices...) {
		for _, l := range buy {
			if err := Check(p.Catalog, l); err != nil {
				return nil, err
			}
		}
		o, err := outcome(ctx, p, buy)
		if errors.Is(err, question.ErrUnknown) && ctx.Err() != nil && len(t.Outcomes) > 1 {
			return t, nil // with what is known
		}
		if err != nil {
			return nil, err
		}
		t.Outcomes = append(t.Outcomes, *o)
	}
	t.Complete = true
	return t, nil
}

// Check returns an error for a line that a choice cannot name.
func Check(c *catalog.Catalog, l Line) error {
	e, known := c.Find(l.Part)
	switch {
	case !known:
		return fmt.Errorf("there is no part %q in the catalogue", l.Part)
	case e.Kind.ByLength():
		return fmt.Errorf("%s is bought by length, which follows from the plan; a choice names whole parts", l.Part)
	case l.Count < 1:
		return fmt.Errorf("%d x %s: a choice names at least one", l.Count, l.Part)
	}
	return nil
}

// outcome works out one choice: of its possible banks that have a plan, it takes the one that keeps most of what is owned.
func outcome(ctx context.Context, p question.Problem, buy []Line) (*Outcome, error) {
	o := &Outcome{Buy: buy}
	b, err := bench.Lay(ctx, p, "", &bench.Before{})
	if err != nil {
		return nil, err
	}
	f := newFitting(b, p, buy)
	list, err := f.banks(ctx)
	if err != nil {
		return nil, err
	}
	if len(list) == 0 {
		o.Reasons = f.misfit()
		return o, nil
	}
	before := &bench.Before{}
	for i := range list {
		found, err := stand(ctx, p, before, &list[i], buy)
		if err != nil {
			return nil, err
		}
		if found == nil {
			continue
		}
		found.CostPerExtraKWh = energy.CostPerExtraKWh(found.Cost.Units(), 1000*found.UsableKWh, energy.OwnedWh(p.Scenario, p.Catalog))
		if err := question.Agreed(*found, audit.Extra(p.Scenario, p.Catalog, found.CostPerExtraKWh, found.Cost.Units(), 1000*found.UsableKWh)); err != nil {
			return nil, err
		}
		o.Plan = found
		o.Month, o.Reached = next.MonthOf(p.Scenario, found.Cost)
		o.Kept = list[i].kept(f)
		o.Left, err = f.left(ctx, &list[i], &list[0])
		return o, err
	}
	o.Reasons, o.Changes, err = obstacles(ctx, p, &list[0], buy)
	return o, err
}
