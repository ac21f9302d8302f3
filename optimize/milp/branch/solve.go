package branch

import (
	"context"
	"math"

	"cartwright/optimize/milp/proof"
)

// Ask says what is looked for.
type Ask struct {
	// Below is what a point has to cost less than; +Inf for anything. One that costs less than Accept, a little
	// more, is taken all the same: the difference is rounding.
	Below, Accept float64
	// Step returns by how much a point has to be better than one that costs so much.
	Step func(cost float64) float64
	// Known is a point to start from, nil for none.
	Known []float64
	// Work is how many pivots and nodes there may be; 0 is no limit.
	Work int64
}

// Ending says how a search ended.
type Ending int

// The endings of a search.
const (
	// Closed: every leaf is proved, and nothing is better than the point, or costs as little as asked for.
	Closed Ending = iota + 1
	// Limitless: the relaxation falls without limit. Whether there is a point is not known.
	Limitless
	// Spent: the work allowed was done.
	Spent
	// Halted: the context ended it.
	Halted
	// Found: a point is there, which was all that was asked for.
	Found
	// Left: some leaf falls short of that. Answer.Bound says what is proved, if anything.
	Left
)

// Answer is what a search found.
type Answer struct {
	Ending Ending
	Point  []float64 // the best, nil for none
	Cost   float64   // of the point
	// Bound is what no point costs less than; +Inf: there is no point. Tree proves it, where the search came to its
	// end and something is proved at all.
	Bound         float64
	Tree          *proof.Tree
	Nodes, Pivots int
	Work          int64
}

// Solve looks for the point of least cost. The same program and ask give the same answer every time, unless the
// context ends it.
func Solve(ctx context.Context, p *proof.Program, ask Ask) Answer {
	s := newSearch(ctx, p, ask)
	s.run()
	return s.answer()
}

// Tolerances of the search.
const (
	// whole is how far an integer may be off a whole number to be tried at it.
	whole = 1e-6
	// beyond is how far above what it has to prove the simplex goes, relative to it, so that the exact bound gets
	// there as well.
	beyond = 2e-9
	// offRow is how far a point may be off a row, relative to its largest term: less than proof.Slack, so that
	// the exact check agrees.
	offRow = 0.9 * proof.Slack
)

// margin returns the distance from a limit that rounding must not decide on.
func margin(at float64) float64 {
	if math.IsInf(at, 0) {
		return 0
	}
	return beyond * max(1, math.Abs(at))
}

// answer puts together what was found.
func (s *search) answer() Answer {
	a := Answer{Ending: s.ending, Point: s.point, Cost: s.cost, Nodes: s.nodes, Pivots: s.t.exchanged, Work: s.work(),
		Bound: min(s.below, s.left)}
	for _, n := range s.queue {
		a.Bound = min(a.Bound, n.bound)
	}
	if (s.ending == Closed || s.ending == Left) && !math.IsInf(a.Bound, -1) {
		s.prune()
		a.Tree = s.root
	}
	return a
}

// prune cuts off what lies below a split that proves enough by itself, now that the best point is known.
func (s *search) prune() {
	for _, n := range s.splits {
		if n.value >= s.below {
			n.tree.Below, n.tree.Above, n.tree.Column, n.tree.At = nil, nil, 0, 0
			n.tree.Multipliers = n.duals
		}
	}
}
