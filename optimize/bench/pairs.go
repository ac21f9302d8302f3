package bench

import (
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
)

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

// Paired reports whether the supply of a core may have each of its strings.
func (b *Bench) Paired(c *Core) bool {
	for _, h := range c.Strings {
		if !b.Pairs(c.Supply, b.Groups[c.Group][h.Member]) {
			return false
		}
	}
	return true
}
