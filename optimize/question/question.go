// Package question holds the types in which plans are asked for and answers given: problems, options,
// results, the changes that limits need, and the errors all rooms share.
package question

import (
	"errors"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Problem is a scenario and the catalogue it is planned from.
type Problem struct {
	Scenario *scenarios.Scenario
	Catalog  *catalog.Catalog
	// Stand has, by part, the least number that must be on the cart.
	Stand map[string]float64
	// Idle has, by owned part, how many are not used. They are sold where the part is for sale; the others of that part
	// are not sold.
	Idle map[string]float64
}

// Status says why ranking stopped.
type Status string

// The statuses. Only Optimal and Infeasible are proved.
const (
	Optimal    Status = "optimal"
	TimeLimit  Status = "time-limit" // plans are the best found so far, not proved
	Infeasible Status = "infeasible"
	// MemoryLimit: more of the search was open than memory allows, and the least promising was dropped; plans ranked
	// after that are not proved.
	MemoryLimit Status = "memory-limit"
	GaveUp      Status = "gave-up" // the solver failed under every setting
)

// Solver says what was solved, by what, and in what time.
type Solver struct {
	Name    string
	Version string
	Status  Status
	Seconds float64
	Models  int      // integer programs solved, proofs included
	Proofs  int      // certificates that were checked in exact arithmetic, and passed
	Cells   int      // sets of cores that were looked into
	Gap     float64  // (cost of the first plan - bound) / cost, where not proved
	Retries []string // solver trouble and what it was retried with
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
	// Reasons says, where no plan is possible, what the catalogue lacks, or what else besides the limits stands in the
	// way.
	Reasons []string
}

// ErrUnknown is returned where time ran out, or the solver gave up, before it was known whether a plan is
// possible.
var ErrUnknown = errors.New("it is not known in the time given whether a plan is possible")
