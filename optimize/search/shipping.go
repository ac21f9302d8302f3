package search

import (
	"math"
	"sync"

	"cartwright/optimize/bound"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/model"
	"cartwright/optimize/question"
)

// decideShipping prepares a core node for solving and reports whether it is to be solved now. Where its plan, or before
// there is one its cheapest parts, would leave shipping to pay, the node is replaced by two: one that pays it, and one
// without the offers that need so much.
func (r *ranking) decideShipping(n *node) bool {
	s, m := r.search, r.b.Market
	if s.leavesOrders() {
		return true
	}
	if n.orders == nil {
		any := m.AnyOrder()
		n.orders = &any
	}
	if n.found == nil {
		f, levels := s.o.Ordered(&n.core, *n.orders)
		if s.o.Hopeless(f) {
			return false
		}
		if n.owed = bound.Owed(m, levels, n.orders.Paid); n.owed == market.Nobodys {
			return true
		}
		n.level = levels[n.owed]
	}
	if less, ok := n.orders.Without(n.owed, n.level); ok {
		s.divide(n, less)
	}
	s.divide(n, n.orders.Paying(n.owed, n.level))
	return false
}

// leavesOrders reports whether the program decides the orders.
func (s *search) leavesOrders() bool { return s.by == question.ByMass || s.by == question.ByEnergy }

// sharpened raises the scores of nodes by model.LeastCents, in parallel. It returns those that are to be solved now; the
// others are back among the nodes.
func (r *ranking) sharpened(dull []*node) []*node {
	least := make([]float64, len(dull))
	var wait sync.WaitGroup
	gate := make(chan struct{}, r.o.Workers)
	for i, n := range dull {
		n.sharp = true
		m, enough := r.marketOf(n), math.Inf(1) // made here: the goroutines only read
		if most := r.mostOf(n); most > 0 {
			enough = 100 * most
		}
		wait.Add(1)
		gate <- struct{}{}
		go func() {
			defer wait.Done()
			defer func() { <-gate }()
			least[i] = model.LeastCents(r.b, &n.core, m, enough) - r.b.RoundingCents
		}()
	}
	wait.Wait()
	var cores []*node
	for i, n := range dull {
		if r.by == question.ByLife {
			least[i] = bound.PerLifetimeKWh(least[i], r.search.o.Of(&n.core).LifeWh)
		}
		if least[i] <= n.score {
			cores = append(cores, n)
			continue
		}
		n.score = least[i]
		r.add(n)
	}
	return cores
}

// divide adds a node with a part of the orders of another.
func (s *search) divide(n *node, orders market.Orders) {
	f, _ := s.o.Ordered(&n.core, orders)
	if s.o.Hopeless(f) {
		return
	}
	score := math.Max(n.score, s.coreScore(f))
	if n.found != nil && n.found.proved {
		// The optimum of the node, with the shipping that is now paid, bounds its parts too.
		score = math.Max(score, s.priced(n, s.b.Market.PaidCents(orders)-s.b.Market.PaidCents(*n.orders)))
	}
	s.add(&node{score: score, kind: coreNode, core: n.core, orders: &orders, owed: market.Nobodys})
}

// priced returns the score of a node that was solved, with some more cents of shipping.
func (s *search) priced(n *node, shipping float64) float64 {
	cents := 100*n.found.first + (1+s.b.Market.Tax)*shipping - s.b.RoundingCents
	if s.by == question.ByLife {
		return bound.PerLifetimeKWh(cents, s.o.Of(&n.core).LifeWh)
	}
	return cents
}

// mostOwed returns the vendor whom a choice owes the most shipping beyond what is paid, and the level; market.Nobodys
// where it owes none.
func (s *search) mostOwed(c *choice.Choice, orders *market.Orders) (vendor, level int) {
	m := s.b.Market
	shipping, levels := choice.Shipping(s.b, c), make([]int, len(m.Vendors))
	for i := range m.Vendors {
		levels[i] = m.LevelOf(i, float64(shipping[m.Vendors[i].Name]))
	}
	if vendor = bound.Owed(m, levels, orders.Paid); vendor != market.Nobodys {
		level = levels[vendor]
	}
	return vendor, level
}

// owes reports whether a choice owes shipping beyond what is paid.
func (s *search) owes(c *choice.Choice, orders *market.Orders) bool {
	vendor, _ := s.mostOwed(c, orders)
	return vendor != market.Nobodys
}

// marketOf returns the market a core node is solved at; nil where the program decides the orders.
func (s *search) marketOf(n *node) *market.Market {
	if n.orders == nil {
		return nil
	}
	return s.o.MarketAt(*n.orders)
}
