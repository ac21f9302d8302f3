package bound

import (
	"math"
	"sort"

	"cartwright/optimize/bench"
	"cartwright/optimize/question"
)

// Rest bounds what the strings that a cell still lacks add. Strings are added in the order of a group's lineup: by what a
// Wh of theirs adds to the figure that plans are ranked by, the least first. So a member never adds less per Wh than
// those before it.
type Rest struct {
	o      *Bounds
	by     question.By
	mostWh float64 // the largest NeedWh of any supply
	groups []*lineup
	gone   []bool // by stack: it is in none of the best plans
	left   []int  // groups with members that are not gone
}

// lineup has a group's members in the order in which strings are added, and for each position the least or the most of
// some figures among the members from there on.
type lineup struct {
	members []int // by position
	wh      []float64
	figure  []float64 // of a bought string: kg where plans are ranked by mass, else cents
	cents   cover
	kg      cover
	mostWh  []float64 // of a string, from a position on
	short   []float64 // least fault current in A of a string, from a position on
	shortWh []float64 // least A per Wh
	room    []float64 // least floor in m2 per Wh
	owned   []int     // positions with owned strings

	life             []lifeSegment // the cheapest first
	lifeRoom, lifeKg []float64     // least floor in m2 and mass in kg per Wh of lifetime energy
}

// RestBy prepares the bounds of what is missing, for a ranking of so many plans.
func (o *Bounds) RestBy(by question.By, plans int) *Rest {
	r := &Rest{o: o, by: by, groups: make([]*lineup, len(o.Bench.Groups)), gone: o.beaten(plans)}
	r.left = groupsLeft(o.Bench, r.gone)
	for i := range o.Bench.Supplies {
		r.mostWh = math.Max(r.mostWh, o.Bench.Supplies[i].NeedWh)
	}
	return r
}

// lineup returns the lineup of a group. It is made once.
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

// Groups returns the groups that the best plans may be of.
func (r *Rest) Groups() []int { return r.left }

// Members returns the members of a group from a position on.
func (r *Rest) Members(group, position int) []int { return r.lineup(group).members[position:] }

// Further has the least figures of the strings that a cell still lacks; it lacks at least one.
type Further struct {
	Cents, Kg, ShortA, room float64
	Strings                 int
}

// Further returns the least figures of strings from a position on that add at least wh to a core.
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

// Child is a string that a cell may get next: its position, and the least that it and all that is then missing add.
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

// Next returns the child of a core that comes right after another child, among the members from a position on, where wh
// are missing; ok is false where there is none.
func (r *Rest) Next(c *bench.Core, from int, wh float64, after Child) (next Child, ok bool) {
	l, stacks, members := r.lineup(c.Group), r.o.Bench.Stacks, r.o.Bench.Groups[c.Group]
	next.Adds = math.Inf(1)
	for position := from; position < len(l.members); position++ {
		if ok && len(l.owned) == 0 && wh*l.perWh(r.by, position) > next.Adds {
			break // no later member adds less
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

// perWh returns the least kg or cents per Wh from a position on.
func (l *lineup) perWh(by question.By, position int) float64 {
	if by == question.ByMass {
		return l.kg.perWh[position]
	}
	return l.cents.perWh[position]
}

// one returns the least that one more string at a position adds.
func (r *Rest) one(l *lineup, c *bench.Core, position int) float64 {
	at := r.o.Bench.Groups[c.Group][l.members[position]]
	if r.by != question.ByMass && float64(c.Count(l.members[position])) < r.o.ownedStrings[at] {
		return math.Min(l.figure[position], r.o.ownedCents[at])
	}
	return l.figure[position]
}

// least returns the least that strings from a position on with at least wh add.
func (r *Rest) least(l *lineup, c *bench.Core, position int, wh float64) float64 {
	switch {
	case r.by == question.ByMass:
		return l.kg.least(position, wh)
	case wh <= 0:
		return 0
	case len(l.owned) == 0:
		return l.cents.least(position, wh)
	}
	// Two bounds, of which the higher counts: all owned strings are free and the rest is bought; or all is bought at the
	// least price per Wh, and each owned string saves at most the difference.
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
		owned += math.Ceil(left) * l.wh[k] // a string of which only some modules are owned counts as owned
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

// Least returns the least that strings of a group with at least wh add, at least one string.
func (r *Rest) Least(group int, wh float64) float64 {
	c := bench.Core{Group: group}
	if x, ok := r.Next(&c, 0, wh, First); ok {
		return x.Adds
	}
	return math.Inf(1)
}
