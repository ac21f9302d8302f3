package model

import (
	"container/heap"
	"math"
	"slices"

	"cartwright/optimize/market"
)

// Articles of which only so many can be had, or that are cheaper from some quantity on, link the slots that use them.
// shared is a lower bound on what a core's slots cost together in spite of that, by Lagrangian relaxation: each article
// has one price per unit; at these prices every slot takes its cheapest option, and each article is supplied in the
// quantity that makes its cost, less its price, least. Any prices give a bound; those at which both quantities agree give
// a good one. Where a quantity break is in doubt, the quantities below and above it are treated separately.
type shared struct {
	slots []sharedSlot
	goods []good
}

// sharedSlot is a slot. Each option has a part of its cost that does not depend on other slots, and its uses of goods.
type sharedSlot struct {
	count   float64
	options []sharedOption
}

type sharedOption struct {
	plain float64
	uses  []market.Use // by good
}

// good is an article that is shared.
type good struct {
	article *market.Article
	tax     float64
	kinks   []float64 // quantities at which its cost may become steeper
	doubts  []float64 // quantities from which on a quantity break is cheaper
	most    float64
}

// cost returns the least cents of a quantity. Mass, which is a good without an article, costs nothing.
func (g *good) cost(quantity float64) float64 {
	if g.article == nil {
		return 0
	}
	return g.article.LeastCents(quantity, g.tax)
}

// share finds what some slots share. The first good is the mass in kg that they may have together.
func share(slots []slotVars, m *market.Market, mostKg float64) *shared {
	s, at := &shared{goods: []good{{most: math.Max(0, mostKg), kinks: []float64{0}}}}, map[int]int{}
	for i := range slots {
		slot := sharedSlot{count: float64(slots[i].slot.Count)}
		for j := range slots[i].slot.Options {
			o := sharedOption{uses: []market.Use{{Article: 0, Quantity: slots[i].slot.Options[j].Kg}}}
			for _, u := range slots[i].slot.Options[j].Uses {
				a := &m.Articles[u.Article]
				if !a.Special() {
					o.plain += (1 + m.Tax) * u.Quantity * a.Cents
					continue
				}
				k, known := at[u.Article]
				if !known {
					k = len(s.goods)
					at[u.Article] = k
					s.goods = append(s.goods, good{article: a, tax: m.Tax})
				}
				o.uses = append(o.uses, market.Use{Article: k, Quantity: u.Quantity})
			}
			slot.options = append(slot.options, o)
		}
		for k := 1; k < len(s.goods); k++ {
			most := 0.0
			for j := range slot.options {
				for _, u := range slot.options[j].uses {
					if u.Article == k {
						most = math.Max(most, u.Quantity)
					}
				}
			}
			s.goods[k].most += slot.count * most
		}
		s.slots = append(s.slots, slot)
	}
	for k := 1; k < len(s.goods); k++ {
		s.goods[k].bend()
	}
	return s
}

// bend finds the quantities at which the cost of a good changes its slope.
func (g *good) bend() {
	a := g.article
	g.kinks = []float64{0, a.Have, a.Least, g.most}
	for i := range a.Offers {
		o := &a.Offers[i]
		g.kinks = append(g.kinks, o.MinQty, a.Have+o.MinQty)
		for j := range a.Offers {
			dear, cheap := a.OfferCents(a.Offers[j]), a.OfferCents(*o)
			if dear > cheap && a.Offers[j].MinQty < o.MinQty {
				from := cheap * o.MinQty / dear
				if a.Whole {
					from = math.Floor(from)
				}
				g.doubts = append(g.doubts, from, a.Have+from)
			}
		}
	}
	outside := func(q float64) bool { return q < 0 || q > g.most }
	g.kinks, g.doubts = slices.DeleteFunc(g.kinks, outside), slices.DeleteFunc(g.doubts, outside)
}

// part is a range of quantities of each good, with the best prices known for it and their bound in cents.
type part struct {
	low, high []float64 // by good
	prices    []float64
	cents     float64
	split     int // the good whose range to split next; -1: none
	at        float64
}

// mostParts is how many parts are looked at, and roundsPerPart how often prices are improved in each.
const (
	mostParts     = 48
	roundsPerPart = 40
)

// least returns a lower bound in cents on what the slots cost together. It stops once the bound is above enough.
func (s *shared) least(enough float64) float64 {
	root := &part{low: make([]float64, len(s.goods)), split: -1}
	for k := range s.goods {
		root.high = append(root.high, s.goods[k].most)
		root.prices = append(root.prices, 0)
		if k == 0 {
			continue
		}
		root.prices[k] = s.goods[k].article.BoughtFloor(s.goods[k].tax)
		if math.IsInf(root.prices[k], 1) {
			root.prices[k] = s.goods[k].article.SellFor
		}
	}
	s.mend(root, enough)
	open := parts{root}
	for n := 0; ; n++ {
		x := heap.Pop(&open).(*part)
		if x.cents > enough || x.split < 0 || n == mostParts {
			return x.cents
		}
		for _, upper := range []bool{false, true} {
			y := &part{low: slices.Clone(x.low), high: slices.Clone(x.high), prices: slices.Clone(x.prices), cents: x.cents, split: -1}
			if upper {
				y.low[x.split] = x.at
			} else {
				y.high[x.split] = x.at
			}
			s.mend(y, enough)
			heap.Push(&open, y)
		}
	}
}

// mend looks for prices that give a part a higher bound (Polyak's subgradient step), and for the good to split next.
func (s *shared) mend(x *part, enough float64) {
	prices, taken, worst := slices.Clone(x.prices), make([]float64, len(s.goods)), make([]float64, len(s.goods))
	for range roundsPerPart {
		cents := s.at(x, prices, taken, worst)
		if cents > x.cents || x.split < 0 && cents == x.cents {
			x.cents = cents
			copy(x.prices, prices)
			s.doubt(x, taken, worst)
		}
		apart := 0.0 // each quantity as a share of the most, since metres and kilograms differ in size
		for k := range taken {
			if off := (taken[k] - worst[k]) / s.goods[k].most; s.goods[k].most > 0 {
				apart += off * off
			}
		}
		if apart == 0 || cents > enough {
			return
		}
		aim := math.Max(enough, x.cents+math.Abs(x.cents)/1000)
		if math.IsInf(aim, 1) {
			aim = x.cents + math.Abs(x.cents)/100
		}
		for k := range prices {
			if most := s.goods[k].most; most > 0 {
				prices[k] = math.Max(0, prices[k]+(aim-cents)/apart*(taken[k]-worst[k])/(most*most))
			}
		}
	}
}

// at returns the bound of a part at some prices. It fills in what the slots take of each good at them, and the quantity
// of each good at which its cost less its price is least.
func (s *shared) at(x *part, prices, taken, worst []float64) float64 {
	cents := 0.0
	clear(taken)
	for i := range s.slots {
		slot := &s.slots[i]
		least, best := math.Inf(1), -1
		for j := range slot.options {
			o := &slot.options[j]
			c := o.plain
			for _, u := range o.uses {
				c += u.Quantity * prices[u.Article]
			}
			if c < least {
				least, best = c, j
			}
		}
		if best < 0 {
			return math.Inf(1)
		}
		cents += slot.count * least
		for _, u := range slot.options[best].uses {
			taken[u.Article] += slot.count * u.Quantity
		}
	}
	for k := range s.goods {
		g, least := &s.goods[k], math.Inf(1)
		try := func(quantity float64) {
			if c := g.cost(quantity) - prices[k]*quantity; c < least {
				least, worst[k] = c, quantity
			}
		}
		try(x.low[k])
		try(x.high[k])
		for _, q := range g.kinks {
			if q > x.low[k] && q < x.high[k] {
				try(q)
			}
		}
		cents += least
	}
	return cents
}

// doubt chooses the good whose cost the bound understates most, among those with a quantity break within the part.
func (s *shared) doubt(x *part, taken, worst []float64) {
	x.split = -1
	most := 0.0
	for k := range s.goods {
		g := &s.goods[k]
		short := g.cost(taken[k]) - g.cost(worst[k]) - x.prices[k]*(taken[k]-worst[k])
		if short <= most {
			continue
		}
		for _, q := range g.doubts {
			if q > x.low[k] && q < x.high[k] {
				x.split, x.at, most = k, q, short
			}
		}
	}
}

// parts is a heap with the part of the least bound first.
type parts []*part

func (h parts) Len() int           { return len(h) }
func (h parts) Less(i, j int) bool { return h[i].cents < h[j].cents }
func (h parts) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }
func (h *parts) Push(x any)        { *h = append(*h, x.(*part)) }

func (h *parts) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}
