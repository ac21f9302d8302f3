package optimize

import (
	"math"

	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// finish works a choice out into a plan with all its figures. The plan still has to pass the audit.
func (b *bench) finish(c *choice) plan.Plan {
	v := &b.supplies[c.supply]
	p := plan.Plan{Core: plan.Core{
		Inverter: plan.CoreInverter{Part: v.inv.ID, Units: v.units},
		Solar:    []plan.CoreSolar{},
	}}
	var usableWh, lifetimeWh float64
	everCycled := true
	for i, k := range c.stacks {
		st := &b.stacks[k]
		p.Core.Batteries = append(p.Core.Batteries, plan.CoreBattery{Part: st.bat.ID, Strings: c.strings[i], Series: st.series})
		modules := float64(st.series * c.strings[i])
		usableWh += modules * energy.UsableWh(st.bat, b.s.Limits.Reserve)
		life := energy.LifetimeWh(st.bat, b.s.Limits.Reserve)
		everCycled = everCycled && life > 0
		lifetimeWh += modules * life
	}
	p.UsableKWh = usableWh / 1000
	p.AutonomyH = b.demand.AutonomyH(v.inv.Efficiency, float64(v.units)*v.inv.IdleW, usableWh)
	for _, l := range b.demand.Legs {
		if v.inv.ACV == acThreeWire {
			p.Legs = append(p.Legs, plan.LegLoad{Load: l.Load, Leg: string(l.Leg)})
		}
	}
	b.account(c, &p)
	p.CostPerUsableKWh = p.Cost.Units() / p.UsableKWh
	if everCycled {
		p.CostPerLifetimeKWh = p.Cost.Units() / (lifetimeWh / 1000)
	}
	p.Runs = b.runs(c)
	b.place(c, &p)
	p.Limits = b.limits(c, &p)
	return p
}

// acThreeWire is the ac_v of an inverter with two legs.
const acThreeWire = "120/240"

// runs returns the wiring schedule: strings, mains, feeder, branches.
func (b *bench) runs(c *choice) []plan.Run {
	var total float64
	for i, k := range c.stacks {
		total += float64(c.strings[i]) * b.stacks[k].shortA
	}
	v := &b.supplies[c.supply]
	var runs []plan.Run
	add := func(d wiring.Duty, f *fill, faultA float64, battery string) {
		r := b.rules.Check(d, f.option.wire, faultA)
		w := f.option.wire
		run := plan.Run{
			Run: string(d.Kind), Name: d.Name, Battery: battery, Cable: w.Cable.ID, Sets: w.Sets, Count: f.count,
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
	for i := range b.s.Circuits {
		branch["branch "+b.s.Circuits[i].Name] = &b.s.Circuits[i]
	}
	for i := range c.fills {
		f := &c.fills[i]
		switch f.kind {
		case slotString:
			st := &b.stacks[f.stack]
			d, _ := wiring.StringDuty(b.s, st.bat)
			add(d, f, wiring.StringFaultA(st.shortA, total), st.bat.ID)
		case slotMain:
			d, _ := wiring.MainDuty(b.s, v.inv)
			add(d, f, total, "")
		case slotFeeder:
			d, _ := wiring.FeederDuty(b.s, v.inv, v.units)
			add(d, f, b.s.ACFaultA, "")
		case slotFixed:
			if circuit := branch[f.slot]; circuit != nil {
				d, _ := wiring.BranchDuty(b.s, circuit)
				add(d, f, b.s.ACFaultA, "")
			}
		}
	}
	return runs
}

// bodies returns everything on the cart, by where it is.
func (b *bench) bodies(c *choice) []chassis.Body {
	bodies := append([]chassis.Body(nil), b.fixedBodies...)
	for j := range b.s.Cart.Shelves {
		for i, k := range c.stacks {
			body := chassis.ModuleBody(&b.s.Cart.Shelves[j], b.stacks[k].bat)
			body.MassKg *= float64(c.stand[i][j])
			bodies = append(bodies, body)
		}
	}
	v := &b.supplies[c.supply]
	board := float64(v.units) * v.inv.MassKg
	for i := range c.fills {
		f := &c.fills[i]
		if f.kind == slotCasters {
			bodies = append(bodies, chassis.CasterBody(b.s, f.option.kg))
			continue
		}
		board += float64(f.count) * f.option.kg
	}
	return append(bodies, chassis.BackboardBody(b.s, board))
}

// place fills in what stands where: shelves, mass, casters and balance.
func (b *bench) place(c *choice, p *plan.Plan) {
	for j := range b.s.Cart.Shelves {
		out := plan.Shelf{Shelf: b.s.Cart.Shelves[j].Name, Batteries: []plan.ShelfModules{}}
		for i, k := range c.stacks {
			if n := c.stand[i][j]; n > 0 {
				bat := b.stacks[k].bat
				out.Batteries = append(out.Batteries, plan.ShelfModules{Part: bat.ID, Modules: n})
				out.MassKg += float64(n) * bat.MassKg
			}
		}
		p.Shelves = append(p.Shelves, out)
	}
	bodies := b.bodies(c)
	p.MassKg = chassis.MassKg(bodies)
	p.Casters.Count = b.s.Cart.Casters
	p.Casters.LoadEachKg = chassis.CasterLoadKg(p.MassKg, b.s.CasterFactor, b.s.Cart.Casters)
	for i := range c.fills {
		if f := &c.fills[i]; f.kind == slotCasters {
			p.Casters.Part, p.Casters.RatingEachKg = f.option.part, f.option.carriesKg
		}
	}
	height, tilt := chassis.Tilt(bodies, chassis.BaseOf(&b.s.Cart))
	p.Balance = plan.Balance{CGHeightMM: height * 1000, TiltDeg: tilt, RequiredDeg: b.s.Limits.TiltDeg}
}

// roundMass takes the rounding of sums out of masses that are compared: a milligram.
func roundMass(kg float64) float64 { return math.Round(kg*1e6) / 1e6 }
