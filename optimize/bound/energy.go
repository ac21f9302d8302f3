package bound

import (
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
)

// MostUsableWh returns an upper bound on the usable energy in Wh of any core with at least these strings and further
// ones of the members from a position on: as much more as floor, mass and budget allow, each by the member that takes
// least of it per Wh.
func (r *Rest) MostUsableWh(c *bench.Core, position int, f Figures) float64 {
	o, l := r.o, r.lineup(c.Group)
	more := max(0, o.floorArea*(1+plan.Tolerance)-f.room) / l.room[position]
	if kg := l.kg.perWh[position]; kg > 0 {
		more = min(more, max(0, o.most-f.Kg)/kg)
	}
	limits := &o.Bench.Scenario.Limits
	if cents := r.leastPerWh(c.Group, l, position); cents > 0 && limits.Budget != math.MaxInt64 {
		left := float64(limits.Budget+o.Bench.Scenario.Sold) + o.Bench.RoundingCents - f.OpenCents
		more = min(more, max(0, left)/cents)
	}
	if math.IsNaN(more) {
		more = 0 // no further string of any member
	}
	const hair = 1e-6 // Wh, against the rounding of sums
	return f.UsableWh + more + hair
}

// leastPerWh returns the least cost in cents of one more Wh, bought or owned.
func (r *Rest) leastPerWh(group int, l *lineup, position int) float64 {
	least := l.cents.perWh[position]
	for _, k := range l.owned {
		if k >= position {
			least = min(least, r.o.ownedCents[r.o.Bench.Groups[group][l.members[k]]]/l.wh[k])
		}
	}
	return least
}
