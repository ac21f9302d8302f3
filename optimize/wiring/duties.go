package wiring

import (
	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/scenarios"
)

// StringDuty returns the duty of the path from one string of a battery to the bus bars, and whether the
// scenario names such a run. Its design current is the battery's own limit.
func StringDuty(s *scenarios.Scenario, b *catalog.Battery) (Duty, bool) {
	return busDuty(s, scenarios.RunString, b.MaxDischargeA)
}

// MainDuty returns the duty of the path from the bus bars to one inverter unit, and whether the scenario
// names such a run. Its design current is the unit's input at full load and the lowest bus voltage (NEC
// 690.8(A), stand-alone inverter input; from memory).
func MainDuty(s *scenarios.Scenario, inv *catalog.Inverter) (Duty, bool) {
	return busDuty(s, scenarios.RunMain, energy.BusA(inv, s.Bus))
}

// busDuty returns the duty of a two-wire path on the direct-current bus.
func busDuty(s *scenarios.Scenario, kind scenarios.RunKind, designA float64) (Duty, bool) {
	run := s.Run(kind)
	if run == nil {
		return Duty{}, false
	}
	d := runDuty(run, designA)
	d.NominalV, d.DeviceV = s.Bus.NominalV, s.Bus.HighV
	d.Poles, d.Conductors = 1, 2
	return d, true
}

// FeederDuty returns the duty of the path from the inverters, so many side by side, to the load centre,
// and whether the scenario names such a run. A 120/240 V feeder has two hots and a neutral and is sized
// between the hots.
func FeederDuty(s *scenarios.Scenario, inv *catalog.Inverter, units int) (Duty, bool) {
	run := s.Run(scenarios.RunFeeder)
	if run == nil {
		return Duty{}, false
	}
	volts := energy.FeederV(inv)
	d := runDuty(run, energy.FeederA(inv, units))
	d.AC, d.Ground = true, true
	d.NominalV, d.DeviceV = volts, volts
	d.Poles, d.Conductors = acPoles(volts), acConductors(volts == splitV)
	return d, true
}

// splitV is the volts between the hots of a three-wire 120/240 V supply.
const splitV = 240

// BranchDuty returns the duty of a branch circuit, which carries the rating of its own device; false for
// no circuit. Only a 240 V circuit can do without its neutral: the others return through it.
func BranchDuty(_ *scenarios.Scenario, c *scenarios.Circuit) (Duty, bool) {
	if c == nil {
		return Duty{}, false
	}
	return Duty{
		Kind: scenarios.RunBranch, Name: c.Name, AC: true,
		DesignA: c.DeviceA, DeviceA: c.DeviceA,
		NominalV: c.Volts, DeviceV: c.Volts,
		Poles: acPoles(c.Volts), Conductors: acConductors(c.Volts == splitV && c.Neutral), Ground: true,
		LengthM: c.LengthM, AmbientC: c.AmbientC, Bundled: c.Bundled, TerminalC: c.TerminalC, Drop: c.Drop,
	}, true
}

// runDuty returns what a duty takes over from the scenario's run.
func runDuty(run *scenarios.Run, designA float64) Duty {
	return Duty{
		Kind: run.Kind, DesignA: designA,
		LengthM: run.LengthM, AmbientC: run.AmbientC, Bundled: run.Bundled, TerminalC: run.TerminalC,
		Drop: run.Drop, OwnBreakerA: run.OwnBreakerA,
	}
}

// acPoles returns the least poles of a device: both hots of a 240 V circuit must open (NEC 210.4(B),
// 240.15(B)).
func acPoles(volts float64) int {
	if volts == splitV {
		return 2
	}
	return 1
}

// acConductors returns the conductors of a circuit beside the ground: line and return, or two hots and a
// neutral.
func acConductors(threeWire bool) int {
	if threeWire {
		return 3
	}
	return 2
}
