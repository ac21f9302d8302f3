package choice

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
)

// limits lists every limit that applies to a plan, in the order of package plan's names.
func limits(b *bench.Bench, c *Choice, p *plan.Plan) []plan.Limit {
	s, d := b.Scenario, b.Demand
	v := &b.Supplies[c.Supply]
	units := float64(v.Units)
	var list []plan.Limit
	put := func(name string, value, limit, slack float64, unit string) {
		list = append(list, plan.Limit{Name: name, Value: value, Limit: limit, Unit: unit, Slack: slack, Binding: plan.Binds(slack, limit)})
	}
	atLeast := func(name string, value, limit float64, unit string) { put(name, value, limit, value-limit, unit) }
	atMost := func(name string, value, limit float64, unit string) { put(name, value, limit, limit-value, unit) }

	var strings []energy.Strings
	count := 0
	for i, k := range c.Stacks {
		strings = append(strings, energy.Strings{Battery: b.Stacks[k].Battery, Series: b.Stacks[k].Series, Count: c.Strings[i]})
		count += c.Strings[i]
	}
	atLeast(plan.LimitAutonomy, p.AutonomyH, s.AutonomyH, "h")
	atLeast(plan.LimitPower, units*v.Inverter.ContinuousW, d.PeakTotalVA(), "W")
	if v.Inverter.ACV == bench.ThreeWire {
		atLeast(plan.LimitLeg, units*v.Inverter.LegW, d.PeakLegVA(), "W")
	}
	atLeast(plan.LimitSurge, units*v.Inverter.SurgeW, d.PeakSurgeVA(), "W")
	if v.Inverter.ACV == bench.ThreeWire {
		atLeast(plan.LimitLegSurge, units*v.Inverter.LegSurgeW, d.PeakLegSurgeVA(), "W")
	}
	atLeast(plan.LimitBusCurrent, energy.CarryA(strings), v.DrawA, "A")
	atLeast(plan.LimitPeakCurrent, energy.PeakA(strings), v.PeakA, "A")
	if r := s.Recharge; r != nil {
		need := energy.GridRechargeA(strings, v.NeedWh, s.Bus.NominalV, r.WithinH)
		atLeast(plan.LimitCharger, v.ChargerA, need, "A")
		atLeast(plan.LimitCharge, energy.ChargeA(strings), need, "A")
	}
	if !math.IsInf(s.Limits.MassKg, 1) {
		atMost(plan.LimitMass, p.MassKg, s.Limits.MassKg, "kg")
	}
	if s.Limits.Budget != math.MaxInt64 {
		atMost(plan.LimitBudget, p.Cost.Units(), (s.Limits.Budget + s.Sold).Units(), s.Currency)
	}
	side, length := tilts(b, c)
	atLeast(plan.LimitTiltSideways, side, s.Limits.TiltDeg, "deg")
	atLeast(plan.LimitTiltLength, length, s.Limits.TiltDeg, "deg")
	if s.Limits.PushN > 0 {
		atMost(plan.LimitPush, chassis.PushN(p.MassKg, s.Cart.Rolling, s.Limits.Slope), s.Limits.PushN, "N")
	}
	atMost(plan.LimitCaster, p.Casters.LoadEachKg, p.Casters.RatingEachKg, "kg")

	if s.Limits.Slope > 0 {
		atLeast(plan.LimitHold, 100*chassis.HeldSlope(s.Cart.Grip, brakes(b, p.Casters.Part), s.Cart.Casters), 100*s.Limits.Slope, "%")
	}

	var bars *catalog.Busbar
	poles, spaces := 0, 0
	for i := range c.Fills {
		f := &c.Fills[i]
		switch {
		case f.Kind == SlotBusbar:
			bars = busbarOf(b, f.Option.Part)
		case f.Kind == SlotFixed && f.Option.Wire.Cable != nil && f.Option.Wire.Device != nil:
			poles += f.Count * f.Option.Poles
		case f.Kind == SlotFixed:
			spaces = max(spaces, f.Option.Spaces)
		}
	}
	poles += feederPoles(c)
	atMost(plan.LimitBusbarCurrent, wiring.BusbarA(v.BusA), bars.RatingA, "A")
	atMost(plan.LimitBusbarStuds, float64(wiring.BusbarStuds(count, v.Units, b.DCCircuits)), float64(bars.Studs), "each")
	if spaces > 0 {
		atMost(plan.LimitSpaces, float64(poles), float64(spaces), "each")
	}
	for j := range s.Cart.Shelves {
		sh := &s.Cart.Shelves[j]
		taken := 0.0
		for i, k := range c.Stacks {
			taken += chassis.TakenM(sh, b.Stacks[k].Battery, c.Stand[i][j])
		}
		atMost(plan.LimitShelfRoom+sh.Name, taken/chassis.RoomM(sh), 1, "")
		if most := b.ShelfKg[j]; !math.IsInf(most, 1) {
			atMost(plan.LimitShelfMass+sh.Name, p.Shelves[j].MassKg, most, "kg")
		}
	}
	if s.Limits.Served > 0 && p.Year != nil {
		atLeast(plan.LimitServed, p.Year.Served, s.Limits.Served, "")
	}
	return list
}

// tilts returns the slopes at which a plan's cart tips sideways and lengthways.
func tilts(b *bench.Bench, c *Choice) (side, length float64) {
	bodies, base := bodies(b, c), chassis.BaseOf(&b.Scenario.Cart)
	return chassis.TiltOver(bodies, base.Side), chassis.TiltOver(bodies, base.End)
}

// busbarOf returns a pair of bus bars of the catalogue.
func busbarOf(b *bench.Bench, id string) *catalog.Busbar {
	for i := range b.Catalog.Busbars {
		if b.Catalog.Busbars[i].ID == id {
			return &b.Catalog.Busbars[i]
		}
	}
	return nil
}

// feederPoles returns how many spaces of the load centre the feeders' breakers take: only breakers of its mount do.
func feederPoles(c *Choice) int {
	mount := ""
	for i := range c.Fills {
		if f := &c.Fills[i]; f.Kind == SlotFixed && f.Option.Wire.Cable == nil && f.Option.Mount != "" {
			mount = f.Option.Mount
		}
	}
	poles := 0
	for i := range c.Fills {
		if f := &c.Fills[i]; mount != "" && f.Kind == SlotFeeder && f.Option.Wire.Device != nil && f.Option.Wire.Device.Mount == mount {
			poles += f.Count * f.Option.Poles
		}
	}
	return poles
}

// brakes returns how many wheels of a set of casters are braked.
func brakes(b *bench.Bench, id string) int {
	for i := range b.Catalog.Casters {
		if b.Catalog.Casters[i].ID == id {
			return b.Catalog.Casters[i].Brakes
		}
	}
	return 0
}
