// Package bound knows what no plan can be below: least costs and masses of cores and of all cores that have
// at least some strings.
package bound

import (
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// Bounds knows what no plan can be below: least costs and masses of a supply with all that every plan
// has, and of a string, at the prices of one market. The interplay of mass and owned parts is left aside,
// so a bound is often the exact figure and never above it.
type Bounds struct {
	Bench *bench.Bench
	most  float64 // kg that the limits, the person who pushes and the best casters take

	kg []float64 // by supply: without batteries, string runs, mains, bus bars and casters

	mains []ladder // by supply
	runs  map[stringRun]ladder

	any  market.Orders
	full *priced            // where every order is open
	at   map[string]*priced // by up to which levels they are

	// owned are the articles other than batteries and inverters that are owned and that something can use, with what
	// using one saves, and how much of each can be used at most.
	owned       []ownedSupport
	apartMarket *market.Market // without them; nil where there are none

	// By stack, of one string with its run, at the least fault current.
	ownedStrings []float64 // how many strings' worth of modules are owned
	ownedCents   []float64
	boughtCents  []float64
	stringKg     []float64
	lifeWh       []float64 // cycle life times usable energy; 0: not stated
	room         []float64 // floor area in m2 that a string takes at least, as if its columns could be parted
	floorArea    float64   // of all shelves

	perUsableCents, perUsableKg, perUsableRoom []float64 // by stack, of bought strings, for a Wh of usable energy
	perLifeCents, perLifeRoom, perLifeKg       []float64 // for a Wh of lifetime energy

	lightestCastersKg float64
}

// New finds the bounds of a bench, with no order decided.
func New(b *bench.Bench) *Bounds {
	o := &Bounds{Bench: b, any: b.Market.AnyOrder(), runs: map[stringRun]ladder{}, at: map[string]*priced{}}
	o.weighLimits()
	o.weighSupplies()
	o.apartMarket = o.boundOwned()
	o.full = o.newPriced(nil)
	o.joinOrders()
	o.boundStrings()
	return o
}

// weighLimits finds the largest mass any plan can have.
func (o *Bounds) weighLimits() {
	s := o.Bench.Scenario
	o.most = s.Limits.MassKg
	if s.Limits.PushN > 0 {
		o.most = math.Min(o.most, s.Limits.PushN/chassis.PushN(1, s.Cart.Rolling, s.Limits.Slope))
	}
	strongest := -market.LeastOf(o.Bench.Casters, nil, func(c *market.Option) float64 { return -c.CarriesKg })
	o.most = math.Min(o.most, strongest/chassis.CasterLoadKg(1, s.CasterFactor, s.Cart.Casters))
	o.most += 1e-6 // a milligram, against the rounding of sums
}

// weighSupplies adds up the mass of what every plan with a supply has.
func (o *Bounds) weighSupplies() {
	fixedKg := o.Bench.FixedKg
	for _, s := range o.Bench.Fixed {
		if s.For != market.Through {
			fixedKg += float64(s.Count) * market.LeastOf(s.Options, nil, market.MassOf)
		}
	}
	o.lightestCastersKg = market.LeastOf(o.Bench.Casters, nil, market.MassOf)
	for i := range o.Bench.Supplies {
		v := &o.Bench.Supplies[i]
		kg := fixedKg + float64(v.Units)*v.Inverter.MassKg + v.ArrayKg
		for _, s := range o.Bench.Fixed {
			if s.For == market.Through {
				kg += float64(s.Count) * market.LeastOf(s.Options, through(v), market.MassOf)
			}
		}
		for _, s := range slotsOf(v) {
			kg += float64(s.Count) * market.LeastOf(s.Options, nil, market.MassOf)
		}
		o.mains = append(o.mains, newLadder(v.Main))
		o.kg = append(o.kg, kg)
	}
}

// slotsOf returns what a supply brings along whatever its strings.
func slotsOf(v *bench.Supply) []market.Slot {
	var slots []market.Slot
	add := func(count int, options []market.Option) {
		if options != nil {
			slots = append(slots, market.Slot{Count: count, Options: options})
		}
	}
	add(v.Units, v.Feeder)
	if x := v.Array; x != nil {
		add(x.Inputs, v.Solar)
		add(x.Inputs*x.Parallel, v.Fuses)
	}
	return slots
}

// through says which parts stand all that flows through the bus of a supply.
func through(v *bench.Supply) func(*market.Option) bool {
	least := wiring.ThroughA(v.BusA)
	return func(x *market.Option) bool { return plan.AtLeast(x.RatingA, least) }
}

// boundStrings adds up what one string of each stack costs and weighs.
func (o *Bounds) boundStrings() {
	m := o.Bench.Market
	shelves := o.Bench.Scenario.Cart.Shelves
	for i := range shelves {
		o.floorArea += shelves[i].LengthM * shelves[i].DepthM
	}
	for i := range o.Bench.Stacks {
		k := &o.Bench.Stacks[i]
		a := m.Part(k.Battery.ID)
		series := float64(k.Series)
		run := newLadder(k.Options)
		runCents, runKg := 0.0, 0.0
		if k.Options != nil {
			runCents, _ = o.full.own.climb(run).least(k.ShortA)
			runKg = run.leastKg(k.ShortA)
		}
		o.ownedStrings = append(o.ownedStrings, a.Have/series)
		o.ownedCents = append(o.ownedCents, runCents+series*a.SellFor)
		o.boughtCents = append(o.boughtCents, runCents+series*a.BoughtFloor(m.Tax))
		o.stringKg = append(o.stringKg, k.Kg+runKg)
		o.lifeWh = append(o.lifeWh, series*energy.LifetimeWh(k.Battery, o.Bench.Scenario.Limits.Reserve, o.mostCycles(k.UsableWh)))
		area := math.Inf(1)
		for j := range k.Columns {
			for _, c := range k.Columns[j] {
				sh := &shelves[j]
				area = math.Min(area, sh.LengthM*sh.DepthM*(c.AlongM+sh.GapM)/(float64(c.Modules())*chassis.RoomM(sh)))
			}
		}
		o.room = append(o.room, series*area)
	}
	usable := func(at int) float64 { return o.Bench.Stacks[at].UsableWh }
	life := func(at int) float64 { return o.lifeWh[at] }
	o.perUsableCents, o.perUsableKg, o.perUsableRoom = o.per(o.boughtCents, usable), o.per(o.stringKg, usable), o.per(o.room, usable)
	o.perLifeCents, o.perLifeRoom, o.perLifeKg = o.per(o.boughtCents, life), o.per(o.room, life), o.per(o.stringKg, life)
}

// per divides a figure of each stack's string by what it has; what is no number is as much as can be.
func (o *Bounds) per(figure []float64, of func(at int) float64) []float64 {
	list := make([]float64, len(figure))
	for at := range figure {
		if list[at] = figure[at] / of(at); math.IsNaN(list[at]) {
			list[at] = math.Inf(1)
		}
	}
	return list
}

// mostCycles bounds how often a year the modules of a bank with at least so much usable energy are cycled: the bank
// has at least what the autonomy asks for.
func (o *Bounds) mostCycles(usableWh float64) float64 {
	most := 0.0
	for i := range o.Bench.Supplies {
		v := &o.Bench.Supplies[i]
		most = math.Max(most, v.YearWh/math.Max(v.NeedWh, usableWh))
	}
	return most
}

// stringRun is what the options of a string hang on.
type stringRun struct {
	supply, stack int
	bothEnds      bool
}

// runOf returns the options of a string's run beside a supply on a bus of so many strings; nothing where there is no
// such run.
func (o *Bounds) runOf(supply, at, strings int) (run ladder, key stringRun, listed bool) {
	if o.Bench.Scenario.Run(scenarios.RunString) == nil {
		return run, key, false
	}
	key = stringRun{supply, at, wiring.BothEnds(o.Bench.Scenario, strings)}
	run, known := o.runs[key]
	if !known {
		run = newLadder(o.Bench.StringOptions(supply, at, strings))
		o.runs[key] = run
	}
	return run, key, true
}
