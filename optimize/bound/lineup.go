package bound

import (
	"math"
	"sort"

	"cartwright/optimize/question"
)

// lineup has a group's members in the order in which strings are added, and for each position the least or the most of
// some figures among the members from there on.
type lineup struct {
	members []int // by position
	wh      []float64
	most    []int     // strings of it that are allowed
	figure  []float64 // of a bought string: kg where plans are ranked by mass, else cents
	kgOf    []float64 // of a string
	cents   cover
	kg      cover
	mostWh  []float64 // of a string, from a position on
	short   []float64 // least fault current in A of a string, from a position on
	shortWh []float64 // least A per Wh
	room    []float64 // least floor in m2 per Wh
	owned   []int     // positions with owned strings

	// Of a bought string, per Wh of usable energy, with the position of the one that is lightest for it.
	centsPerWh, kgPerWh []float64
	lightest            int
	weighed             []*weighed // see RoomOf

	life             []lifeSegment // the cheapest first
	lifeRoom, lifeKg []float64     // least floor in m2 and mass in kg per Wh of lifetime energy
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
	l.wh, l.most = make([]float64, n), make([]int, n)
	cents, kg := make([]float64, n), make([]float64, n)
	l.kgOf, l.centsPerWh, l.kgPerWh = kg, make([]float64, n), make([]float64, n)
	for position, j := range l.members {
		at := members[j]
		l.most[position] = o.Bench.Stacks[at].Most
		l.wh[position], cents[position], kg[position] = o.Bench.Stacks[at].UsableWh, o.boughtCents[at], o.stringKg[at]
		l.centsPerWh[position], l.kgPerWh[position] = cents[position]/l.wh[position], kg[position]/l.wh[position]
		if l.kgPerWh[position] < l.kgPerWh[l.lightest] {
			l.lightest = position
		}
		if o.ownedStrings[at] > 0 {
			l.owned = append(l.owned, position)
		}
	}
	l.cents, l.kg = coverOf(l.wh, cents, l.most, r.mostWh), coverOf(l.wh, kg, l.most, r.mostWh)
	if l.figure = cents; r.by == question.ByMass {
		l.figure = kg
	}
	l.mostWh, l.short, l.shortWh, l.room = make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	mostWh, short, shortWh, room := 0.0, math.Inf(1), math.Inf(1), math.Inf(1)
	for position := n - 1; position >= 0; position-- {
		k := &o.Bench.Stacks[members[l.members[position]]]
		mostWh, short = max(mostWh, k.UsableWh), min(short, k.ShortA)
		shortWh, room = min(shortWh, k.ShortA/k.UsableWh), min(room, o.perUsableRoom[members[l.members[position]]])
		l.mostWh[position], l.short[position], l.shortWh[position], l.room[position] = mostWh, short, shortWh, room
	}
	if r.by == question.ByLife {
		o.layLife(l, members)
	}
	r.groups[group] = l
	return l
}
