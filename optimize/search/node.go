package search

import (
	"cartwright/optimize/bench"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
)

// The search is best first. A node is a set of cores with a score that no plan of theirs can beat:
//
//   - a supply node: all cores of a supply;
//   - an open node: a cell, all cores with these strings and further ones;
//   - a core node: one core, to be solved as an integer program;
//   - a plan node: a solved core; its score is exact.
//
// When a plan node comes first, no other node can hold a better plan: it is the next in rank.

type nodeKind int

const (
	supplyNode nodeKind = iota
	openNode
	coreNode
	planNode
)

type node struct {
	score float64
	kind  nodeKind
	core  bench.Core
	cell  *cell // of an open node
	// orders are what is decided about shipping for a core node; nil: nothing yet, or the program decides it.
	orders *market.Orders
	sharp  bool // the score has been raised by model.LeastCents
	// owed is the vendor to decide next, for a core node whose plan leaves shipping to pay, and the level; else Nobodys.
	owed, level int
	found       *found // of a plan node, and of a core node that was solved
	round       int    // of a series: that whose limits the node was looked at under
}

// found is a solved core.
type found struct {
	plan      plan.Plan
	choice    choice.Choice
	first     float64 // the program's first figure, unrounded
	other     float64 // its other figure, unrounded: the least known
	second    float64 // the plan's figure that ties are broken by
	tieBroken bool    // breakTies has been tried
	proved    bool
}

// nodeHeap is a heap with the node of the best score first.
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
	return a.core.Before(&b.core)
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
