package bound

import (
	"math"
	"sort"

	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
)

// lifeSegment is lifetime energy that can be added at one price.
type lifeSegment struct {
	member int
	perWh  float64 // cents
	owned  bool
}

// lifeSegments returns, for every group, what its members add of lifetime energy, the cheapest first:
// owned strings apart from bought ones.
func (o *Bounds) lifeSegments() [][]lifeSegment {
	var groups [][]lifeSegment
	for _, members := range o.Bench.Groups {
		var list []lifeSegment
		for j, at := range members {
			if o.lifeWh[at] <= 0 {
				continue
			}
			list = append(list, lifeSegment{j, o.boughtCents[at] / o.lifeWh[at], false})
			if o.ownedStrings[at] > 0 {
				list = append(list, lifeSegment{j, o.ownedCents[at] / o.lifeWh[at], true})
			}
		}
		sort.SliceStable(list, func(a, b int) bool { return list[a].perWh < list[b].perWh })
		groups = append(groups, list)
	}
	return groups
}

// LifeScore returns the cost per lifetime kWh that no core with at least these strings, and further ones
// of the members from last on, can be below. Strings are added in parts, the cheapest lifetime energy
// first, as long as that lowers the ratio and as far as floor, mass and the makers allow at the most.
func (o *Bounds) LifeScore(c *bench.Core, last int, f Figures) float64 {
	if o.segments == nil {
		o.segments = o.lifeSegments()
	}
	members := o.Bench.Groups[c.Group]
	roomPerLife, kgPerLife := o.perLifeRoom.from(o, c, last), o.perLifeKg.from(o, c, last)
	most := math.Max(0, o.floorArea*(1+plan.Tolerance)-f.room) / roomPerLife
	if kgPerLife > 0 { // else some battery is said to weigh nothing
		most = math.Min(most, math.Max(0, o.most-f.Kg)/kgPerLife)
	}
	cents, life := f.OpenCents-o.Bench.RoundingCents, f.LifeWh
	if life <= 0 && cents < 0 {
		return math.Inf(-1) // sales pay for all: the less energy, the better the ratio
	}
	for _, x := range o.segments[c.Group] {
		if x.member < last || most <= 0 {
			continue
		}
		if life > 0 && x.perWh >= cents/life {
			break
		}
		at := members[x.member]
		left := float64(o.Bench.Stacks[at].Most - c.Count(x.member))
		if x.owned {
			left = math.Min(left, o.ownedStrings[at]-float64(c.Count(x.member)))
		}
		add := math.Min(most, math.Max(0, left)*o.lifeWh[at])
		cents += add * x.perWh
		life += add
		most -= add
	}
	if life <= 0 {
		return math.Inf(1)
	}
	return PerLifetimeKWh(cents, life)
}

// lifetimeWh returns what the strings of a core give in all their life; of a cell a bound, since with more of them
// each is cycled less. 0 where some battery states no life, or nothing is used.
func (o *Bounds) lifetimeWh(c *bench.Core, usableWh float64) float64 {
	v := &o.Bench.Supplies[c.Supply]
	cycles, life := v.YearWh/math.Max(usableWh, v.NeedWh), 0.0
	for _, h := range c.Strings {
		k := &o.Bench.Stacks[o.Bench.Groups[c.Group][h.Member]]
		one := energy.LifetimeWh(k.Battery, o.Bench.Scenario.Limits.Reserve, cycles)
		if one <= 0 {
			return 0
		}
		life += float64(h.N*k.Series) * one
	}
	return life
}

// PerLifetimeKWh returns cents over Wh as currency units over kWh.
func PerLifetimeKWh(cents, wh float64) float64 { return cents / 100 / (wh / 1000) }
