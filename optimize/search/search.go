// Package search finds the best plans, one after the other, and proves their order: best first over nodes by
// their bounds.
package search

import (
	"container/heap"
	"context"
	"math"

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
}

// newSearch opens all cores of all supplies.
func newSearch(ctx context.Context, b *bench.Bench, by question.By) *search {
	s := &search{b: b, by: by, worst: math.Inf(1)}
	if len(b.Reasons) > 0 {
		return s
	}
	s.o = bound.New(b)
	s.rest = s.o.RestBy(by)
	for v := range b.Supplies {
		if b.MayServe(&b.Supplies[v]) {
			s.openSupply(ctx, v)
		}
	}
	return s
}

func (s *search) add(n *node) {
	if n.score <= s.worst {
		heap.Push(&s.nodes, n)
	}
}

// admit adds the node of one core if it serves the loads, has what is to be kept and may stand.
func (s *search) admit(c bench.Core, f bound.Figures) {
	if s.b.Keeps(&c) && !s.o.Hopeless(f) && s.o.Serves(&c, f) && (s.by != question.ByLife || f.Aged) && !s.b.Tips.Over(s.b.Steadiest(&c)) {
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
