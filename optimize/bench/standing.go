package bench

import (
	"math"
	"sync"

	"cartwright/optimize/chassis"
	"cartwright/optimize/market"
	"cartwright/optimize/wiring"
)

// margin is what something adds to the cart's balance sideways and lengthways, in kg m.
type margin struct{ side, length float64 }

func (a margin) plus(b margin) margin { return margin{a.side + b.side, a.length + b.length} }

func (a margin) times(n float64) margin { return margin{a.side * n, a.length * n} }

// marginOf returns the margin of a body.
func (b *Bench) marginOf(body chassis.Body) margin {
	side, length := b.Margins(body)
	return margin{side, length}
}

// span is a least and a most mass in kg.
type span struct{ least, most float64 }

func (a span) plus(b span, n int) span {
	return span{a.least + float64(n)*b.least, a.most + float64(n)*b.most}
}

// spanOf returns the masses that the options of a slot can have.
func spanOf(options []market.Option) span {
	if len(options) == 0 {
		return span{}
	}
	return span{market.LeastOf(options, nil, market.MassOf), -market.LeastOf(options, nil, func(o *market.Option) float64 { return -o.Kg })}
}

// worst and best return the least and the most that masses add to the balance, given what a kilogram of them adds.
func (a span) worst(each margin) margin {
	return margin{math.Min(each.side*a.least, each.side*a.most), math.Min(each.length*a.least, each.length*a.most)}
}

func (a span) best(each margin) margin {
	return margin{math.Max(each.side*a.least, each.side*a.most), math.Max(each.length*a.least, each.length*a.most)}
}

// support is what the balance of a core's cart depends on besides its modules: margins per kilogram in
// each place, and the masses that can be on the backboard and under the cart.
type support struct {
	fixed, board, casters margin   // board and casters: per kilogram
	everyKg, castersKg    span     // everyKg: on the backboard of every plan
	array                 []margin // by supply
	supplyKg              []span   // by supply, on the backboard
	strings               *stringSpans
}

// stringSpans remembers what the run of one string weighs, which depends on the current of the whole bus, and on whether
// it has a device at both ends.
type stringSpans struct {
	lock  sync.Mutex // cores are worked on in parallel
	known map[stringKey]span
}

type stringKey struct {
	supply, stack int
	bothEnds      bool
}

// stringKg returns the least and the most that the run of one string weighs with a supply, on a bus of any number of
// strings from strings to most.
func (b *Bench) stringKg(supply, stack, strings, most int) span {
	kg := b.stringKgOf(supply, stack, strings)
	if wiring.BothEnds(b.Scenario, strings) != wiring.BothEnds(b.Scenario, most) {
		more := b.stringKgOf(supply, stack, most)
		kg = span{math.Min(kg.least, more.least), math.Max(kg.most, more.most)}
	}
	return kg
}

func (b *Bench) stringKgOf(supply, stack, strings int) span {
	key := stringKey{supply, stack, wiring.BothEnds(b.Scenario, strings)}
	s := b.support.strings
	s.lock.Lock()
	defer s.lock.Unlock()
	kg, known := s.known[key]
	if !known {
		kg = spanOf(b.StringOptions(supply, stack, strings))
		s.known[key] = kg
	}
	return kg
}

// weighSupport works out the bench's support.
func (b *Bench) weighSupport() {
	if !b.Tips.Matter() {
		return
	}
	s := support{
		board:   b.marginOf(chassis.BackboardBody(b.Scenario, 1)),
		casters: b.marginOf(chassis.CasterBody(b.Scenario, 1)),
		everyKg: spanOf(b.Busbars), castersKg: spanOf(b.Casters),
	}
	for _, body := range b.FixedBodies {
		s.fixed = s.fixed.plus(b.marginOf(body))
	}
	for _, x := range b.Fixed {
		s.everyKg = s.everyKg.plus(spanOf(x.Options), x.Count)
	}
	for i := range b.Supplies {
		v := &b.Supplies[i]
		own := float64(v.Units) * v.Inverter.MassKg
		s.array = append(s.array, b.marginOf(chassis.ArrayBody(b.Scenario, v.ArrayKg)))
		s.supplyKg = append(s.supplyKg, span{own, own}.plus(spanOf(v.Main), v.Units).plus(spanOf(v.Feeder), v.Units).plus(spanOf(v.Solar), v.inputs()).plus(spanOf(v.Fuses), v.stringFuses()))
	}
	s.strings = &stringSpans{known: map[stringKey]span{}}
	b.support = s
}

// boardKg returns the least and the most mass that can be on the backboard with the strings of a core, on a bus that may
// get more strings, up to most.
func (b *Bench) boardKg(c *Core, most int) span {
	s := &b.support
	kg := s.everyKg.plus(s.supplyKg[c.Supply], 1)
	for _, h := range c.Strings {
		kg = kg.plus(b.stringKg(c.Supply, b.Groups[c.Group][h.Member], c.Total(), most), h.N)
	}
	return kg
}

// Stands reports whether a core's cart stands however its modules are placed and whatever its support
// weighs.
func (b *Bench) Stands(c *Core) bool {
	if !b.Tips.Matter() {
		return true
	}
	s := &b.support
	sum := s.fixed.plus(s.array[c.Supply]).plus(b.boardKg(c, c.Total()).worst(s.board)).plus(s.castersKg.worst(s.casters))
	for _, h := range c.Strings {
		k := &b.Stacks[b.Groups[c.Group][h.Member]]
		sum = sum.plus(b.standing(k, false).times(float64(h.N * k.Series)))
	}
	return sum.side >= 0 && sum.length >= 0
}

// standing returns the margin of one module of a stack on the shelf where it tips the cart least (else: most).
func (b *Bench) standing(k *Stack, least bool) margin {
	found, out := false, margin{}
	for s := range b.Scenario.Cart.Shelves {
		if k.Caps[s] == 0 {
			continue
		}
		m := b.marginOf(chassis.ModuleBody(&b.Scenario.Cart.Shelves[s], k.Battery))
		// The lower shelf is better both sideways and lengthways, so sideways alone decides.
		if !found || (m.side > out.side) == least {
			found, out = true, m
		}
	}
	return out
}

// Steadiest returns an upper bound on the balance of any cart of a core: each kind of module takes the lowest places as
// if it had the shelves to itself, and the support has whatever mass is best.
func (b *Bench) Steadiest(c *Core) margin { return b.steadiest(c, c.Total()) }

// steadiest is Steadiest on a bus that may get more strings, up to most.
func (b *Bench) steadiest(c *Core, most int) margin {
	if !b.Tips.Matter() {
		return margin{}
	}
	s := &b.support
	sum := s.fixed.plus(s.array[c.Supply]).plus(b.boardKg(c, most).best(s.board)).plus(s.castersKg.best(s.casters))
	for _, h := range c.Strings {
		k := &b.Stacks[b.Groups[c.Group][h.Member]]
		sum = sum.plus(b.lowest(k, h.N*k.Series))
	}
	return sum
}

// lowest returns the margin of some modules of a stack that fill the shelves from the lowest up.
func (b *Bench) lowest(k *Stack, modules int) margin {
	var sum margin
	taken := make([]bool, len(k.Caps))
	for modules > 0 {
		low := -1
		for s := range k.Caps {
			if !taken[s] && k.Caps[s] > 0 && (low < 0 || b.Scenario.Cart.Shelves[s].ElevationM < b.Scenario.Cart.Shelves[low].ElevationM) {
				low = s
			}
		}
		if low < 0 {
			break // there is no room for the rest; that is not judged here
		}
		taken[low] = true
		sh := &b.Scenario.Cart.Shelves[low]
		n := min(modules, k.Caps[low])
		if k.Battery.MassKg > 0 {
			n = int(math.Min(float64(n), math.Floor(b.ShelfKg[low]/k.Battery.MassKg+1e-9)))
		}
		sum = sum.plus(b.marginOf(chassis.ModuleBody(sh, k.Battery)).times(float64(n)))
		modules -= n
	}
	return sum
}

// Over reports whether a cart whose balance is at most m tips for certain.
func (t tipping) Over(m margin) bool {
	const hair = 1e-6 // kg m, against the rounding of sums
	return m.side < -hair || m.length < -hair
}

// manyStrings is enough strings for a device at both ends of each, where the run's length asks for it.
const manyStrings = math.MaxInt

// TipsWith reports whether all cores with at least these strings, and further ones of some members of their group, tip
// for certain.
func (b *Bench) TipsWith(c *Core, further []int) bool {
	if !b.Tips.Matter() {
		return false
	}
	sum := b.steadiest(c, manyStrings)
	for _, j := range further {
		if !b.Tips.Over(sum) {
			return false // further strings are added only where they help, so it does not tip with those either
		}
		at := b.Groups[c.Group][j]
		k := &b.Stacks[at]
		each := b.standing(k, true).times(float64(k.Series)).plus(b.stringKg(c.Supply, at, c.Total(), manyStrings).best(b.support.board))
		more := float64(k.Most - c.Count(j))
		sum = sum.plus(margin{math.Max(0, each.side), math.Max(0, each.length)}.times(more))
	}
	return b.Tips.Over(sum)
}

// inputs returns how many inputs a supply's array takes, stringFuses how many strings of its modules have a fuse each.
func (v *Supply) inputs() int {
	if v.Array == nil {
		return 0
	}
	return v.Array.Inputs
}

func (v *Supply) stringFuses() int {
	if v.Array == nil || v.Fuses == nil {
		return 0
	}
	return v.Array.Inputs * v.Array.Parallel
}
