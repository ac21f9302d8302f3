package model

import (
	"cartwright/optimize/choice"
	"cartwright/optimize/milp"
)

// Read returns the choice that a solution stands for.
func (p *program) Read(s milp.Solution) choice.Choice {
	c := choice.Choice{Market: p.market}
	for i, v := range p.supply {
		if s.Int(v) == 1 {
			c.Supply = p.Space.supplies[i]
		}
	}
	for i, v := range p.strings {
		n := s.Int(v)
		if n == 0 {
			continue
		}
		var stand []int
		for _, x := range p.stand[i] {
			stand = append(stand, s.Int(x))
		}
		c.Stacks = append(c.Stacks, p.Space.strings[i].stack)
		c.Strings = append(c.Strings, n)
		c.Stand = append(c.Stand, stand)
	}
	for i := range p.slots {
		v := &p.slots[i]
		for j, x := range v.filling {
			if n := s.Int(x); n > 0 {
				f := choice.Fill{Kind: v.kind, Slot: v.slot.Name, Option: &v.slot.Options[j], Count: n, Paths: n * max(1, v.alike)}
				if v.kind == choice.SlotString {
					f.Stack = p.Space.strings[v.of].stack
				}
				c.Fills = append(c.Fills, f)
			}
		}
	}
	c.Bought = map[int]choice.Acquired{}
	quantities := choice.Quantities(p.Bench, &c)
	for article, v := range p.bought {
		var got choice.Acquired
		got.Used = s.Value(v.used)
		for _, x := range v.buy {
			got.Buy = append(got.Buy, s.Value(x))
		}
		c.Bought[article] = choice.Reconcile(p.Bench, &p.market.Articles[article], quantities[article], got)
	}
	return c
}
