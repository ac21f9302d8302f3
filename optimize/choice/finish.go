package choice

import (
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
)

// Finish returns the plan of a choice, with all its figures. The plan still has to pass the audit.
func Finish(b *bench.Bench, c *Choice) plan.Plan {
	v := &b.Supplies[c.Supply]
	p := plan.Plan{Core: plan.Core{
		Inverter: plan.CoreInverter{Part: v.Inverter.ID, Units: v.Units},
		Solar:    []plan.CoreSolar{},
	}}
	if x := v.Array; x != nil {
		p.Core.Solar = append(p.Core.Solar, plan.CoreSolar{Part: x.Module.ID, Series: x.Series, Parallel: x.Parallel, Inputs: x.Inputs})
	}
	usableWh := 0.0
	var strings []energy.Strings
	for i, k := range c.Stacks {
		st := &b.Stacks[k]
		p.Core.Batteries = append(p.Core.Batteries, plan.CoreBattery{Part: st.Battery.ID, Strings: c.Strings[i], Series: st.Series})
		usableWh += float64(st.Series*c.Strings[i]) * energy.UsableWh(st.Battery, b.Scenario.Limits.Reserve)
		strings = append(strings, energy.Strings{Battery: st.Battery, Series: st.Series, Count: c.Strings[i]})
	}
	p.UsableKWh = usableWh / 1000
	p.AutonomyH = b.Demand.AutonomyH(v.Inverter.Efficiency, float64(v.Units)*v.Inverter.IdleW, usableWh)
	p.Circuits, p.Legs = hung(b, v)
	Account(b, c, &p)
	p.CostPerUsableKWh = p.Cost.Units() / p.UsableKWh
	p.CostPerExtraKWh = energy.CostPerExtraKWh(p.Cost.Units(), usableWh, b.OwnedWh)
	cycles := v.YearWh / usableWh
	if v.Sun != nil {
		figures := b.YearOf(c.Supply, strings)
		cycles = figures.Cycles
		p.Year = yearOf(b, &figures, p.Cost)
	}
	if life := lifetimeWh(b, c, cycles); life > 0 {
		p.CostPerLifetimeKWh = p.Cost.Units() / (life / 1000)
	}
	p.Runs = runs(b, c)
	place(b, c, &p)
	p.Limits = limits(b, c, &p)
	return p
}

// lifetimeWh returns the energy in Wh that the batteries give in their whole life at so many cycles a year; 0 where one
// of them states neither cycle life nor calendar years.
func lifetimeWh(b *bench.Bench, c *Choice, cycles float64) float64 {
	life := 0.0
	for i, k := range c.Stacks {
		st := &b.Stacks[k]
		if st.Battery.CycleLife <= 0 && st.Battery.CalendarYears <= 0 {
			return 0
		}
		life += float64(st.Series*c.Strings[i]) * energy.LifetimeWh(st.Battery, b.Scenario.Limits.Reserve, cycles)
	}
	return life
}

// hung returns what is on each circuit, and the legs of the loads of leg auto. With a supply of a single leg there are no
// legs.
func hung(b *bench.Bench, v *bench.Supply) (circuits []plan.Circuit, legs []plan.LegLoad) {
	threeWire := v.Inverter.ACV == bench.ThreeWire
	for _, x := range b.Demand.Circuits {
		told := plan.Circuit{Circuit: x.Circuit, Loads: x.Loads, CurrentA: x.CurrentA, DeviceA: x.DeviceA}
		if threeWire {
			told.Leg = string(x.Leg)
		}
		circuits = append(circuits, told)
	}
	for _, l := range b.Demand.Legs {
		if threeWire {
			legs = append(legs, plan.LegLoad{Load: l.Load, Leg: string(l.Leg)})
		}
	}
	return circuits, legs
}

// bodies returns everything on the cart as masses in their places.
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
	if v.ArrayKg > 0 {
		bodies = append(bodies, chassis.ArrayBody(b.Scenario, v.ArrayKg))
	}
	return append(bodies, chassis.BackboardBody(b.Scenario, board))
}

// place fills in shelves, mass, casters and balance.
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

// RoundMass rounds a mass in kg to a milligram, so that masses that differ only by the rounding of sums compare equal.
func RoundMass(kg float64) float64 { return math.Round(kg*1e6) / 1e6 }
