package audit

import (
	"math"

	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

const (
	ruleLegs       = "legs"
	ruleBalanced   = "legs balanced"
	rulePower      = "power"
	ruleLeg        = "leg power"
	ruleSurge      = "surge"
	ruleBusCurrent = "bus current"
	ruleAutonomy   = "autonomy"
	ruleUsable     = "usable energy figure"
	ruleHours      = "autonomy figure"
	ruleCharger    = "recharge, charger"
	ruleCharge     = "recharge, batteries"
)

var supplyRules = []Rule{
	{ruleLegs, "", "the loads can be read, and each load left to the program is put on leg A or B, once", fromParts},
	{ruleBalanced, "W", "the larger leg's peak is the least there is", fromParts},
	{rulePower, "W", "units * continuous >= the most that can be on together, duty not counted", fromMaker},
	{ruleLeg, "W", "units * leg >= the larger leg's peak", fromMaker},
	{ruleSurge, "W", "units * surge >= peak and the largest single start", "the maker's limit; not two starts in one moment: " + practice},
	{ruleBusCurrent, "A", "no string's share of the bus current, by conductance, is above its max_discharge_a",
		"current division in parallel branches"},
	{ruleAutonomy, "kWh", "usable energy >= E, the most the bus gives in any stretch of the autonomy's length", fromScenario},
	{ruleUsable, "kWh", "the stated usable energy is true", fromParts},
	{ruleHours, "h", "the stated autonomy is true", fromParts},
	{ruleCharger, "A", "units * charger_a >= E / (bus nominal * within * sqrt(round trip))", "E = V·I·t; half of the round-trip loss falls on the way in: " + practice},
	{ruleCharge, "A", "the strings' max_charge_a together >= the same", "E = V·I·t; " + fromMaker},
}

// assignLegs works out the demand with the loads on the legs the plan puts them on, and tells whether it
// puts each on one.
func (a *auditor) assignLegs() {
	loads := append(a.s.Loads[:0:0], a.s.Loads...)
	used := make([]bool, len(a.p.Legs))
	var faults []string
	for i := range loads {
		l := &loads[i]
		if l.DC || l.Leg != scenarios.LegAuto {
			continue
		}
		put := false
		for k, leg := range a.p.Legs {
			if !used[k] && !put && leg.Load == l.Name && isLeg(leg.Leg) {
				used[k], put = true, true
				l.Leg = scenarios.Leg(leg.Leg)
			}
		}
		if !put && a.threeWire() {
			faults = append(faults, "load "+l.Name+" is on no leg")
		}
	}
	for k, leg := range a.p.Legs {
		if !used[k] {
			faults = append(faults, "no load "+leg.Load+" to put on leg "+leg.Leg)
		}
	}
	s := *a.s
	s.Loads = loads
	d, err := energy.DemandOf(&s)
	if err != nil {
		faults = append(faults, err.Error())
	}
	a.demand = d
	a.none(ruleLegs, faults)
}

// isLeg reports whether a leg is one of the two.
func isLeg(leg string) bool { return leg == string(scenarios.LegA) || leg == string(scenarios.LegB) }

// threeWire reports whether the supply has two legs.
func (a *auditor) threeWire() bool { return a.inverter != nil && a.inverter.ACV == energy.ACVThree }

// supply tells whether the core can run the loads, long enough, and be charged again.
func (a *auditor) supply() {
	if a.inverter == nil || a.demand == nil {
		return
	}
	inv, d := a.inverter, a.demand
	a.limited(rulePower, plan.LimitPower, a.units*inv.ContinuousW, most(d.PeakW), true, inv.ID)
	if a.threeWire() {
		larger := math.Max(most(d.PeakAW), most(d.PeakBW))
		a.limited(ruleLeg, plan.LimitLeg, a.units*inv.LegW, larger, true, inv.ID)
		if best, err := energy.DemandOf(a.s); err == nil && best.LegsProven {
			a.atMost(ruleBalanced, larger, best.PeakLegW(), "")
		}
	}
	surge := 0.0
	for t := range d.PeakW {
		surge = math.Max(surge, d.PeakW[t]+d.StartW[t])
	}
	a.limited(ruleSurge, plan.LimitSurge, a.units*inv.SurgeW, surge, true, inv.ID)
	a.shareBusCurrent()
	a.atLeast(ruleAutonomy, a.usableWh()/1000, a.neededWh()/1000, "")
	a.note(plan.LimitAutonomy, "h", a.hours(), a.s.AutonomyH, true)
	a.recharge()
}

// figuresOfSupply tells whether the stated energy and hours are true.
func (a *auditor) figuresOfSupply() {
	a.truly(ruleUsable, a.p.UsableKWh, a.usableWh()/1000, "")
	if a.inverter != nil && a.demand != nil {
		a.truly(ruleHours, a.p.AutonomyH, a.hours(), "")
	}
}

// usableWh returns the energy all modules give to the bus.
func (a *auditor) usableWh() float64 {
	sum := 0.0
	for _, b := range a.strings {
		sum += b.modules() * energy.UsableWh(b.Battery, a.s.Limits.Reserve)
	}
	return sum
}

// neededWh returns the most energy the bus gives in any stretch of the autonomy's length.
func (a *auditor) neededWh() float64 {
	return a.demand.WindowWh(a.inverter.Efficiency, a.units*a.inverter.IdleW, a.s.AutonomyH)
}

// hours returns how long the loads run at the least, whenever charging ends.
func (a *auditor) hours() float64 {
	return a.demand.AutonomyH(a.inverter.Efficiency, a.units*a.inverter.IdleW, a.usableWh())
}

// inverterA returns what one inverter unit draws from the bus at its lowest voltage.
func (a *auditor) inverterA() float64 {
	return a.inverter.ContinuousW / (a.inverter.Efficiency * a.s.Bus.LowV)
}

// busA returns what all inverter units and the loads on the bus itself draw at its lowest voltage.
func (a *auditor) busA() float64 {
	return a.units*a.inverterA() + most(a.demand.PeakDCW)/a.s.Bus.LowV
}

// shareBusCurrent tells whether each string can give its share of the bus current. The value is what all
// strings together can give before the first of them is at its limit.
func (a *auditor) shareBusCurrent() {
	total, carry, first := 0.0, math.Inf(1), ""
	for _, b := range a.strings {
		total += b.count / (b.series * b.ResistanceOhm)
	}
	for _, b := range a.strings {
		if can := b.MaxDischargeA * total * b.series * b.ResistanceOhm; b.count > 0 && !(can >= carry) {
			carry, first = can, b.ID
		}
	}
	if first == "" {
		carry = 0
	}
	a.limited(ruleBusCurrent, plan.LimitBusCurrent, carry, a.busA(), true, first)
}

// recharge tells whether the energy of the autonomy can be put back in time, where that is asked. Of
// batteries of several kinds the lossiest sets what has to go in.
func (a *auditor) recharge() {
	r := a.s.Recharge
	if r == nil {
		return
	}
	trip, takes, lossiest := math.Inf(1), 0.0, ""
	for _, b := range a.strings {
		takes += b.count * b.MaxChargeA
		if b.RoundTrip < trip {
			trip, lossiest = b.RoundTrip, b.ID
		}
	}
	needA := a.neededWh() / (a.s.Bus.NominalV * r.WithinH * math.Sqrt(trip))
	a.limited(ruleCharger, plan.LimitCharger, a.units*a.inverter.ChargerA, needA, true, lossiest)
	a.limited(ruleCharge, plan.LimitCharge, takes, needA, true, lossiest)
}

// most returns the largest of some watts, at least 0.
func most(watts []float64) float64 {
	largest := 0.0
	for _, w := range watts {
		largest = math.Max(largest, w)
	}
	return largest
}
