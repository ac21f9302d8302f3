package bound

import (
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
)

// costs holds the least costs at the offers that are open, with the levels of shipping of the offers that would be
// taken. Costs by supply and string are worked out once, when first needed.
type costs struct {
	o     *Bounds
	m     *market.Market
	open  market.Open // nil: all
	each  []floor     // by article
	fixed sum         // what every plan has, whatever its supply
	// By supply: without batteries, string runs, mains, bus bars and casters.
	supplies         map[int]sum
	mains            map[int]*climbed
	runs             map[stringRun]*climbed
	busbars, casters []float64 // by option
}

// floor is the least cost of a unit of an article, the offer that has it, and how many units can be had.
type floor struct {
	cents float64
	offer int
	most  float64
}

// sum is a cost in cents, and by vendor the level of shipping that goes with it.
type sum struct {
	cents  float64
	levels []int
}

func newCosts(o *Bounds, m *market.Market, open market.Open) *costs {
	k := &costs{o: o, m: m, open: open, each: make([]floor, len(m.Articles)),
		supplies: map[int]sum{}, mains: map[int]*climbed{}, runs: map[stringRun]*climbed{}}
	for i := range m.Articles {
		f := &k.each[i]
		f.cents, f.offer, f.most = m.Articles[i].FloorAt(m.Tax, open)
	}
	k.fixed = sum{-m.Credit, make([]int, len(m.Vendors))}
	for i := range o.Bench.Fixed {
		if s := &o.Bench.Fixed[i]; s.For != market.Through {
			k.add(&k.fixed, s, nil)
		}
	}
	k.busbars, k.casters = k.floors(o.Bench.Busbars), k.floors(o.Bench.Casters)
	return k
}

// floor returns the cents, tax included, below which an option cannot be had; +Inf where it cannot be had
// at all.
func (k *costs) floor(x *market.Option) float64 {
	const hair = 1e-9 // metres, against the rounding of sums
	cents := 0.0
	for _, u := range x.Uses {
		f := &k.each[u.Article]
		if u.Quantity > f.most+hair {
			return math.Inf(1)
		}
		cents += u.Quantity * f.cents
	}
	return cents
}

// floors returns the floor of each of some options.
func (k *costs) floors(options []market.Option) []float64 {
	list := make([]float64, len(options))
	for i := range options {
		list[i] = k.floor(&options[i])
	}
	return list
}

// raise raises levels to those of the offers that an option takes.
func (k *costs) raise(levels []int, x *market.Option) {
	for _, u := range x.Uses {
		k.m.Articles[u.Article].Raise(levels, k.each[u.Article].offer)
	}
}

// add adds the cheapest way to fill a slot with an option that serves.
func (k *costs) add(to *sum, s *market.Slot, serves func(*market.Option) bool) {
	least, best := math.Inf(1), -1
	for i := range s.Options {
		if cents := k.floor(&s.Options[i]); cents < least && (serves == nil || serves(&s.Options[i])) {
			least, best = cents, i
		}
	}
	to.cents += float64(s.Count) * least
	if best >= 0 {
		k.raise(to.levels, &s.Options[best])
	}
}

// addPart adds a number of one article where it is cheapest, and returns its cost.
func (k *costs) addPart(to *sum, article int, quantity float64) float64 {
	a := &k.m.Articles[article]
	cents, offer := a.LeastAt(quantity, k.m.Tax, k.open)
	to.cents += cents
	a.Raise(to.levels, offer)
	return cents
}

// supply returns what a supply and all that every plan with it has cost.
func (k *costs) supply(at int) sum {
	known, asked := k.supplies[at]
	if asked {
		return known
	}
	v := &k.o.Bench.Supplies[at]
	out := sum{k.fixed.cents, append([]int(nil), k.fixed.levels...)}
	k.addPart(&out, k.m.Part(v.Inverter.ID).Position, float64(v.Units))
	for i := range k.o.Bench.Fixed {
		if s := &k.o.Bench.Fixed[i]; s.For == market.Through {
			k.add(&out, s, through(v))
		}
	}
	if x := v.Array; x != nil {
		k.addPart(&out, k.m.Part(x.Module.ID).Position, float64(x.Modules()))
	}
	for _, s := range slotsOf(v) {
		k.add(&out, &s, nil)
	}
	k.supplies[at] = out
	return out
}

// main returns the mains of a supply.
func (k *costs) main(at int) *climbed {
	c := k.mains[at]
	if c == nil {
		c = k.climb(k.o.mains[at])
		k.mains[at] = c
	}
	return c
}

// run returns the run of a string.
func (k *costs) run(run ladder, key stringRun) *climbed {
	c := k.runs[key]
	if c == nil {
		c = k.climb(run)
		k.runs[key] = c
	}
	return c
}

// of returns the least cost of a core with the load of its support. further is the part of that cost which further
// strings may make up for, because a quantity break makes one piece as dear as several.
func (k *costs) of(c *bench.Core, l load) (out sum, further float64) {
	b := k.o.Bench
	v, members := &b.Supplies[c.Supply], b.Groups[c.Group]
	base := k.supply(c.Supply)
	out = sum{base.cents, append([]int(nil), base.levels...)}
	take := func(cents float64, count int, x *market.Option) {
		out.cents += float64(count) * cents
		if x != nil {
			k.raise(out.levels, x)
		}
	}
	for _, h := range c.Strings {
		at := members[h.Member]
		st := &b.Stacks[at]
		modules := float64(h.N) * float64(st.Series)
		least := k.addPart(&out, st.Article, modules)
		further += least - k.m.Articles[st.Article].LinearCents(modules, k.m.Tax)
		if run, key, listed := k.o.runOf(c.Supply, at, l.strings); listed {
			cents, x := k.run(run, key).least(wiring.StringFaultA(st.ShortA, l.faultA))
			take(cents, h.N, x)
		}
	}
	bars := k.o.bars(c.Supply, l.strings)
	cents, x := cheapest(b.Busbars, k.busbars, bars)
	take(cents, 1, x)
	if v.Main != nil {
		cents, x := k.main(c.Supply).least(l.faultA)
		take(cents, v.Units, x)
	}
	cents, x = cheapest(b.Casters, k.casters, func(x *market.Option) bool { return plan.AtLeast(x.CarriesKg, l.kg) })
	take(cents, 1, x)
	return out, further
}

// cheapest returns the least floor among the options that serve, and the option that has it.
func cheapest(options []market.Option, floors []float64, serves func(*market.Option) bool) (float64, *market.Option) {
	least, best := math.Inf(1), (*market.Option)(nil)
	for i := range options {
		if floors[i] < least && serves(&options[i]) {
			least, best = floors[i], &options[i]
		}
	}
	return least, best
}
