package energy

import (
	"cmp"
	"encoding/binary"
	"math"
	"slices"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// maxNodes bounds how many partial placings are tried, in the search for the best and again in the search for the
// first that is as good. Placings that put the same watts on the legs are tried once, so with watts in whole tens or
// hundreds any list a cart can carry is done long before; a list of some twenty loads of unrelated odd watts may not
// be. Past the bound the best placing found is used and Demand.LegsProven is false.
const maxNodes = 1 << 17

// placer searches for a placing where there are no circuits, depth first: at each depth a load is put on a leg.
type placer struct {
	s       *scenarios.Scenario
	lists   []int
	order   []int // loads, as indices of the load list
	moments []int // see busiestMoments

	now   placing
	nodes int
	seen  map[string]bool
	floor float64 // half of all that is on together, at the busiest moment

	bySize      bool    // look for the best, largest load first; else for the first in the scenario's order that is as good
	peak, surge float64 // of the best found, or the most allowed
	found       *placing
	done        bool
}

func newPlacer(s *scenarios.Scenario, bySize bool) *placer {
	p := &placer{s: s, lists: listOf(s), bySize: bySize, seen: map[string]bool{},
		peak: math.Inf(1), surge: math.Inf(1)}
	p.now = placing{s: s, circuits: make([]int, len(s.Loads)), legs: make([]scenarios.Leg, len(s.Loads))}
	for i := range s.Loads {
		p.now.circuits[i] = -1
		p.order = append(p.order, i)
	}
	if bySize {
		slices.SortStableFunc(p.order, func(a, b int) int {
			return cmp.Or(p.freedom(a)-p.freedom(b), cmp.Compare(voltAmperes(&s.Loads[b]), voltAmperes(&s.Loads[a])))
		})
	}
	p.moments = busiestMoments(s.Loads, stepMin(s.Loads))
	for _, minute := range p.moments {
		var parts []part
		for i := range s.Loads {
			if l := &s.Loads[i]; !l.DC && onAt(l, minute) {
				parts = append(parts, part{list: p.lists[i], amount: voltAmperes(l)})
			}
		}
		peak, _ := peaks(parts, len(s.OneAtATime))
		p.floor = max(p.floor, peak/2)
	}
	return p
}

// freedom returns 1 for a load whose leg is open and 0 for others, which are placed first.
func (p *placer) freedom(i int) int {
	l := &p.s.Loads[i]
	switch {
	case l.DC, l.Leg != scenarios.LegAuto:
		return 0
	}
	return 1
}

func (p *placer) run() { p.descend(0) }

// within searches for the first placing, in the scenario's order, that has no more than a peak and a surge.
func (p *placer) within(peak, surge float64) {
	p.peak, p.surge = peak, surge
	p.descend(0)
}

// descend places the loads from a depth on.
func (p *placer) descend(depth int) {
	if p.done || p.nodes >= maxNodes {
		return
	}
	peak, surge := p.legPeaks()
	peak, surge = max(peak, p.floor), max(surge, p.floor)
	if p.worse(peak, surge) {
		return
	}
	p.nodes++
	if depth == len(p.order) {
		kept := p.now
		kept.circuits, kept.legs = slices.Clone(p.now.circuits), slices.Clone(p.now.legs)
		p.found, p.peak, p.surge = &kept, peak, surge
		p.done = !p.bySize
		return
	}
	state := p.state(depth)
	if p.seen[state] {
		return
	}
	p.seen[state] = true
	i := p.order[depth]
	for _, leg := range p.legsFor(i) {
		p.now.legs[i] = leg
		p.descend(depth + 1)
		p.now.legs[i] = ""
	}
}

// worse reports whether a partial placing can no longer become what is looked for: one better than the best found, or
// one within the peak and surge allowed.
func (p *placer) worse(peak, surge float64) bool {
	if !p.bySize {
		return !plan.AtMost(peak, p.peak) || !plan.AtMost(surge, p.surge)
	}
	if p.found == nil {
		return false
	}
	if !plan.AtLeast(peak, p.peak) {
		return false
	}
	return !plan.AtMost(peak, p.peak) || plan.AtLeast(surge, p.surge)
}

// legsFor lists the legs a load may go on: A before B, but in the search for the best the leg that would have less
// comes first.
func (p *placer) legsFor(i int) []scenarios.Leg {
	l := &p.s.Loads[i]
	switch {
	case l.DC:
		return []scenarios.Leg{""}
	case l.Leg != scenarios.LegAuto:
		return []scenarios.Leg{l.Leg}
	case p.bySize && p.legWith(i, scenarios.LegB) < p.legWith(i, scenarios.LegA):
		return []scenarios.Leg{scenarios.LegB, scenarios.LegA}
	}
	return []scenarios.Leg{scenarios.LegA, scenarios.LegB}
}

// legWith returns the peak of a leg if a load that is not placed yet goes there.
func (p *placer) legWith(i int, leg scenarios.Leg) float64 {
	p.now.legs[i] = leg
	defer func() { p.now.legs[i] = "" }()
	most := 0.0
	for _, minute := range p.moments {
		if !onAt(&p.s.Loads[i], minute) {
			continue
		}
		var parts []part
		for j := range p.s.Loads {
			if l := &p.s.Loads[j]; !l.DC && p.now.legs[j] != "" && onAt(l, minute) {
				a, b := legShares(p.now.legs[j])
				if leg == scenarios.LegA {
					b = a
				}
				parts = append(parts, part{list: p.lists[j], amount: b * voltAmperes(l)})
			}
		}
		peak, _ := peaks(parts, len(p.s.OneAtATime))
		most = max(most, peak)
	}
	return most
}

// legPeaks returns the larger leg's peak and surge with what is placed so far.
func (p *placer) legPeaks() (peak, surge float64) {
	for _, minute := range p.moments {
		var legA, legB []part
		for i := range p.s.Loads {
			l := &p.s.Loads[i]
			if l.DC || p.now.legs[i] == "" || !onAt(l, minute) {
				continue
			}
			a, b := legShares(p.now.legs[i])
			whole := part{list: p.lists[i], amount: voltAmperes(l), start: startVA(l)}
			legA, legB = append(legA, whole.times(a)), append(legB, whole.times(b))
		}
		for _, leg := range [][]part{legA, legB} {
			high, start := peaks(leg, len(p.s.OneAtATime))
			peak, surge = max(peak, high), max(surge, start)
		}
	}
	return peak, surge
}

// state returns a key of what the search below a depth depends on: for each leg and moment what is on it.
func (p *placer) state(depth int) string {
	key := binary.LittleEndian.AppendUint64(nil, uint64(depth))
	if len(p.s.OneAtATime) > 0 {
		for k := range depth { // with lists, sums do not do: the key is the leg of each load
			key = append(key, p.now.legs[p.order[k]]...)
			key = append(key, ' ')
		}
		return string(key)
	}
	for _, minute := range p.moments {
		// What leg B carries follows from what leg A does, except its largest start.
		sum, startA, startB := 0.0, 0.0, 0.0
		for k := range depth {
			i := p.order[k]
			l := &p.s.Loads[i]
			switch {
			case !onAt(l, minute):
			case p.now.legs[i] == scenarios.LegA:
				sum += voltAmperes(l)
				startA = max(startA, startVA(l))
			case p.now.legs[i] == scenarios.LegB:
				startB = max(startB, startVA(l))
			}
		}
		for _, x := range []float64{sum, startA, startB} {
			key = binary.LittleEndian.AppendUint64(key, math.Float64bits(x))
		}
	}
	return string(key)
}

// busiestMoments returns minutes of the day that matter for peaks: at any other minute, the loads that are on are all
// on at one of these too.
func busiestMoments(loads []scenarios.Load, stepMin int) []int {
	var moments []int
	within := func(a, b int) bool { // what is on at a is on at b
		for i := range loads {
			if onAt(&loads[i], a) && !onAt(&loads[i], b) {
				return false
			}
		}
		return true
	}
	for minute := 0; minute < dayMin; minute += stepMin {
		covered := false
		for _, m := range moments {
			if within(minute, m) {
				covered = true
				break
			}
		}
		if covered {
			continue
		}
		kept := moments[:0]
		for _, m := range moments {
			if !within(m, minute) {
				kept = append(kept, m)
			}
		}
		moments = append(kept, minute)
	}
	return moments
}
