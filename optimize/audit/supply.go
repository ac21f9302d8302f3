package audit

import (
	"math"
	"slices"

	"cartwright/optimize/plan"
)

const (
	rulePower      = "power"
	ruleLeg        = "leg power"
	ruleSurge      = "surge"
	ruleLegSurge   = "leg surge"
	ruleBusCurrent = "bus current"
	rulePeak       = "bus current, peak"
	ruleProtocols  = "protocols"
	ruleAutonomy   = "autonomy"
	ruleUsable     = "usable energy figure"
	ruleHours      = "autonomy figure"
)

var supplyRules = []Rule{
	{rulePower, "W", "units * continuous >= the volt-amperes that can be on together, duty not counted; of a one-at-a-time list only the largest", fromMaker},
	{ruleLeg, "W", "units * leg >= the larger leg's peak", fromMaker},
	{ruleSurge, "W", "units * surge >= that peak with one load's start on top, which stands for its list", "the maker's limit; not two starts in one moment: " + practice},
	{ruleLegSurge, "W", "units * leg surge >= the same on each leg", "the maker's limit; not two starts in one moment: " + practice},
	{ruleBusCurrent, "A", "no string's share of the bus current, by conductance, is above its max_discharge_a",
		"current division in parallel branches"},
	{rulePeak, "A", "no string's share of the surge's current, by conductance, is above its peak_discharge_a",
		"current division in parallel branches"},
	{ruleProtocols, "", "every battery has a protocol in common with the inverter, where that is asked", fromScenario},
	{ruleAutonomy, "kWh", "usable energy >= E, the most the bus gives in any stretch of the autonomy's length", fromScenario},
	{ruleUsable, "kWh", "the stated usable energy is true", fromParts},
	{ruleHours, "h", "the stated autonomy is true", fromParts},
}

// supply checks whether the core can run the loads, and long enough.
func (a *auditor) supply() {
	if a.inverter == nil || a.demand == nil {
		return
	}
	inv, d := a.inverter, a.demand
	peak, surge := d.all.largest()
	a.limited(rulePower, plan.LimitPower, a.units*inv.ContinuousW, peak, true, inv.ID)
	a.limited(ruleSurge, plan.LimitSurge, a.units*inv.SurgeW, surge, true, inv.ID)
	if a.threeWire() {
		larger, largerSurge := d.larger()
		a.limited(ruleLeg, plan.LimitLeg, a.units*inv.LegW, larger, true, inv.ID)
		a.limited(ruleLegSurge, plan.LimitLegSurge, a.units*inv.LegSurgeW, largerSurge, true, inv.ID)
	}
	carry, first := a.shared(func(b *bank) float64 { return b.MaxDischargeA })
	a.limited(ruleBusCurrent, plan.LimitBusCurrent, carry, a.units*a.inverterA()+a.dcA(), true, first)
	carry, first = a.shared(func(b *bank) float64 { return b.PeakDischargeA })
	a.limited(rulePeak, plan.LimitPeakCurrent, carry, surge/(inv.Efficiency*a.s.Bus.LowV)+a.dcA(), true, first)
	if a.s.Limits.SharedProtocols {
		a.protocols()
	}
	a.atLeast(ruleAutonomy, a.usableWh()/1000, a.neededWh()/1000, "")
	a.note(plan.LimitAutonomy, "h", a.hours(), a.s.AutonomyH, true)
	a.recharge()
}

// figuresOfSupply checks whether the stated energy and hours are true.
func (a *auditor) figuresOfSupply() {
	a.truly(ruleUsable, a.p.UsableKWh, a.usableWh()/1000, "")
	if a.inverter != nil && a.demand != nil {
		a.truly(ruleHours, a.p.AutonomyH, a.hours(), "")
	}
}

// usableWh returns the energy all modules give to the bus. Half of the round trip's loss falls on the way out.
func (a *auditor) usableWh() float64 {
	sum := 0.0
	for i := range a.strings {
		sum += a.strings[i].modules() * a.usableOf(&a.strings[i])
	}
	return sum
}

// usableOf returns the energy one module gives to the bus, in Wh.
func (a *auditor) usableOf(b *bank) float64 {
	return b.CapacityWh * b.UsableFraction * math.Sqrt(b.RoundTrip) * (1 - a.s.Limits.Reserve)
}

// neededWh returns the most energy the bus gives in any stretch of the autonomy's length.
func (a *auditor) neededWh() float64 { return a.busEnergy().mostWh(a.s.AutonomyH) }

// hours returns for how many hours the loads run at least, whenever charging ends.
func (a *auditor) hours() float64 { return a.busEnergy().lasts(a.usableWh()) }

// inverterA returns what one inverter unit draws from the bus at its lowest voltage.
func (a *auditor) inverterA() float64 {
	return a.inverter.ContinuousW / (a.inverter.Efficiency * a.s.Bus.LowV)
}

// dcA returns the most that the loads on the bus draw at its lowest voltage.
func (a *auditor) dcA() float64 {
	if a.demand == nil {
		return 0
	}
	return most(a.demand.dcPeakW) / a.s.Bus.LowV
}

// unitA returns the most that flows between one inverter unit and the bus bars, either way: what it draws,
// what its charger gives, and what its inputs take from the sun, at the lowest voltage.
func (a *auditor) unitA() float64 {
	return max(a.inverterA(), a.inverter.ChargerA, a.sunPerUnitW()/a.s.Bus.LowV)
}

// busA returns the most that flows through the bus bars: of all units and of the loads on the bus.
func (a *auditor) busA() float64 { return a.units*a.unitA() + a.dcA() }

// shared returns the amperes all strings together can carry until the first is at its own limit, as they share
// by conductance, and the battery of that string.
func (a *auditor) shared(limitA func(*bank) float64) (carry float64, first string) {
	total := 0.0
	for _, b := range a.strings {
		total += b.count / (b.series * b.ResistanceOhm)
	}
	carry = math.Inf(1)
	for i := range a.strings {
		b := &a.strings[i]
		if can := limitA(b) * total * b.series * b.ResistanceOhm; b.count > 0 && !(can >= carry) {
			carry, first = can, b.ID
		}
	}
	if first == "" {
		carry = 0
	}
	return carry, first
}

// protocols checks whether each battery has a word in common with the inverter.
func (a *auditor) protocols() {
	var strangers []string
	for _, b := range a.strings {
		if !slices.ContainsFunc(b.Protocols, func(word string) bool { return slices.Contains(a.inverter.Protocols, word) }) {
			strangers = append(strangers, b.ID+" and "+a.inverter.ID)
		}
	}
	a.none(ruleProtocols, strangers)
}
