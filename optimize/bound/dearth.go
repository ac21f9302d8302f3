package bound

import (
	"math"

	"cartwright/optimize/bench"
)

// dearth is a figure of one string of each stack of which the least is asked for again and again: among
// the members of a group from some member on that may have a further string.
type dearth struct {
	each  []float64 // by stack
	least [][]int   // by group and member: which of the members from it on has the least
}

// dearthOf works a figure out for every stack; what is no number is as dear as can be.
func (o *Bounds) dearthOf(figure func(at int) float64) dearth {
	var d dearth
	for at := range o.Bench.Stacks {
		x := figure(at)
		if math.IsNaN(x) {
			x = math.Inf(1)
		}
		d.each = append(d.each, x)
	}
	for _, members := range o.Bench.Groups {
		least := make([]int, len(members))
		for j := len(members) - 1; j >= 0; j-- {
			least[j] = j
			if j+1 < len(members) && d.each[members[least[j+1]]] < d.each[members[j]] {
				least[j] = least[j+1]
			}
		}
		d.least = append(d.least, least)
	}
	return d
}

// from returns the least of the figure among the members of a core's group from last on that may have a
// further string; +Inf where none may.
func (d *dearth) from(o *Bounds, c *bench.Core, last int) float64 {
	members, least := o.Bench.Groups[c.Group], math.Inf(1)
	if j := d.least[c.Group][last]; c.Count(j) < o.Bench.Stacks[members[j]].Most {
		return d.each[members[j]]
	}
	for j := last; j < len(members); j++ {
		if c.Count(j) < o.Bench.Stacks[members[j]].Most {
			least = math.Min(least, d.each[members[j]])
		}
	}
	return least
}
