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
	bound.Cell
	base  float64 // least kg or cents of the node's strings and of what any core with further ones needs besides
	next  bound.Child
	after []bound.Child // that come after the next, where they are known
	look  int           // how many to look for
}

// mostLook is how many children of a cell are looked for at once, after one, two, four ...: most cells have few that are
// ever needed.
const mostLook = 32

// openSupply adds the node of all cores of a supply; with a score of -Inf where the context has ended.
func (s *search) openSupply(ctx context.Context, v int) {
	n := &node{score: math.Inf(-1), kind: supplyNode, core: bench.Core{Supply: v}}
	if ctx.Err() == nil {
		n.score = s.supplyScore(&n.core)
	}
	s.add(n)
}

// supplyScore returns the score of all cores of a supply, by the cheapest energy of any group.
func (s *search) supplyScore(c *bench.Core) float64 {
	if s.by != question.ByCost && s.by != question.ByMass {
		return math.Inf(-1)
	}
	least := math.Inf(1)
	for _, g := range s.rest.Groups() {
		least = math.Min(least, s.rest.Least(c.Supply, g, s.lackWh(c, 0)))
	}
	return s.cellScore(s.baseOf(s.o.Of(c)) + least)
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
	n := &node{kind: openNode, core: c, cell: &cell{Cell: bound.Cell{From: from}}}
	if s.measure(n) && s.advance(n) {
		s.add(n)
	}
}

// measure finds what a cell lacks and what its children add to, and reports whether it can have a plan. The first child
// is next.
func (s *search) measure(n *node) bool {
	c, x := &n.core, n.cell
	further := s.rest.Members(c.Group, x.From)
	if len(further) == 0 {
		return false
	}
	x.LackWh = s.lackWh(c, s.usableWh(c))
	more := s.rest.Further(c, x.From, x.LackWh)
	f := s.o.With(c, &more)
	if s.o.Hopeless(f) || s.b.TipsWith(c, further) { // neither cost nor mass shrinks with further strings
		return false
	}
	x.Room = s.rest.RoomOf(c.Group, x.LackWh, s.o.RoomKg(f)+more.Kg) // the children add what is more
	x.base, x.next, x.after, x.look = s.baseOf(f), bound.First, nil, 1
	if s.by == question.ByMass {
		x.base -= more.Kg
	}
	return true
}

// advance gives an open node the score of its next child, if it has one that can be within the budget.
func (s *search) advance(n *node) bool {
	x := n.cell
	switch s.by {
	case question.ByLife, question.ByEnergy:
		// The members come in the order of what they add, so the next one bounds the rest of the cell.
		at := max(x.From, x.next.Position+1)
		if at >= len(s.rest.Members(n.core.Group, 0)) {
			return false
		}
		x.next.Position = at
		f := s.o.Of(&n.core)
		if s.by == question.ByLife {
			n.score = s.rest.LifeScore(&n.core, at, f)
		} else {
			n.score = -s.rest.MostUsableWh(&n.core, at, f)
		}
	default:
		if len(x.after) == 0 {
			x.after = s.rest.Next(&n.core, &x.Cell, x.next, x.look)
			x.look = min(2*x.look, mostLook)
		}
		if len(x.after) == 0 || math.IsInf(x.after[0].Adds, 1) || s.by == question.ByCost && s.o.Dear(x.base+x.after[0].Adds) {
			return false
		}
		x.next, x.after = x.after[0], x.after[1:]
		n.score = s.cellScore(x.base + x.next.Adds)
	}
	return true
}

// expand takes the next child of a cell, the core with one string more: it adds that core, and the cell of those with
// further strings.
func (s *search) expand(n *node) {
	at := n.cell.next.Position
	s.took(n, at)
	j := s.rest.Members(n.core.Group, at)[0]
	stack := s.b.Groups[n.core.Group][j]
	if n.core.Count(j) < s.b.Stacks[stack].Most && s.rest.Pairs(n.core.Supply, stack) {
		c := n.core.With(j)
		if f := s.o.Of(&c); !s.o.Hopeless(f) {
			s.open(c, at)
			s.admit(c, f)
		}
	}
	if s.advance(n) {
		s.add(n)
	}
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
