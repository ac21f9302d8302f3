package doubt

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// candidate is a plan with what is needed to price it and try its limits again and again.
type candidate struct {
	p       *plan.Plan
	s       *scenarios.Scenario
	inv     *catalog.Inverter
	units   float64
	strings []energy.Strings
	usable  float64 // Wh
	busA    float64 // of all inverters at the lowest bus voltage
	barsA   float64 // rating of the bus bars
	lines   []lineInDoubt
}

// lineInDoubt is what a line of the bill comes to as ranked, and whose price it hangs on.
type lineInDoubt struct {
	cents plan.Money
	part  int // in the dice
}

// newCandidate looks up the parts of a plan.
func newCandidate(p question.Problem, d *dice, one *plan.Plan) (*candidate, error) {
	c := &candidate{p: one, s: p.Scenario, units: float64(one.Core.Inverter.Units)}
	for i := range p.Catalog.Inverters {
		if p.Catalog.Inverters[i].ID == one.Core.Inverter.Part {
			c.inv = &p.Catalog.Inverters[i]
		}
	}
	if c.inv == nil {
		return nil, fmt.Errorf("internal error: a plan has an inverter %q that is not in the catalogue", one.Core.Inverter.Part)
	}
	c.busA = c.units * energy.BusA(c.inv, p.Scenario.Bus)
	for _, b := range one.Core.Batteries {
		for i := range p.Catalog.Batteries {
			if bat := &p.Catalog.Batteries[i]; bat.ID == b.Part {
				c.strings = append(c.strings, energy.Strings{Battery: bat, Series: b.Series, Count: b.Strings})
				c.usable += float64(b.Strings*b.Series) * energy.UsableWh(bat, p.Scenario.Limits.Reserve)
			}
		}
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
func (c *candidate) broken(d *energy.Demand, cost plan.Money) []string {
	var list []string
	need := func(name string, has, atLeast float64) {
		if !plan.AtLeast(has, atLeast) {
			list = append(list, name)
		}
	}
	dcA := d.PeakBusDCW() / c.s.Bus.LowV
	needWh := d.WindowWh(c.inv.Efficiency, c.units*c.inv.IdleW, c.s.AutonomyH)
	need(plan.LimitAutonomy, c.usable, needWh)
	need(plan.LimitPower, c.units*c.inv.ContinuousW, d.PeakTotalW())
	if c.inv.ACV == bench.ThreeWire {
		need(plan.LimitLeg, c.units*c.inv.LegW, d.PeakLegW())
	}
	need(plan.LimitSurge, c.units*c.inv.SurgeW, d.SurgeW())
	need(plan.LimitBusCurrent, energy.CarryA(c.strings), c.busA+dcA)
	if r := c.s.Recharge; r != nil {
		current := energy.GridRechargeA(c.strings, needWh, c.s.Bus.NominalV, r.WithinH)
		need(plan.LimitCharger, c.units*c.inv.ChargerA, current)
		need(plan.LimitCharge, energy.ChargeA(c.strings), current)
	}
	if c.s.Limits.Budget != math.MaxInt64 && catalog.Cents(cost) > c.s.Limits.Budget+c.s.Sold {
		list = append(list, plan.LimitBudget)
	}
	need(plan.LimitBusbarCurrent, c.barsA, wiring.BusbarA(c.busA, dcA))
	return list
}

// demands is what the loads drawn ask for, by candidate: candidates that put the loads on the same legs
// share a demand.
type demands struct {
	s     *scenarios.Scenario
	loads [][]scenarios.Load // by assignment, with every leg settled
	group []int              // by candidate
	of    []*energy.Demand   // by candidate
}

// newDemands settles the legs of each candidate. A supply without legs has no use for them: there all loads
// are put on leg A, which nothing asks about.
func newDemands(s *scenarios.Scenario, list []*candidate) *demands {
	d := &demands{s: s, of: make([]*energy.Demand, len(list))}
	seen := map[string]int{}
	for _, c := range list {
		key := fmt.Sprint(c.p.Legs)
		at, known := seen[key]
		if !known {
			at = len(d.loads)
			seen[key] = at
			d.loads = append(d.loads, onLegs(s.Loads, c.p.Legs))
		}
		d.group = append(d.group, at)
	}
	return d
}

// onLegs returns the loads with those left to the program put on the legs told.
func onLegs(loads []scenarios.Load, legs []plan.LegLoad) []scenarios.Load {
	settled := append(loads[:0:0], loads...)
	for i := range settled {
		l := &settled[i]
		if l.DC || l.Leg != scenarios.LegAuto {
			continue
		}
		l.Leg = scenarios.LegA
		for _, put := range legs {
			if put.Load == l.Name {
				l.Leg = scenarios.Leg(put.Leg)
			}
		}
	}
	return settled
}

// draw works out the demand of the loads drawn.
func (d *demands) draw(by *dice) error {
	drawn := make([]*energy.Demand, len(d.loads))
	for at := range d.loads {
		s := *d.s
		s.Loads = append(d.loads[at][:0:0], d.loads[at]...)
		for i := range s.Loads {
			s.Loads[i].Watts *= by.load[i]
		}
		if s.Measured != nil {
			s.Measured = scaled(s.Measured, by.load[0])
		}
		var err error
		if drawn[at], err = energy.DemandOf(&s); err != nil {
			return err
		}
	}
	for i, at := range d.group {
		d.of[i] = drawn[at]
	}
	return nil
}

// scaled returns measured loads times a factor.
func scaled(m *scenarios.Measured, factor float64) *scenarios.Measured {
	out := *m
	times := func(watts []float64) []float64 {
		list := make([]float64, len(watts))
		for i, w := range watts {
			list[i] = factor * w
		}
		return list
	}
	out.LegA, out.LegB = times(m.LegA), times(m.LegB)
	return &out
}
