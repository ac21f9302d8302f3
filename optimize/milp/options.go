package milp

import (
	"fmt"
	"math"

	"cartwright/optimize/milp/engine"
)

// Options say how far to search. The zero Options search without limit and call what is found the best found.
type Options struct {
	// Work ends the search after so much of it, the same every time: pivots of the simplex and nodes. 0 is no limit.
	Work int64
	// Cutoff, where HasCutoff, asks only for points whose objective is at most Cutoff (when maximising, at
	// least).
	Cutoff    float64
	HasCutoff bool
	// Prove asks for a certificate that nothing is better by Resolution, checked in exact arithmetic.
	Prove bool
	// Resolution is the smallest difference of the objective that matters, in its own unit: 0.005 for
	// money in units of 0.01. 0 stands for defaultResolution times the larger of 1 and |objective|.
	// Points that are better by less may be passed over, proved or not.
	Resolution float64
	// Relax lets every integer be any number between its bounds, which bounds the objective and is solved quickly.
	Relax bool
	// Points is an engine that is asked for points before the engine that proves; nil for the one that the process
	// was started with, see Points.
	Points engine.Engine
}

// Tolerances of our own.
const (
	// defaultResolution guards a proof from chasing improvements that are rounding only.
	defaultResolution = 1e-6
	// finestResolution, relative to the objective, is what a search in double arithmetic can tell apart and prove; a
	// finer Resolution is taken for it.
	finestResolution = 1e-8
	// latticeSlack is the part of the spacing of an objective that takes regularly spaced values only by
	// which a limit between two of them keeps clear of either.
	latticeSlack = 0.1
	// gapPart is the part of the least improvement that matters which an engine is told to look for: less than all
	// of it, so that rounding does not lose one that is just large enough, nor a proof that just gets there.
	gapPart = 0.9
)

// check refuses options that make no sense.
func (o *Options) check() error {
	switch {
	case o.Work < 0:
		return fmt.Errorf("milp: a limit of work of %v", o.Work)
	case o.HasCutoff && (math.IsNaN(o.Cutoff) || math.Abs(o.Cutoff) > LargestCoefficient):
		return fmt.Errorf("milp: a cutoff of %v; want a number of at most %g", o.Cutoff, LargestCoefficient)
	case !(o.Resolution >= 0) || math.IsInf(o.Resolution, 0):
		return fmt.Errorf("milp: a resolution of %v; want 0 or a positive number", o.Resolution)
	}
	return nil
}
