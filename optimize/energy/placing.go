package energy

import (
	"fmt"
	"slices"

	"cartwright/catalog/problem"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// placing says on which circuit and leg each load is, and on which leg each circuit.
type placing struct {
	s           *scenarios.Scenario
	circuits    []int           // by load: index of its circuit; -1: none
	legs        []scenarios.Leg // by load: A, B or both; "" on the bus
	circuitLegs []scenarios.Leg // by circuit: A, B or both; "" on the bus
	proven      bool            // no other placing is better
}

// continuousMin is the least time in minutes a load runs at a stretch to count as continuous: NEC article 100.
const continuousMin = 180

// continuousShare is the factor on a continuous load's current on its circuit: NEC 210.20(A).
const continuousShare = 1.25

// runsMin returns how long a load runs at a stretch, in minutes.
func runsMin(l *scenarios.Load) int {
	switch {
	case l.AllDay:
		return dayMin
	case l.FromMin < l.ToMin:
		return l.ToMin - l.FromMin
	}
	return dayMin - l.FromMin + l.ToMin
}

// CircuitA returns the current in amperes a load counts on a circuit.
//
//	watts / (V · power factor), on the bus watts / bus.low; under nec 125 % of it where the load has a duty of
//	100 % and runs three hours or more at a stretch      NEC 210.19(A), 210.20(A), article 100
func CircuitA(s *scenarios.Scenario, c *scenarios.Circuit, l *scenarios.Load) float64 {
	amps := voltAmperes(l) / c.Volts
	if c.DC {
		amps = peakW(l) / s.Bus.LowV
	}
	if s.Rules != scenarios.IEC && l.Duty >= 1 && runsMin(l) >= continuousMin {
		amps *= continuousShare
	}
	return amps
}

// hasCircuits reports whether there are circuits of a kind: then every load of that kind is on one.
func hasCircuits(s *scenarios.Scenario, dc bool) bool {
	for i := range s.Circuits {
		if s.Circuits[i].DC == dc {
			return true
		}
	}
	return false
}

// mayHang reports whether a load may be on a circuit: it is of the load's kind of current, the one the load names if it
// names one, and of 240 V for a load between the legs. A load of leg "auto" is on a 240 V circuit only if it names it.
func mayHang(l *scenarios.Load, c *scenarios.Circuit) bool {
	switch {
	case l.DC != c.DC, l.Circuit != "" && l.Circuit != c.Name:
		return false
	case c.DC:
		return true
	case c.Volts == volts240:
		return l.Leg == scenarios.LegBoth || l.Leg == scenarios.LegAuto && l.Circuit != ""
	}
	return l.Leg != scenarios.LegBoth
}

// place puts loads on circuits, and circuits (without circuits, loads) on legs, so that the larger leg's peak is
// least, then the larger leg's surge; of equals it takes the first in the scenario's order, A before B. It is exact up
// to maxNodes: branch and bound, largest load first; peaks never fall when one more load is placed.
func place(s *scenarios.Scenario) (*placing, error) {
	if bad := misplaced(s); bad != nil {
		return nil, bad
	}
	if hasCircuits(s, false) {
		return placeOnCircuits(s)
	}
	best := newPlacer(s, true)
	best.run()
	proven := best.nodes < maxNodes
	first := newPlacer(s, false)
	first.within(best.peak, best.surge)
	if first.found != nil {
		best = first
	}
	best.found.proven = proven
	if !hasCircuits(s, true) {
		return best.found, nil
	}
	// Loads on the bus have nothing to do with the legs.
	known := *s
	known.Loads = slices.Clone(s.Loads)
	for i := range known.Loads {
		if l := &known.Loads[i]; !l.DC {
			l.Leg = best.found.legs[i]
		}
	}
	placed, err := placeOnCircuits(&known)
	if err == nil {
		placed.s, placed.proven = s, proven && placed.proven
	}
	return placed, err
}

// misplaced returns the mistake of a load that fits none of the circuits by itself.
func misplaced(s *scenarios.Scenario) error {
	var list problem.List
	for i := range s.Loads {
		l := &s.Loads[i]
		if !hasCircuits(s, l.DC) {
			continue
		}
		fits, any := false, false
		amps, device := 0.0, 0.0
		for c := range s.Circuits {
			if !mayHang(l, &s.Circuits[c]) {
				continue
			}
			any = true
			a := CircuitA(s, &s.Circuits[c], l)
			fits = fits || plan.AtMost(a, s.Circuits[c].DeviceA)
			if s.Circuits[c].DeviceA > device {
				amps, device = a, s.Circuits[c].DeviceA
			}
		}
		switch {
		case !any:
			list.Add(s.Pos(fmt.Sprintf("loads[%d]", i)), fmt.Sprintf("load %q fits no circuit: %s", l.Name, noneFor(l)), "add such a circuit, or change the load's leg or circuit")
		case !fits:
			list.Add(s.Pos(fmt.Sprintf("loads[%d]", i)), fmt.Sprintf("load %q draws %.4g A, and the largest circuit it may be on has a device of %g A", l.Name, amps, device), "give it a larger circuit, or fewer watts")
		}
	}
	return list.Err()
}

// noneFor says what kind of circuit a load needs.
func noneFor(l *scenarios.Load) string {
	switch {
	case l.DC:
		return "a dc load needs one with volts: dc"
	case l.Leg == scenarios.LegBoth:
		return "a load on both legs needs one of 240 V"
	case l.Circuit != "":
		return fmt.Sprintf("it may not be on %q", l.Circuit)
	}
	return "a load on one leg needs one of 120 V or 230 V"
}

// tooFull returns the mistake that each load fits some circuit but all together do not. It names the largest load
// whose circuit the program was to choose.
func tooFull(s *scenarios.Scenario) error {
	at, most := -1, -1.0
	for i := range s.Loads {
		l := &s.Loads[i]
		if w := voltAmperes(l); hasCircuits(s, l.DC) && w > most && (l.Circuit == "" || at < 0) {
			at, most = i, w
		}
	}
	l := &s.Loads[at]
	amps, device := 0.0, 0.0
	for c := range s.Circuits {
		if x := &s.Circuits[c]; mayHang(l, x) && x.DeviceA > device {
			amps, device = CircuitA(s, x, l), x.DeviceA
		}
	}
	var list problem.List
	list.Add(s.Pos(fmt.Sprintf("loads[%d]", at)), fmt.Sprintf("the circuits cannot carry all loads at once: there is no room for load %q, which draws %.4g A; the largest circuit it may be on has a device of %g A", l.Name, amps, device),
		"add a circuit, give larger devices, or list under one_at_a_time what is never on together")
	return list.Err()
}

// circuitLoads lists what is on each circuit.
func (p *placing) circuitLoads() []CircuitLoad {
	var told []CircuitLoad
	for c := range p.s.Circuits {
		x := &p.s.Circuits[c]
		one := CircuitLoad{Circuit: x.Name, Leg: p.circuitLegs[c], Loads: []string{}, DeviceA: x.DeviceA}
		var on []int
		for i := range p.s.Loads {
			if p.circuits[i] == c {
				on = append(on, i)
				one.Loads = append(one.Loads, p.s.Loads[i].Name)
			}
		}
		one.CurrentA = CircuitPeakA(p.s, x, on)
		told = append(told, one)
	}
	return told
}

// CircuitPeakA returns the most current on a circuit with some loads on it.
func CircuitPeakA(s *scenarios.Scenario, c *scenarios.Circuit, loads []int) float64 {
	amps := make([]float64, len(s.Loads))
	for _, i := range loads {
		amps[i] = CircuitA(s, c, &s.Loads[i])
	}
	return circuitPeakA(s, listOf(s), amps, loads)
}

// circuitPeakA is CircuitPeakA where each load's current on that circuit, and the list it is on, are known. A peak
// begins when a load begins, so only those minutes are tried.
func circuitPeakA(s *scenarios.Scenario, lists []int, amps []float64, loads []int) float64 {
	most := 0.0
	var buf [16]part
	for _, at := range loads {
		minute := s.Loads[at].FromMin
		if s.Loads[at].AllDay {
			minute = 0
		}
		parts := buf[:0]
		for _, i := range loads {
			if onAt(&s.Loads[i], minute) {
				parts = append(parts, part{list: lists[i], amount: amps[i]})
			}
		}
		peak, _ := peaks(parts, len(s.OneAtATime))
		most = max(most, peak)
	}
	return most
}
