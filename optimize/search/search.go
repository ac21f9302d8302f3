// Package search finds the best plans, one after the other, and proves their order: a best-first search over sets of
// cores by their bounds.
package search

import (
	"container/heap"
	"context"
	"math"
	"sort"

	"cartwright/optimize/bench"
	"cartwright/optimize/bound"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// search has the open nodes of a search.
type search struct {
	b     *bench.Bench
	o     *bound.Bounds
	rest  *bound.Rest
	by    question.By
	nodes nodeHeap
	cells int
	round int // of a series, from 1 on: how often its limits were set; 0: no series
	// worst is the score beyond which nothing is kept: that of the last plan asked for, once so many
	// different ones are known.
	worst float64
	room  int // how many nodes may be open at once
	// dropped is the least score of the nodes dropped for want of room: plans of that score or more are not proved.
	dropped float64
}

// mostNodes is how many nodes may be open at once: about 100 MB.
const mostNodes = 400_000

// newSearch adds a node for each supply, in a search for so many plans.
func newSearch(ctx context.Context, b *bench.Bench, by question.By, plans int) *search {
	s := unopened(b, by, plans)
	s.openAll(ctx)
	return s
}

// openAll adds a node for each supply.
func (s *search) openAll(ctx context.Context) {
	if s.o == nil {
		return
	}
	for v := range s.b.Supplies {
		if s.b.MayServe(&s.b.Supplies[v]) {
			s.openSupply(ctx, v)
		}
	}
}

// unopened returns a search without any nodes. Its bounds are nil where the catalogue has nothing for some part of a plan.
func unopened(b *bench.Bench, by question.By, plans int) *search {
	s := &search{b: b, by: by, worst: math.Inf(1), dropped: math.Inf(1), room: mostNodes}
	if len(b.Reasons) == 0 {
		s.o = bound.New(b)
		s.rest = s.o.RestBy(by, plans)
	}
	return s
}

// add adds a node, unless it is worse than every plan asked for.
func (s *search) add(n *node) {
	if n.score > s.worst {
		return
	}
	n.round = s.round
	s.put(n)
}

// put adds a node as it is.
func (s *search) put(n *node) {
	heap.Push(&s.nodes, n)
	if len(s.nodes) > s.room {
		s.makeRoom()
	}
}

// makeRoom drops the worse half of the open nodes, but no plan.
func (s *search) makeRoom() {
	sort.Sort(s.nodes) // a sorted slice is a heap, too
	kept := s.nodes[:0]
	for i, n := range s.nodes {
		switch {
		case n.kind == planNode || i < s.room/2:
			kept = append(kept, n)
		case n.score <= s.worst:
			s.dropped = math.Min(s.dropped, n.score)
		}
	}
	clear(s.nodes[len(kept):])
	s.nodes = kept
}

// lost reports whether a node was dropped whose score is at most that of a plan.
func (s *search) lost(score float64) bool {
	return !math.IsInf(s.dropped, 1) && s.dropped <= math.Min(score, s.worst)
}

// admit adds the node of one core if it serves the loads, has what is to be kept and is not certain to tip.
func (s *search) admit(c bench.Core, f bound.Figures) {
	if s.b.Keeps(&c) && !s.o.Hopeless(f) && s.o.Serves(&c, f) && s.lives(&c, f) && !s.b.Tips.Over(s.b.Steadiest(&c)) {
		s.add(&node{score: s.coreScore(f), kind: coreNode, core: c, owed: market.Nobodys})
	}
}

// coreScore returns a score that no plan of one core can beat.
func (s *search) coreScore(f bound.Figures) float64 {
	switch s.by {
	case question.ByMass:
		return choice.RoundMass(f.Kg)
	case question.ByEnergy:
		return -roundWh(f.UsableWh)
	case question.ByLife:
		return bound.PerLifetimeKWh(f.Cents-s.b.RoundingCents, f.LifeWh)
	}
	return f.Cents - s.b.RoundingCents
}

// planScore returns the score of a finished plan.
func (s *search) planScore(p *plan.Plan) (first, second float64) {
	switch s.by {
	case question.ByMass:
		return choice.RoundMass(p.MassKg), float64(p.Cost)
	case question.ByEnergy:
		return -roundWh(1000 * p.UsableKWh), float64(p.Cost)
	case question.ByLife:
		return p.CostPerLifetimeKWh, choice.RoundMass(p.MassKg)
	}
	return float64(p.Cost), choice.RoundMass(p.MassKg)
}

// lackWh returns the usable energy that a core with usableWh lacks, less the tolerance of the limit. What the year needs
// takes long to find, so it is left out until the core has a string.
func (s *search) lackWh(c *bench.Core, usableWh float64) float64 {
	need := s.b.Supplies[c.Supply].NeedWh
	if len(c.Strings) > 0 {
		need = s.b.StoreWh(c.Supply)
	}
	return need*(1-2*plan.Tolerance) - usableWh
}

// roundWh takes the rounding of sums out of energies that are compared: a thousandth of a Wh.
func roundWh(wh float64) float64 { return math.Round(wh*1000) / 1000 }
