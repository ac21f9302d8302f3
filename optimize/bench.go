package optimize

import (
	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
	"math"
)

// supply is a number of equal inverters that serve the loads, and all that follows from them alone.
type supply struct {
	inv      *catalog.Inverter
	units    int
	needWh   float64 // usable energy the autonomy asks for
	busA     float64 // what all units draw from the bus at its lowest voltage
	drawA    float64 // busA and the dc loads
	chargerA float64 // of all chargers together, at the bus voltage
	main     []option
	feeder   []option
}

// stack is a kind of battery string that fits the bus.
type stack struct {
	bat         *catalog.Battery
	position    int // in the catalogue
	series      int
	usableWh    float64 // of one string
	kg          float64 // of one string, without its cable
	shortA      float64 // of one string
	conductance float64
	dischargeA  float64
	chargeA     float64
	caps        []int // modules the floor of a shelf can hold, by shelf
	most        int   // strings that the shelves, their mass and the maker allow at most
	options     []option
}

// bench is a problem laid out for solving: whatever the catalogue holds that can serve, with its
// options and least costs.
type bench struct {
	s      *scenarios.Scenario
	c      *catalog.Catalog
	rules  wiring.Rules
	demand *energy.Demand
	market *market

	supplies []supply
	stacks   []stack
	groups   [][]int // stacks that may share a bus, in catalogue order

	fixed   []slot // branches, receptacles and needs: the same in every plan
	busbars []option
	casters []option

	fixedBodies []chassis.Body
	fixedKg     float64 // frame and deck items
	spacesTold  bool    // breaker spaces are counted
	dcA         float64 // peak of the loads on the bus itself
	tips        tipping
	support     support
	reasons     []string // what the catalogue has nothing for
	partial     bool     // the loads\' peaks need not be met yet

	before *laidBefore
}

// lay lays a problem out, with a part that every plan has to have or "". Demand and options of runs are taken
// from, and put into, what was laid before.
func lay(p Problem, must string, before *laidBefore) (*bench, error) {
	b, err := newBench(p, before)
	if err != nil {
		return nil, err
	}
	b.setMust(must)
	b.layAll()
	return b, nil
}

// newBench returns a bench on which nothing is laid out yet.
func newBench(p Problem, before *laidBefore) (*bench, error) {
	d, err := before.demandOf(p.Scenario)
	if err != nil {
		return nil, err
	}
	b := &bench{
		s: p.Scenario, c: p.Catalog, rules: wiring.For(p.Scenario.Rules), demand: d,
		market:      newMarket(p.Scenario, p.Catalog),
		fixedBodies: chassis.FixedBodies(p.Scenario),
		dcA:         d.PeakBusDCW() / p.Scenario.Bus.LowV,
		before:      before,
	}
	for _, body := range b.fixedBodies {
		b.fixedKg += body.MassKg
	}
	return b, nil
}

// layAll finds everything that can serve.
func (b *bench) layAll() {
	b.tips = b.whatTips()
	b.laySupplies()
	b.layStacks()
	b.layFixed()
	b.layBusbars()
	b.layCasters()
	b.weighSupport()
}

// laySupplies finds the inverters and unit counts that serve the loads.
func (b *bench) laySupplies() {
	s, d := b.s, b.demand
	for i := range b.c.Inverters {
		inv := &b.c.Inverters[i]
		if !energy.InverterFits(s, d, inv) {
			continue
		}
		for u := 1; u <= max(1, inv.MaxUnits) && b.market.part(inv.ID).available(float64(u)); u++ {
			n := float64(u)
			if !b.partial && (n*inv.ContinuousW < d.PeakTotalW() || n*inv.SurgeW < d.SurgeW() ||
				(inv.ACV == "120/240" && n*inv.LegW < d.PeakLegW())) {
				continue
			}
			v := supply{inv: inv, units: u, busA: n * energy.BusA(inv, s.Bus), chargerA: n * inv.ChargerA}
			v.needWh = d.WindowWh(inv.Efficiency, n*inv.IdleW, s.AutonomyH)
			v.drawA = v.busA + b.dcA
			if s.Recharge != nil && v.chargerA <= 0 {
				continue
			}
			var ok bool
			if v.main, ok = b.runOptions(wiring.MainDuty(s, inv)); !ok {
				continue
			}
			if v.feeder, ok = b.runOptions(wiring.FeederDuty(s, inv, u)); !ok {
				continue
			}
			b.supplies = append(b.supplies, v)
		}
	}
	if len(b.supplies) == 0 {
		b.reasons = append(b.reasons, "no inverter of the catalogue, in the number its maker allows, serves the loads' peak, largest start, voltages and recharge with a main and feeder that the rules accept")
	}
}

// runOptions returns the options of a run, and whether there are any; a run that the scenario does not
// list has none and needs none.
func (b *bench) runOptions(d wiring.Duty, listed bool) ([]option, bool) {
	if !listed {
		return nil, true
	}
	run := wiredRun{d, b.tips.heavyBoard}
	options, seen := b.before.options[run]
	if !seen {
		var scratch [5]use // a cable and its ends, a ground and its ends, a device
		for _, w := range wiring.Options(b.rules, d, b.c) {
			o := b.market.wire(&d, w, scratch[:])
			if d.AC {
				if o.interruptingA < b.s.ACFaultA {
					continue
				}
				o.interruptingA = math.Inf(1) // it breaks all there can be
			}
			if b.market.canHave(&o) {
				options = b.market.keep(options, &o, b.tips.heavyBoard)
			}
		}
		b.before.keep(run, options)
	}
	return options, len(options) > 0
}

// layStacks finds the batteries that fit the bus and groups those that may share it.
func (b *bench) layStacks() {
	members := map[string][]int{}
	var order []string
	for i := range b.c.Batteries {
		bat := &b.c.Batteries[i]
		series, ok := energy.Fits(b.s.Bus, bat)
		if !ok {
			continue
		}
		n := float64(series)
		k := stack{
			bat: bat, position: i, series: series,
			usableWh: n * energy.UsableWh(bat, b.s.Limits.Reserve), kg: n * bat.MassKg,
			shortA: wiring.ShortCircuitA(bat), conductance: energy.ConductanceS(bat, series),
			dischargeA: bat.MaxDischargeA, chargeA: bat.MaxChargeA,
		}
		modules := 0
		for j := range b.s.Cart.Shelves {
			room := chassis.ShelfCapacity(&b.s.Cart.Shelves[j], bat)
			if limit := b.s.Cart.Shelves[j].MaxMassKg; bat.MassKg > 0 && float64(room)*bat.MassKg > limit {
				room = int(limit/bat.MassKg + 1e-9)
			}
			k.caps = append(k.caps, chassis.ShelfCapacity(&b.s.Cart.Shelves[j], bat))
			modules += room
		}
		k.most = modules / series
		if bat.MaxParallel > 0 {
			k.most = min(k.most, bat.MaxParallel)
		}
		for k.most > 0 && !b.market.part(bat.ID).available(n*float64(k.most)) {
			k.most--
		}
		if k.most < 1 || k.usableWh <= 0 {
			continue
		}
		if k.options, ok = b.runOptions(wiring.StringDuty(b.s, bat)); !ok {
			continue
		}
		group := bat.Group
		if group == "" {
			group = "\x00" + bat.ID // shares a bus only with itself
		}
		if _, seen := members[group]; !seen {
			order = append(order, group)
		}
		members[group] = append(members[group], len(b.stacks))
		b.stacks = append(b.stacks, k)
	}
	for _, g := range order {
		b.groups = append(b.groups, members[g])
	}
	if len(b.stacks) == 0 {
		b.reasons = append(b.reasons, "no battery of the catalogue fits the bus voltage and a shelf with a string cable and protection that the rules accept")
	}
}
