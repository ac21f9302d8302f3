package milp

import (
	"fmt"
	"math"
	"slices"
)

// Status says what a solve found out. It keeps three questions apart: is there a point, is it the best,
// and if not, why did the search end.
type Status int

// The six ends of a solve.
const (
	// Proved: the point is best, and a further search found nothing better by Options.Resolution. Only
	// with Options.Prove.
	Proved Status = iota + 1
	// Best: the best point found, in the time given or without a further search for a better one.
	Best
	// Infeasible: no point meets the rows and bounds (and the cutoff, where one was given).
	Infeasible
	// Unbounded: the objective has no limit.
	Unbounded
	// Stopped: time ran out or the context was cancelled before any point was found.
	Stopped
	// GaveUp: the engine failed, or returned wrong points, under every setting.
	GaveUp
)

// String returns the status in words.
func (s Status) String() string {
	switch s {
	case Proved:
		return "proved best"
	case Best:
		return "best found"
	case Infeasible:
		return "impossible"
	case Unbounded:
		return "without limit"
	case Stopped:
		return "stopped before a point was found"
	case GaveUp:
		return "the solver gave up"
	}
	return fmt.Sprintf("Status(%d)", int(s))
}

// HasPoint reports whether a solution of this status has values.
func (s Status) HasPoint() bool { return s == Proved || s == Best }

// Solution is what a solve found.
type Solution struct {
	Status    Status
	Objective float64 // recomputed from the values; 0 without a point
	// Bound is what no point can beat: at most the objective of every point when minimising, at least
	// when maximising. Infinite where nothing is known.
	Bound   float64
	Ended   bool      // the search was cut short by time or by the context
	Seconds float64   // of wall clock
	Solves  int       // runs of the engine, proofs and retries included
	Retries []string  // what trouble was met and which setting was tried instead
	values  []float64 // by column; nil without a point
	model   *Model    // whose handles Value takes
}

// Value returns the value of a variable; an integer's is a whole number. It panics on a handle of
// another model and on a solution without a point.
func (s Solution) Value(v Var) float64 {
	if s.values == nil {
		panic("milp: a solution without a point has no values: " + s.Status.String())
	}
	return s.values[s.model.index(v)]
}

// Int returns the value of a variable rounded to the nearest whole number. It panics as Value does.
func (s Solution) Int(v Var) int { return int(math.Round(s.Value(v))) }

// Values returns a copy of all values in the order the variables were added, nil without a point.
func (s Solution) Values() []float64 { return slices.Clone(s.values) }
