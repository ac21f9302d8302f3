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
	drawA   float64 // of all inverters at full load and the lowest bus voltage
	busA    float64 // what flows to or from all of them at the most
	on      []circuit
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
	c.drawA = c.units * energy.BusA(c.inv, p.Scenario.Bus)
	c.busA = c.units * wiring.UnitA(p.Scenario, c.inv, 0)
	c.on = circuitsOf(p.Scenario, one)
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
	need(plan.LimitBusbarCurrent, c.barsA, wiring.BusbarA(c.busA+dcA))
	drawn := *c.s
	drawn.Loads = loads
	for _, x := range c.on {
		need("circuit "+x.of.Name, x.of.DeviceA, energy.CircuitPeakA(&drawn, x.of, x.loads))
	}
	return list
}

// circuit is a circuit and the loads that a plan has on it.
type circuit struct {
	of    *scenarios.Circuit
	loads []int
}

// circuitsOf looks up the loads that a plan puts on the circuits.
func circuitsOf(s *scenarios.Scenario, p *plan.Plan) []circuit {
	var list []circuit
	placed := make([]bool, len(s.Loads))
	for _, told := range p.Circuits {
		for c := range s.Circuits {
			if s.Circuits[c].Name != told.Circuit {
				continue
			}
			x := circuit{of: &s.Circuits[c]}
			for _, name := range told.Loads {
				for i := range s.Loads { // two loads of a name take their turns
					if s.Loads[i].Name == name && !placed[i] {
						placed[i] = true
						x.loads = append(x.loads, i)
						break
					}
				}
			}
			list = append(list, x)
		}
	}
	return list
}

// demands is what the loads drawn ask for, by candidate: candidates that put the loads on the same legs
// share a demand.
type demands struct {
	s     *scenarios.Scenario
	loads [][]scenarios.Load // by assignment, with every leg settled
	group []int              // by candidate
	of    []*energy.Demand   // by candidate
	drawn [][]scenarios.Load // by assignment
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
			d.loads = append(d.loads, onLegs(s, c.p.Legs))
		}
		d.group = append(d.group, at)
	}
	return d
}

// onLegs returns the loads with those left to the program put on the legs told.
func onLegs(s *scenarios.Scenario, legs []plan.LegLoad) []scenarios.Load {
	settled := append(s.Loads[:0:0], s.Loads...)
	between := map[string]bool{}
	for i := range s.Circuits {
		between[s.Circuits[i].Name] = s.Circuits[i].Volts == splitV
	}
	for i := range settled {
		l := &settled[i]
		if l.DC || l.Leg != scenarios.LegAuto {
			continue
		}
		l.Leg = scenarios.LegA
		if l.Circuit != "" && between[l.Circuit] {
			l.Leg = scenarios.LegBoth
		}
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
	d.drawn = make([][]scenarios.Load, len(d.loads))
	for at := range d.loads {
		s := *d.s
		s.Circuits = nil // what hangs where is settled, and looked at by itself
		s.Loads = append(d.loads[at][:0:0], d.loads[at]...)
		for i := range s.Loads {
			s.Loads[i].Watts *= by.load[i]
		}
		if s.Measured != nil {
			s.Measured = scaled(s.Measured, by.load[0])
		}
		d.drawn[at] = s.Loads
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

// splitV is the volts between the legs.
const splitV = 240

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
