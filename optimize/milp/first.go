package milp

import (
	"context"

	"cartwright/optimize/milp/branch"
)

// First returns, of all points whose objective is at most Options.Cutoff, the one whose integers come first: that of the
// first variable added as small as it can be, then that of the second, and so on. So of plans that tie in everything
// that counts the same one is chosen, whichever engine found the best and by whatever way. The status is Best,
// Infeasible where there was none, which is not proved, or Stopped.
func (m *Model) First(ctx context.Context, o Options) (Solution, error) {
	if m.err != nil {
		return Solution{}, m.err
	}
	if err := o.check(); err != nil {
		return Solution{}, err
	}
	s := newSearch(m, o)
	at, end := branch.First(ctx, s.p, s.top.accept, o.Work)
	s.sol.Solves++
	s.sol.Ended = end == branch.Halted || end == branch.Spent
	switch {
	case at != nil && s.hold(s.prover, at, noCeiling()) == nil:
		s.sol.Status = Best
	case s.sol.Ended:
		s.sol.Status = Stopped
	default:
		s.sol.Status = Infeasible
	}
	return s.sol, nil
}
