package bench

import (
	"fmt"
	"slices"

	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
)

// Core is what makes a plan a different plan: a supply, and strings of the members of a group.
type Core struct {
	Supply, Group int
	Strings       []held // by rising member, those present only: a catalogue may hold thousands of batteries
}

// held is a number of strings of one member of a group.
type held struct{ Member, N int }

// CoreOf returns the core with so many strings of each member.
func CoreOf(supply, group int, counts []int) Core {
	c := Core{Supply: supply, Group: group}
	for j, n := range counts {
		if n > 0 {
			c.Strings = append(c.Strings, held{j, n})
		}
	}
	return c
}

// Count returns how many strings there are of a member.
func (c *Core) Count(member int) int {
	for _, h := range c.Strings {
		if h.Member == member {
			return h.N
		}
	}
	return 0
}

// Total returns how many strings there are.
func (c *Core) Total() int {
	n := 0
	for _, h := range c.Strings {
		n += h.N
	}
	return n
}

// With returns the core with one more string of a member.
func (c *Core) With(member int) Core {
	d := Core{Supply: c.Supply, Group: c.Group, Strings: make([]held, 0, len(c.Strings)+1)}
	more := 1
	for _, h := range c.Strings {
		if more > 0 && h.Member >= member {
			if h.Member == member {
				h.N += more
			} else {
				d.Strings = append(d.Strings, held{member, more})
			}
			more = 0
		}
		d.Strings = append(d.Strings, h)
	}
	if more > 0 {
		d.Strings = append(d.Strings, held{member, more})
	}
	return d
}

// Before orders cores in catalogue order, those with more strings of an earlier member first, so that equal
// plans always come in the same order.
func (c *Core) Before(d *Core) bool {
	if c.Supply != d.Supply {
		return c.Supply < d.Supply
	}
	if c.Group != d.Group {
		return c.Group < d.Group
	}
	for i, h := range c.Strings {
		if i == len(d.Strings) {
			return true
		}
		if o := d.Strings[i]; h.Member != o.Member {
			return h.Member < o.Member
		} else if h.N != o.N {
			return h.N > o.N
		}
	}
	return false
}

// Key names a core.
func (c *Core) Key() string { return fmt.Sprint("core ", c.Supply, c.Group, c.Strings) }

// StringsOf returns the strings of a core.
func (b *Bench) StringsOf(c *Core) []energy.Strings {
	var strings []energy.Strings
	for _, h := range c.Strings {
		k := &b.Stacks[b.Groups[c.Group][h.Member]]
		strings = append(strings, energy.Strings{Battery: k.Battery, Series: k.Series, Count: h.N})
	}
	return strings
}

// Is reports whether a supply is the inverters and array of a plan's core.
func (v *Supply) Is(c *plan.Core) bool {
	if v.Inverter.ID != c.Inverter.Part || v.Units != c.Inverter.Units || (v.Array == nil) != (len(c.Solar) == 0) {
		return false
	}
	x := v.Array
	return x == nil || x.Module.ID == c.Solar[0].Part && x.Series == c.Solar[0].Series && x.Parallel == c.Solar[0].Parallel && x.Inputs == c.Solar[0].Inputs
}

// CoreLike returns the core of a plan; ok is false where this problem has no such core.
func (b *Bench) CoreLike(c *plan.Core) (Core, bool) {
	supply := slices.IndexFunc(b.Supplies, func(v Supply) bool { return v.Is(c) })
	if supply < 0 {
		return Core{}, false
	}
	for g, members := range b.Groups {
		counts, found := make([]int, len(members)), 0
		for j, at := range members {
			k := &b.Stacks[at]
			for _, h := range c.Batteries {
				if h.Part == k.Battery.ID && h.Series == k.Series && h.Strings <= k.Most {
					counts[j], found = h.Strings, found+1
				}
			}
		}
		if found == len(c.Batteries) {
			return CoreOf(supply, g, counts), true
		}
	}
	return Core{}, false
}
