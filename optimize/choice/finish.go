package choice

import (
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// Finish works a choice out into a plan with all its figures. The plan still has to pass the audit.
func Finish(b *bench.Bench, c *Choice) plan.Plan {
	v := &b.Supplies[c.Supply]
	p := plan.Plan{Core: plan.Core{
		Inverter: plan.CoreInverter{Part: v.Inverter.ID, Units: v.Units},
		Solar:    []plan.CoreSolar{},
	}}
	var usableWh, lifetimeWh float64
	everCycled := true
	for i, k := range c.Stacks {
		st := &b.Stacks[k]
		p.Core.Batteries = append(p.Core.Batteries, plan.CoreBattery{Part: st.Battery.ID, Strings: c.Strings[i], Series: st.Series})
		modules := float64(st.Series * c.Strings[i])
		usableWh += modules * energy.UsableWh(st.Battery, b.Scenario.Limits.Reserve)
		life := energy.LifetimeWh(st.Battery, b.Scenario.Limits.Reserve)
		everCycled = everCycled && life > 0
		lifetimeWh += modules * life
	}
	p.UsableKWh = usableWh / 1000
	p.AutonomyH = b.Demand.AutonomyH(v.Inverter.Efficiency, float64(v.Units)*v.Inverter.IdleW, usableWh)
	for _, l := range b.Demand.Legs {
		if v.Inverter.ACV == bench.ThreeWire {
			p.Legs = append(p.Legs, plan.LegLoad{Load: l.Load, Leg: string(l.Leg)})
		}
	}
	Account(b, c, &p)
	p.CostPerUsableKWh = p.Cost.Units() / p.UsableKWh
	if everCycled {
		p.CostPerLifetimeKWh = p.Cost.Units() / (lifetimeWh / 1000)
	}
	p.Runs = runs(b, c)
	place(b, c, &p)
	p.Limits = limits(b, c, &p)
	return p
}

// runs returns the wiring schedule: strings, mains, feeder, branches.
func runs(b *bench.Bench, c *Choice) []plan.Run {
	var total float64
	for i, k := range c.Stacks {
		total += float64(c.Strings[i]) * b.Stacks[k].ShortA
	}
	v := &b.Supplies[c.Supply]
	var runs []plan.Run
	add := func(d wiring.Duty, f *Fill, faultA float64, battery string) {
		r := b.Rules.Check(d, f.Option.Wire, faultA)
		w := f.Option.Wire
		run := plan.Run{
			Run: string(d.Kind), Name: d.Name, Battery: battery, Cable: w.Cable.ID, Sets: w.Sets, Count: f.Count,
			LengthM: d.LengthM, Conductors: d.Conductors, DesignA: d.DesignA, RequiredA: r.RequiredA,
			AllowedA: r.AllowedA, DeviceA: r.DeviceA, DropPct: r.DropPct, DropLimitPct: 100 * d.Drop, FaultA: faultA,
		}
		if w.Ground != nil {
			run.Ground = w.Ground.ID
		}
		if w.Device != nil {
			run.Device, run.InterruptingA = w.Device.ID, r.InterruptingA
		}
		runs = append(runs, run)
	}
	branch := map[string]*scenarios.Circuit{}
	for i := range b.Scenario.Circuits {
		branch["branch "+b.Scenario.Circuits[i].Name] = &b.Scenario.Circuits[i]
	}
	for i := range c.Fills {
		f := &c.Fills[i]
		switch f.Kind {
		case SlotString:
			st := &b.Stacks[f.Stack]
			d, _ := wiring.StringDuty(b.Scenario, st.Battery)
			add(d, f, wiring.StringFaultA(st.ShortA, total), st.Battery.ID)
		case SlotMain:
			d, _ := wiring.MainDuty(b.Scenario, v.Inverter)
			add(d, f, total, "")
		case SlotFeeder:
			d, _ := wiring.FeederDuty(b.Scenario, v.Inverter, v.Units)
			add(d, f, b.Scenario.ACFaultA, "")
		case SlotFixed:
			if circuit := branch[f.Slot]; circuit != nil {
				d, _ := wiring.BranchDuty(b.Scenario, circuit)
				add(d, f, b.Scenario.ACFaultA, "")
			}
		}
	}
	return runs
}

// bodies returns everything on the cart, by where it is.
func bodies(b *bench.Bench, c *Choice) []chassis.Body {
	bodies := append([]chassis.Body(nil), b.FixedBodies...)
	for j := range b.Scenario.Cart.Shelves {
		for i, k := range c.Stacks {
			body := chassis.ModuleBody(&b.Scenario.Cart.Shelves[j], b.Stacks[k].Battery)
			body.MassKg *= float64(c.Stand[i][j])
			bodies = append(bodies, body)
		}
	}
	v := &b.Supplies[c.Supply]
	board := float64(v.Units) * v.Inverter.MassKg
	for i := range c.Fills {
		f := &c.Fills[i]
		if f.Kind == SlotCasters {
			bodies = append(bodies, chassis.CasterBody(b.Scenario, f.Option.Kg))
			continue
		}
		board += float64(f.Count) * f.Option.Kg
	}
	return append(bodies, chassis.BackboardBody(b.Scenario, board))
}

// place fills in what stands where: shelves, mass, casters and balance.
func place(b *bench.Bench, c *Choice, p *plan.Plan) {
	for j := range b.Scenario.Cart.Shelves {
		out := plan.Shelf{Shelf: b.Scenario.Cart.Shelves[j].Name, Batteries: []plan.ShelfModules{}}
		for i, k := range c.Stacks {
			if n := c.Stand[i][j]; n > 0 {
				bat := b.Stacks[k].Battery
				out.Batteries = append(out.Batteries, plan.ShelfModules{Part: bat.ID, Modules: n})
				out.MassKg += float64(n) * bat.MassKg
			}
		}
		p.Shelves = append(p.Shelves, out)
	}
	bodies := bodies(b, c)
	p.MassKg = chassis.MassKg(bodies)
	p.Casters.Count = b.Scenario.Cart.Casters
	p.Casters.LoadEachKg = chassis.CasterLoadKg(p.MassKg, b.Scenario.CasterFactor, b.Scenario.Cart.Casters)
	for i := range c.Fills {
		if f := &c.Fills[i]; f.Kind == SlotCasters {
			p.Casters.Part, p.Casters.RatingEachKg = f.Option.Part, f.Option.CarriesKg
		}
	}
	height, tilt := chassis.Tilt(bodies, chassis.BaseOf(&b.Scenario.Cart))
	p.Balance = plan.Balance{CGHeightMM: height * 1000, TiltDeg: tilt, RequiredDeg: b.Scenario.Limits.TiltDeg}
}

// RoundMass takes the rounding of sums out of masses that are compared: a milligram.
func RoundMass(kg float64) float64 { return math.Round(kg*1e6) / 1e6 }
