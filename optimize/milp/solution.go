package milp

import (
	"fmt"
	"math"
	"slices"

	"cartwright/optimize/milp/proof"
)

// Status says what a solve found out. It keeps three questions apart: is there a point, is it the best,
// and if not, why did the search end.
type Status int

// The six ends of a solve.
const (
	// Proved: nothing is better than the point by Options.Resolution, and that has been checked in exact
	// arithmetic. Only with Options.Prove.
	Proved Status = iota + 1
	// Best: the best point found, in the work or time given, or as far as can be proved, or without a proof asked for.
	Best
	// Infeasible: no point meets the rows and bounds (and the cutoff, where one was given). That has been checked.
	Infeasible
	// Unbounded: the objective has no limit.
	Unbounded
	// Stopped: the work was done or the context over before any point was found.
	Stopped
	// GaveUp: no point was found, and that there is none could not be proved.
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
	Ended   bool    // the search was cut short, by a limit of work or by the context
	Seconds float64 // of wall clock
	Solves  int     // runs of engines
	Engine  string  // which engine found the point
	Checked int     // certificates that passed the checker: 0 or 1
	// Proof says that nothing is better than the point, or that there is none. It has passed the checker; nil where
	// nothing has. It is about Program, which is to be minimised, without the objective's constant.
	Program *proof.Program
	Proof   *proof.Certificate
	Retries []string  // what trouble was met
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

// At returns what an expression comes to at the point. It panics as Value does.
func (s Solution) At(e Expr) float64 {
	sum := e.constant
	for _, t := range e.terms {
		sum += t.coef * s.Value(t.v)
	}
	return sum
}

// Int returns the value of a variable rounded to the nearest whole number. It panics as Value does.
func (s Solution) Int(v Var) int { return int(math.Round(s.Value(v))) }

// Values returns a copy of all values in the order the variables were added, nil without a point.
func (s Solution) Values() []float64 { return slices.Clone(s.values) }
