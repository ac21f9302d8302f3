package optimize

import (
	"fmt"
	"math"
)

// settle decides a level of shipping for the next vendor that concerns a core, and reports whether there
// was one: then the core's node is replaced by one for each level. Where there is none the core can be
// solved at plain prices.
func (s *search) settle(n *node) bool {
	if s.by == ByMass {
		return false // costs decide ties only; the orders are left to the program
	}
	m := s.b.market
	levels := append([]int(nil), n.levels...)
	for len(levels) < len(m.vendors) {
		levels = append(levels, undecided)
	}
	for i := range m.vendors {
		if levels[i] != undecided {
			continue
		}
		if !s.concerns(i, &n.core) {
			levels[i] = 0
			continue
		}
		for level := range m.vendors[i].levels {
			split := append([]int(nil), levels...)
			split[i] = level
			o := s.boundsAt(split)
			f := o.of(&n.core)
			if !o.hopeless(f) {
				s.add(&node{score: math.Max(n.score, s.coreScore(o, f)), kind: coreNode, core: n.core, levels: split})
			}
		}
		return true
	}
	n.levels = levels
	return false
}

// boundsAt returns the bounds at settled levels, made once.
func (s *search) boundsAt(levels []int) *bounds {
	key := fmt.Sprint(levels)
	o := s.at[key]
	if o == nil {
		o = newBounds(s.b, s.b.market.at(levels))
		s.at[key] = o
	}
	return o
}

// concerns reports whether a plan of a core could order anything from a vendor that ships for money.
func (s *search) concerns(vendor int, c *core) bool {
	m := s.b.market
	uses := func(options []option) bool {
		for i := range options {
			for _, u := range options[i].uses {
				if m.sells(vendor, u.article) {
					return true
				}
			}
		}
		return false
	}
	v := &s.b.supplies[c.supply]
	if m.sells(vendor, m.part(v.inv.ID).position) || uses(v.main) || uses(v.feeder) ||
		uses(s.b.busbars) || uses(s.b.casters) {
		return true
	}
	for i := range s.b.fixed {
		if uses(s.b.fixed[i].options) {
			return true
		}
	}
	for j, n := range c.counts {
		k := &s.b.stacks[s.b.groups[c.group][j]]
		if n > 0 && (m.sells(vendor, m.part(k.bat.ID).position) || uses(k.options)) {
			return true
		}
	}
	return false
}

// sells reports whether a vendor ships an article for money.
func (m *market) sells(vendor, article int) bool {
	for _, o := range m.articles[article].offers {
		if o.Shipping > 0 && o.Vendor == m.vendors[vendor].name {
			return true
		}
	}
	return false
}
