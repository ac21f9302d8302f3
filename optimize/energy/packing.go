package energy

import (
	"cmp"
	"slices"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// packing puts loads, whose legs are known, on circuits that carry them.
type packing struct {
	s       *scenarios.Scenario
	lists   []int
	moments [][]int     // the loads through the inverter that are on at the busiest moments
	named   []int       // by load: the circuit it names; -1: none
	amps    [][]float64 // by circuit and load
	order   []int       // loads that need a circuit: those that name one first, then the largest first

	on          [][]int         // by circuit: the loads on it
	circuits    []int           // by load: its circuit; -1: none yet
	circuitLegs []scenarios.Leg // by circuit; "" while nothing is on it, and on the bus
	packed      []int           // the circuits that pack found
	nodes       int
}

func newPacking(s *scenarios.Scenario) *packing {
	p := &packing{s: s, lists: listOf(s), on: make([][]int, len(s.Circuits)), circuitLegs: make([]scenarios.Leg, len(s.Circuits))}
	for _, minute := range busiestMoments(s.Loads, stepMin(s.Loads)) {
		var on []int
		for i := range s.Loads {
			if l := &s.Loads[i]; !l.DC && onAt(l, minute) {
				on = append(on, i)
			}
		}
		p.moments = append(p.moments, on)
	}
	for c := range s.Circuits {
		amps := make([]float64, len(s.Loads))
		for i := range s.Loads {
			amps[i] = CircuitA(s, &s.Circuits[c], &s.Loads[i])
		}
		p.amps = append(p.amps, amps)
	}
	for i := range s.Loads {
		l := &s.Loads[i]
		p.circuits = append(p.circuits, -1)
		p.named = append(p.named, slices.IndexFunc(s.Circuits, func(c scenarios.Circuit) bool { return c.Name == l.Circuit && l.Circuit != "" }))
		if hasCircuits(s, l.DC) {
			p.order = append(p.order, i)
		}
	}
	slices.SortStableFunc(p.order, func(a, b int) int {
		return cmp.Or(min(p.named[b], 0)-min(p.named[a], 0), cmp.Compare(voltAmperes(&s.Loads[b]), voltAmperes(&s.Loads[a])))
	})
	return p
}

// pack finds circuits for the loads that are on none yet, given the legs of all loads; without legs, loads of either
// leg may be on any circuit. It returns the circuit of each load and leaves the packing as it was.
func (p *packing) pack(legs []scenarios.Leg) (circuits []int, ok bool) {
	p.packed = nil
	p.packFrom(0, legs)
	return p.packed, p.packed != nil
}

// packFrom packs the loads from a depth on.
func (p *packing) packFrom(depth int, legs []scenarios.Leg) {
	for depth < len(p.order) && p.circuits[p.order[depth]] >= 0 {
		depth++
	}
	if depth == len(p.order) {
		p.packed = slices.Clone(p.circuits)
		return
	}
	if p.nodes++; p.nodes >= maxNodes {
		return
	}
	i := p.order[depth]
	var tried []int
	for c := range p.s.Circuits {
		at := spot{circuit: c}
		if legs != nil {
			at.leg = legs[i]
		}
		if !mayHang(&p.s.Loads[i], &p.s.Circuits[c]) || at.leg != "" && p.circuitLegs[c] != "" && p.circuitLegs[c] != at.leg || p.likeOne(c, tried) {
			continue
		}
		tried = append(tried, c)
		undo, fits := p.put(i, at)
		if fits {
			p.packFrom(depth+1, legs)
		}
		if undo(); p.packed != nil {
			return
		}
	}
}

// likeOne reports whether a circuit is empty and one of the others, just as large, is empty too: trying one of the two
// is enough.
func (p *packing) likeOne(c int, others []int) bool {
	empty := func(c int) bool { return len(p.on[c]) == 0 && !slices.Contains(p.named, c) }
	x := &p.s.Circuits[c]
	return empty(c) && slices.ContainsFunc(others, func(o int) bool {
		y := &p.s.Circuits[o]
		return empty(o) && x.Volts == y.Volts && x.DeviceA == y.DeviceA
	})
}

// put puts a load on a circuit and reports whether the circuit carries what is on it then; undo takes the load off
// again.
func (p *packing) put(i int, at spot) (undo func(), fits bool) {
	c, was := at.circuit, p.circuitLegs[at.circuit]
	p.circuits[i], p.circuitLegs[c] = c, at.leg
	p.on[c] = append(p.on[c], i)
	undo = func() {
		p.circuits[i], p.circuitLegs[c] = -1, was
		p.on[c] = p.on[c][:len(p.on[c])-1]
	}
	return undo, plan.AtMost(circuitPeakA(p.s, p.lists, p.amps[c], p.on[c]), p.s.Circuits[c].DeviceA)
}
