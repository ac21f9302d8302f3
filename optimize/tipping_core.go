package optimize

import (
	"math"

	"cartwright/optimize/chassis"
)

// margin is what something adds to the cart's balance sideways and lengthways, in kg m.
type margin struct{ side, length float64 }

func (a margin) plus(b margin) margin { return margin{a.side + b.side, a.length + b.length} }

func (a margin) times(n float64) margin { return margin{a.side * n, a.length * n} }

// marginOf returns the margin of a body.
func (b *bench) marginOf(body chassis.Body) margin {
	side, length := b.margins(body)
	return margin{side, length}
}

// span is a least and a most mass in kg.
type span struct{ least, most float64 }

func (a span) plus(b span, n int) span {
	return span{a.least + float64(n)*b.least, a.most + float64(n)*b.most}
}

// spanOf returns the masses that the options of a slot can have.
func spanOf(options []option) span {
	if len(options) == 0 {
		return span{}
	}
	return span{leastOf(options, nil, massOf), -leastOf(options, nil, func(o *option) float64 { return -o.kg })}
}

// worst and best return what masses add to the balance at the worst and at the best, given what a kilogram
// of them adds.
func (a span) worst(each margin) margin {
	return margin{math.Min(each.side*a.least, each.side*a.most), math.Min(each.length*a.least, each.length*a.most)}
}

func (a span) best(each margin) margin {
	return margin{math.Max(each.side*a.least, each.side*a.most), math.Max(each.length*a.least, each.length*a.most)}
}

// support is what the balance of a core's cart depends on besides its modules: margins of a kilogram in
// each place, and what there can be on the backboard and under the cart.
type support struct {
	fixed, board, casters margin // board and casters: of a kilogram
	everyKg, castersKg    span   // everyKg: on the backboard of every plan
	supplyKg, stringKg    []span // by supply, and by stack of one string: on the backboard
}

// weighSupport finds them.
func (b *bench) weighSupport() {
	if !b.tips.matter() {
		return
	}
	s := support{
		board:   b.marginOf(chassis.BackboardBody(b.s, 1)),
		casters: b.marginOf(chassis.CasterBody(b.s, 1)),
		everyKg: spanOf(b.busbars), castersKg: spanOf(b.casters),
	}
	for _, body := range b.fixedBodies {
		s.fixed = s.fixed.plus(b.marginOf(body))
	}
	for _, x := range b.fixed {
		s.everyKg = s.everyKg.plus(spanOf(x.options), x.count)
	}
	for i := range b.supplies {
		v := &b.supplies[i]
		own := float64(v.units) * v.inv.MassKg
		s.supplyKg = append(s.supplyKg, span{own, own}.plus(spanOf(v.main), v.units).plus(spanOf(v.feeder), 1))
	}
	for i := range b.stacks {
		s.stringKg = append(s.stringKg, spanOf(b.stacks[i].options))
	}
	b.support = s
}

// boardKg returns the least and the most that can hang on the backboard with a core.
func (b *bench) boardKg(c *core) span {
	s := &b.support
	kg := s.everyKg.plus(s.supplyKg[c.supply], 1)
	for _, h := range c.strings {
		kg = kg.plus(s.stringKg[b.groups[c.group][h.member]], h.n)
	}
	return kg
}

// stands reports whether a core's cart stands however its modules are placed and whatever its support
// weighs.
func (b *bench) stands(c *core) bool {
	if !b.tips.matter() {
		return true
	}
	s := &b.support
	sum := s.fixed.plus(b.boardKg(c).worst(s.board)).plus(s.castersKg.worst(s.casters))
	for _, h := range c.strings {
		k := &b.stacks[b.groups[c.group][h.member]]
		sum = sum.plus(b.standing(k, false).times(float64(h.n * k.series)))
	}
	return sum.side >= 0 && sum.length >= 0
}

// standing returns the margin of one module of a stack on the shelf where it tips the cart least, or most.
func (b *bench) standing(k *stack, least bool) margin {
	found, out := false, margin{}
	for s := range b.s.Cart.Shelves {
		if k.caps[s] == 0 {
			continue
		}
		m := b.marginOf(chassis.ModuleBody(&b.s.Cart.Shelves[s], k.bat))
		// The lower shelf is the better one both ways.
		if !found || (m.side > out.side) == least {
			found, out = true, m
		}
	}
	return out
}

// steadiest returns a balance that no cart of a core exceeds: each kind of module takes the lowest room as
// if it had it alone, and the support weighs whatever is best.
func (b *bench) steadiest(c *core) margin {
	if !b.tips.matter() {
		return margin{}
	}
	s := &b.support
	sum := s.fixed.plus(b.boardKg(c).best(s.board)).plus(s.castersKg.best(s.casters))
	for _, h := range c.strings {
		k := &b.stacks[b.groups[c.group][h.member]]
		sum = sum.plus(b.lowest(k, h.n*k.series))
	}
	return sum
}

// lowest returns the margin of some modules of a stack that fill the shelves from the lowest up.
func (b *bench) lowest(k *stack, modules int) margin {
	var sum margin
	taken := make([]bool, len(k.caps))
	for modules > 0 {
		low := -1
		for s := range k.caps {
			if !taken[s] && k.caps[s] > 0 && (low < 0 || b.s.Cart.Shelves[s].ElevationM < b.s.Cart.Shelves[low].ElevationM) {
				low = s
			}
		}
		if low < 0 {
			break // they have no room at all, which is not told here
		}
		taken[low] = true
		sh := &b.s.Cart.Shelves[low]
		n := min(modules, k.caps[low])
		if k.bat.MassKg > 0 {
			n = int(math.Min(float64(n), math.Floor(sh.MaxMassKg/k.bat.MassKg+1e-9)))
		}
		sum = sum.plus(b.marginOf(chassis.ModuleBody(sh, k.bat)).times(float64(n)))
		modules -= n
	}
	return sum
}

// over reports whether a cart of at most such a balance tips for certain.
func (t tipping) over(m margin) bool {
	const hair = 1e-6 // kg m, against the rounding of sums
	return m.side < -hair || m.length < -hair
}

// tipsWith reports whether all cores with at least these strings, further ones of the members from last on,
// tip for certain.
func (b *bench) tipsWith(c *core, last int) bool {
	if !b.tips.matter() {
		return false
	}
	sum := b.steadiest(c)
	members := b.groups[c.group]
	for j := last; j < len(members); j++ {
		k := &b.stacks[members[j]]
		each := b.standing(k, true).times(float64(k.series)).plus(b.support.stringKg[members[j]].best(b.support.board))
		more := float64(k.most - c.count(j))
		sum = sum.plus(margin{math.Max(0, each.side), math.Max(0, each.length)}.times(more))
	}
	return b.tips.over(sum)
}
