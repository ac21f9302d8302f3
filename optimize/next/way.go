package next

import (
	"context"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// stage is a complete cart on the way to the target.
type stage struct {
	usable float64   // Wh
	needs  []float64 // by the way's lines: how much of each has to be bought
	plan   plan.Plan // of owned parts
}

// line is one line of the target's bill that is bought, and the order it belongs to.
type line struct {
	bill  plan.Line
	order int // lines of the same order are bought in the same month; -1: by the piece, in any month
}

// way is everything from which a sequence to a target is made.
type way struct {
	p      question.Problem
	target *plan.Plan
	money  saving
	lines  []line
	orders int
	ships  []plan.Money // by order
	sales  []sale
	early  []int     // indices of the sales that can wait
	stages [][]stage // by set of early sales made, a bit each
	barred []barred  // with none of them made
}

// newWay works out what there is to buy and to sell.
func newWay(p question.Problem, target *plan.Plan, money saving) *way {
	w := &way{p: p, target: target, money: money}
	w.collectLines()
	w.collectSales()
	w.stages = make([][]stage, 1<<len(w.early))
	return w
}

// findCarts finds the carts that can be built on the way. It reports false where that was cut short; some are found
// then, each of them safe.
func (w *way) findCarts(ctx context.Context) (whole bool, err error) {
	whole = true
	for sold := range w.stages {
		if !w.inOrder(sold) {
			continue
		}
		if ctx.Err() != nil {
			return false, nil
		}
		list, all, err := w.findStages(ctx, sold)
		if err != nil {
			return false, err
		}
		w.stages[sold], whole = list, whole && all
	}
	return whole, nil
}

// collectLines lists what the target buys. All lines of a vendor that are shipped for money are one order,
// since a second order would cost more than the target; so is each line bought at a quantity break. A line
// that is shipped for nothing can be bought in any month.
func (w *way) collectLines() {
	orderOf := map[string]int{}
	for _, l := range w.target.Bill {
		if l.Buy <= 0 {
			continue
		}
		at := -1
		if o := w.offer(&l); o != nil && (o.MinQty > 1 || o.Shipping > 0) {
			key, ships := l.Vendor, w.shipping(l.Vendor)
			if o.Shipping == 0 {
				key, ships = l.Part+"\x00"+l.Vendor, 0
			}
			i, seen := orderOf[key]
			if !seen {
				i = w.orders
				orderOf[key] = i
				w.orders++
				w.ships = append(w.ships, ships)
			}
			at = i
		}
		w.lines = append(w.lines, line{l, at})
	}
}

// offer returns the offer a line was bought at, nil for a part's own price.
func (w *way) offer(l *plan.Line) *catalog.Offer {
	for i := range w.p.Catalog.Offers {
		o := &w.p.Catalog.Offers[i]
		price := float64(o.Price)
		if l.Unit == "m" {
			price = o.CentsPerM
		}
		if !plan.IsEnd(l.Kind) && o.PartID == l.Part && o.Vendor == l.Vendor &&
			math.Abs(price/100-l.UnitPrice) < 1e-9 && l.Buy >= o.MinQty {
			return o
		}
	}
	return nil
}

// shipping returns what the target pays a vendor for shipping: the largest of the lines bought there.
func (w *way) shipping(vendor string) plan.Money {
	most := plan.Money(0)
	for _, l := range w.target.Bill {
		if l.Buy > 0 && l.Vendor == vendor {
			if o := w.offer(&l); o != nil {
				most = max(most, plan.Money(o.Shipping))
			}
		}
	}
	return most
}

// holdings returns what is owned once the given quantities of the lines are bought and a set of the early sales is
// made. The target's other sales are made in the first month.
func (w *way) holdings(bought []float64, sold int) []scenarios.Holding {
	count, ends := map[string]float64{}, map[string]int{}
	var order []string
	add := func(part string, n float64) {
		if _, seen := count[part]; !seen {
			order = append(order, part)
		}
		count[part] += n
	}
	for _, h := range w.p.Scenario.Have {
		add(h.PartID, h.Count)
		ends[h.PartID] += h.Ends
	}
	for i := range w.sales {
		if bit := w.earlyBit(i); bit < 0 || sold&(1<<bit) != 0 {
			add(w.sales[i].bill.Part, -w.sales[i].bill.Sell)
		}
	}
	for i, n := range bought {
		if !plan.IsEnd(w.lines[i].bill.Kind) {
			add(w.lines[i].bill.Part, n)
		}
	}
	var list []scenarios.Holding
	for _, part := range order {
		if count[part] > 0 || ends[part] > 0 {
			list = append(list, scenarios.Holding{PartID: part, Count: count[part], Ends: ends[part]})
		}
	}
	return list
}
