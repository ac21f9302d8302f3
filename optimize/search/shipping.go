package search

import (
	"fmt"
	"math"

	"cartwright/optimize/bound"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// decideShipping prepares a core node for solving: it opens every vendor that ships for money and reports whether
// the node is to be solved. A node that was solved at open vendors is replaced by one for each level of
// shipping of the vendor that its point left most to pay to.
func (s *search) decideShipping(n *node) bool {
	m := s.b.Market
	if s.by == question.ByMass || len(m.Vendors) > mostDecided {
		return true // the orders are left to the program
	}
	if n.levels == nil {
		n.levels = make([]int, len(m.Vendors))
		for i := range n.levels {
			n.levels[i] = market.Undecided
		}
	}
	if n.owed < 0 {
		return true
	}
	for level := range m.Vendors[n.owed].Levels {
		levels := append([]int(nil), n.levels...)
		levels[n.owed] = level
		o := s.boundsAt(levels)
		if f := o.Of(&n.core); !o.Hopeless(f) {
			// What the node was solved for bounds its parts, too, with the shipping that is now paid.
			score := s.coreScore(o, f)
			if n.found.proved {
				score = math.Max(score, s.priced(n, m.Vendors[n.owed].Levels[level]))
			}
			s.add(&node{score: score, kind: coreNode, core: n.core, levels: levels, owed: nobody})
		}
	}
	return false
}

// mostDecided is how many vendors are decided outside the program. Of more there are too many combinations
// of levels: measured with four and ten vendors for everything, leaving the orders to the program took a
// tenth of the time. By mass costs decide ties only, which is not worth it either.
const mostDecided = 3

// nobody is who is owed shipping where every order is paid for, or nothing is known of orders yet.
const nobody = -1

// priced returns the score of a node that was solved, with so many more cents of shipping.
func (s *search) priced(n *node, shipping float64) float64 {
	cents := 100*n.found.first + (1+s.b.Market.Tax)*shipping - s.b.RoundingCents
	if s.by == question.ByLife {
		return bound.PerLifetimeKWh(cents, s.o.Of(&n.core).LifeWh)
	}
	return cents
}

// mostOwed returns the vendor whom a choice leaves most shipping to pay beyond the levels that are
// decided, nobody where there is none.
func (s *search) mostOwed(c *choice.Choice, levels []int) int {
	paid := map[string]plan.Money{}
	for i, v := range s.b.Market.Vendors {
		if levels[i] != market.Undecided {
			paid[v.Name] = plan.Money(v.Levels[levels[i]])
		}
	}
	shipping := choice.Shipping(s.b, c)
	owed, most := nobody, plan.Money(0)
	for i, v := range s.b.Market.Vendors {
		if left := shipping[v.Name] - paid[v.Name]; left > most {
			owed, most = i, left
		}
	}
	return owed
}

// boundsAt returns the bounds at decided levels, made once.
func (s *search) boundsAt(levels []int) *bound.Bounds {
	key := fmt.Sprint(levels)
	o := s.at[key]
	if o == nil {
		o = bound.New(s.b, s.b.Market.At(levels))
		s.at[key] = o
	}
	return o
}
