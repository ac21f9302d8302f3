package search

import (
	"container/heap"
	"context"
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Series is a search for the cheapest plan under limits that get tighter from plan to plan. Tighter limits only take
// plans away, so every bound still holds: what was expanded and solved is kept, and a node is looked at again when it
// comes first.
type Series struct {
	parts *catalog.Catalog
	r     *ranking
}

// NewSeries begins a series over the parts of a problem.
func NewSeries(p question.Problem) *Series { return &Series{parts: p.Catalog} }

// Next returns the cheapest plan of a scenario, proved and audited; nil where there is none. The scenario differs from the
// last one only in that its autonomy, limits.mass or limits.served is tighter. The error is question.ErrUnknown where
// that plan was not found or not proved; the series is over then.
func (s *Series) Next(ctx context.Context, scenario *scenarios.Scenario) (*plan.Plan, error) {
	p := question.Problem{Scenario: scenario, Catalog: s.parts}
	if s.r == nil {
		r, err := forOne(ctx, p, &bench.Before{}, question.ByCost)
		if err != nil {
			return nil, err
		}
		r.round = 1
		r.openAll(ctx)
		s.r = r
	} else {
		s.r.tighter(scenario)
	}
	if err := s.r.toTheEnd(ctx); err != nil || len(s.r.ranked) == 0 {
		return nil, err
	}
	found := s.r.ranked[0].plan
	if !found.Proven {
		return nil, question.ErrUnknown
	}
	return audited(p, &found)
}

// tighter begins the next round.
func (r *ranking) tighter(scenario *scenarios.Scenario) {
	r.round++
	r.ranked = nil
	if r.search.o == nil {
		return
	}
	r.b = r.b.Tighter(scenario)
	r.search.o.Tighter(r.b)
	r.rest.Tighter()
	r.takeBack()
}

// takeBack puts back what was set aside.
func (r *ranking) takeBack() {
	for _, n := range r.aside {
		r.put(n)
	}
	r.aside = nil
}

// setAside keeps a node for the rounds to come, where there are any.
func (r *ranking) setAside(n *node) {
	if r.round > 0 {
		r.aside = append(r.aside, n)
	}
}

// took notes which child a cell had: it comes no more, whatever the order of children in later rounds.
func (s *search) took(n *node, position int) {
	if s.round == 0 {
		return
	}
	if at, had := slices.BinarySearch(n.cell.Taken, position); !had {
		n.cell.Taken = slices.Insert(n.cell.Taken, at, position)
	}
}

// renewTop has the first node be one that was looked at under the limits of this round.
func (r *ranking) renewTop(ctx context.Context) {
	for len(r.nodes) > 0 && r.nodes[0].round != r.round && ctx.Err() == nil {
		if n := heap.Pop(&r.nodes).(*node); r.renew(n) {
			r.add(n)
		}
	}
}

// renew finds what a node is under the limits of this round, and reports whether it can have a plan.
func (r *ranking) renew(n *node) bool {
	s, before := r.search, n.score
	switch n.kind {
	case supplyNode:
		n.score = math.Max(before, s.supplyScore(&n.core))
		return true
	case openNode:
		ok := s.b.Paired(&n.core) && s.measure(n) && s.advance(n)
		n.score = math.Max(before, n.score)
		return ok
	}
	f := s.o.Of(&n.core)
	if s.o.Hopeless(f) || !s.o.Serves(&n.core, f) {
		return false
	}
	if n.kind == planNode {
		n.found.plan = choice.Finish(s.b, &n.found.choice)
		if !plan.AtMost(n.found.plan.MassKg, s.b.Scenario.Limits.MassKg) {
			// The core may have a lighter plan, at these orders or at others; its bill may round to less.
			n.score -= 2 * s.b.RoundingCents
			delete(r.best, n.core.Key())
			n.kind, n.found, n.owed, n.sharp = coreNode, nil, market.Nobodys, true
			r.takeBack()
		}
	}
	return true
}
