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
	position int
	perWh    float64 // cents
	owned    bool
}

// layLife lists the lifetime energy that the members of a group can add, the cheapest first, with owned strings separate
// from bought ones.
func (o *Bounds) layLife(l *lineup, stacks []int) {
	n := len(l.members)
	l.lifeRoom, l.lifeKg = make([]float64, n), make([]float64, n)
	room, kg := math.Inf(1), math.Inf(1)
	for position := n - 1; position >= 0; position-- {
		at := stacks[l.members[position]]
		room, kg = min(room, o.perLifeRoom[at]), min(kg, o.perLifeKg[at])
		l.lifeRoom[position], l.lifeKg[position] = room, kg
	}
	for position, j := range l.members {
		at := stacks[j]
		if o.lifeWh[at] <= 0 {
			continue
		}
		l.life = append(l.life, lifeSegment{position, o.perLifeCents[at], false})
		if o.ownedStrings[at] > 0 {
			l.life = append(l.life, lifeSegment{position, o.ownedCents[at] / o.lifeWh[at], true})
		}
	}
	sort.SliceStable(l.life, func(a, b int) bool { return l.life[a].perWh < l.life[b].perWh })
}

// LifeScore returns a lower bound on the cost per lifetime kWh, in currency units, of any core with at least these
// strings and further ones of the members from a position on. Parts of strings are added, the cheapest lifetime energy
// first, as long as that lowers the ratio and as far as floor, mass and the makers allow.
func (r *Rest) LifeScore(c *bench.Core, position int, f Figures) float64 {
	o, l := r.o, r.lineup(c.Group)
	most := max(0, o.floorArea*(1+plan.Tolerance)-f.room) / l.lifeRoom[position]
	if kg := l.lifeKg[position]; kg > 0 { // else some battery states a mass of 0
		most = min(most, max(0, o.most-f.Kg)/kg)
	}
	cents, life := f.OpenCents-o.Bench.RoundingCents, f.LifeWh
	if life <= 0 && cents < 0 {
		return math.Inf(-1) // sales pay for all: the less energy, the better the ratio
	}
	for _, x := range l.life {
		if x.position < position || most <= 0 {
			continue
		}
		if life > 0 && x.perWh >= cents/life {
			break
		}
		j := l.members[x.position]
		at := o.Bench.Groups[c.Group][j]
		left := float64(o.Bench.Stacks[at].Most - c.Count(j))
		if x.owned {
			left = min(left, o.ownedStrings[at]-float64(c.Count(j)))
		}
		add := min(most, max(0, left)*o.lifeWh[at])
		cents += add * x.perWh
		life += add
		most -= add
	}
	if life <= 0 {
		return math.Inf(1)
	}
	return PerLifetimeKWh(cents, life)
}

// lifetimeWh returns the energy in Wh that the strings of a core give in their whole life. For cores with more strings it
// is an upper bound on what these give, since each is then cycled less. 0 where some battery states no life, or nothing
// is used.
func (o *Bounds) lifetimeWh(c *bench.Core, usableWh float64) float64 {
	v := &o.Bench.Supplies[c.Supply]
	cycles, life := v.YearWh/max(usableWh, v.NeedWh), 0.0
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

// PerLifetimeKWh returns cents per Wh as currency units per kWh.
func PerLifetimeKWh(cents, wh float64) float64 { return cents / 100 / (wh / 1000) }
