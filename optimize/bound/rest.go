package bound

import (
	"math"
	"sort"

	"cartwright/optimize/bench"
	"cartwright/optimize/question"
)

// Rest bounds what the strings add that a cell still lacks. The members of each group are in the order in which strings
// are added, which is that of what a Wh of them adds to what plans are ranked by: so the members from a position on
// never add less than its own.
type Rest struct {
	o      *Bounds
	by     question.By
	mostWh float64 // the largest need of a supply
	groups []*lineup
	gone   []bool // by stack: it can be left out
	left   []int  // groups with members that are not
}

// lineup is a group's members in the order in which strings are added, and what those from a position on have at least
// or at most.
type lineup struct {
	members []int // by position
	wh      []float64
	figure  []float64 // of a string bought, by what plans are ranked by
	cents   cover
	kg      cover
	mostWh  []float64 // of a string, from a position on
	short   []float64 // least A of one, from a position on
	shortWh []float64 // least A for a Wh
	room    []float64 // least floor in m2 of a Wh
	owned   []int     // positions of which strings are owned

	life             []lifeSegment // the cheapest first
	lifeRoom, lifeKg []float64     // floor in m2 and mass, least for a Wh of lifetime energy
}

// RestBy prepares the bounds of what is missing, for so many plans ranked by something.
func (o *Bounds) RestBy(by question.By, plans int) *Rest {
	r := &Rest{o: o, by: by, groups: make([]*lineup, len(o.Bench.Groups)), gone: o.beaten(plans)}
	r.left = groupsLeft(o.Bench, r.gone)
	for i := range o.Bench.Supplies {
		r.mostWh = math.Max(r.mostWh, o.Bench.Supplies[i].NeedWh)
	}
	return r
}

// lineup returns a group's members in order, found once.
func (r *Rest) lineup(group int) *lineup {
	if l := r.groups[group]; l != nil {
		return l
	}
	o, members := r.o, r.o.Bench.Groups[group]
	per := o.perUsableCents
	switch r.by {
	case question.ByMass:
		per = o.perUsableKg
	case question.ByLife:
		per = o.perLifeCents
	case question.ByEnergy:
		per = o.perUsableRoom
	}
	l := &lineup{}
	for j, at := range members {
		if !r.gone[at] {
			l.members = append(l.members, j)
		}
	}
	sort.SliceStable(l.members, func(a, b int) bool { return per[members[l.members[a]]] < per[members[l.members[b]]] })
	n := len(l.members)
	l.wh = make([]float64, n)
	cents, kg := make([]float64, n), make([]float64, n)
	for position, j := range l.members {
		at := members[j]
		l.wh[position], cents[position], kg[position] = o.Bench.Stacks[at].UsableWh, o.boughtCents[at], o.stringKg[at]
		if o.ownedStrings[at] > 0 {
			l.owned = append(l.owned, position)
		}
	}
	l.cents, l.kg = coverOf(l.wh, cents, r.mostWh), coverOf(l.wh, kg, r.mostWh)
	if l.figure = cents; r.by == question.ByMass {
		l.figure = kg
	}
	l.mostWh, l.short, l.shortWh, l.room = make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	mostWh, short, shortWh, room := 0.0, math.Inf(1), math.Inf(1), math.Inf(1)
	for position := n - 1; position >= 0; position-- {
		k := &o.Bench.Stacks[members[l.members[position]]]
		mostWh, short = math.Max(mostWh, k.UsableWh), math.Min(short, k.ShortA)
		shortWh, room = math.Min(shortWh, k.ShortA/k.UsableWh), math.Min(room, o.perUsableRoom[members[l.members[position]]])
		l.mostWh[position], l.short[position], l.shortWh[position], l.room[position] = mostWh, short, shortWh, room
	}
	if r.by == question.ByLife {
		o.layLife(l, members)
	}
	r.groups[group] = l
	return l
}

// Groups returns the groups that plans may be of.
func (r *Rest) Groups() []int { return r.left }

// Members returns the members of a group from a position on.
func (r *Rest) Members(group, position int) []int { return r.lineup(group).members[position:] }

// Further are the least figures of the strings that a cell still lacks: one at the least.
type Further struct {
	Cents, Kg, ShortA, room float64
	Strings                 int
}

// Further bounds the strings from a position on that add at least so many Wh to a core.
func (r *Rest) Further(c *bench.Core, position int, wh float64) Further {
	l := r.lineup(c.Group)
	x := Further{Kg: l.kg.each[position], ShortA: l.short[position], Strings: 1}
	if wh > 0 {
		x.Kg = math.Max(x.Kg, l.kg.least(position, wh))
		x.ShortA = math.Max(x.ShortA, wh*l.shortWh[position])
		x.Strings = max(1, int(math.Ceil(wh/l.mostWh[position]*(1-1e-9))))
		x.room = wh * l.room[position]
	}
	return x
}

// Child is a string that a cell may have next: its position, and the least that it and all that is missing then add.
type Child struct {
	Position int
	Adds     float64
}

// before orders children by what they add.
func (a Child) before(b Child) bool {
	return a.Adds < b.Adds || a.Adds == b.Adds && a.Position < b.Position
}

// First comes before every child.
var First = Child{-1, math.Inf(-1)}

// Next returns the child of a core that comes after one, among the members from a position on, where so many Wh are
// missing; false where there is none.
func (r *Rest) Next(c *bench.Core, from int, wh float64, after Child) (next Child, ok bool) {
	l, stacks, members := r.lineup(c.Group), r.o.Bench.Stacks, r.o.Bench.Groups[c.Group]
	next.Adds = math.Inf(1)
	for position := from; position < len(l.members); position++ {
		if ok && len(l.owned) == 0 && wh*l.perWh(r.by, position) > next.Adds {
			break // nor does any member after it add less
		}
		j := l.members[position]
		if c.Count(j) >= stacks[members[j]].Most {
			continue
		}
		x := Child{position, r.one(l, c, position) + r.least(l, c, position, wh-l.wh[position])}
		if after.before(x) && (!ok || x.before(next)) {
			next, ok = x, true
		}
	}
	return next, ok
}

// perWh returns the least for a Wh from a position on.
func (l *lineup) perWh(by question.By, position int) float64 {
	if by == question.ByMass {
		return l.kg.perWh[position]
	}
	return l.cents.perWh[position]
}

// one returns what a further string at a position adds at the least.
func (r *Rest) one(l *lineup, c *bench.Core, position int) float64 {
	at := r.o.Bench.Groups[c.Group][l.members[position]]
	if r.by != question.ByMass && float64(c.Count(l.members[position])) < r.o.ownedStrings[at] {
		return math.Min(l.figure[position], r.o.ownedCents[at])
	}
	return l.figure[position]
}

// least returns what strings from a position on add at the least that have so many Wh.
func (r *Rest) least(l *lineup, c *bench.Core, position int, wh float64) float64 {
	switch {
	case r.by == question.ByMass:
		return l.kg.least(position, wh)
	case wh <= 0:
		return 0
	case len(l.owned) == 0:
		return l.cents.least(position, wh)
	}
	// Owned strings may all be used; beyond them the least is bought. And each saves at the most what its energy would
	// cost bought.
	perWh, owned, saved := l.cents.perWh[position], 0.0, 0.0
	for _, k := range l.owned {
		if k < position {
			continue
		}
		at := r.o.Bench.Groups[c.Group][l.members[k]]
		left := math.Min(r.o.ownedStrings[at], float64(r.o.Bench.Stacks[at].Most)) - float64(c.Count(l.members[k]))
		if left <= 0 {
			continue
		}
		owned += math.Ceil(left) * l.wh[k] // a string of which some modules are owned is cheaper, too
		if each := r.o.ownedCents[at] / l.wh[k]; each < perWh {
			saved += math.Min(wh, left*l.wh[k]) * (perWh - each)
		}
	}
	least := l.cents.least(position, wh-owned)
	if !math.IsInf(perWh, 1) {
		least = math.Max(least, wh*perWh-saved)
	}
	return least
}

// Least returns what strings of a group add at the least that have so many Wh, and one string at the least.
func (r *Rest) Least(group int, wh float64) float64 {
	c := bench.Core{Group: group}
	if x, ok := r.Next(&c, 0, wh, First); ok {
		return x.Adds
	}
	return math.Inf(1)
}
