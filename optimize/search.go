package optimize

import (
	"container/heap"
	"math"

	"cartwright/optimize/plan"
)

// The search is best first. A node is a set of cores with a score that no plan among them can beat:
//
//   - an open node: all cores with at least these strings, further ones of the members from last on;
//   - a core node: one core, to be solved as an integer program;
//   - a plan node: a solved core; its score is exact.
//
// When a plan node comes first, nothing that is left can hold a better plan: it is the next in rank.

type nodeKind int

const (
	openNode nodeKind = iota
	coreNode
	planNode
)

type node struct {
	score float64
	kind  nodeKind
	core  core
	last  int
	// levels of shipping that are decided for a core node, by vendor; nil: none yet.
	levels []int
	// owed is the vendor to decide next, of a core node that was solved at open vendors; else nobody.
	owed  int
	found *found // of a plan node, and of a core node that was solved
}

// found is a solved core.
type found struct {
	plan    plan.Plan
	choice  choice
	first   float64 // the program's own first figure, unrounded
	second  float64 // what ties are broken by
	settled bool    // the second figure is the least it can be at the first
	proved  bool
}

// nodeHeap has the node of the best score first.
type nodeHeap []*node

func (f nodeHeap) Len() int { return len(f) }

func (f nodeHeap) Less(i, j int) bool {
	a, b := f[i], f[j]
	if a.score != b.score {
		return a.score < b.score
	}
	if a.kind != b.kind {
		return a.kind < b.kind
	}
	if a.kind == planNode && a.found.second != b.found.second {
		return a.found.second < b.found.second
	}
	return a.core.before(&b.core)
}

func (f nodeHeap) Swap(i, j int) { f[i], f[j] = f[j], f[i] }

func (f *nodeHeap) Push(x any) { *f = append(*f, x.(*node)) }

func (f *nodeHeap) Pop() any {
	old := *f
	n := old[len(old)-1]
	old[len(old)-1] = nil
	*f = old[:len(old)-1]
	return n
}

// search looks for the best plans, one after the other.
type search struct {
	b     *bench
	o     *bounds // with no order settled
	by    By
	at    map[string]*bounds // by settled levels
	nodes nodeHeap
	cells int
	// worst is the score beyond which nothing is kept: that of the last plan asked for, once as many
	// different ones are known.
	worst float64
}

// newSearch opens all cores of all supplies and groups.
func newSearch(b *bench, by By) *search {
	s := &search{b: b, by: by, at: map[string]*bounds{}, worst: math.Inf(1)}
	if len(b.reasons) > 0 {
		return s
	}
	open := make([]int, len(b.market.vendors))
	for i := range open {
		open[i] = undecided
	}
	s.o = s.boundsAt(open)
	for v := range b.supplies {
		if !b.mayServe(&b.supplies[v]) {
			continue
		}
		for g, members := range b.groups {
			c := core{supply: v, group: g}
			must, ok := b.mustStack(members)
			if !ok {
				continue
			}
			if must >= 0 {
				// One string of it is there from the start; the further ones are added in the usual order.
				c = c.with(must)
				s.admit(c, s.o.of(&c))
			}
			s.open(c, 0, s.o.of(&c))
		}
	}
	return s
}

// open adds the node of all cores with at least the strings of c, unless there can be no plan in it.
func (s *search) open(c core, last int, f figures) {
	if s.o.hopeless(f) || s.b.tipsWith(&c, last) { // neither cost nor mass shrinks with further strings
		return
	}
	cents, kg := s.o.missing(&c, last, s.b.supplies[c.supply].needWh-f.usableWh)
	whole := f
	whole.cents = f.openCents + cents
	whole.kg += kg
	if s.o.hopeless(whole) {
		return
	}
	score := s.coreScore(s.o, whole)
	if s.by == ByLife {
		score = s.o.lifeScore(&c, last, f)
	}
	s.add(&node{score: score, kind: openNode, core: c, last: last})
}

func (s *search) add(n *node) {
	if n.score <= s.worst {
		heap.Push(&s.nodes, n)
	}
}

// expand replaces an open node by those with one string more.
func (s *search) expand(n *node) {
	members := s.b.groups[n.core.group]
	for j := n.last; j < len(members); j++ {
		if n.core.count(j) >= s.b.stacks[members[j]].most {
			continue
		}
		c := n.core.with(j)
		f := s.o.of(&c)
		if s.o.hopeless(f) {
			continue
		}
		s.open(c, j, f)
		s.admit(c, f)
	}
}

// admit adds the node of one core if it serves the loads and may stand.
func (s *search) admit(c core, f figures) {
	if !s.o.hopeless(f) && s.o.serves(&c, f) && (s.by != ByLife || f.aged) && !s.b.tips.over(s.b.steadiest(&c)) {
		s.add(&node{score: s.coreScore(s.o, f), kind: coreNode, core: c, owed: nobody})
	}
}

// coreScore returns what no plan of one core can be below.
func (s *search) coreScore(o *bounds, f figures) float64 {
	switch s.by {
	case ByMass:
		return roundMass(f.kg)
	case ByLife:
		return perLifetimeKWh(f.cents-o.b.roundingCents(), f.lifeWh)
	}
	return f.cents - o.b.roundingCents()
}

// perLifetimeKWh returns cents over Wh as currency units over kWh.
func perLifetimeKWh(cents, wh float64) float64 { return cents / 100 / (wh / 1000) }

// planScore returns the score of a finished plan.
func (s *search) planScore(p *plan.Plan) (first, second float64) {
	switch s.by {
	case ByMass:
		return roundMass(p.MassKg), float64(p.Cost)
	case ByLife:
		return p.CostPerLifetimeKWh, roundMass(p.MassKg)
	}
	return float64(p.Cost), roundMass(p.MassKg)
}
