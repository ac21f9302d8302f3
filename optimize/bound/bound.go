// Package bound computes lower bounds: the least cost and mass of any plan with a core, and of any plan whose core has
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

// Bounds holds the least costs and masses of a supply with all that every plan has, and of a string, at the prices of
// one market. Each part is taken at its least on its own, so a bound is often the exact figure and never above it.
type Bounds struct {
	Bench *bench.Bench
	most  float64 // the largest mass in kg that limits.mass, limits.push and the best casters allow

	kg []float64 // by supply: without batteries, string runs, mains, bus bars and casters

	mains []ladder // by supply
	runs  map[stringRun]ladder

	any  market.Orders
	full *priced            // where every order is open
	at   map[string]*priced // by the levels up to which orders are open

	// owned are the owned articles other than batteries, inverters and modules that something can use.
	owned       []ownedSupport
	apartMarket *market.Market // the market without them; nil where there are none

	// By stack, of one string with its run, at the least fault current.
	ownedStrings []float64 // how many strings' worth of modules are owned
	ownedCents   []float64
	boughtCents  []float64
	stringKg     []float64
	lifeWh       []float64 // cycle life times usable energy; 0: not stated
	room         []float64 // least floor area in m2 of a string, as if columns could be split
	floorArea    float64   // of all shelves

	perUsableCents, perUsableKg, perUsableRoom []float64 // by stack, of bought strings, per Wh of usable energy
	perLifeCents, perLifeRoom, perLifeKg       []float64 // the same per Wh of lifetime energy

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

// Tighter has the bounds be those of a tighter bench: see bench.Tighter. Costs and masses stay the same.
func (o *Bounds) Tighter(b *bench.Bench) {
	o.Bench = b
	o.weighLimits()
}

// weighLimits finds the largest mass any plan can have.
func (o *Bounds) weighLimits() {
	s := o.Bench.Scenario
	o.most = s.Limits.MassKg
	if s.Limits.PushN > 0 {
		o.most = min(o.most, s.Limits.PushN/chassis.PushN(1, s.Cart.Rolling, s.Limits.Slope))
	}
	strongest := -market.LeastOf(o.Bench.Casters, nil, func(c *market.Option) float64 { return -c.CarriesKg })
	o.most = min(o.most, strongest/chassis.CasterLoadKg(1, s.CasterFactor, s.Cart.Casters))
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

// slotsOf returns the slots that come with a supply, whatever its strings.
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

// through returns a test for parts rated for the whole bus current of a supply.
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
				area = min(area, sh.LengthM*sh.DepthM*(c.AlongM+sh.GapM)/(float64(c.Modules())*chassis.RoomM(sh)))
			}
		}
		o.room = append(o.room, series*area)
	}
	usable := func(at int) float64 { return o.Bench.Stacks[at].UsableWh }
	life := func(at int) float64 { return o.lifeWh[at] }
	o.perUsableCents, o.perUsableKg, o.perUsableRoom = o.per(o.boughtCents, usable), o.per(o.stringKg, usable), o.per(o.room, usable)
	o.perLifeCents, o.perLifeRoom, o.perLifeKg = o.per(o.boughtCents, life), o.per(o.room, life), o.per(o.stringKg, life)
}

// per divides a figure of one string of each stack by another; 0/0 counts as +Inf.
func (o *Bounds) per(figure []float64, of func(at int) float64) []float64 {
	list := make([]float64, len(figure))
	for at := range figure {
		if list[at] = figure[at] / of(at); math.IsNaN(list[at]) {
			list[at] = math.Inf(1)
		}
	}
	return list
}

// mostCycles returns an upper bound on the cycles a year of a bank with at least usableWh: the bank also has at least
// what the autonomy needs.
func (o *Bounds) mostCycles(usableWh float64) float64 {
	most := 0.0
	for i := range o.Bench.Supplies {
		v := &o.Bench.Supplies[i]
		most = max(most, v.YearWh/max(v.NeedWh, usableWh))
	}
	return most
}

// stringRun is what the options of a string's run depend on.
type stringRun struct {
	supply, stack int
	bothEnds      bool
}

// runOf returns the options of a string's run with a supply, on a bus of so many strings; listed is false where the
// scenario has no such run.
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
