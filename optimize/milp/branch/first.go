package branch

import (
	"context"
	"math"

	"cartwright/optimize/milp/proof"
)

// First returns, of all points that cost less than below, the one whose integers come first: the first column as small
// as it can be, then the second, and so on. Which it is depends on the program alone, not on how it is searched; the
// variables that need not be whole are then solved for from the start, so that not even their rounding does. It returns
// nil where there is no point, and Spent or Halted where it did not get to the end.
func First(ctx context.Context, p *proof.Program, below float64, work int64) ([]float64, Ending) {
	q := *p
	q.Lower, q.Upper = append([]float64(nil), p.Lower...), append([]float64(nil), p.Upper...)
	step := func(at float64) float64 { return anyGap * max(1, math.Abs(at)) }
	s := newSearch(ctx, &q, Ask{Below: below, Accept: below, Step: step, Work: work})
	s.any = true
	at := s.again()
	for _, j := range s.choice.columns {
		for at != nil && at[j] > q.Lower[j] {
			q.Upper[j] = at[j] - 1
			lower := s.again()
			if s.ending == Spent || s.ending == Halted {
				return nil, s.ending
			}
			if lower == nil {
				break
			}
			at = lower
		}
		if at == nil {
			return nil, s.ending
		}
		q.Lower[j], q.Upper[j] = at[j], at[j]
	}
	if at == nil || len(s.real) == 0 {
		return at, s.ending
	}
	last := Solve(ctx, &q, Ask{Below: below, Accept: below, Step: step, Work: work})
	return last.Point, last.Ending
}

// again searches the program for any point, its bounds as they are now, from the basis of the last search.
func (s *search) again() []float64 {
	s.point, s.below, s.queue, s.splits, s.ending, s.left = nil, s.ask.Below, nil, nil, 0, math.Inf(1)
	s.root = &proof.Tree{}
	root := &node{column: -1}
	s.enter(root)
	s.run()
	return s.point
}
