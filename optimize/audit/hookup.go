package audit

import (
	"fmt"

	"cartwright/optimize/energy"
	"cartwright/scenarios"
)

const (
	ruleLegs           = "legs"
	ruleCircuits       = "circuits"
	ruleCircuitLoad    = "circuit current"
	ruleCircuitFigures = "circuit figures"
	ruleBalanced       = "legs balanced"
)

var hookupRules = []Rule{
	{ruleLegs, "", "the loads can be read, and each load of leg auto is on leg A or B, once, and on that of its circuit", fromParts},
	{ruleCircuits, "", "every circuit is listed once, with its leg; where there are circuits of a load's kind (ac, dc) it is on one: the one it names, else one of its leg and volts", fromScenario},
	{ruleCircuitLoad, "A", "what can be on together on a circuit <= its device; loads that run three hours or more at 125 % (nec)", "NEC 210.19(A)(1), 210.20(A), 210.23; IEC 60364-4-43 clause 433.1"},
	{ruleCircuitFigures, "A", "the stated current and device of each circuit are true", fromParts},
	{ruleBalanced, "W", "no other placing of loads and circuits has a smaller peak on the larger leg, or the same peak and a smaller surge", fromParts},
}

// hookup has the leg of each load, its circuit by number in the scenario (noCircuit for none), and the leg of each
// circuit.
type hookup struct {
	legs        []scenarios.Leg
	circuits    []int
	circuitLegs []scenarios.Leg
}

// noCircuit marks a load that is on no circuit.
const noCircuit = -1

func newHookup(s *scenarios.Scenario) hookup {
	h := hookup{legs: make([]scenarios.Leg, len(s.Loads)), circuits: make([]int, len(s.Loads)),
		circuitLegs: make([]scenarios.Leg, len(s.Circuits))}
	for i := range s.Loads {
		h.legs[i], h.circuits[i] = s.Loads[i].Leg, noCircuit
		if spansLegs(s, i) {
			h.legs[i] = scenarios.LegBoth
		}
	}
	return h
}

// circuitNamed returns the number of the scenario's circuit of a name, noCircuit for none.
func circuitNamed(s *scenarios.Scenario, name string) int {
	for c := range s.Circuits {
		if s.Circuits[c].Name == name {
			return c
		}
	}
	return noCircuit
}

// hasCircuits reports whether there are circuits for a load of direct current, or of alternating.
func hasCircuits(s *scenarios.Scenario, dc bool) bool {
	for c := range s.Circuits {
		if s.Circuits[c].DC == dc {
			return true
		}
	}
	return false
}

// spansLegs reports whether a load is between the legs: it says so, or it names a circuit of 240 V.
func spansLegs(s *scenarios.Scenario, load int) bool {
	l := &s.Loads[load]
	if l.DC {
		return false
	}
	c := circuitNamed(s, l.Circuit)
	return l.Leg == scenarios.LegBoth || l.Circuit != "" && c != noCircuit && s.Circuits[c].Volts == splitV
}

// mayHang reports whether a load may be on a circuit of a leg.
func mayHang(s *scenarios.Scenario, load, circuit int, leg scenarios.Leg, threeWire bool) bool {
	l, c := &s.Loads[load], &s.Circuits[circuit]
	switch {
	case l.DC != c.DC, l.Circuit != "" && l.Circuit != c.Name:
		return false
	case l.DC || !threeWire:
		return true
	case spansLegs(s, load) || c.Volts == splitV:
		return spansLegs(s, load) && c.Volts == splitV
	}
	return l.Leg == scenarios.LegAuto || l.Leg == leg
}

// hookUp notes the circuit and leg on which the plan has each load, works out the demand, and checks that each load is
// in one place only.
func (a *auditor) hookUp() {
	h := newHookup(a.s)
	a.none(ruleCircuits, a.readCircuits(&h))
	faults := a.readLegs(&h)
	d, err := recordOf(a.s, h.legs)
	if err != nil {
		faults = append(faults, err.Error())
	}
	a.hooked, a.demand = h, d
	a.none(ruleLegs, faults)
}

// readCircuits notes which loads the plan puts on which circuits; it returns what is wrong with that.
func (a *auditor) readCircuits(h *hookup) (faults []string) {
	s := a.s
	told := make([]bool, len(s.Circuits))
	for _, stated := range a.p.Circuits {
		c := circuitNamed(s, stated.Circuit)
		if c == noCircuit || told[c] {
			faults = append(faults, fmt.Sprintf("no circuit %q, or it is listed twice", stated.Circuit))
			continue
		}
		told[c] = true
		leg := scenarios.Leg(stated.Leg)
		h.circuitLegs[c] = leg
		if !a.rightLeg(&s.Circuits[c], leg) {
			faults = append(faults, fmt.Sprintf("circuit %s is on leg %q", stated.Circuit, stated.Leg))
		}
		for _, name := range stated.Loads {
			i := unhung(s, h, name, s.Circuits[c].DC)
			switch {
			case i < 0:
				faults = append(faults, fmt.Sprintf("no load %q to be on circuit %s", name, stated.Circuit))
				continue
			case !mayHang(s, i, c, leg, a.threeWire()):
				faults = append(faults, fmt.Sprintf("load %s may not be on circuit %s", name, stated.Circuit))
			}
			h.circuits[i] = c
			if isLeg(string(leg)) && a.threeWire() {
				h.legs[i] = leg
			}
		}
	}
	for c := range s.Circuits {
		if !told[c] && len(s.Loads) > 0 {
			faults = append(faults, "circuit "+s.Circuits[c].Name+" is not listed")
		}
	}
	for i := range s.Loads {
		if l := &s.Loads[i]; h.circuits[i] == noCircuit && hasCircuits(s, l.DC) {
			faults = append(faults, "load "+l.Name+" is on no circuit")
		}
	}
	return faults
}

// unhung returns the first load of a name that is on no circuit yet, below 0 for none.
func unhung(s *scenarios.Scenario, h *hookup, name string, dc bool) int {
	for i := range s.Loads {
		if s.Loads[i].Name == name && s.Loads[i].DC == dc && h.circuits[i] == noCircuit {
			return i
		}
	}
	return -1
}

// rightLeg reports whether a circuit can be on a leg: with a three-wire supply one of 120 V on A or B and one of 240 V on
// both; all others on none.
func (a *auditor) rightLeg(c *scenarios.Circuit, leg scenarios.Leg) bool {
	switch {
	case c.DC || !a.threeWire():
		return leg == ""
	case c.Volts == splitV:
		return leg == scenarios.LegBoth
	}
	return isLeg(string(leg))
}

// readLegs notes the leg of each load of leg auto; it returns what is wrong with them.
func (a *auditor) readLegs(h *hookup) (faults []string) {
	used := make([]bool, len(a.p.Legs))
	for i := range a.s.Loads {
		l := &a.s.Loads[i]
		if l.DC || l.Leg != scenarios.LegAuto {
			continue
		}
		put := false
		for k, told := range a.p.Legs {
			if used[k] || put || told.Load != l.Name || !isLeg(told.Leg) && !spansLegs(a.s, i) {
				continue
			}
			used[k], put = true, true
			if h.legs[i] != scenarios.LegAuto && told.Leg != string(h.legs[i]) && a.threeWire() {
				faults = append(faults, fmt.Sprintf("load %s is listed on leg %s, its circuit is on %s", l.Name, told.Leg, h.legs[i]))
				continue
			}
			if h.legs[i] == scenarios.LegAuto {
				h.legs[i] = scenarios.Leg(told.Leg)
			}
		}
		if !put && a.threeWire() && !spansLegs(a.s, i) {
			faults = append(faults, "load "+l.Name+" is on no leg")
		}
	}
	for k, leg := range a.p.Legs {
		if !used[k] {
			faults = append(faults, "no load "+leg.Load+" to put on leg "+leg.Leg)
		}
	}
	return faults
}

// isLeg reports whether a leg is one of the two.
func isLeg(leg string) bool { return leg == string(scenarios.LegA) || leg == string(scenarios.LegB) }

// threeWire reports whether the supply has two legs.
func (a *auditor) threeWire() bool { return a.inverter != nil && a.inverter.ACV == energy.ACVThree }

// circuits checks whether each circuit carries what is on it, and whether no other placing has better legs.
func (a *auditor) circuits() {
	if a.demand == nil {
		return
	}
	for c := range a.s.Circuits {
		a.atMost(ruleCircuitLoad, circuitA(a.s, &a.hooked, c), a.s.Circuits[c].DeviceA, a.s.Circuits[c].Name)
	}
	if !a.threeWire() {
		return
	}
	peak, surge := a.demand.larger()
	if best, proven := spread(a.s, true, peak, surge); proven {
		detail := ""
		if best.best != nil {
			detail = fmt.Sprintf("larger surge %.6g, best %.6g VA", surge, best.surge)
		}
		a.tell(ruleBalanced, peak, best.peak, best.best == nil, best.peak-peak, detail)
	}
}

// larger returns the peak of the larger leg, and the larger surge of the two.
func (d *demand) larger() (peak, surge float64) {
	for k := range d.legs {
		p, s := d.legs[k].largest()
		peak, surge = max(peak, p), max(surge, s)
	}
	return peak, surge
}

// figuresOfCircuits checks whether the stated currents and devices of the circuits are true.
func (a *auditor) figuresOfCircuits() {
	for _, stated := range a.p.Circuits {
		c := circuitNamed(a.s, stated.Circuit)
		if c == noCircuit || a.demand == nil {
			continue
		}
		a.truly(ruleCircuitFigures, stated.CurrentA, circuitA(a.s, &a.hooked, c), stated.Circuit+": current_a")
		a.truly(ruleCircuitFigures, stated.DeviceA, a.s.Circuits[c].DeviceA, stated.Circuit+": device_a")
	}
}
