package energy

import (
	"cmp"
	"encoding/binary"
	"math"
	"slices"

	"cartwright/scenarios"
)

// maxNodes bounds how many partial assignments of "auto" loads are looked into, in the search for the
// least peak and again in the search for the first assignment that has it. Assignments that put the
// same watts on the legs are looked into once, so that with watts in whole tens or hundreds any list
// a cart can carry is settled long before; a list of some twenty loads of unrelated odd watts may not
// be. Past the bound the best assignment found stands (the first one found puts the largest load
// first, each where the peak grows least) and Demand.LegsProven is false.
const maxNodes = 1 << 17

// peakTie is the relative difference up to which two peaks are the same: far above what rounding adds
// in a sum of watts, far below a watt.
const peakTie = 1e-9

// assignLegs returns a leg for each load: its own, or for an "auto" load the one chosen, and whether
// the choice is proved to have the least larger-leg peak over the day. A load on the bus has no leg: "".
//
//	least over the assignments of  max over t of max(peak A_t, peak B_t)
//
// Among equally good assignments it is the first by the loads' order, A before B. Exact: branch and
// bound; the lower bound of a leg is half of all that is on together.
func assignLegs(loads []scenarios.Load, stepMin int) (legs []scenarios.Leg, proven bool) {
	legs = make([]scenarios.Leg, len(loads))
	var auto []int
	for i := range loads {
		if loads[i].DC {
			continue
		}
		if legs[i] = loads[i].Leg; legs[i] == scenarios.LegAuto {
			auto = append(auto, i)
		}
	}
	moments := busiestMoments(loads, stepMin)
	chosen := leastPeak(loads, auto, moments)
	proven = chosen.nodes < maxNodes
	if first := firstWithin(loads, auto, moments, chosen.peak*(1+peakTie)); first.best != nil {
		chosen = first
	}
	for k, i := range chosen.order {
		legs[i] = chosen.best[k]
	}
	return legs, proven
}

// leastPeak searches for an assignment of the auto loads with the least peak, largest load first. It
// has looked into maxNodes if what it found is not proved.
func leastPeak(loads []scenarios.Load, auto, moments []int) *legSearch {
	bySize := slices.Clone(auto)
	slices.SortStableFunc(bySize, func(a, b int) int { return cmp.Compare(peakW(&loads[b]), peakW(&loads[a])) })
	s := newLegSearch(loads, bySize, moments)
	s.after = func(peak float64) float64 { return peak * (1 - peakTie) }
	s.cheapFirst = true
	s.run(math.Inf(1))
	return s
}

// firstWithin searches for the first assignment of the auto loads, in their order with A before B, that
// has a peak of at most limit. Its best is nil if none was found within maxNodes.
func firstWithin(loads []scenarios.Load, auto, moments []int, limit float64) *legSearch {
	s := newLegSearch(loads, auto, moments)
	s.after = func(float64) float64 { return -1 } // no peak is below 0: the first one ends it
	s.run(limit)
	return s
}

// busiestMoments returns minutes of the day at which the sets of loads through the inverter that are on
// hold all such sets of the day: at any other minute a part of one of these sets is on.
func busiestMoments(loads []scenarios.Load, stepMin int) []int {
	var moments []int
	within := func(a, b int) bool { // what is on at a is on at b
		for i := range loads {
			if !loads[i].DC && onAt(&loads[i], a) && !onAt(&loads[i], b) {
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

// legSearch is a depth-first search through the assignments of some loads, in a given order.
type legSearch struct {
	order      []int       // the auto loads, as indices of the load list
	watts      [][]float64 // of the load at each depth, at each moment
	legA, legB [][]float64 // at each depth, at each moment: fixed loads and those placed so far
	floor      float64     // half of all that is on together, at the busiest moment
	cheapFirst bool        // try the leg first where the peak grows less; else A first
	after      func(peak float64) float64

	limit float64         // assignments with a higher peak are of no interest
	nodes int             // looked into
	seen  map[string]bool // leg A at a depth: what is below was searched
	legs  []scenarios.Leg
	best  []scenarios.Leg // by depth; nil: none found
	peak  float64         // of best
}

// newLegSearch prepares a search over the auto loads in the given order.
func newLegSearch(loads []scenarios.Load, order, moments []int) *legSearch {
	s := &legSearch{order: order, seen: map[string]bool{}, legs: make([]scenarios.Leg, len(order))}
	for range len(order) + 1 {
		s.legA = append(s.legA, make([]float64, len(moments)))
		s.legB = append(s.legB, make([]float64, len(moments)))
	}
	for _, i := range order {
		w := make([]float64, len(moments))
		for m, minute := range moments {
			if onAt(&loads[i], minute) {
				w[m] = peakW(&loads[i])
			}
		}
		s.watts = append(s.watts, w)
	}
	for m, minute := range moments {
		total := 0.0
		for i := range loads {
			l := &loads[i]
			if l.DC || !onAt(l, minute) {
				continue
			}
			total += peakW(l)
			switch l.Leg {
			case scenarios.LegA:
				s.legA[0][m] += peakW(l)
			case scenarios.LegB:
				s.legB[0][m] += peakW(l)
			case scenarios.LegBoth:
				s.legA[0][m] += peakW(l) / 2
				s.legB[0][m] += peakW(l) / 2
			}
		}
		s.floor = max(s.floor, total/2)
	}
	return s
}

// run searches for assignments with a peak of at most limit; after each one found the limit becomes
// s.after(its peak).
func (s *legSearch) run(limit float64) {
	s.limit = limit
	s.descend(0)
}

func (s *legSearch) descend(depth int) {
	peak := max(largest(s.legA[depth]), largest(s.legB[depth]))
	if max(peak, s.floor) > s.limit || s.nodes >= maxNodes {
		return
	}
	s.nodes++
	if depth == len(s.order) {
		s.best, s.peak = append([]scenarios.Leg{}, s.legs...), peak
		s.limit = s.after(peak)
		return
	}
	state := s.state(depth)
	if s.seen[state] {
		return
	}
	s.seen[state] = true
	order := [2]scenarios.Leg{scenarios.LegA, scenarios.LegB}
	if s.cheapFirst && s.peakWith(depth, s.legB) < s.peakWith(depth, s.legA) {
		order[0], order[1] = order[1], order[0]
	}
	for _, leg := range order {
		s.place(depth, leg)
		s.descend(depth + 1)
	}
}

// peakWith returns the peak of one leg if the load at a depth goes there.
func (s *legSearch) peakWith(depth int, leg [][]float64) float64 {
	peak := 0.0
	for m, w := range s.watts[depth] {
		peak = max(peak, leg[depth][m]+w)
	}
	return peak
}

// place puts the load at a depth on a leg: the legs at depth+1 are those at depth and the load.
func (s *legSearch) place(depth int, leg scenarios.Leg) {
	s.legs[depth] = leg
	copy(s.legA[depth+1], s.legA[depth])
	copy(s.legB[depth+1], s.legB[depth])
	to := s.legA[depth+1]
	if leg == scenarios.LegB {
		to = s.legB[depth+1]
	}
	for m, w := range s.watts[depth] {
		to[m] += w
	}
}

// state returns a key of what the search below a depth depends on. Leg B needs no mention: it has what
// of the loads placed so far leg A has not.
func (s *legSearch) state(depth int) string {
	key := binary.LittleEndian.AppendUint64(nil, uint64(depth))
	for _, w := range s.legA[depth] {
		key = binary.LittleEndian.AppendUint64(key, math.Float64bits(w))
	}
	return string(key)
}
