package search

import (
	"context"
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/bound"
	"cartwright/optimize/question"
)

// cell is the cores an open node still stands for: those with the node's strings and one or more further ones of the
// members from a position on. Its children are made one by one, the one that may be cheapest first, so most of a large
// catalogue is never looked at.
type cell struct {
	from   int
	base   float64 // least kg or cents of the node's strings and of what any core with further ones needs besides
	lackWh float64 // usable energy that is missing
	next   bound.Child
}

// openSupply adds the node of all cores of a supply, scored by the cheapest energy of any group; with a score of -Inf
// where the context has ended.
func (s *search) openSupply(ctx context.Context, v int) {
	c := bench.Core{Supply: v}
	score := math.Inf(-1)
	if ctx.Err() == nil && (s.by == question.ByCost || s.by == question.ByMass) {
		least := math.Inf(1)
		for _, g := range s.rest.Groups() {
			least = math.Min(least, s.rest.Least(g, s.lackWh(&c, 0)))
		}
		f := s.o.Of(&c)
		score = s.cellScore(s.baseOf(f) + least)
	}
	s.add(&node{score: score, kind: supplyNode, core: c})
}

// openGroups replaces the node of a supply by those of its groups. If the context ends meanwhile, the node is kept as
// well, since it bounds what was not reached.
func (s *search) openGroups(ctx context.Context, n *node) {
	for _, g := range s.rest.Groups() {
		if ctx.Err() != nil {
			s.add(n)
			return
		}
		c := bench.Core{Supply: n.core.Supply, Group: g}
		must, ok := s.b.MustStack(s.b.Groups[g])
		if !ok {
			continue
		}
		if must >= 0 {
			// One string of it is there from the start; further ones are added in the usual order.
			c = c.With(must)
			s.admit(c, s.o.Of(&c))
		}
		s.open(c, 0)
	}
}

// open adds the node of all cores with the strings of c and further ones from a position on, unless it can have no plan.
func (s *search) open(c bench.Core, from int) {
	n := &node{kind: openNode, core: c, cell: &cell{from: from, lackWh: s.lackWh(&c, s.usableWh(&c)), next: bound.First}}
	further := s.rest.Members(c.Group, from)
	if len(further) == 0 {
		return
	}
	more := s.rest.Further(&c, from, n.cell.lackWh)
	f := s.o.With(&c, &more)
	if s.o.Hopeless(f) || s.b.TipsWith(&c, further) { // neither cost nor mass shrinks with further strings
		return
	}
	n.cell.base = s.baseOf(f)
	if s.by == question.ByMass {
		n.cell.base -= more.Kg // the children add it
	}
	s.advance(n)
}

// advance puts an open node back with the score of its next child, if it has one that can be within the budget.
func (s *search) advance(n *node) {
	x := n.cell
	switch s.by {
	case question.ByLife, question.ByEnergy:
		// The members come in the order of what they add, so the next one bounds the rest of the cell.
		at := max(x.from, x.next.Position+1)
		if at >= len(s.rest.Members(n.core.Group, 0)) {
			return
		}
		x.next.Position = at
		f := s.o.Of(&n.core)
		if s.by == question.ByLife {
			n.score = s.rest.LifeScore(&n.core, at, f)
		} else {
			n.score = -s.rest.MostUsableWh(&n.core, at, f)
		}
	default:
		next, ok := s.rest.Next(&n.core, x.from, x.lackWh, x.next)
		if !ok || math.IsInf(next.Adds, 1) || s.by == question.ByCost && s.o.Dear(x.base+next.Adds) {
			return
		}
		x.next = next
		n.score = s.cellScore(x.base + next.Adds)
	}
	s.add(n)
}

// expand takes the next child of a cell, the core with one string more: it adds that core, and the cell of those with
// further strings.
func (s *search) expand(n *node) {
	at := n.cell.next.Position
	j := s.rest.Members(n.core.Group, at)[0]
	if n.core.Count(j) < s.b.Stacks[s.b.Groups[n.core.Group][j]].Most {
		c := n.core.With(j)
		if f := s.o.Of(&c); !s.o.Hopeless(f) {
			s.open(c, at)
			s.admit(c, f)
		}
	}
	s.advance(n)
}

// baseOf returns the kg of figures where plans are ranked by mass, else the cents.
func (s *search) baseOf(f bound.Figures) float64 {
	if s.by == question.ByMass {
		return f.Kg
	}
	return f.OpenCents
}

// cellScore returns the score of cores that weigh or cost at least least.
func (s *search) cellScore(least float64) float64 {
	const hair = 1e-6 // kg or cents: the same terms in another order may round differently
	if s.by != question.ByMass {
		least -= s.b.RoundingCents
	}
	return least - hair
}

// usableWh returns the usable energy of the strings of a core.
func (s *search) usableWh(c *bench.Core) float64 {
	wh := 0.0
	for _, h := range c.Strings {
		wh += float64(h.N) * s.b.Stacks[s.b.Groups[c.Group][h.Member]].UsableWh
	}
	return wh
}
