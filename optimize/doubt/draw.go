package doubt

import (
	"math/rand/v2"

	"gonum.org/v1/gonum/stat/distuv"

	"cartwright/catalog"
	"cartwright/optimize/question"
)

// dice draws the factors by which every price, every load and the year's sunshine are off. What is drawn, and in which
// order, depends only on the catalogue and the scenario, so a plan fares the same whatever other plans are looked at.
type dice struct {
	loads  []spread // by load line; a single one where the loads were measured
	prices []spread // by part, in the order of a bill
	partAt map[string]int

	sun spread

	load, price []float64 // as drawn
	light       float64
}

// spread is the range of a factor around 1.
type spread struct {
	low, high float64
	triangle  distuv.Triangle // where low < high
}

// stream is the second half of the generator's seed: any fixed number will do, the first half is the
// caller's.
const stream = 0x9e3779b97f4a7c15

// newDice prepares to draw.
func newDice(p question.Problem, o Options) *dice {
	source := rand.NewPCG(o.Seed, stream)
	make1 := func(low, high float64) spread {
		s := spread{low: low, high: high}
		if low < high {
			s.triangle = distuv.NewTriangle(low, high, 1, source)
		}
		return s
	}
	d := &dice{partAt: map[string]int{}}
	lines := len(p.Scenario.Loads)
	if p.Scenario.Measured != nil {
		lines = 1
	}
	for range lines {
		d.loads = append(d.loads, make1(1-o.Loads, 1+o.Loads))
	}
	for _, e := range p.Catalog.All() {
		low, high := priceRange(p.Catalog, e, o.Prices)
		d.partAt[e.ID] = len(d.prices)
		d.prices = append(d.prices, make1(low, high))
	}
	d.sun = spread{low: 1, high: 1}
	if p.Scenario.Sun != nil {
		d.sun = make1(1-o.Loads, 1+o.Loads)
	}
	d.load, d.price = make([]float64, len(d.loads)), make([]float64, len(d.prices))
	return d
}

// priceRange returns the least and the largest factor by which a part's price may be off: by its own range
// where it states one, else by the usual share. A price of 0 is certain.
func priceRange(c *catalog.Catalog, e catalog.Entry, usual float64) (low, high float64) {
	from, price, to := float64(e.PriceLow), float64(e.Price), float64(e.PriceHigh)
	if m, byLength := c.Metre(e.ID); byLength {
		from, price, to = *m.Low, *m.Cents, *m.High
	}
	switch {
	case price <= 0:
		return 1, 1
	case from == 0 && to == 0:
		return 1 - usual, 1 + usual
	}
	return from / price, to / price
}

// throw draws all factors.
func (d *dice) throw() {
	for i := range d.loads {
		d.load[i] = d.loads[i].draw()
	}
	for i := range d.prices {
		d.price[i] = d.prices[i].draw()
	}
	d.light = d.sun.draw()
}

// draw draws one factor. A factor that is certain takes nothing from the generator.
func (s *spread) draw() float64 {
	if s.low < s.high {
		return s.triangle.Rand()
	}
	return 1
}
