package optimize

import "math"

// dearth is a figure of one string of each stack of which the least is asked for again and again: among
// the members of a group from some member on that may have a further string.
type dearth struct {
	each  []float64 // by stack
	least [][]int   // by group and member: which of the members from it on has the least
}

// dearthOf works a figure out for every stack; what is no number is as dear as can be.
func (o *bounds) dearthOf(figure func(at int) float64) dearth {
	var d dearth
	for at := range o.b.stacks {
		x := figure(at)
		if math.IsNaN(x) {
			x = math.Inf(1)
		}
		d.each = append(d.each, x)
	}
	for _, members := range o.b.groups {
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
func (d *dearth) from(o *bounds, c *core, last int) float64 {
	members, least := o.b.groups[c.group], math.Inf(1)
	if j := d.least[c.group][last]; c.count(j) < o.b.stacks[members[j]].most {
		return d.each[members[j]]
	}
	for j := last; j < len(members); j++ {
		if c.count(j) < o.b.stacks[members[j]].most {
			least = math.Min(least, d.each[members[j]])
		}
	}
	return least
}
