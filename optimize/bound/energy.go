package bound

import (
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
)

// MostUsableWh returns the usable energy that no core with at least these strings, and further ones of the members from
// last on, can be above: as much more as floor, mass and budget take of what takes least of each.
func (o *Bounds) MostUsableWh(c *bench.Core, last int, f Figures) float64 {
	more := math.Max(0, o.floorArea*(1+plan.Tolerance)-f.room) / o.perUsableRoom.from(o, c, last)
	if kg := o.perUsableKg.from(o, c, last); kg > 0 {
		more = math.Min(more, math.Max(0, o.most-f.Kg)/kg)
	}
	l := &o.Bench.Scenario.Limits
	if cents := o.leastPerUsable(c, last); cents > 0 && l.Budget != math.MaxInt64 {
		left := float64(l.Budget+o.Bench.Scenario.Sold) + o.Bench.RoundingCents - f.OpenCents
		more = math.Min(more, math.Max(0, left)/cents)
	}
	if math.IsNaN(more) {
		more = 0 // no further string of any member
	}
	const hair = 1e-6 // Wh, against the rounding of sums
	return f.UsableWh + more + hair
}

// leastPerUsable returns the least that a Wh more costs in cents, bought or owned.
func (o *Bounds) leastPerUsable(c *bench.Core, last int) float64 {
	least := o.perUsableCents.from(o, c, last)
	for _, j := range o.ownedMembers[c.Group] {
		if j >= last {
			at := o.Bench.Groups[c.Group][j]
			least = math.Min(least, o.ownedCents[at]/o.Bench.Stacks[at].UsableWh)
		}
	}
	return least
}
