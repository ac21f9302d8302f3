// Package optimize answers what to buy next: given a catalogue and a scenario it ranks complete,
// buildable shopping plans by cost, mass or cost per lifetime kilowatt-hour, and proves the ranking.
//
// A plan's core is its batteries, strings, inverter and units; all else follows the core at least cost.
// Rank splits the space of cores into cells, bounds each from below, solves the promising ones as
// integer linear programs (package milp) and goes on until no cell left can hold a better plan. Every
// plan handed out has passed the audit (package audit), which knows nothing of this package.
package optimize

import (
	"errors"
	"fmt"
	"time"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Problem is a scenario and the catalogue it is planned from.
type Problem struct {
	Scenario *scenarios.Scenario
	Catalog  *catalog.Catalog
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

// Status tells why ranking stopped.
type Status string

// The statuses. Only Optimal and Infeasible are proved.
const (
	Optimal    Status = "optimal"
	TimeLimit  Status = "time-limit" // plans are the best found so far, not proved
	Infeasible Status = "infeasible"
	GaveUp     Status = "gave-up" // the solver failed under every setting
)

// Solver tells what was solved, by what, in which time.
type Solver struct {
	Name    string   `json:"name"`
	Version string   `json:"version"`
	Status  Status   `json:"status"`
	Seconds float64  `json:"seconds"`
	Models  int      `json:"models"`            // integer programs solved, proofs included
	Cells   int      `json:"cells"`             // parts of the space that were looked into
	Gap     float64  `json:"gap,omitempty"`     // (cost of the first plan - bound) / cost, where not proved
	Retries []string `json:"retries,omitempty"` // solver trouble and what it was retried with
}

// Result is a ranking, or the reasons why there is none.
type Result struct {
	Plans    []plan.Plan
	Solver   Solver
	Cautions []string
	// Changes is filled where no plan is possible: the smallest change of each single limit that makes one
	// possible, or a smallest joint change where no single one will do.
	Changes []Change
	// ChangesUnknown says that time ran out, or the solver gave up, before every change was looked into: there
	// may be others than those in Changes that make a plan possible, and smaller joint ones.
	ChangesUnknown bool
	// Reasons tells, where no plan is possible, what the catalogue has nothing for, or what else but the limits
	// stands in the way.
	Reasons []string
}

// ErrUnknown is returned where time ran out, or the solver gave up, before it was known whether a plan is
// possible.
var ErrUnknown = errors.New("it is not known in the time given whether a plan is possible")

// Change is one limit and how far it has to give.
type Change struct {
	Limits []LimitChange `json:"limits"` // one for a single change, several for a joint one
}

// LimitChange is a limit's value now and the value that is enough.
type LimitChange struct {
	Name string  `json:"name"`
	From float64 `json:"from"`
	To   float64 `json:"to"`
	Unit string  `json:"unit"`
}

// DisagreementError is returned where a plan failed its audit: nothing of it may be shown as a plan.
type DisagreementError struct {
	Plan   plan.Plan
	Failed []plan.Check
}

// Error names the failed checks.
func (e *DisagreementError) Error() string {
	s := "internal disagreement: a plan failed its audit"
	for _, c := range e.Failed {
		s += fmt.Sprintf("\n  %s: have %g, limit %g %s (%s)", c.Name, c.Value, c.Limit, c.Unit, c.Source)
		if c.Detail != "" {
			s += "; " + c.Detail
		}
	}
	return s
}
