package optimize

import (
	"math"

	"cartwright/optimize/milp"
)

// choice is a plan as the program decided it: whole numbers only, and how special articles are come by.
type choice struct {
	market  *market // with the prices that were paid
	supply  int     // index into the bench's supplies
	stacks  []int   // indices into the bench's stacks, those that are present
	strings []int   // by stacks
	stand   [][]int
	fills   []fill
	bought  map[int]acquired // by article, of the special ones
}

// fill is a number of equal things that fill a slot.
type fill struct {
	kind   slotKind
	slot   string
	stack  int // of a string run
	option *option
	count  int
}

// acquired is how a special article is come by: of what is owned, and by offer.
type acquired struct {
	used float64
	buy  []float64
}

// read takes the choice out of a solution.
func (p *program) read(s milp.Solution) choice {
	c := choice{market: p.market}
	for i, v := range p.supply {
		if s.Int(v) == 1 {
			c.supply = p.sp.supplies[i]
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
		c.stacks = append(c.stacks, p.sp.strings[i].stack)
		c.strings = append(c.strings, n)
		c.stand = append(c.stand, stand)
	}
	for i := range p.slots {
		v := &p.slots[i]
		for j, x := range v.filling {
			if n := s.Int(x); n > 0 {
				f := fill{kind: v.kind, slot: v.slot.name, option: &v.slot.options[j], count: n}
				if v.kind == slotString {
					f.stack = p.sp.strings[v.of].stack
				}
				c.fills = append(c.fills, f)
			}
		}
	}
	c.bought = map[int]acquired{}
	quantities := p.b.quantities(&c)
	for article, v := range p.bought {
		var got acquired
		got.used = s.Value(v.used)
		for _, x := range v.buy {
			got.buy = append(got.buy, s.Value(x))
		}
		c.bought[article] = p.b.settle(&p.market.articles[article], quantities[article], got)
	}
	return c
}

// settle takes the engine's rounding out of how an article is come by: all owned pieces that are used,
// then exactly what is missing at the offers that were chosen, at least their least quantity.
func (b *bench) settle(a *article, needed float64, got acquired) acquired {
	const hair = 1e-6 // of a piece or a metre: the engine's tolerance, far below what is ever bought
	var out acquired
	out.buy = make([]float64, len(got.buy))
	left := needed
	for i, n := range got.buy {
		if n <= hair {
			continue
		}
		if a.whole {
			n = math.Round(n)
		} else if len(a.offers) > 0 && math.Abs(n-a.offers[i].MinQty) < hair {
			n = a.offers[i].MinQty
		}
		out.buy[i] = n
		left -= n
	}
	out.used = math.Max(0, math.Min(math.Min(a.have, needed), left))
	short := left - out.used
	for i := range out.buy { // what rounding took from a purchase goes back to the first that has one
		if out.buy[i] > 0 && math.Abs(short) > 0 && short > -hair {
			out.buy[i] += short
			short = 0
		}
	}
	if a.whole {
		out.used = math.Round(out.used)
	}
	return out
}

// quantities returns how much of each article is installed.
func (b *bench) quantities(c *choice) []float64 {
	q := make([]float64, len(b.market.articles))
	for i, k := range c.stacks {
		st := &b.stacks[k]
		q[b.market.part(st.bat.ID).position] += float64(st.series * c.strings[i])
	}
	v := &b.supplies[c.supply]
	q[b.market.part(v.inv.ID).position] += float64(v.units)
	for i := range c.fills {
		f := &c.fills[i]
		for _, u := range f.option.uses {
			q[u.article] += float64(f.count) * u.quantity
		}
	}
	return q
}
