package search

import (
	"cartwright/optimize/bench"
	"cartwright/optimize/bound"
	"cartwright/optimize/energy"
	"cartwright/optimize/question"
)

// lives reports whether a core gives any energy in its life, where cores are ranked by the cost of that. With sun its
// store may never be used, and ages without giving anything.
func (s *search) lives(c *bench.Core, f bound.Figures) bool {
	switch {
	case s.by != question.ByLife:
		return true
	case !f.Aged:
		return false
	case s.b.Supplies[c.Supply].Sun == nil:
		return true
	}
	strings := s.b.StringsOf(c)
	cycles := s.b.YearOf(c.Supply, strings).Cycles
	for _, x := range strings {
		if x.Count > 0 && energy.LifetimeWh(x.Battery, s.b.Scenario.Limits.Reserve, cycles) > 0 {
			return true
		}
	}
	return false
}
