package bench

import (
	"slices"

	"cartwright/scenarios"
)

// Tighter returns the bench of a scenario that differs from the bench's own only in that its autonomy, limits.mass or
// limits.served is tighter. All positions are the same: what no longer serves is still there.
func (b *Bench) Tighter(s *scenarios.Scenario) *Bench {
	x := *b
	x.Scenario = s
	x.Supplies = slices.Clone(b.Supplies)
	for i := range x.Supplies {
		v := &x.Supplies[i]
		v.NeedWh = x.needWh(v.Inverter, v.Units)
		if s.Limits.Served != b.Scenario.Limits.Served {
			v.sunStored = false
		}
	}
	return &x
}
