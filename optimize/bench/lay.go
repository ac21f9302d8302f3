package bench

import (
	"math"

	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/market"
	"cartwright/optimize/question"
	"cartwright/optimize/wiring"
)

// Lay lays a problem out, with a part that every plan has to have or "". Demand and options of runs are taken
// from, and put into, what was laid before.
func Lay(p question.Problem, must string, before *Before) (*Bench, error) {
	b, err := New(p, before)
	if err != nil {
		return nil, err
	}
	b.setMust(must)
	b.LayAll()
	return b, nil
}

// New returns a bench on which nothing is laid out yet.
func New(p question.Problem, before *Before) (*Bench, error) {
	d, err := before.demandOf(p.Scenario)
	if err != nil {
		return nil, err
	}
	b := &Bench{
		Scenario: p.Scenario, Catalog: p.Catalog, Rules: wiring.For(p.Scenario.Rules), Demand: d,
		Market:      market.New(p.Scenario, p.Catalog),
		FixedBodies: chassis.FixedBodies(p.Scenario),
		DcA:         d.PeakBusDCW() / p.Scenario.Bus.LowV,
		before:      before,
	}
	for _, body := range b.FixedBodies {
		b.FixedKg += body.MassKg
	}
	return b, nil
}

// LayAll finds everything that can serve.
func (b *Bench) LayAll() {
	b.Tips = b.whatTips()
	b.laySupplies()
	b.layStacks()
	b.layFixed()
	b.layBusbars()
	b.layCasters()
	b.weighSupport()
}

// laySupplies finds the inverters and unit counts that serve the loads.
func (b *Bench) laySupplies() {
	s, d := b.Scenario, b.Demand
	for i := range b.Catalog.Inverters {
		inv := &b.Catalog.Inverters[i]
		if !energy.InverterFits(s, d, inv) {
			continue
		}
		for u := 1; u <= max(1, inv.MaxUnits) && b.Market.Part(inv.ID).Available(float64(u)); u++ {
			n := float64(u)
			if !b.Partial && (n*inv.ContinuousW < d.PeakTotalW() || n*inv.SurgeW < d.SurgeW() ||
				(inv.ACV == "120/240" && n*inv.LegW < d.PeakLegW())) {
				continue
			}
			v := Supply{Inverter: inv, Units: u, BusA: n * energy.BusA(inv, s.Bus), ChargerA: n * inv.ChargerA}
			v.NeedWh = d.WindowWh(inv.Efficiency, n*inv.IdleW, s.AutonomyH)
			v.DrawA = v.BusA + b.DcA
			if s.Recharge != nil && v.ChargerA <= 0 {
				continue
			}
			var ok bool
			if v.Main, ok = b.RunOptions(wiring.MainDuty(s, inv)); !ok {
				continue
			}
			if v.Feeder, ok = b.RunOptions(wiring.FeederDuty(s, inv, u)); !ok {
				continue
			}
			b.Supplies = append(b.Supplies, v)
		}
	}
	if len(b.Supplies) == 0 {
		b.Reasons = append(b.Reasons, "no inverter of the catalogue, in the number its maker allows, serves the loads' peak, largest start, voltages and recharge with a main and feeder that the rules accept")
	}
}

// RunOptions returns the options of a run, and whether there are any; a run that the scenario does not
// list has none and needs none.
func (b *Bench) RunOptions(d wiring.Duty, listed bool) ([]market.Option, bool) {
	if !listed {
		return nil, true
	}
	run := wiredRun{d, b.Tips.HeavyBoard}
	options, seen := b.before.options[run]
	if !seen {
		var scratch [5]market.Use // a cable and its ends, a ground and its ends, a device
		for _, w := range wiring.Options(b.Rules, d, b.Catalog) {
			o := b.Market.Wire(&d, w, scratch[:])
			if d.AC {
				if o.InterruptingA < b.Scenario.ACFaultA {
					continue
				}
				o.InterruptingA = math.Inf(1) // it breaks all there can be
			}
			if b.Market.CanHave(&o) {
				options = b.Market.Keep(options, &o, b.Tips.HeavyBoard)
			}
		}
		b.before.keep(run, options)
	}
	return options, len(options) > 0
}

// layStacks finds the batteries that fit the bus and groups those that may share it.
func (b *Bench) layStacks() {
	members := map[string][]int{}
	var order []string
	for i := range b.Catalog.Batteries {
		bat := &b.Catalog.Batteries[i]
		series, ok := energy.Fits(b.Scenario.Bus, bat)
		if !ok {
			continue
		}
		n := float64(series)
		k := Stack{
			Battery: bat, Position: i, Series: series,
			UsableWh: n * energy.UsableWh(bat, b.Scenario.Limits.Reserve), Kg: n * bat.MassKg,
			ShortA: wiring.ShortCircuitA(bat), Conductance: energy.ConductanceS(bat, series),
			DischargeA: bat.MaxDischargeA, ChargeA: bat.MaxChargeA,
		}
		modules := 0
		for j := range b.Scenario.Cart.Shelves {
			room := chassis.ShelfCapacity(&b.Scenario.Cart.Shelves[j], bat)
			if limit := b.Scenario.Cart.Shelves[j].MaxMassKg; bat.MassKg > 0 && float64(room)*bat.MassKg > limit {
				room = int(limit/bat.MassKg + 1e-9)
			}
			k.Caps = append(k.Caps, chassis.ShelfCapacity(&b.Scenario.Cart.Shelves[j], bat))
			modules += room
		}
		k.Most = modules / series
		if bat.MaxParallel > 0 {
			k.Most = min(k.Most, bat.MaxParallel)
		}
		for k.Most > 0 && !b.Market.Part(bat.ID).Available(n*float64(k.Most)) {
			k.Most--
		}
		if k.Most < 1 || k.UsableWh <= 0 {
			continue
		}
		if k.Options, ok = b.RunOptions(wiring.StringDuty(b.Scenario, bat)); !ok {
			continue
		}
		group := bat.Group
		if group == "" {
			group = "\x00" + bat.ID // shares a bus only with itself
		}
		if _, seen := members[group]; !seen {
			order = append(order, group)
		}
		members[group] = append(members[group], len(b.Stacks))
		b.Stacks = append(b.Stacks, k)
	}
	for _, g := range order {
		b.Groups = append(b.Groups, members[g])
	}
	if len(b.Stacks) == 0 {
		b.Reasons = append(b.Reasons, "no battery of the catalogue fits the bus voltage and a shelf with a string cable and protection that the rules accept")
	}
}
