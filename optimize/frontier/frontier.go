// Package frontier finds the trade-off of cost against autonomy, mass or the share of a year that sun and store serve:
// every step of the staircase, each proved.
package frontier

import (
	"context"
	"errors"
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/relax"
	"cartwright/optimize/search"
)

// Axis is what cost is traded against.
type Axis string

// The axes of a frontier. AxisBudget is the same staircase as AxisAutonomy, read as the autonomy that money buys.
const (
	AxisAutonomy Axis = "autonomy"
	AxisMass     Axis = "mass"
	AxisBudget   Axis = "budget"
	AxisServed   Axis = "served"
)

// Step is one step of the staircase: the cheapest plan for every value up to At (autonomy, hours; served, percent), or
// from At on (mass, kg). The plan may run longer than At where more energy could not be put back in the
// time that the scenario's recharge allows.
type Step struct {
	At   float64
	Cost float64 // in currency units
	Plan plan.Plan
	Knee bool
}

// Staircase is the exact trade-off of cost against an axis.
type Staircase struct {
	Axis  Axis
	Unit  string
	Steps []Step
	// Complete says that no step is missing at the end: there is no plan beyond the last.
	Complete bool
}

// ErrNoSun is returned for AxisServed where the scenario has no sun.
var ErrNoSun = errors.New("there is no frontier of served without sun")

// The smallest steps along an axis: plans that are closer count as one step.
const (
	autonomyStepH = 1e-6
	massStepKg    = 0.001
	servedStepPct = 1e-4
)

// Find finds every step of the staircase: for each autonomy, mass or share served the cheapest plan. The
// budget and the limit that is the axis are ignored; all other limits hold. Each step is proved; the search for the next
// starts just beyond what the last plan gives. The watch gets the number of steps found so far.
func Find(ctx context.Context, p question.Problem, of Axis, watch question.Watch) (*Staircase, error) {
	s := *p.Scenario
	s.Limits.Budget = math.MaxInt64
	out := &Staircase{Axis: of, Unit: "h"}
	demand, err := energy.DemandOf(&s)
	if err != nil {
		return nil, err
	}
	value := func(at *plan.Plan) float64 {
		return servedH(question.Problem{Scenario: &s, Catalog: p.Catalog}, demand, at)
	}
	next := func(v float64) { s.AutonomyH = v + autonomyStepH }
	ahead, last := autonomyStepH, float64(relax.LongestH)
	switch of {
	case AxisAutonomy, AxisBudget:
		s.AutonomyH = relax.ShortestH
	case AxisMass:
		out.Unit = "kg"
		s.Limits.MassKg = math.Inf(1)
		next = func(v float64) { s.Limits.MassKg = v - massStepKg }
		value = func(at *plan.Plan) float64 { return at.MassKg }
	case AxisServed:
		if s.Sun == nil {
			return nil, ErrNoSun
		}
		out.Unit, last = "%", 100
		s.Limits.Served = 0
		next = func(v float64) { s.Limits.Served = (v + servedStepPct) / 100 }
		value = func(at *plan.Plan) float64 { return 100 * at.Year.Served }
	default:
		return nil, fmt.Errorf("there is no frontier of %q", of)
	}
	series := search.NewSeries(p)
	for {
		scenario := s
		found, err := series.Next(ctx, &scenario)
		if errors.Is(err, question.ErrUnknown) {
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
		if of != AxisMass && of != AxisServed && step.At < s.AutonomyH {
			// The plan of the step before again: so small a step is within the rounding of its energy.
			ahead *= 2
			s.AutonomyH += ahead
			continue
		}
		ahead = autonomyStepH
		if n := len(out.Steps); n > 0 && out.Steps[n-1].Cost >= step.Cost {
			out.Steps[n-1] = step // as cheap and better, so the last was not a step of its own
		} else {
			out.Steps = append(out.Steps, step)
		}
		watch.Tell(len(out.Steps), len(out.Steps))
		if next(step.At); of != AxisMass && (step.At >= last || s.Limits.Served > 1) {
			out.Complete = true
			break
		}
	}
	out.markKnee()
	return out, nil
}

// servedH returns the longest autonomy that a plan serves: as long as its energy lasts, and no longer than
// what can be recharged in the scenario's time. What has to be put back is in proportion to the energy of the autonomy,
// so the plan's own figures for the scenario's autonomy show how much more it could be.
func servedH(p question.Problem, d *energy.Demand, at *plan.Plan) float64 {
	share := math.Inf(1) // of the energy of the scenario's autonomy, what could be put back
	for _, l := range at.Limits {
		if (l.Name == plan.LimitCharger || l.Name == plan.LimitCharge) && l.Limit > 0 {
			share = math.Min(share, l.Value/l.Limit)
		}
	}
	inv, ok := inverterOf(p, at.Core.Inverter.Part)
	if !ok || math.IsInf(share, 1) {
		return at.AutonomyH
	}
	idleW := float64(at.Core.Inverter.Units) * inv.IdleW
	backWh := share * d.WindowWh(inv.Efficiency, idleW, p.Scenario.AutonomyH)
	return math.Min(at.AutonomyH, d.AutonomyH(inv.Efficiency, idleW, backWh))
}

// inverterOf returns an inverter of the catalogue.
func inverterOf(p question.Problem, id string) (*catalog.Inverter, bool) {
	for i := range p.Catalog.Inverters {
		if p.Catalog.Inverters[i].ID == id {
			return &p.Catalog.Inverters[i], true
		}
	}
	return nil, false
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
