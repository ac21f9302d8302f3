package optimize

import (
	"math"

	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
)

// bounds knows what no plan can be below: least costs and masses of a supply with all that every plan
// has, and of a string, at the prices of one market. The interplay of mass and owned parts is left aside,
// so a bound is often the exact figure and never above it.
type bounds struct {
	b      *bench
	market *market
	most   float64 // kg that the limits, the person who pushes and the best casters take

	cents []float64 // by supply: without batteries, string runs, mains, bus bars and casters
	kg    []float64

	busbarFloors, casterFloors []float64 // by option: cents

	mainFloors   [][]float64 // by supply and option: cents
	stringFloors [][]float64 // by stack and option: cents

	paid *bounds // the same with nothing owned but batteries and inverters; nil where that is so anyway
	// owned are the articles other than these that are owned and that something can use, with what using
	// one saves, and how much of each can be used at most.
	owned []ownedSupport

	// By stack, of one string with its run, at the least fault current.
	ownedStrings []float64 // how many strings' worth of modules are owned
	ownedCents   []float64
	boughtCents  []float64
	stringKg     []float64
	lifeWh       []float64 // cycle life times usable energy; 0: not stated
	room         []float64 // floor area in m2 that a string takes at least
	floorArea    float64   // of all shelves
	ownedMembers [][]int   // by group: members of which strings are owned

	perUsableCents, perUsableKg dearth // of bought strings, for a Wh of usable energy
	perLifeRoom, perLifeKg      dearth // for a Wh of lifetime energy

	lightestCastersKg float64
	segments          [][]lifeSegment // by group; made when first needed
}

func newBounds(b *bench, m *market) *bounds {
	o := &bounds{b: b, market: m}
	o.weighLimits()
	o.boundSupplies()
	o.boundStrings()
	o.boundPaid()
	return o
}

// floor returns the cents, tax included, below which an option cannot be had; +Inf where it cannot be had
// at all.
func (o *bounds) floor(x *option) float64 {
	cents := 0.0
	for _, u := range x.uses {
		a := &o.market.articles[u.article]
		if !a.available(u.quantity) {
			return math.Inf(1)
		}
		cents += u.quantity * a.floorCents(o.market.tax)
	}
	return cents
}

// floors returns the floor of each of some options.
func (o *bounds) floors(options []option) []float64 {
	list := make([]float64, len(options))
	for i := range options {
		list[i] = o.floor(&options[i])
	}
	return list
}

// cheapest returns the least floor among the options that serve.
func cheapest(options []option, floors []float64, serves func(*option) bool) float64 {
	least := math.Inf(1)
	for i := range options {
		if floors[i] < least && (serves == nil || serves(&options[i])) {
			least = floors[i]
		}
	}
	return least
}

// weighLimits finds the largest mass any plan can have.
func (o *bounds) weighLimits() {
	s := o.b.s
	o.most = s.Limits.MassKg
	if s.Limits.PushN > 0 {
		o.most = math.Min(o.most, s.Limits.PushN/chassis.PushN(1, s.Limits.Slope))
	}
	strongest := -leastOf(o.b.casters, nil, func(c *option) float64 { return -c.carriesKg })
	o.most = math.Min(o.most, strongest/chassis.CasterLoadKg(1, s.CasterFactor, s.Cart.Casters))
	o.most += 1e-6 // a milligram, against the rounding of sums
}

// boundSupplies adds up what every plan with a supply has.
func (o *bounds) boundSupplies() {
	fixedCents := (1+o.market.tax)*o.market.shipping - o.market.credit
	fixedKg := o.b.fixedKg
	for _, s := range o.b.fixed {
		fixedCents += float64(s.count) * leastOf(s.options, nil, o.floor)
		fixedKg += float64(s.count) * leastOf(s.options, nil, massOf)
	}
	o.busbarFloors, o.casterFloors = o.floors(o.b.busbars), o.floors(o.b.casters)
	o.lightestCastersKg = leastOf(o.b.casters, nil, massOf)
	for i := range o.b.supplies {
		v := &o.b.supplies[i]
		cents := fixedCents + o.market.part(v.inv.ID).leastCents(float64(v.units), o.market.tax)
		kg := fixedKg + float64(v.units)*v.inv.MassKg
		if v.feeder != nil {
			cents += leastOf(v.feeder, nil, o.floor)
			kg += leastOf(v.feeder, nil, massOf)
		}
		o.mainFloors = append(o.mainFloors, o.floors(v.main))
		o.cents = append(o.cents, cents)
		o.kg = append(o.kg, kg)
	}
}

// boundStrings adds up what one string of each stack costs and weighs.
func (o *bounds) boundStrings() {
	tax := o.market.tax
	for _, sh := range o.b.s.Cart.Shelves {
		o.floorArea += sh.LengthM * sh.DepthM
	}
	for i := range o.b.stacks {
		k := &o.b.stacks[i]
		a := o.market.part(k.bat.ID)
		series := float64(k.series)
		o.stringFloors = append(o.stringFloors, o.floors(k.options))
		runCents, runKg := o.stringRun(i, k.shortA)
		o.ownedStrings = append(o.ownedStrings, a.have/series)
		o.ownedCents = append(o.ownedCents, runCents+series*a.sellFor)
		o.boughtCents = append(o.boughtCents, runCents+series*a.boughtFloor(tax))
		o.stringKg = append(o.stringKg, k.kg+runKg)
		o.lifeWh = append(o.lifeWh, series*energy.LifetimeWh(k.bat, o.b.s.Limits.Reserve))
		area := math.Inf(1)
		for j, c := range k.caps {
			if c > 0 {
				sh := &o.b.s.Cart.Shelves[j]
				area = math.Min(area, sh.LengthM*sh.DepthM/float64(c))
			}
		}
		o.room = append(o.room, series*area)
	}
	o.perUsableCents = o.dearthOf(func(at int) float64 { return o.boughtCents[at] / o.b.stacks[at].usableWh })
	o.perUsableKg = o.dearthOf(func(at int) float64 { return o.stringKg[at] / o.b.stacks[at].usableWh })
	o.perLifeRoom = o.dearthOf(func(at int) float64 { return o.room[at] / o.lifeWh[at] })
	o.perLifeKg = o.dearthOf(func(at int) float64 { return o.stringKg[at] / o.lifeWh[at] })
	o.ownedMembers = make([][]int, len(o.b.groups))
	for g, members := range o.b.groups {
		for j, at := range members {
			if o.ownedStrings[at] > 0 {
				o.ownedMembers[g] = append(o.ownedMembers[g], j)
			}
		}
	}
}

// stringRun returns the least cost in cents and mass of a string's run whose device breaks a current.
func (o *bounds) stringRun(at int, faultA float64) (cents, kg float64) {
	k := &o.b.stacks[at]
	if k.options == nil {
		return 0, 0
	}
	serves := func(x *option) bool { return x.interruptingA >= faultA }
	return cheapest(k.options, o.stringFloors[at], serves), leastOf(k.options, serves, massOf)
}
