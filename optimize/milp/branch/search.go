package branch

import (
	"container/heap"
	"context"
	"math"

	"cartwright/optimize/milp/proof"
)

// search is a Solve under way.
type search struct {
	ctx    context.Context
	p      *proof.Program
	ask    Ask
	t      *tableau
	prove  *prover
	choice *choice
	real   []int // columns that need not be whole

	any bool // the first point ends the search

	below  float64 // what a point has to cost less than
	point  []float64
	cost   float64
	lo, hi []float64 // of the columns where the search stands
	queue  queue
	splits []split
	root   *proof.Tree
	nodes  int
	ending Ending
	left   float64 // what is proved of the leaves that fall short of below
}

func newSearch(ctx context.Context, p *proof.Program, ask Ask) *search {
	s := &search{ctx: ctx, p: p, ask: ask, t: newTableau(newProgram(p)), prove: newProver(p, ask.Below),
		below: ask.Below, root: &proof.Tree{}, left: math.Inf(1),
		lo: append([]float64(nil), p.Lower...), hi: append([]float64(nil), p.Upper...)}
	s.choice = newChoice(s)
	for j, is := range p.Integer {
		if !is {
			s.real = append(s.real, j)
		}
	}
	if ask.Known != nil {
		s.take(append([]float64(nil), ask.Known...))
	}
	return s
}

// run goes down from the root, then from the open node of the least bound, until none is left.
func (s *search) run() {
	n := &node{column: -1, bound: math.Inf(-1), tree: s.root}
	for {
		for n != nil {
			if s.over() {
				heap.Push(&s.queue, n)
				return
			}
			n = s.visit(n)
			if s.ending != 0 {
				return
			}
		}
		for n == nil {
			if len(s.queue) == 0 {
				s.ending = Closed
				if s.left < s.below {
					s.ending = Left
				}
				return
			}
			n = heap.Pop(&s.queue).(*node)
			if n.bound >= s.below { // its parent's multipliers prove it: see prune
				n = nil
			}
		}
		s.enter(n)
	}
}

// over reports whether the search has to end here.
func (s *search) over() bool {
	switch {
	case s.ctx.Err() != nil:
		s.ending = Halted
	case s.ask.Work > 0 && s.work() > s.ask.Work:
		s.ending = Spent
	default:
		return false
	}
	return true
}

// work returns how much the search has done: pivots, and nodes for those that need none.
func (s *search) work() int64 { return int64(s.t.exchanged + s.nodes) }

// enter sets the bounds of a node.
func (s *search) enter(n *node) {
	for _, j := range s.choice.columns {
		s.bound(j, s.p.Lower[j], s.p.Upper[j])
	}
	for ; n.column >= 0; n = n.parent {
		s.bound(n.column, max(s.lo[n.column], n.lo), min(s.hi[n.column], n.hi))
	}
}

// bound sets the bounds of an integer, which has the same scale in the table.
func (s *search) bound(j int, lo, hi float64) {
	s.lo[j], s.hi[j] = lo, hi
	s.t.lo[j], s.t.hi[j] = lo, hi
}

// visit solves the relaxation of a node, where its bounds are set, and closes it or splits it. It returns the
// half to go on with, bounds set, or nil.
func (s *search) visit(n *node) *node {
	s.nodes++
	exact := false
	ceiling := s.ceiling()
	for {
		end, r := s.t.optimise(ceiling)
		switch end {
		case empty:
			list, value := s.prove.farkas(s.t, r, s.lo, s.hi)
			if value > 0 {
				n.tree.Impossible, n.tree.Multipliers = true, s.prove.short(list, s.lo, s.hi, true, math.SmallestNonzeroFloat64)
				return nil
			}
			if math.IsInf(value, -1) && exact {
				return s.leave(n, nil, value)
			}
			if !exact {
				exact = true
				s.t.refresh()
				continue
			}
			return s.divide(n, nil, math.Inf(-1), nil)
		case limitless:
			if n.column < 0 {
				s.ending = Limitless
				return nil
			}
			return s.divide(n, nil, math.Inf(-1), nil)
		case stuck:
			if !exact {
				exact = true
				s.t.refresh()
				continue
			}
			return s.divide(n, nil, math.Inf(-1), nil)
		}
		list, value := s.prove.duals(s.t, s.lo, s.hi)
		switch {
		case value >= s.below:
			n.tree.Multipliers = s.prove.short(list, s.lo, s.hi, false, s.below)
			s.choice.learn(n, s.t.cost()/s.t.p.money)
			return nil
		case math.IsInf(value, -1) && s.t.cost() > s.ceiling():
			return s.leave(n, list, value)
		}
		if end == exceeded { // rounding only: go on to the end
			ceiling = math.Inf(1)
			continue
		}
		at := s.t.cost() / s.t.p.money
		s.choice.learn(n, at)
		return s.solved(n, list, value, at)
	}
}

// ceiling returns the cost, as the simplex has it, above which a relaxation proves what it has to.
func (s *search) ceiling() float64 { return (s.below + margin(s.below)) * s.t.p.money }

// solved takes what the relaxation of a node found: a point, or something to split.
func (s *search) solved(n *node, list []proof.Multiplier, value, at float64) *node {
	x := s.values()
	if s.choice.whole(x) {
		if s.try(x) {
			if s.any {
				s.ending = Found
				return nil
			}
			if s.prove.open { // more is known of the bounds
				value = s.prove.value(list, s.lo, s.hi, false)
			}
			if value >= s.below {
				n.tree.Multipliers = s.prove.short(list, s.lo, s.hi, false, s.below)
				return nil
			}
			if math.IsInf(value, -1) {
				return s.leave(n, list, value)
			}
		}
		// Trying may have moved the table.
		if len(s.real) > 0 {
			s.t.optimise(math.Inf(1))
		}
	}
	n.bound = max(n.bound, value)
	next := s.divide(n, x, at, list)
	if next != nil {
		s.splits = append(s.splits, split{tree: n.tree, duals: list, value: value})
	}
	return next
}

// values returns the point of the table in the program's own scale.
func (s *search) values() []float64 {
	x := make([]float64, s.t.n)
	for j := range x {
		x[j] = s.t.x[j] * s.t.p.columns[j]
	}
	return x
}

// leave ends a node in which, as far as the simplex can tell, nothing is better, with what can be proved of it: less
// than it should be.
func (s *search) leave(n *node, list []proof.Multiplier, value float64) *node {
	n.tree.Multipliers = list
	s.left = min(s.left, value)
	return nil
}

// divide splits a node at x, nil where it is not known, and returns the half to go on with. Where nothing is left
// to split the node stays unproved.
func (s *search) divide(n *node, x []float64, at float64, list []proof.Multiplier) *node {
	c, ok := s.choice.choose(x, at)
	if !ok {
		value := math.Inf(-1)
		if list != nil {
			value = s.prove.value(list, s.lo, s.hi, false)
		}
		return s.leave(n, list, value)
	}
	n.tree.Column, n.tree.At = c.column, int64(c.at)
	n.tree.Below, n.tree.Above = &proof.Tree{}, &proof.Tree{}
	s.choice.count++
	low := &node{parent: n, column: c.column, lo: math.Inf(-1), hi: c.at, bound: n.bound, tree: n.tree.Below, depth: n.depth + 1,
		number: s.choice.count, distance: c.value - c.at, from: at}
	s.choice.count++
	high := &node{parent: n, column: c.column, lo: c.at + 1, hi: math.Inf(1), bound: n.bound, tree: n.tree.Above, depth: n.depth + 1,
		number: s.choice.count, distance: c.at + 1 - c.value, from: at, up: true}
	first, later := low, high
	if c.up {
		first, later = high, low
	}
	heap.Push(&s.queue, later)
	s.bound(c.column, max(s.lo[c.column], first.lo), min(s.hi[c.column], first.hi))
	return first
}
