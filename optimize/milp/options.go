package milp

import (
	"fmt"
	"math"
	"time"
)

// Options say how far to search. The zero Options search without limit of time, take the engine's first
// answer as the best found, and check an answer of "impossible" twice.
type Options struct {
	// TimeLimit ends the search after a time; 0 is none.
	TimeLimit time.Duration
	// Pivots ends the search after so many steps of the engine, which is the same on every machine; 0 is none.
	Pivots int64
	// Cutoff, where HasCutoff, asks only for points whose objective is at most Cutoff (when maximising, at
	// least).
	Cutoff    float64
	HasCutoff bool
	// Prove searches again for a point better by Resolution, until there is none.
	Prove bool
	// Resolution is the smallest difference of the objective that matters, in its own unit: 0.005 for
	// money in units of 0.01. 0 stands for defaultResolution times the larger of 1 and |objective|.
	// Points that are better by less may be passed over, proved or not.
	Resolution float64
	// IntTol is how far an integer may be off a whole number in the engine before it is rounded; 0 stands
	// for 1e-7. A large one is fast and wrong where an integer has large coefficients.
	IntTol float64
	// TrustInfeasible leaves out the second search, under another setting, that an answer of
	// "impossible" is otherwise checked by where no point is known.
	TrustInfeasible bool
	// Relax lets every integer be any number between its bounds: a bound on the objective, soon.
	Relax bool
}

// Tolerances of our own.
const (
	// defaultIntTol is how far an integer may be off in the engine. It guards against branching for ever
	// on rounding error; what it lets through is rounded and checked.
	defaultIntTol = 1e-7
	// tightIntTol is for retries: of an integer with a coefficient of 1e5, defaultIntTol lets through 0.01.
	tightIntTol = 1e-10
	// feasTol is how far a row may be off at the rounded point, relative to its largest term. It guards
	// against a point that keeps its rows in the engine's scaled arithmetic only.
	feasTol = 1e-7
	// defaultResolution guards a proof from chasing improvements that are rounding only.
	defaultResolution = 1e-6
	// finestResolution, relative to the objective, is what double arithmetic in the engine can tell apart;
	// a finer Resolution is taken for it.
	finestResolution = 1e-9
	// latticeSlack is the part of the spacing of an objective that takes regularly spaced values only by
	// which a limit between two of them keeps clear of either.
	latticeSlack = 0.1
)

// check refuses what makes no sense.
func (o *Options) check() error {
	switch {
	case o.TimeLimit < 0:
		return fmt.Errorf("milp: a time limit of %v", o.TimeLimit)
	case o.Pivots < 0:
		return fmt.Errorf("milp: a limit of %d pivots", o.Pivots)
	case o.HasCutoff && (math.IsNaN(o.Cutoff) || math.Abs(o.Cutoff) > LargestCoefficient):
		return fmt.Errorf("milp: a cutoff of %v; want a number of at most %g", o.Cutoff, LargestCoefficient)
	case !(o.Resolution >= 0) || math.IsInf(o.Resolution, 0):
		return fmt.Errorf("milp: a resolution of %v; want 0 or a positive number", o.Resolution)
	case !(o.IntTol >= 0 && o.IntTol < 0.5):
		return fmt.Errorf("milp: a tolerance for integers of %v; want at least 0, below 0.5", o.IntTol)
	}
	return nil
}
