package question

import (
	"runtime"
	"time"
)

// OrCost returns the objective, or that of cost where there is none.
func (by By) OrCost() By {
	if by == "" {
		return ByCost
	}
	return by
}

// By is what a plan is ranked by.
type By string

// The three objectives. ByLife is cost over lifetime kilowatt-hours: cycle life times usable energy.
const (
	ByCost By = "cost"
	ByMass By = "mass"
	ByLife By = "life"
)

// Distinct says when two plans count as different.
type Distinct string

// The two distinctions: another core, or another set of battery parts.
const (
	DistinctCore    Distinct = "core"
	DistinctBattery Distinct = "battery"
)

// Options says how to rank. The zero value ranks the scenario's number of plans by cost, distinct by
// core, within the scenario's time limit, on every processor.
type Options struct {
	Plans     int
	By        By
	Distinct  Distinct
	TimeLimit time.Duration
	Workers   int
	// Must, where given, is a part that every plan has to have installed.
	Must string
	// Progress, where given, is told of cells solved and plans found so far; from one goroutine at a time.
	Progress func(solved, found int)
}

// WithDefaults fills in what the options leave open from the scenario.
func (o Options) WithDefaults(p Problem) Options {
	if o.Plans <= 0 {
		o.Plans = max(1, p.Scenario.Solver.Plans)
	}
	if o.By == "" {
		o.By = ByCost
	}
	if o.Distinct == "" {
		o.Distinct = DistinctCore
	}
	if o.TimeLimit == 0 {
		o.TimeLimit = time.Duration(p.Scenario.Solver.TimeLimitS * float64(time.Second))
	}
	if o.Workers <= 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	return o
}
