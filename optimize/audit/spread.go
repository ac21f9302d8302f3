package audit

import (
	"math"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// continuousMin is the least time in minutes a load runs at a stretch to count as continuous: NEC article 100.
const continuousMin = 180

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

// circuitA returns the most current in amperes on a circuit: what can be on together, by volt-amperes, or on
// the bus by watts at its lowest voltage; under nec continuous loads at 125 %.
func circuitA(s *scenarios.Scenario, h *hookup, circuit int) float64 {
	c := &s.Circuits[circuit]
	lists := listsOf(s)
	largest := 0.0
	// A peak begins when a load begins, so only those minutes are tried.
	for at := range s.Loads {
		minute := s.Loads[at].FromMin
		if s.Loads[at].AllDay {
			minute = 0
		}
		var on []draw
		for i := range s.Loads {
			l := &s.Loads[i]
			if h.circuits[i] != circuit || !isOn(l, minute) {
				continue
			}
			amps := l.Watts * float64(l.Count) / (c.Volts * l.PowerFactor)
			if c.DC {
				amps = l.Watts * float64(l.Count) / s.Bus.LowV
			}
			if s.Rules != scenarios.IEC && l.Duty >= 1 && runsMin(l) >= continuousMin {
				amps *= continuous
			}
			on = append(on, draw{list: lists[i], amount: amps})
		}
		amps, _ := together(on, func(*draw) float64 { return 1 })
		largest = math.Max(largest, amps)
	}
	return largest
}

// mostSpreads bounds how many partial placings are tried; past it the audit does not say whether a plan's is the best.
const mostSpreads = 1 << 13

// spreading is a search for the placing of circuits on legs, and of loads on circuits (without circuits, of
// loads on legs), with which the larger leg's peak is least, then the larger surge. It is exact: depth first, in the
// scenario's order; a branch is left where what is placed so far is no better than the best found.
type spreading struct {
	s         *scenarios.Scenario
	threeWire bool // else there are no legs
	h         hookup
	lists     []int
	times     []int // minutes of the day at which what is on differs
	nodes     int

	peak, surge float64 // of the best
	best        *hookup // nil: none found that is better than what was given
}

// spread searches for a placing that is better than a peak and a surge, both in volt-amperes; proven says that the search
// was not cut short.
func spread(s *scenarios.Scenario, threeWire bool, peak, surge float64) (best *spreading, proven bool) {
	p := &spreading{s: s, threeWire: threeWire, h: newHookup(s), lists: listsOf(s), times: []int{0}, peak: peak, surge: surge}
	for i := range s.Loads {
		if !s.Loads[i].AllDay {
			p.times = append(p.times, s.Loads[i].FromMin)
		}
	}
	if s.Measured == nil {
		p.turnCircuit(0)
	}
	return p, p.nodes < mostSpreads
}

// turnCircuit puts circuit c on a leg, and goes on.
func (p *spreading) turnCircuit(c int) {
	if c == len(p.s.Circuits) {
		p.hang(0)
		return
	}
	legs := []scenarios.Leg{scenarios.LegA, scenarios.LegB}
	switch x := &p.s.Circuits[c]; {
	case x.DC || !p.threeWire:
		legs = []scenarios.Leg{""}
	case x.Volts == splitV:
		legs = []scenarios.Leg{scenarios.LegBoth}
	}
	for _, leg := range legs {
		p.h.circuitLegs[c] = leg
		p.turnCircuit(c + 1)
	}
}

// hang puts load i on a circuit or a leg, and goes on.
func (p *spreading) hang(i int) {
	if p.nodes >= mostSpreads {
		return
	}
	p.nodes++
	peak, surge := p.placed(i)
	if !p.better(peak, surge) {
		return
	}
	if i == len(p.s.Loads) {
		p.peak, p.surge = peak, surge
		p.best = &hookup{append(p.h.legs[:0:0], p.h.legs...), append(p.h.circuits[:0:0], p.h.circuits...),
			append(p.h.circuitLegs[:0:0], p.h.circuitLegs...)}
		return
	}
	l, leg := &p.s.Loads[i], p.h.legs[i]
	if hasCircuits(p.s, l.DC) {
		for c := range p.s.Circuits {
			if !mayHang(p.s, i, c, p.h.circuitLegs[c], p.threeWire) {
				continue
			}
			p.h.circuits[i] = c
			if !l.DC && p.threeWire {
				p.h.legs[i] = p.h.circuitLegs[c]
			}
			if plan.AtMost(circuitA(p.s, &p.h, c), p.s.Circuits[c].DeviceA) {
				p.hang(i + 1)
			}
		}
		p.h.circuits[i], p.h.legs[i] = noCircuit, leg
		return
	}
	if l.DC || leg != scenarios.LegAuto || !p.threeWire {
		p.hang(i + 1)
		return
	}
	for _, p.h.legs[i] = range []scenarios.Leg{scenarios.LegA, scenarios.LegB} {
		p.hang(i + 1)
	}
	p.h.legs[i] = leg
}

// better reports whether a peak and a surge are less than the best's.
func (p *spreading) better(peak, surge float64) bool {
	return !plan.AtLeast(peak, p.peak) || plan.AtMost(peak, p.peak) && !plan.AtLeast(surge, p.surge)
}

// placed returns the larger leg's peak and surge of the first loads, and at least half of the peak of all.
func (p *spreading) placed(loads int) (peak, surge float64) {
	for _, minute := range p.times {
		var on, all []draw
		for i := range p.s.Loads {
			l := &p.s.Loads[i]
			if l.DC || !isOn(l, minute) {
				continue
			}
			x := drawOf(l, p.lists[i], p.h.legs[i])
			all = append(all, x)
			if i < loads {
				on = append(on, x)
			}
		}
		whole, _ := together(all, func(*draw) float64 { return 1 })
		peak = math.Max(peak, whole/2)
		for k := range 2 {
			p, s := together(on, func(x *draw) float64 { return x.share[k] })
			peak, surge = math.Max(peak, p), math.Max(surge, s)
		}
	}
	return peak, surge
}
