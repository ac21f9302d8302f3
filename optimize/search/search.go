// Package search finds the best plans, one after the other, and proves their order: best first over nodes by
// their bounds.
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

// search looks for the best plans, one after the other.
type search struct {
	b     *bench.Bench
	o     *bound.Bounds
	rest  *bound.Rest
	by    question.By
	nodes nodeHeap
	cells int
	// worst is the score beyond which nothing is kept: that of the last plan asked for, once as many
	// different ones are known.
	worst float64
	room  int // nodes that may be open at once
	// dropped is the least score of the nodes that there was no room for: what scores as much is not proved.
	dropped float64
}

// mostNodes is how many nodes may be open at once: about 100 MB.
const mostNodes = 400_000

// newSearch opens all cores of all supplies, for so many plans, until the context ends.
func newSearch(ctx context.Context, b *bench.Bench, by question.By, plans int) *search {
	s := unopened(b, by, plans)
	if s.o == nil {
		return s
	}
	for v := range b.Supplies {
		if b.MayServe(&b.Supplies[v]) {
			s.openSupply(ctx, v)
		}
	}
	return s
}

// unopened is a search among no cores yet. It knows no bounds where the catalogue has nothing for some need.
func unopened(b *bench.Bench, by question.By, plans int) *search {
	s := &search{b: b, by: by, worst: math.Inf(1), dropped: math.Inf(1), room: mostNodes}
	if len(b.Reasons) == 0 {
		s.o = bound.New(b)
		s.rest = s.o.RestBy(by, plans)
	}
	return s
}

// add puts a node among the open ones, unless it is worse than all that is asked for.
func (s *search) add(n *node) {
	if n.score > s.worst {
		return
	}
	heap.Push(&s.nodes, n)
	if len(s.nodes) > s.room {
		s.makeRoom()
	}
}

// makeRoom drops the worst of the open nodes, but no plan that is found.
func (s *search) makeRoom() {
	sort.Sort(s.nodes) // which is in the order of a heap, too
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

// lost reports whether something may be missing that scores no more than a plan.
func (s *search) lost(score float64) bool {
	return !math.IsInf(s.dropped, 1) && s.dropped <= math.Min(score, s.worst)
}

// admit adds the node of one core if it serves the loads, has what is to be kept and may stand.
func (s *search) admit(c bench.Core, f bound.Figures) {
	if s.b.Keeps(&c) && !s.o.Hopeless(f) && s.o.Serves(&c, f) && s.lives(&c, f) && !s.b.Tips.Over(s.b.Steadiest(&c)) {
		s.add(&node{score: s.coreScore(f), kind: coreNode, core: c, owed: market.Nobodys})
	}
}

// coreScore returns what no plan of one core can be below.
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

// lackWh returns the usable energy that a core lacks which has so much, short of what need not be met to the letter. What
// the year asks for is looked into once a supply is worth a string.
func (s *search) lackWh(c *bench.Core, usableWh float64) float64 {
	need := s.b.Supplies[c.Supply].NeedWh
	if len(c.Strings) > 0 {
		need = s.b.StoreWh(c.Supply)
	}
	return need*(1-2*plan.Tolerance) - usableWh
}

// roundWh takes the rounding of sums out of energies that are compared: a thousandth of a Wh.
func roundWh(wh float64) float64 { return math.Round(wh*1000) / 1000 }
