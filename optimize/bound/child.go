package bound

import (
	"math"
	"slices"

	"cartwright/optimize/bench"
	"cartwright/optimize/question"
)

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

// Cell is what a cell lacks, and what it may get.
type Cell struct {
	From   int     // the position of the first member it may get
	LackWh float64 // usable energy that is missing
	Room   Room
	Taken  []int // positions of the children it had before its limits got tighter, sorted
}

// Next returns the children of a cell that come right after another child, in their order, at most so many; none where
// there are no more.
func (r *Rest) Next(c *bench.Core, x *Cell, after Child, most int) []Child {
	l, stacks, members := r.lineup(c.Group), r.o.Bench.Stacks, r.o.Bench.Groups[c.Group]
	pairs, room := r.paired(c.Supply), &x.Room
	next := make([]Child, 0, most)
	for position := x.From; position < len(l.members); position++ {
		full := len(next) == most
		perWh := l.perWh(r.by, position)
		if full && len(l.owned) == 0 && x.LackWh*perWh > next[most-1].Adds {
			break // no later member adds less
		}
		j := l.members[position]
		if !pairs[members[j]] || c.Count(j) >= stacks[members[j]].Most {
			continue
		}
		lackWh, one := x.LackWh-l.wh[position], r.one(l, c, position)
		if full && len(l.owned) == 0 && one+lackWh*perWh > next[most-1].Adds {
			continue // which takes less time than to look it up
		}
		y := Child{position, one + r.least(l, c, position, lackWh)}
		if room.price != nil {
			y.Adds = max(y.Adds, room.adds(one, l.kgOf[position], position, lackWh))
		}
		if !after.before(y) || full && !y.before(next[most-1]) || l.kgOf[position]+l.kg.least(position, lackWh) > room.Kg || taken(x.Taken, position) {
			continue
		}
		if full {
			next = next[:most-1]
		}
		at := len(next)
		for at > 0 && y.before(next[at-1]) {
			at--
		}
		next = slices.Insert(next, at, y)
	}
	return next
}

// taken reports whether a position is in a sorted list.
func taken(list []int, position int) bool {
	_, found := slices.BinarySearch(list, position)
	return found
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
		return min(l.figure[position], r.o.ownedCents[at])
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
		left := min(r.o.ownedStrings[at], float64(r.o.Bench.Stacks[at].Most)) - float64(c.Count(l.members[k]))
		if left <= 0 {
			continue
		}
		owned += math.Ceil(left) * l.wh[k] // a string of which only some modules are owned counts as owned
		if each := r.o.ownedCents[at] / l.wh[k]; each < perWh {
			saved += min(wh, left*l.wh[k]) * (perWh - each)
		}
	}
	least := l.cents.least(position, wh-owned)
	if !math.IsInf(perWh, 1) {
		least = max(least, wh*perWh-saved)
	}
	return least
}

// Least returns the least that strings of a group with at least wh add to a supply, at least one string.
func (r *Rest) Least(supply, group int, wh float64) float64 {
	c := bench.Core{Supply: supply, Group: group}
	if x := r.Next(&c, &Cell{LackWh: wh, Room: Room{Kg: math.Inf(1)}}, First, 1); len(x) > 0 {
		return x[0].Adds
	}
	return math.Inf(1)
}
