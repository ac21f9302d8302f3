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
	by    question.By
	nodes nodeHeap
	cells int
	// worst is the score beyond which nothing is kept: that of the last plan asked for, once as many
	// different ones are known.
	worst float64
}

// newSearch opens all cores of all supplies and groups, until the context ends.
func newSearch(ctx context.Context, b *bench.Bench, by question.By) *search {
	s := &search{b: b, by: by, worst: math.Inf(1)}
	if len(b.Reasons) > 0 {
		return s
	}
	s.o = bound.New(b)
	for v := range b.Supplies {
		if !b.MayServe(&b.Supplies[v]) {
			continue
		}
		for g, members := range b.Groups {
			if ctx.Err() != nil {
				return s
			}
			c := bench.Core{Supply: v, Group: g}
			must, ok := b.MustStack(members)
			if !ok {
				continue
			}
			if must >= 0 {
				// One string of it is there from the start; the further ones are added in the usual order.
				c = c.With(must)
				s.admit(c, s.o.Of(&c))
			}
			s.open(c, 0, s.o.Of(&c))
		}
	}
	return s
}

// open adds the node of all cores with at least the strings of c, unless there can be no plan in it.
func (s *search) open(c bench.Core, last int, f bound.Figures) {
	if s.o.Hopeless(f) || s.b.TipsWith(&c, last) { // neither cost nor mass shrinks with further strings
		return
	}
	cents, kg := s.o.Missing(&c, last, s.needWh(&c)-f.UsableWh)
	whole := f
	whole.Cents = f.OpenCents + cents
	whole.Kg += kg
	if s.o.Hopeless(whole) {
		return
	}
	score := s.coreScore(whole)
	switch s.by {
	case question.ByLife:
		score = s.o.LifeScore(&c, last, f)
	case question.ByEnergy:
		score = -s.o.MostUsableWh(&c, last, f)
	}
	s.add(&node{score: score, kind: openNode, core: c, last: last})
}

func (s *search) add(n *node) {
	if n.score <= s.worst {
		heap.Push(&s.nodes, n)
	}
}

// expand replaces an open node by those with one string more. Where the context ends in between, the node stays among
// them, since it bounds what was not reached.
func (s *search) expand(ctx context.Context, n *node) {
	members := s.b.Groups[n.core.Group]
	for j := n.last; j < len(members); j++ {
		if ctx.Err() != nil {
			s.add(n)
			return
		}
		if n.core.Count(j) >= s.b.Stacks[members[j]].Most {
			continue
		}
		c := n.core.With(j)
		f := s.o.Of(&c)
		if s.o.Hopeless(f) {
			continue
		}
		s.open(c, j, f)
		s.admit(c, f)
	}
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

// needWh returns the usable energy that a core has at the least. What the year asks for is looked into once a supply is
// worth a string.
func (s *search) needWh(c *bench.Core) float64 {
	if len(c.Strings) == 0 {
		return s.b.Supplies[c.Supply].NeedWh
	}
	return s.b.StoreWh(c.Supply)
}

// roundWh takes the rounding of sums out of energies that are compared: a thousandth of a Wh.
func roundWh(wh float64) float64 { return math.Round(wh*1000) / 1000 }
