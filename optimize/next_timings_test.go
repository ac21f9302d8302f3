package optimize_test

import (
	"cmp"
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// timings knows everything that can have been bought and sold in a tiny problem, in every number: a cell for
// each, in a grid with an axis for each way to buy a part, each owned part that is for sale, and the orders
// from the vendor who ships for money. A month leads from any cell to any that has nothing less.
type timings struct {
	axes []tinyAxis
	step []int // from one cell to the next along each axis
	size int

	outlay   []float64 // cents, by cell
	usableWh []float64 // the most that can stand
	whole    []bool    // a whole cart can stand
}

// tinyAxis is one way to buy or sell.
type tinyAxis struct {
	part   int
	most   int
	cents  float64 // for one, with tax; negative for a sale
	least  int     // that can be bought at a time
	ships  bool    // by the vendor who ships for money
	orders bool    // the axis of that vendor's orders
	sells  bool
}

// largestGrid bounds the cells of a tiny problem.
const largestGrid = 60000

// newTimings lays the grid out; it reports false where that is too large.
func newTimings(p question.Problem, carts []tinyCart) (*timings, bool) {
	g := &timings{}
	g.lay(p, carts)
	g.size = 1
	for _, a := range g.axes {
		g.step = append(g.step, g.size)
		g.size *= a.most + 1
		if g.size > largestGrid {
			return nil, false
		}
	}
	g.fill(p, carts)
	return g, true
}

// lay makes the axes.
func (g *timings) lay(p question.Problem, carts []tinyCart) {
	shipping := catalog.Cents(0)
	tax := 1 + p.Scenario.Tax
	for i, e := range p.Catalog.All() {
		used := 0
		for _, c := range carts {
			used = max(used, c.parts[i])
		}
		have, sell := ownedOf(p.Scenario, e)
		if sell == 0 {
			used = max(0, used-have)
		} else {
			g.axes = append(g.axes, tinyAxis{part: i, most: have, cents: -sell, sells: true})
		}
		offers := p.Catalog.OffersFor(e.ID)
		if len(offers) == 0 {
			cents := float64(e.Price)
			if e.Kind == catalog.KindCable {
				k := cableOf(p.Catalog, e.ID)
				cents = pieceM*k.CentsPerM + 4*float64(k.EndPrice) // two ends of two conductors
			}
			g.axes = append(g.axes, tinyAxis{part: i, most: used, cents: cents * tax, least: 1})
		}
		for _, o := range offers {
			shipping = max(shipping, o.Shipping)
			most := used
			if used > 0 {
				most = max(used, int(o.MinQty)) // more may be bought than is needed
			}
			g.axes = append(g.axes, tinyAxis{part: i, most: most, cents: float64(o.Price) * tax, least: int(o.MinQty), ships: o.Shipping > 0})
		}
	}
	if shipping > 0 {
		const mostOrders = 2 // one more than can be best: a second order only costs more
		g.axes = append(g.axes, tinyAxis{part: -1, most: mostOrders, cents: float64(shipping) * tax, orders: true})
	}
}

// ownedOf returns how many pieces of a part are owned, and what one sells for, 0 where it is not for sale.
func ownedOf(s *scenarios.Scenario, e catalog.Entry) (have int, sell float64) {
	for _, h := range s.Have {
		switch {
		case h.PartID != e.ID:
		case h.ByLength:
			have = int(h.Count / pieceM)
			if h.Sell != nil {
				sell = pieceM * h.SellCentsPerM
			}
		default:
			have = int(h.Count)
			if h.Sell != nil {
				sell = float64(*h.Sell)
			}
		}
	}
	return have, sell
}

// fill works out what every cell has cost and what can stand with what is owned there.
func (g *timings) fill(p question.Problem, carts []tinyCart) {
	all := p.Catalog.All()
	start := make([]int, len(all))
	for i, e := range all {
		start[i], _ = ownedOf(p.Scenario, e)
	}
	g.outlay, g.usableWh, g.whole = make([]float64, g.size), make([]float64, g.size), make([]bool, g.size)
	best := slices.Clone(carts) // the most energy first: the first that can stand is the best
	slices.SortStableFunc(best, func(a, b tinyCart) int { return cmp.Compare(b.usableWh, a.usableWh) })
	wholes := slices.DeleteFunc(slices.Clone(carts), func(c tinyCart) bool { return !c.whole })
	owned := make([]int, len(all))
	for cell := range g.size {
		copy(owned, start)
		for i, a := range g.axes {
			n := g.along(cell, i)
			g.outlay[cell] += float64(n) * a.cents
			switch {
			case a.sells:
				owned[a.part] -= n
			case !a.orders:
				owned[a.part] += n
			}
		}
		stands := func(c tinyCart) bool { return within(c.parts, owned) }
		if i := slices.IndexFunc(best, stands); i >= 0 {
			g.usableWh[cell] = best[i].usableWh
		}
		g.whole[cell] = slices.ContainsFunc(wholes, stands)
	}
}

// along returns where a cell is on an axis.
func (g *timings) along(cell, axis int) int { return cell / g.step[axis] % (g.axes[axis].most + 1) }

// within reports whether no number is larger than its like.
func within(n, most []int) bool {
	for i := range n {
		if n[i] > most[i] {
			return false
		}
	}
	return true
}

// month returns, for every cell, the most that its value can be after a month of buying and selling, where
// value says so for the cells before it.
func (g *timings) month(value []float64) []float64 {
	after := append([]float64(nil), value...)
	ordered := append([]float64(nil), value...) // with an order from the vendor who ships for money
	orders := -1
	for i, a := range g.axes {
		switch {
		case a.orders:
			orders = i
			continue
		case !a.ships:
			after = g.onward(after, i)
		}
		ordered = g.onward(ordered, i)
	}
	if orders < 0 {
		return after
	}
	for cell := range after {
		if g.along(cell, orders) > 0 {
			after[cell] = max(after[cell], ordered[cell-g.step[orders]])
		}
	}
	return after
}

// onward moves values along one axis: by nothing, or by as many as are bought at a time.
func (g *timings) onward(value []float64, axis int) []float64 {
	a := &g.axes[axis]
	after := append([]float64(nil), value...)
	for cell := range value {
		n := g.along(cell, axis)
		for k := max(1, a.least); k <= n; k++ {
			after[cell] = max(after[cell], value[cell-k*g.step[axis]])
		}
	}
	return after
}

// leastOutlay returns the least that a whole cart ever costs, +Inf where there is none.
func (g *timings) leastOutlay() float64 {
	start := g.atStart()
	least := math.Inf(1)
	for cell, value := range g.month(start) {
		if g.whole[cell] && value >= 0 {
			least = min(least, g.outlay[cell])
		}
	}
	return least
}

// atStart returns values of cells before anything is bought: nothing has stood yet, and no other cell is
// reached.
func (g *timings) atStart() []float64 {
	value := make([]float64, g.size)
	for cell := range value {
		value[cell] = math.Inf(-1)
	}
	value[0] = 0
	return value
}

// best tries all timings and returns the first month in which a whole cart can stand with the cash that has
// come in, of the ways there the least outlay, and of those the most energy on the cart on the way, in Wh
// times months. It looks as far as some months; reached is false where that is too short.
func (g *timings) best(now, perMonth float64, months int) (month int, outlay, energy float64, reached bool) {
	value := g.atStart()
	outlay = math.Inf(1)
	for month := range months + 1 {
		value = g.month(value)
		for cell := range value {
			if g.outlay[cell] > now+float64(month)*perMonth+hair {
				value[cell] = math.Inf(-1) // cash never is below zero
			}
		}
		for cell, v := range value {
			if !g.whole[cell] || math.IsInf(v, -1) {
				continue
			}
			switch {
			case g.outlay[cell] < outlay-hair:
				outlay, energy = g.outlay[cell], v
			case g.outlay[cell] < outlay+hair:
				energy = max(energy, v)
			}
		}
		if !math.IsInf(outlay, 1) {
			return month, outlay, energy, true
		}
		for cell := range value {
			value[cell] += g.usableWh[cell]
		}
	}
	return 0, 0, 0, false
}
