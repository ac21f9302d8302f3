package optimize

import (
	"math"

	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/wiring"
)

// core is what makes a plan a different plan: a supply, and the strings of each member of a group.
type core struct {
	supply, group int
	counts        []int // by members of the group
}

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
	lifeWh       []float64       // cycle life times usable energy; 0: not stated
	room         []float64       // floor area in m2 that a string takes at least
	floorArea    float64         // of all shelves
	segments     [][]lifeSegment // by group; made when first needed
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
		bought := a.cents
		if a.buyable == 0 {
			bought = math.Inf(1)
		}
		if len(a.offers) > 0 {
			bought = math.Inf(1)
			for _, offer := range a.offers {
				bought = math.Min(bought, a.offerCents(offer))
			}
		}
		o.boughtCents = append(o.boughtCents, runCents+(1+tax)*series*bought)
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

// figures are what a number of strings amounts to with a supply.
type figures struct {
	cents, kg float64 // least
	usableWh  float64
	lifeWh    float64
	aged      bool    // every battery states a cycle life
	room      float64 // m2
}

// of returns the least figures of a core, or of all cores that have at least these strings: a fault
// current only grows with more strings, so no device that breaks less will do for them either.
func (o *bounds) of(c *core) (f figures) {
	f = figures{cents: o.cents[c.supply], kg: o.kg[c.supply], aged: true}
	v := &o.b.supplies[c.supply]
	members := o.b.groups[c.group]
	total := 0.0
	for j, n := range c.counts {
		total += float64(n) * o.b.stacks[members[j]].shortA
	}
	if o.paid != nil {
		defer func() { f.cents = math.Max(f.cents, o.paid.of(c).cents-o.saved(c)) }()
	}
	for j, n := range c.counts {
		if n == 0 {
			continue
		}
		at := members[j]
		k := &o.b.stacks[at]
		x := float64(n)
		runCents, runKg := o.stringRun(at, wiring.StringFaultA(k.shortA, total))
		f.cents += o.market.part(k.bat.ID).leastCents(x*float64(k.series), o.market.tax) + x*runCents
		f.kg += x * (k.kg + runKg)
		f.usableWh += x * k.usableWh
		f.lifeWh += x * o.lifeWh[at]
		f.aged = f.aged && o.lifeWh[at] > 0
		f.room += x * o.room[at]
	}
	studs := 0
	for _, n := range c.counts {
		studs += n
	}
	least, studs := wiring.BusbarA(v.busA, o.b.dcA), wiring.BusbarStuds(studs, v.units, 0)
	bars := func(x *option) bool { return x.ratingA >= least && x.studs >= studs }
	f.cents += cheapest(o.b.busbars, o.busbarFloors, bars)
	f.kg += leastOf(o.b.busbars, bars, massOf)
	if v.main != nil {
		serves := func(x *option) bool { return x.interruptingA >= total }
		f.cents += float64(v.units) * cheapest(v.main, o.mainFloors[c.supply], serves)
		f.kg += float64(v.units) * leastOf(v.main, serves, massOf)
	}
	// The casters carry at least all the rest and the lightest set.
	need := chassis.CasterLoadKg(f.kg+leastOf(o.b.casters, nil, massOf), o.b.s.CasterFactor, o.b.s.Cart.Casters)
	carry := func(x *option) bool { return x.carriesKg >= need*(1-energyTie) }
	f.cents += cheapest(o.b.casters, o.casterFloors, carry)
	f.kg += leastOf(o.b.casters, carry, massOf)
	return f
}

// hopeless reports that no plan with at least these strings is within mass, floor and budget.
func (o *bounds) hopeless(f figures) bool {
	if f.kg > o.most || f.room > o.floorArea*(1+areaTie) {
		return true
	}
	l := &o.b.s.Limits
	return math.IsInf(f.cents, 1) ||
		(l.Budget != math.MaxInt64 && f.cents > float64(l.Budget+o.b.s.Sold)+o.roundingCents())
}

// roundingCents bounds how far a cost that is rounded line by line to whole cents can be from the
// unrounded one: half a cent for each line of cable bought or sold, and for the tax.
func (o *bounds) roundingCents() float64 {
	lines := 2*(len(o.b.s.Runs)+len(o.b.s.Circuits)) + len(o.b.s.Have) + 1
	return 0.5 * float64(lines)
}

// serves reports whether a core carries the loads and can be recharged.
func (o *bounds) serves(c *core, f figures) bool {
	v := &o.b.supplies[c.supply]
	if f.usableWh < v.needWh*(1-energyTie) {
		return false
	}
	var strings []energy.Strings
	for j, n := range c.counts {
		if n > 0 {
			k := &o.b.stacks[o.b.groups[c.group][j]]
			strings = append(strings, energy.Strings{Battery: k.bat, Series: k.series, Count: n})
		}
	}
	if len(strings) == 0 || !energy.Carries(strings, v.drawA) {
		return false
	}
	if r := o.b.s.Recharge; r != nil {
		need := energy.GridRechargeA(strings, v.needWh, o.b.s.Bus.NominalV, r.WithinH) * (1 - energyTie)
		return v.chargerA >= need && energy.ChargeA(strings) >= need
	}
	return true
}

// areaTie is the relative excess of floor taken that is the rounding of sums.
const areaTie = 1e-9

// energyTie is the relative shortfall of energy or current that is rounding, not a lack.
const energyTie = 1e-9

// missing bounds from below what the energy still missing adds for strings of the members from last on.
// Owned modules come first where they are cheaper; beyond them the cheapest energy is bought.
func (o *bounds) missing(c *core, last int, wh float64) (cents, kg float64) {
	if wh <= 0 {
		return 0, 0
	}
	members := o.b.groups[c.group]
	perCent, perKg := math.Inf(1), math.Inf(1) // for a Wh
	for j := last; j < len(members); j++ {
		at := members[j]
		if c.counts[j] < o.b.stacks[at].most {
			u := o.b.stacks[at].usableWh
			perCent = math.Min(perCent, o.boughtCents[at]/u)
			perKg = math.Min(perKg, o.stringKg[at]/u)
		}
	}
	kg = wh * perKg
	for j := last; j < len(members); j++ {
		at := members[j]
		left := math.Min(o.ownedStrings[at], float64(o.b.stacks[at].most)) - float64(c.counts[j])
		u := o.b.stacks[at].usableWh
		if left <= 0 || o.ownedCents[at]/u >= perCent {
			continue
		}
		// Each owned string saves at the most what its energy would cost bought.
		taken := math.Min(wh, left*u)
		cents += taken * (o.ownedCents[at]/u - perCent)
	}
	return math.Max(0, cents+wh*perCent), kg
}
