package optimize

import "fmt"

// core is what makes a plan a different plan: a supply, and strings of the members of a group.
type core struct {
	supply, group int
	strings       []held // by member, rising; a catalogue may hold thousands that a core has nothing of
}

// held is a number of strings of one member of a group.
type held struct{ member, n int }

// coreOf returns the core with so many strings of each member.
func coreOf(supply, group int, counts []int) core {
	c := core{supply: supply, group: group}
	for j, n := range counts {
		if n > 0 {
			c.strings = append(c.strings, held{j, n})
		}
	}
	return c
}

// count returns how many strings there are of a member.
func (c *core) count(member int) int {
	for _, h := range c.strings {
		if h.member == member {
			return h.n
		}
	}
	return 0
}

// total returns how many strings there are.
func (c *core) total() int {
	n := 0
	for _, h := range c.strings {
		n += h.n
	}
	return n
}

// with returns a core with one string of a member more.
func (c *core) with(member int) core {
	d := core{supply: c.supply, group: c.group, strings: make([]held, 0, len(c.strings)+1)}
	more := 1
	for _, h := range c.strings {
		if more > 0 && h.member >= member {
			if h.member == member {
				h.n += more
			} else {
				d.strings = append(d.strings, held{member, more})
			}
			more = 0
		}
		d.strings = append(d.strings, h)
	}
	if more > 0 {
		d.strings = append(d.strings, held{member, more})
	}
	return d
}

// before orders cores in catalogue order, those with more strings of an earlier member first, so that equal
// plans always come in the same order.
func (c *core) before(d *core) bool {
	if c.supply != d.supply {
		return c.supply < d.supply
	}
	if c.group != d.group {
		return c.group < d.group
	}
	for i, h := range c.strings {
		if i == len(d.strings) {
			return true
		}
		if o := d.strings[i]; h.member != o.member {
			return h.member < o.member
		} else if h.n != o.n {
			return h.n > o.n
		}
	}
	return false
}

// key names a core.
func (c *core) key() string { return fmt.Sprint("core ", c.supply, c.group, c.strings) }
