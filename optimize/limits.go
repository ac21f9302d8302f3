package optimize

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
)

// limits lists what a plan has of every limit, in the order of package plan's names.
func (b *bench) limits(c *choice, p *plan.Plan) []plan.Limit {
	s, d := b.s, b.demand
	v := &b.supplies[c.supply]
	units := float64(v.units)
	var list []plan.Limit
	put := func(name string, value, limit, slack float64, unit string) {
		list = append(list, plan.Limit{Name: name, Value: value, Limit: limit, Unit: unit, Slack: slack, Binding: plan.Binds(slack, limit)})
	}
	atLeast := func(name string, value, limit float64, unit string) { put(name, value, limit, value-limit, unit) }
	atMost := func(name string, value, limit float64, unit string) { put(name, value, limit, limit-value, unit) }

	var strings []energy.Strings
	count := 0
	for i, k := range c.stacks {
		strings = append(strings, energy.Strings{Battery: b.stacks[k].bat, Series: b.stacks[k].series, Count: c.strings[i]})
		count += c.strings[i]
	}
	atLeast(plan.LimitAutonomy, p.AutonomyH, s.AutonomyH, "h")
	atLeast(plan.LimitPower, units*v.inv.ContinuousW, d.PeakTotalW(), "W")
	if v.inv.ACV == acThreeWire {
		atLeast(plan.LimitLeg, units*v.inv.LegW, d.PeakLegW(), "W")
	}
	atLeast(plan.LimitSurge, units*v.inv.SurgeW, d.SurgeW(), "W")
	atLeast(plan.LimitBusCurrent, energy.CarryA(strings), v.drawA, "A")
	if r := s.Recharge; r != nil {
		need := energy.GridRechargeA(strings, v.needWh, s.Bus.NominalV, r.WithinH)
		atLeast(plan.LimitCharger, v.chargerA, need, "A")
		atLeast(plan.LimitCharge, energy.ChargeA(strings), need, "A")
	}
	if !math.IsInf(s.Limits.MassKg, 1) {
		atMost(plan.LimitMass, p.MassKg, s.Limits.MassKg, "kg")
	}
	if s.Limits.Budget != math.MaxInt64 {
		atMost(plan.LimitBudget, p.Cost.Units(), (s.Limits.Budget + s.Sold).Units(), s.Currency)
	}
	side, length := b.tilts(c)
	atLeast(plan.LimitTiltSideways, side, s.Limits.TiltDeg, "deg")
	atLeast(plan.LimitTiltLength, length, s.Limits.TiltDeg, "deg")
	if s.Limits.PushN > 0 {
		atMost(plan.LimitPush, chassis.PushN(p.MassKg, s.Limits.Slope), s.Limits.PushN, "N")
	}
	atMost(plan.LimitCaster, p.Casters.LoadEachKg, p.Casters.RatingEachKg, "kg")

	var bars *catalog.Busbar
	poles, spaces := 0, 0
	for i := range c.fills {
		f := &c.fills[i]
		if f.kind == slotBusbar {
			bars = b.bars(f.option.part)
		}
		if f.kind == slotFixed {
			poles += f.count * f.option.poles
			spaces += f.count * f.option.spaces
		}
	}
	atMost(plan.LimitBusbarCurrent, wiring.BusbarA(v.busA, b.dcA), bars.RatingA, "A")
	atMost(plan.LimitBusbarStuds, float64(wiring.BusbarStuds(count, v.units, 0)), float64(bars.Studs), "each")
	if b.spacesTold && spaces < uncountedSpaces {
		atMost(plan.LimitSpaces, float64(poles), float64(spaces), "each")
	}
	for j := range s.Cart.Shelves {
		room := 0.0
		for i, k := range c.stacks {
			if c.stand[i][j] > 0 {
				room += float64(c.stand[i][j]) / float64(b.stacks[k].caps[j])
			}
		}
		atMost(plan.LimitShelfRoom+s.Cart.Shelves[j].Name, room, 1, "")
		if most := s.Cart.Shelves[j].MaxMassKg; !math.IsInf(most, 1) {
			atMost(plan.LimitShelfMass+s.Cart.Shelves[j].Name, p.Shelves[j].MassKg, most, "kg")
		}
	}
	return list
}

// tilts returns the slopes at which a plan's cart tips sideways and lengthways.
func (b *bench) tilts(c *choice) (side, length float64) {
	bodies, base := b.bodies(c), chassis.BaseOf(&b.s.Cart)
	return chassis.TiltOver(bodies, base.Side), chassis.TiltOver(bodies, base.End)
}

// bars returns a pair of bus bars of the catalogue.
func (b *bench) bars(id string) *catalog.Busbar {
	for i := range b.c.Busbars {
		if b.c.Busbars[i].ID == id {
			return &b.c.Busbars[i]
		}
	}
	return nil
}
