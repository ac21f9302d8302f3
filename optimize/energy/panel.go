package energy

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// panel searches for a placing where there are circuits. What a leg carries depends on the loads' legs alone, so the
// legs are searched first, and circuits are looked for only where the legs are better than what is known.
type panel struct {
	*packing
	va, start []float64       // by load
	shares    [][2]float64    // by load: what of it is on each leg; 0 while it is on none
	legs      []scenarios.Leg // by load; "" while it is on none
	free      []int           // loads whose leg is open, largest first
	mirrored  bool            // no load is on a leg by name: the first may as well be on A
	buf       []part

	floorPeak, floorSurge float64 // no placing has less
	peak, surge           float64 // of the best placing known
	better                bool    // look for a better placing; else for the first that is no worse
	found                 *placing
}

func newPanel(s *scenarios.Scenario) *panel {
	p := &panel{packing: newPacking(s), mirrored: true, peak: math.Inf(1), surge: math.Inf(1)}
	p.shares, p.legs = make([][2]float64, len(s.Loads)), make([]scenarios.Leg, len(s.Loads))
	for i := range s.Loads {
		l := &s.Loads[i]
		p.va, p.start = append(p.va, voltAmperes(l)), append(p.start, startVA(l))
		p.mirrored = p.mirrored && l.Leg != scenarios.LegA && l.Leg != scenarios.LegB
	}
	p.floors()
	return p
}

// floors finds what no placing is below: half of the peak, and half of the surge, of both legs together.
func (p *panel) floors() {
	for _, on := range p.moments {
		var parts []part
		for _, i := range on {
			parts = append(parts, part{list: p.lists[i], amount: p.va[i], start: p.start[i]})
		}
		peak, surge := peaks(parts, len(p.s.OneAtATime))
		p.floorPeak, p.floorSurge = max(p.floorPeak, peak/2), max(p.floorSurge, surge/2)
	}
}

// placeOnCircuits puts loads on circuits and legs. See place.
func placeOnCircuits(s *scenarios.Scenario) (*placing, error) {
	p := newPanel(s)
	_, fits := p.pack(nil)
	if fits {
		p.better, p.nodes = true, 0
		p.open(-1)
		p.descend(0)
	}
	proven := p.nodes < maxNodes
	switch {
	case p.found != nil:
		first := p.ordered(p.found)
		first.proven, first.circuitLegs = proven, legsOfCircuits(s, first)
		return first, nil
	case proven:
		return nil, tooFull(s)
	}
	return nil, fmt.Errorf("energy: found no way to put %d loads on %d circuits; name the circuit of each load", len(s.Loads), len(s.Circuits))
}

// legsOfCircuits returns the leg of each circuit, which is that of its loads. For a circuit without loads any leg will
// do; it gets A.
func legsOfCircuits(s *scenarios.Scenario, x *placing) []scenarios.Leg {
	legs := make([]scenarios.Leg, len(s.Circuits))
	for c := range s.Circuits {
		switch {
		case s.Circuits[c].DC:
		case s.Circuits[c].Volts == volts240:
			legs[c] = scenarios.LegBoth
		default:
			legs[c] = scenarios.LegA
		}
	}
	for i, c := range x.circuits {
		if c >= 0 {
			legs[c] = x.legs[i]
		}
	}
	return legs
}

// ordered turns a placing into the first in the scenario's order, A before B, that is no worse: load by load, each in
// the first place that leaves places for the others. Past maxNodes it keeps what it has.
func (p *panel) ordered(known *placing) *placing {
	p.better, p.nodes = false, 0
	for i := range p.s.Loads {
		for _, at := range p.spots(i) {
			if at.circuit == known.circuits[i] && at.leg == known.legs[i] {
				p.fix(i, at)
				break
			}
			undo, fits := p.fix(i, at)
			if fits {
				p.found = nil
				p.open(i)
				p.descend(0)
				if p.found != nil {
					known = p.found
					break
				}
			}
			undo()
		}
	}
	return known
}

// spot is a place for a load.
type spot struct {
	circuit int // -1: there are none
	leg     scenarios.Leg
}

// spots lists the places a load may have, given the loads already fixed, in the scenario's order, A before B.
func (p *panel) spots(i int) []spot {
	l := &p.s.Loads[i]
	if !hasCircuits(p.s, l.DC) {
		return legSpots(l, l.Leg, -1)
	}
	var list []spot
	for c := range p.s.Circuits {
		x := &p.s.Circuits[c]
		switch of := p.circuitLegs[c]; {
		case !mayHang(l, x):
		case !l.DC && x.Volts == volts240:
			list = append(list, spot{c, scenarios.LegBoth})
		case of == "":
			list = append(list, legSpots(l, l.Leg, c)...)
		case l.Leg == scenarios.LegAuto || l.Leg == of:
			list = append(list, spot{c, of})
		}
	}
	return list
}

// legSpots lists the legs of a load on a circuit.
func legSpots(l *scenarios.Load, leg scenarios.Leg, circuit int) []spot {
	switch {
	case l.DC:
		return []spot{{circuit, ""}}
	case leg == scenarios.LegAuto:
		return []spot{{circuit, scenarios.LegA}, {circuit, scenarios.LegB}}
	}
	return []spot{{circuit, leg}}
}

// fix puts a load in its place until undo; fits is false where its circuit does not carry it.
func (p *panel) fix(i int, at spot) (undo func(), fits bool) {
	p.setLeg(i, at.leg)
	if at.circuit < 0 {
		return func() { p.setLeg(i, "") }, true
	}
	take, fits := p.put(i, at)
	return func() { take(); p.setLeg(i, "") }, fits
}

func (p *panel) setLeg(i int, leg scenarios.Leg) {
	p.legs[i], p.shares[i] = leg, [2]float64{}
	if leg != "" {
		p.shares[i][0], p.shares[i][1] = legShares(leg)
	}
}

// open lists all loads after one as free and takes them off their legs, except those whose leg is given.
func (p *panel) open(after int) {
	p.free = p.free[:0]
	for i := after + 1; i < len(p.s.Loads); i++ {
		l := &p.s.Loads[i]
		p.setLeg(i, "")
		switch {
		case l.DC:
		case l.Leg != scenarios.LegAuto:
			p.setLeg(i, l.Leg)
		case p.named[i] >= 0 && p.s.Circuits[p.named[i]].Volts == volts240:
			p.setLeg(i, scenarios.LegBoth)
		default:
			p.free = append(p.free, i)
		}
	}
	slices.SortStableFunc(p.free, func(a, b int) int { return cmp.Compare(p.va[b], p.va[a]) })
}

// descend tries both legs for each of the free loads from a depth on, then puts all loads on circuits.
func (p *panel) descend(depth int) {
	if p.nodes >= maxNodes || !p.better && p.found != nil {
		return
	}
	peak, surge := p.legPeaks()
	if peak, surge = max(peak, p.floorPeak), max(surge, p.floorSurge); p.dull(peak, surge) {
		return
	}
	p.nodes++
	if depth == len(p.free) {
		if circuits, ok := p.pack(p.legs); ok {
			p.found = &placing{s: p.s, circuits: circuits, legs: slices.Clone(p.legs)}
			if p.better {
				p.peak, p.surge = peak, surge
			}
		}
		return
	}
	i := p.free[depth]
	legs := []scenarios.Leg{scenarios.LegA, scenarios.LegB}
	switch with := p.sameLeg(i); {
	case with != "":
		legs = []scenarios.Leg{with}
	case depth == 0 && p.better && p.mirrored:
		legs = legs[:1]
	case p.fuller(): // try the leg that has less first
		legs[0], legs[1] = legs[1], legs[0]
	}
	for _, leg := range legs {
		p.setLeg(i, leg)
		p.descend(depth + 1)
		p.setLeg(i, "")
	}
}

// dull reports whether a peak and a surge, of some loads or of all, are no better (or, where better is false, worse)
// than what is known.
func (p *panel) dull(peak, surge float64) bool {
	if !p.better {
		return !plan.AtMost(peak, p.peak) || !plan.AtMost(surge, p.surge)
	}
	return p.found != nil && plan.AtLeast(peak, p.peak) && (!plan.AtMost(peak, p.peak) || plan.AtLeast(surge, p.surge))
}

// sameLeg returns the leg of the circuit that a load names; "" where it names none, or neither the circuit nor another
// load that names it has a leg yet.
func (p *panel) sameLeg(i int) scenarios.Leg {
	c := p.named[i]
	if c < 0 {
		return ""
	}
	for j := range p.s.Loads {
		if p.named[j] == c && p.legs[j] != "" {
			return p.legs[j]
		}
	}
	return p.circuitLegs[c]
}

// fuller reports whether leg A has more on it than leg B.
func (p *panel) fuller() bool {
	a, b := 0.0, 0.0
	for i, share := range p.shares {
		a, b = a+share[0]*p.va[i], b+share[1]*p.va[i]
	}
	return a > b
}

// legPeaks returns the larger leg's peak and surge of what is on a leg so far.
func (p *panel) legPeaks() (peak, surge float64) {
	for _, on := range p.moments {
		for leg := range 2 {
			p.buf = p.buf[:0]
			for _, i := range on {
				if share := p.shares[i][leg]; share > 0 {
					p.buf = append(p.buf, part{p.lists[i], share * p.va[i], share * p.start[i]})
				}
			}
			high, start := peaks(p.buf, len(p.s.OneAtATime))
			peak, surge = max(peak, high), max(surge, start)
		}
	}
	return peak, surge
}
