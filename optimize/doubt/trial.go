package doubt

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/energy/array"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// candidate is a plan with what is needed to price it and check its limits many times.
type candidate struct {
	p       *plan.Plan
	s       *scenarios.Scenario
	inv     *catalog.Inverter
	units   float64
	strings []energy.Strings
	usable  float64 // Wh
	drawA   float64 // of all inverters at full load and the lowest bus voltage
	busA    float64 // the most that flows to or from all of them
	on      []circuit
	barsA   float64 // rating of the bus bars
	farm    *farm   // nil: no share is to be served
	lines   []lineInDoubt
}

// lineInDoubt is the cost of a line of the bill as ranked, and the part on whose price it depends.
type lineInDoubt struct {
	cents plan.Money
	part  int // in the dice
}

// newCandidate looks up the parts of a plan.
func newCandidate(p question.Problem, d *dice, light *sunlight, one *plan.Plan) (*candidate, error) {
	c := &candidate{p: one, s: p.Scenario, units: float64(one.Core.Inverter.Units)}
	for i := range p.Catalog.Inverters {
		if p.Catalog.Inverters[i].ID == one.Core.Inverter.Part {
			c.inv = &p.Catalog.Inverters[i]
		}
	}
	if c.inv == nil {
		return nil, fmt.Errorf("internal error: a plan has an inverter %q that is not in the catalogue", one.Core.Inverter.Part)
	}
	c.drawA = c.units * energy.BusA(c.inv, p.Scenario.Bus)
	c.on = circuitsOf(p.Scenario, one)
	for _, b := range one.Core.Batteries {
		for i := range p.Catalog.Batteries {
			if bat := &p.Catalog.Batteries[i]; bat.ID == b.Part {
				c.strings = append(c.strings, energy.Strings{Battery: bat, Series: b.Series, Count: b.Strings})
				c.usable += float64(b.Strings*b.Series) * energy.UsableWh(bat, p.Scenario.Limits.Reserve)
			}
		}
	}
	c.busA = c.units * wiring.UnitA(p.Scenario, c.inv, arrayW(p.Catalog, c))
	if light != nil {
		c.farm = farmOf(light, p.Catalog, c)
	}
	for _, l := range one.Limits {
		if l.Name == plan.LimitBusbarCurrent {
			c.barsA = l.Limit
		}
	}
	for _, l := range one.Bill {
		if l.Buy > 0 {
			c.lines = append(c.lines, lineInDoubt{l.Line, d.partAt[l.Part]})
		}
	}
	return c, nil
}

// arrayW returns the watts of modules on the inverter unit that has the most of them, at most what it takes.
func arrayW(c *catalog.Catalog, one *candidate) float64 {
	watts := 0.0
	for _, x := range one.p.Core.Solar {
		for i := range c.Solar {
			if c.Solar[i].ID == x.Part {
				a := array.Array{Module: &c.Solar[i], Series: x.Series, Parallel: x.Parallel, Inputs: x.Inputs}
				watts = a.UnitW(one.inv, int(one.units))
			}
		}
	}
	return watts
}

// costs returns what the plan costs at the prices drawn, added up like its bill.
func (c *candidate) costs(d *dice) plan.Money {
	spend := plan.Money(0)
	for _, l := range c.lines {
		spend += catalog.RoundCents(float64(l.cents) * d.price[l.part])
	}
	tax := catalog.RoundCents(c.s.Tax * float64(spend+c.p.Shipping))
	return spend + c.p.Shipping + tax - c.p.Credit
}

// broken returns the limits that the plan does not meet, in the order of package plan.
func (c *candidate) broken(d *energy.Demand, loads []scenarios.Load, cost plan.Money) []string {
	var list []string
	need := func(name string, has, atLeast float64) {
		if !plan.AtLeast(has, atLeast) {
			list = append(list, name)
		}
	}
	dcA := d.PeakBusDCW() / c.s.Bus.LowV
	needWh := d.WindowWh(c.inv.Efficiency, c.units*c.inv.IdleW, c.s.AutonomyH)
	need(plan.LimitAutonomy, c.usable, needWh)
	need(plan.LimitPower, c.units*c.inv.ContinuousW, d.PeakTotalVA())
	if c.inv.ACV == bench.ThreeWire {
		need(plan.LimitLeg, c.units*c.inv.LegW, d.PeakLegVA())
	}
	need(plan.LimitSurge, c.units*c.inv.SurgeW, d.PeakSurgeVA())
	if c.inv.ACV == bench.ThreeWire {
		need(plan.LimitLegSurge, c.units*c.inv.LegSurgeW, d.PeakLegSurgeVA())
	}
	need(plan.LimitBusCurrent, energy.CarryA(c.strings), c.drawA+dcA)
	need(plan.LimitPeakCurrent, energy.PeakA(c.strings), energy.SurgeA(c.inv, c.s.Bus, d.PeakSurgeVA())+dcA)
	if r := c.s.Recharge; r != nil {
		current := energy.GridRechargeA(c.strings, needWh, c.s.Bus.NominalV, r.WithinH)
		need(plan.LimitCharger, energy.ChargersA(c.s, c.inv, int(c.units)), current)
		need(plan.LimitCharge, energy.ChargeA(c.strings), current)
	}
	if c.s.Limits.Budget != math.MaxInt64 && catalog.Cents(cost) > c.s.Limits.Budget+c.s.Sold {
		list = append(list, plan.LimitBudget)
	}
	if c.farm.breaks() {
		list = append(list, plan.LimitServed)
	}
	need(plan.LimitBusbarCurrent, c.barsA, wiring.BusbarA(c.busA+dcA))
	drawn := *c.s
	drawn.Loads = loads
	for _, x := range c.on {
		need("circuit "+x.of.Name, x.of.DeviceA, energy.CircuitPeakA(&drawn, x.of, x.loads))
	}
	return list
}
