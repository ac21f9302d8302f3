package optimize

import (
	"context"
	"errors"
	"fmt"
	"math"

	"cartwright/optimize/plan"
)

// Axis is what cost is traded against.
type Axis string

// The axes of a frontier. AxisBudget is the same staircase as AxisAutonomy, read from the money's side.
const (
	AxisAutonomy Axis = "autonomy"
	AxisMass     Axis = "mass"
	AxisBudget   Axis = "budget"
)

// Step is one step of the staircase: the cheapest plan for every value up to At (autonomy, hours), or
// from At on (mass, kg).
type Step struct {
	At   float64   `json:"at"`
	Cost float64   `json:"cost"` // in currency units
	Plan plan.Plan `json:"plan"`
	Knee bool      `json:"knee,omitempty"`
}

// Staircase is the exact trade-off of cost against an axis.
type Staircase struct {
	Axis  Axis   `json:"of"`
	Unit  string `json:"unit"`
	Steps []Step `json:"steps"`
	// Complete says that no step is missing at the end: there is no plan beyond the last.
	Complete bool `json:"complete"`
}

// The smallest steps along an axis: plans closer than that count as one step.
const (
	autonomyStepH = 1e-6
	massStepKg    = 0.001
)

// Frontier finds every step of the staircase: for each autonomy, or for each mass, the cheapest plan. The
// budget is left aside, and so is the limit that is the axis; all other limits hold. Each step is one
// proved ranking; the next starts just beyond what the last plan gives. Progress, where given, is told
// the steps found so far.
func Frontier(ctx context.Context, p Problem, of Axis, progress func(steps int)) (*Staircase, error) {
	s := *p.Scenario
	s.Limits.Budget = math.MaxInt64
	out := &Staircase{Axis: of, Unit: "h"}
	next := func(at *plan.Plan) { s.AutonomyH = at.AutonomyH + autonomyStepH }
	value := func(at *plan.Plan) float64 { return at.AutonomyH }
	switch of {
	case AxisAutonomy, AxisBudget:
		s.AutonomyH = shortestH
	case AxisMass:
		out.Unit = "kg"
		s.Limits.MassKg = math.Inf(1)
		next = func(at *plan.Plan) { s.Limits.MassKg = at.MassKg - massStepKg }
		value = func(at *plan.Plan) float64 { return at.MassKg }
	default:
		return nil, fmt.Errorf("there is no frontier of %q", of)
	}
	wired := wiredOptions{}
	for {
		scenario := s
		found, err := firstPlan(ctx, Problem{&scenario, p.Catalog}, wired, ByCost, false)
		if errors.Is(err, ErrUnknown) {
			break
		}
		if err != nil {
			return nil, err
		}
		if found == nil {
			out.Complete = true
			break
		}
		step := Step{At: value(found), Cost: found.Cost.Units(), Plan: *found}
		if n := len(out.Steps); n > 0 && out.Steps[n-1].Cost >= step.Cost {
			out.Steps[n-1] = step // as cheap and better: the last was no step of its own
		} else {
			out.Steps = append(out.Steps, step)
		}
		if progress != nil {
			progress(len(out.Steps))
		}
		if of != AxisMass && found.AutonomyH >= longestH {
			out.Complete = true
			break
		}
		next(found)
	}
	out.markKnee()
	return out, nil
}

// markKnee marks the step that lies farthest from the straight line between the first and the last, both
// axes scaled to the same length: before it much is gained for little money, after it little for much.
//
// Source: the "kneedle" construction of Satopää, Albrecht, Irwin and Raghavan, "Finding a 'Kneedle' in a
// Haystack", 2011, without its smoothing; from memory.
func (f *Staircase) markKnee() {
	n := len(f.Steps)
	if n < 3 {
		return
	}
	first, last := f.Steps[0], f.Steps[n-1]
	knee, farthest := -1, 0.0
	for i := 1; i < n-1; i++ {
		x := (f.Steps[i].At - first.At) / (last.At - first.At)
		y := (f.Steps[i].Cost - first.Cost) / (last.Cost - first.Cost)
		if d := x - y; d > farthest {
			knee, farthest = i, d
		}
	}
	if knee >= 0 {
		f.Steps[knee].Knee = true
	}
}
