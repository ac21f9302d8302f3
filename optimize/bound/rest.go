package bound

import (
	"math"

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
	gone   []bool   // by stack: it is in none of the best plans
	pairs  [][]bool // by supply and stack, see bench.Pairs; nil: not worked out yet
	left   []int    // groups with members that are not gone
}

// RestBy prepares the bounds of what is missing, for a ranking of so many plans.
func (o *Bounds) RestBy(by question.By, plans int) *Rest {
	r := &Rest{o: o, by: by, gone: o.beaten(plans), mostWh: o.Bench.MostNeedWh()}
	r.left = groupsLeft(o.Bench, r.gone)
	r.layOut()
	return r
}

// layOut forgets what was worked out for the bench there was before.
func (r *Rest) layOut() {
	r.groups, r.pairs = make([]*lineup, len(r.o.Bench.Groups)), make([][]bool, len(r.o.Bench.Supplies))
}

// Tighter has the bounds be those of a tighter bench: see bench.Tighter. Positions stay the same.
func (r *Rest) Tighter() {
	clear(r.pairs)
	if most := r.o.Bench.MostNeedWh(); most > r.mostWh {
		const ahead = 1.3 // so that few steps need new tables
		r.mostWh = ahead * most
		r.layOut()
	}
}

// Pairs reports whether a supply may have strings of a stack.
func (r *Rest) Pairs(supply, stack int) bool { return r.paired(supply)[stack] }

// paired says of each stack whether a supply may have strings of it.
func (r *Rest) paired(supply int) []bool {
	if r.pairs[supply] == nil {
		r.pairs[supply] = make([]bool, len(r.o.Bench.Stacks))
		for at := range r.pairs[supply] {
			r.pairs[supply][at] = r.o.Bench.Pairs(supply, at)
		}
	}
	return r.pairs[supply]
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
		x.Kg = max(x.Kg, l.kg.least(position, wh))
		x.ShortA = max(x.ShortA, wh*l.shortWh[position])
		x.Strings = max(1, int(math.Ceil(wh/l.mostWh[position]*(1-1e-9))))
		x.room = wh * l.room[position]
	}
	return x
}
