package optimize_test

import (
	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// The duties of paths, for a rule set to judge. Lengths as bought are left out of them: a rule has no use for them,
// and parts works them out.

// runDuty returns what a scenario's run and its design current make of a path.
func (e *enumeration) runDuty(kind scenarios.RunKind, amps, volts, deviceV float64) (d wiring.Duty, planned bool) {
	for _, r := range e.s.Runs {
		if r.Kind == kind {
			return wiring.Duty{
				Kind: kind, DesignA: amps, DropA: amps, NominalV: volts, DeviceV: deviceV, Poles: 1, Conductors: 2,
				LengthM: r.LengthM, AmbientC: r.AmbientC, Bundled: r.Bundled, TerminalC: r.TerminalC, Drop: r.Drop,
				OwnBreakerA: r.OwnBreakerA, Conduit: r.Conduit,
			}, true
		}
	}
	return wiring.Duty{}, false
}

// stringDuty returns the duty of one string on a bus of some amperes and so many strings.
func (e *enumeration) stringDuty(b *catalog.Battery, busA float64, strings int) (d wiring.Duty, planned bool) {
	d, planned = e.runDuty(scenarios.RunString, min(busA, b.MaxDischargeA), e.s.Bus.NominalV, e.s.Bus.HighV)
	if !planned {
		return d, false
	}
	d.TwoWay, d.Fine, d.MostDeviceA = true, e.s.Cable.Fine, b.MaxFuseA
	if strings >= 3 && d.LengthM > 3 {
		d.Devices = 2
	}
	if series, _ := e.series(b); series > 1 {
		d.Links = series - 1
		for _, r := range e.s.Runs {
			if r.Kind == scenarios.RunString {
				d.LinkM = r.LinkM
			}
		}
	} else if b.OwnDeviceA > 0 && b.OwnInterruptingA > 0 {
		d.BuiltInA, d.BuiltInBreaksA = b.OwnDeviceA, b.OwnInterruptingA
	}
	return d, true
}

// mainDuty returns the duty of the path to one unit.
func (e *enumeration) mainDuty(inv *catalog.Inverter) (d wiring.Duty, planned bool) {
	d, planned = e.runDuty(scenarios.RunMain, e.unitA(inv), e.s.Bus.NominalV, e.s.Bus.HighV)
	d.TwoWay, d.Fine = true, e.s.Cable.Fine
	return d, planned
}

// feederDuty returns the duty of the path from one unit; of three wires it is sized between the hots, or by the leg.
func (e *enumeration) feederDuty(inv *catalog.Inverter) (d wiring.Duty, planned bool) {
	volts := map[string]float64{"120": 120, "230": 230, "120/240": 240}[inv.ACV]
	amps := inv.ContinuousW / volts
	if volts == 240 {
		amps = max(amps, inv.LegW/120)
	}
	d, planned = e.runDuty(scenarios.RunFeeder, amps, volts, volts)
	return behind(d, volts, true), planned
}

// inletDuty returns the duty of the path from the supply.
func (e *enumeration) inletDuty() (d wiring.Duty, planned bool) {
	if e.s.Recharge == nil || e.s.Recharge.Supply == nil {
		return d, false
	}
	x := e.s.Recharge.Supply
	d, planned = e.runDuty(scenarios.RunInlet, x.DeviceA, x.Volts, x.Volts)
	d.DeviceA = x.DeviceA
	return behind(d, x.Volts, true), planned
}

// bondDuty returns the duty of the bond, which is a ground and nothing else.
func (e *enumeration) bondDuty() (d wiring.Duty, planned bool) {
	d, planned = e.runDuty(scenarios.RunBond, 0, e.s.Bus.NominalV, 0)
	d.Conductors, d.Ground = 0, true
	return d, planned
}

// circuitDuty returns the duty of a circuit.
func (e *enumeration) circuitDuty(c *scenarios.Circuit) wiring.Duty {
	d := wiring.Duty{
		Kind: scenarios.RunBranch, Name: c.Name, DesignA: c.DeviceA, DropA: c.DeviceA, DeviceA: c.DeviceA,
		LengthM: c.LengthM, AmbientC: c.AmbientC, Bundled: c.Bundled, TerminalC: c.TerminalC, Drop: c.Drop, Conduit: c.Conduit,
	}
	if c.DC {
		d.Kind, d.NominalV, d.DeviceV, d.Poles, d.Conductors = scenarios.RunDC, e.s.Bus.NominalV, e.s.Bus.HighV, 1, 2
		return d
	}
	d.NominalV, d.DeviceV = c.Volts, c.Volts
	return behind(d, c.Volts, c.Neutral)
}

// behind returns a duty of alternating current: it has a ground, and at 240 V two poles and a neutral, or none.
func behind(d wiring.Duty, volts float64, neutral bool) wiring.Duty {
	d.AC, d.Ground, d.Poles, d.Conductors = true, true, 1, 2
	if volts == 240 {
		d.Poles = 2
		if neutral {
			d.Conductors = 3
		}
	}
	return d
}
