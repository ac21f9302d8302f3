// Package question holds the words in which plans are asked for and answers given: problems, options,
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
	// Stand says of parts how many of each have to stand on the cart at the least.
	Stand map[string]float64
	// Idle says of owned parts how many of each do not serve; they are sold where they are for sale. The others of
	// these parts are not sold.
	Idle map[string]float64
}

// Status tells why ranking stopped.
type Status string

// The statuses. Only Optimal and Infeasible are proved.
const (
	Optimal    Status = "optimal"
	TimeLimit  Status = "time-limit" // plans are the best found so far, not proved
	Infeasible Status = "infeasible"
	// MemoryLimit: more was open at once than there is room for, and the least likely was dropped; what came after is
	// not proved.
	MemoryLimit Status = "memory-limit"
	GaveUp      Status = "gave-up" // the solver failed under every setting
)

// Solver tells what was solved, by what, in which time.
type Solver struct {
	Name    string
	Version string
	Status  Status
	Seconds float64
	Models  int      // integer programs solved, proofs included
	Proofs  int      // certificates that were checked in exact arithmetic, and passed
	Cells   int      // parts of the space that were looked into
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
	// Reasons tells, where no plan is possible, what the catalogue has nothing for, or what else but the limits
	// stands in the way.
	Reasons []string
}

// ErrUnknown is returned where time ran out, or the solver gave up, before it was known whether a plan is
// possible.
var ErrUnknown = errors.New("it is not known in the time given whether a plan is possible")
