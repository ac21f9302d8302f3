package wiring

import (
	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// StringDuty returns the duty of the path from one string of a battery to the bus bars, and whether the
// scenario names such a run. Its design current is the lesser of the battery's max_discharge and busA, the current of
// the whole bus; with busA +Inf it is the battery's. Strings is how many strings the bus has: from three up the others
// together feed a fault in its cable, and a long one is protected at both ends (NEC 240.21(B)(1), IEC 60364-4-43
// clause 433.2.2).
func StringDuty(s *scenarios.Scenario, b *catalog.Battery, busA float64, strings int) (Duty, bool) {
	d, listed := busDuty(s, scenarios.RunString, min(b.MaxDischargeA, busA))
	if !listed {
		return d, false
	}
	run := s.Run(scenarios.RunString)
	d.OwnBreakerA = 0 // an inverter's breaker protects no string
	d.TwoWay, d.Fine, d.MostDeviceA = true, s.Cable.Fine, b.MaxFuseA
	series := energy.Series(s.Bus.NominalV, b.NominalV)
	if series > 1 {
		d.Links, d.LinkM, d.LinkBuyM = series-1, run.LinkM, BoughtM(s, run.LinkM)
	}
	if BothEnds(s, strings) {
		d.Devices = 2
	}
	if series == 1 && b.OwnDeviceA > 0 && b.OwnInterruptingA > 0 {
		d.BuiltInA, d.BuiltInBreaksA = b.OwnDeviceA, b.OwnInterruptingA
	}
	return d, true
}

// A string's cable is protected at both ends where the bus has at least feedingStrings strings and the cable is longer
// than bothEndsM metres.
const (
	feedingStrings = 3
	bothEndsM      = 3
)

// BothEnds reports whether, with so many strings on the bus, each needs a device at both ends of its cable.
func BothEnds(s *scenarios.Scenario, strings int) bool {
	run := s.Run(scenarios.RunString)
	return run != nil && strings >= feedingStrings && !plan.AtMost(run.LengthM, bothEndsM)
}

// BoughtM returns the metres of cable bought for a conductor of lengthM: with slack, and in whole steps.
func BoughtM(s *scenarios.Scenario, lengthM float64) float64 {
	m := lengthM * (1 + s.Cable.Slack)
	if s.Cable.StepM > 0 {
		m = plan.Ceil(m/s.Cable.StepM) * s.Cable.StepM
	}
	return m
}

// UnitA returns the current in amperes of the path between the bus bars and one inverter unit: the largest of what it
// draws at full load and the lowest bus voltage (NEC 690.8(A), stand-alone inverter input; from memory), what its
// charger gives, and what its share arrayW of the array's watts gives.
func UnitA(s *scenarios.Scenario, inv *catalog.Inverter, arrayW float64) float64 {
	return max(energy.BusA(inv, s.Bus), inv.ChargerA, arrayW/s.Bus.LowV)
}

// MainDuty returns the duty of the path from the bus bars to one inverter unit that carries unitA, and whether the
// scenario names such a run.
func MainDuty(s *scenarios.Scenario, unitA float64) (Duty, bool) {
	d, listed := busDuty(s, scenarios.RunMain, unitA)
	d.TwoWay, d.Fine = true, s.Cable.Fine
	return d, listed
}

// busDuty returns the duty of a two-wire path on the direct-current bus.
func busDuty(s *scenarios.Scenario, kind scenarios.RunKind, designA float64) (Duty, bool) {
	run := s.Run(kind)
	if run == nil {
		return Duty{}, false
	}
	d := runDuty(s, run, designA)
	d.NominalV, d.DeviceV = s.Bus.NominalV, s.Bus.HighV
	d.Poles, d.Conductors = 1, 2
	return d, true
}

// FeederDuty returns the duty of the path from one inverter to the load centre, and whether the scenario names such a
// run. A 120/240 V feeder has two hots and a neutral and is sized between the hots.
func FeederDuty(s *scenarios.Scenario, inv *catalog.Inverter) (Duty, bool) {
	run := s.Run(scenarios.RunFeeder)
	if run == nil {
		return Duty{}, false
	}
	volts := energy.FeederV(inv)
	d := runDuty(s, run, energy.FeederA(inv))
	d.AC, d.Ground = true, true
	d.NominalV, d.DeviceV = volts, volts
	d.Poles, d.Conductors = acPoles(volts), acConductors(volts == splitV)
	return d, true
}

// splitV is the volts between the hots of a three-wire 120/240 V supply.
const splitV = 240

// BranchDuty returns the duty of a circuit, which carries the rating of its own device; false for
// nil. Only a 240 V circuit can do without a neutral: the others return through it. A dc circuit has two conductors
// from the bus bars.
func BranchDuty(s *scenarios.Scenario, c *scenarios.Circuit) (Duty, bool) {
	if c == nil {
		return Duty{}, false
	}
	d := Duty{
		Kind: scenarios.RunBranch, Name: c.Name, AC: true,
		DesignA: c.DeviceA, DropA: c.DeviceA, DeviceA: c.DeviceA,
		NominalV: c.Volts, DeviceV: c.Volts,
		Poles: acPoles(c.Volts), Conductors: acConductors(c.Volts == splitV && c.Neutral), Ground: true,
		LengthM: c.LengthM, BoughtM: BoughtM(s, c.LengthM), AmbientC: c.AmbientC, Bundled: c.Bundled, TerminalC: c.TerminalC, Drop: c.Drop,
		Conduit: c.Conduit,
	}
	if c.DC {
		d.Kind, d.AC, d.Ground = scenarios.RunDC, false, false
		d.NominalV, d.DeviceV, d.Poles, d.Conductors = s.Bus.NominalV, s.Bus.HighV, 1, 2
	}
	return d, true
}

// InletDuty returns the duty of the path from the supply's outlet to the charger, wired and grounded like a branch of
// the supply's volts, and whether the scenario names such a run.
func InletDuty(s *scenarios.Scenario) (Duty, bool) {
	run := s.Run(scenarios.RunInlet)
	if run == nil || s.Recharge == nil || s.Recharge.Supply == nil {
		return Duty{}, false
	}
	from := s.Recharge.Supply
	d := runDuty(s, run, from.DeviceA)
	d.AC, d.Ground, d.DeviceA = true, true, from.DeviceA
	d.NominalV, d.DeviceV = from.Volts, from.Volts
	d.Poles, d.Conductors = acPoles(from.Volts), acConductors(from.Volts == splitV)
	return d, true
}

// BondDuty returns the duty of the bond of frame and bus, one grounding conductor, and whether the scenario names such
// a run.
func BondDuty(s *scenarios.Scenario) (Duty, bool) {
	run := s.Run(scenarios.RunBond)
	if run == nil {
		return Duty{}, false
	}
	d := runDuty(s, run, 0)
	d.NominalV, d.Ground, d.Poles, d.Drop = s.Bus.NominalV, true, 1, 0
	return d, true
}

// runDuty returns the part of a duty that comes from the scenario's run.
func runDuty(s *scenarios.Scenario, run *scenarios.Run, designA float64) Duty {
	return Duty{
		Kind: run.Kind, DesignA: designA, DropA: designA,
		LengthM: run.LengthM, BoughtM: BoughtM(s, run.LengthM), AmbientC: run.AmbientC, Bundled: run.Bundled, TerminalC: run.TerminalC,
		Drop: run.Drop, OwnBreakerA: run.OwnBreakerA, Conduit: run.Conduit,
	}
}

// acPoles returns the least number of poles of a device: both hots of a 240 V circuit must open (NEC 210.4(B),
// 240.15(B)).
func acPoles(volts float64) int {
	if volts == splitV {
		return 2
	}
	return 1
}

// acConductors returns the conductors of a circuit without the ground: line and return, or two hots and a neutral.
func acConductors(threeWire bool) int {
	if threeWire {
		return 3
	}
	return 2
}
