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
	Bench  *bench.Bench
	Market *market.Market
	most   float64 // kg that the limits, the person who pushes and the best casters take

	cents []float64 // by supply: without batteries, string runs, mains, bus bars and casters
	kg    []float64

	busbarFloors []float64 // by option: cents
	casters      ladder    // by what they carry
	mains        []ladder  // by supply, by what they break
	runs         map[stringRun]ladder

	paid *Bounds // the same with nothing owned but batteries and inverters; nil where that is so anyway
	// owned are the articles other than these that are owned and that something can use, with what using
	// one saves, and how much of each can be used at most.
	owned []ownedSupport

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

func New(b *bench.Bench, m *market.Market) *Bounds {
	o := &Bounds{runs: map[stringRun]ladder{}, Bench: b, Market: m}
	o.weighLimits()
	o.boundSupplies()
	o.boundStrings()
	o.boundPaid()
	return o
}

// floor returns the cents, tax included, below which an option cannot be had; +Inf where it cannot be had
// at all.
func (o *Bounds) floor(x *market.Option) float64 {
	cents := 0.0
	for _, u := range x.Uses {
		a := &o.Market.Articles[u.Article]
		if !a.Available(u.Quantity) {
			return math.Inf(1)
		}
		cents += u.Quantity * a.FloorCents(o.Market.Tax)
	}
	return cents
}

// floors returns the floor of each of some options.
func (o *Bounds) floors(options []market.Option) []float64 {
	list := make([]float64, len(options))
	for i := range options {
		list[i] = o.floor(&options[i])
	}
	return list
}

// cheapest returns the least floor among the options that serve.
func cheapest(options []market.Option, floors []float64, serves func(*market.Option) bool) float64 {
	least := math.Inf(1)
	for i := range options {
		if floors[i] < least && (serves == nil || serves(&options[i])) {
			least = floors[i]
		}
	}
	return least
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

// boundSupplies adds up what every plan with a supply has.
func (o *Bounds) boundSupplies() {
	fixedCents := (1+o.Market.Tax)*o.Market.Shipping - o.Market.Credit
	fixedKg := o.Bench.FixedKg
	for _, s := range o.Bench.Fixed {
		if s.For != market.Through {
			fixedCents += float64(s.Count) * market.LeastOf(s.Options, nil, o.floor)
			fixedKg += float64(s.Count) * market.LeastOf(s.Options, nil, market.MassOf)
		}
	}
	o.busbarFloors = o.floors(o.Bench.Busbars)
	o.casters = ladderOf(o.Bench.Casters, o.floors(o.Bench.Casters), carries)
	o.lightestCastersKg = market.LeastOf(o.Bench.Casters, nil, market.MassOf)
	for i := range o.Bench.Supplies {
		v := &o.Bench.Supplies[i]
		cents := fixedCents + o.Market.Part(v.Inverter.ID).LeastCents(float64(v.Units), o.Market.Tax)
		kg := fixedKg + float64(v.Units)*v.Inverter.MassKg
		for _, s := range o.Bench.Fixed {
			if s.For == market.Through {
				serves := through(v)
				cents += float64(s.Count) * market.LeastOf(s.Options, serves, o.floor)
				kg += float64(s.Count) * market.LeastOf(s.Options, serves, market.MassOf)
			}
		}
		if v.Feeder != nil {
			cents += float64(v.Units) * market.LeastOf(v.Feeder, nil, o.floor)
			kg += float64(v.Units) * market.LeastOf(v.Feeder, nil, market.MassOf)
		}
		if x := v.Array; x != nil {
			cents += o.Market.Part(x.Module.ID).LeastCents(float64(x.Modules()), o.Market.Tax)
			kg += v.ArrayKg
			for _, slot := range []struct {
				count   int
				options []market.Option
			}{{x.Inputs, v.Solar}, {x.Inputs * x.Parallel, v.Fuses}} {
				if slot.options != nil {
					cents += float64(slot.count) * market.LeastOf(slot.options, nil, o.floor)
					kg += float64(slot.count) * market.LeastOf(slot.options, nil, market.MassOf)
				}
			}
		}
		o.mains = append(o.mains, ladderOf(v.Main, o.floors(v.Main), interrupting))
		o.cents = append(o.cents, cents)
		o.kg = append(o.kg, kg)
	}
}

// through says which parts stand all that flows through the bus of a supply.
func through(v *bench.Supply) func(*market.Option) bool {
	least := wiring.ThroughA(v.BusA)
	return func(x *market.Option) bool { return plan.AtLeast(x.RatingA, least) }
}

// boundStrings adds up what one string of each stack costs and weighs.
func (o *Bounds) boundStrings() {
	tax := o.Market.Tax
	shelves := o.Bench.Scenario.Cart.Shelves
	for i := range shelves {
		o.floorArea += shelves[i].LengthM * shelves[i].DepthM
	}
	for i := range o.Bench.Stacks {
		k := &o.Bench.Stacks[i]
		a := o.Market.Part(k.Battery.ID)
		series := float64(k.Series)
		runCents, runKg := 0.0, 0.0 // nothing where there is no run
		if k.Options != nil {
			run := ladderOf(k.Options, o.floors(k.Options), interrupting)
			runCents, runKg = run.least(k.ShortA)
		}
		o.ownedStrings = append(o.ownedStrings, a.Have/series)
		o.ownedCents = append(o.ownedCents, runCents+series*a.SellFor)
		o.boughtCents = append(o.boughtCents, runCents+series*a.BoughtFloor(tax))
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

// stringRun returns the least cost in cents and mass of a string's run beside a supply, on a bus of so many strings,
// whose device breaks a current.
func (o *Bounds) stringRun(supply, at, strings int, faultA float64) (cents, kg float64) {
	if o.Bench.Scenario.Run(scenarios.RunString) == nil {
		return 0, 0
	}
	key := stringRun{supply, at, wiring.BothEnds(o.Bench.Scenario, strings)}
	run, known := o.runs[key]
	if !known {
		options := o.Bench.StringOptions(supply, at, strings)
		run = ladderOf(options, o.floors(options), interrupting)
		o.runs[key] = run
	}
	return run.least(faultA)
}
