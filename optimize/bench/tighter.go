package bench

import (
	"slices"

	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
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

// Pairs reports whether a supply may have strings of a stack: its chargers put the energy of the autonomy back in time,
// with the round trip of that battery, and where limits.protocols asks for it they have a protocol in common. What one
// battery fails, every core with it fails.
func (b *Bench) Pairs(supply, stack int) bool {
	v, k := &b.Supplies[supply], &b.Stacks[stack]
	if b.Scenario.Limits.SharedProtocols && !k.Battery.SharesProtocol(v.Inverter) {
		return false
	}
	x := b.Scenario.Recharge
	return x == nil || plan.AtLeast(v.ChargerA, energy.RechargeA(v.NeedWh, b.Scenario.Bus.NominalV, x.WithinH, k.Battery.RoundTrip))
}
