package next

import (
	"context"
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
)

// owning is what has been bought and sold by some month, and the best way there.
type owning struct {
	bought []float64 // by line
	sold   int       // set of early sales made
	energy float64   // Wh summed over the months so far
	stage  *stage    // the cart; nil: none
	last   *owning   // the month before
}

// schedule finds, by dynamic programming over the months before the target, the purchases that put the
// most energy on the cart on the way. Nothing is gained by buying before a cart needs it, so a month
// either buys what one more stage is short of or buys nothing. Where the context ends, it goes on from the best that
// is known by then, and reports false.
func (w *way) schedule(ctx context.Context, month int) (steps []*owning, whole bool) {
	level := []*owning{{bought: make([]float64, len(w.lines))}}
	whole = true
	for m := range month {
		if whole {
			after, all := w.nextLevel(ctx, level, m)
			if all {
				level = after
				continue
			}
			level, whole = []*owning{mostEnergy(level, month-m)}, false
		}
		level[0] = w.onward(level[0], m)
	}
	best := mostEnergy(level, 0)
	steps = make([]*owning, month)
	for m := month - 1; m >= 0; m-- {
		steps[m] = best
		best = best.last
	}
	return steps, whole
}

// nextLevel returns everything that can be owned after a month, each with the most energy so far. It reports false where
// the context ends before that.
func (w *way) nextLevel(ctx context.Context, level []*owning, month int) (after []*owning, whole bool) {
	seen := map[string]*owning{}
	var order []string
	for _, before := range level {
		if ctx.Err() != nil {
			return nil, false
		}
		for sold := range w.stages {
			if before.sold&^sold != 0 || !w.inOrder(sold) {
				continue // a sale is never undone
			}
			w.reach(before, sold, before.bought, month, seen, &order)
			for i := range w.stages[sold] {
				w.reach(before, sold, w.with(before.bought, &w.stages[sold][i]), month, seen, &order)
			}
		}
	}
	for _, key := range order {
		after = append(after, seen[key])
	}
	return after, true
}

// reach notes that some purchases and sales can be made by a month, if the cash allows.
func (w *way) reach(before *owning, sold int, bought []float64, month int, seen map[string]*owning, order *[]string) {
	if w.outlay(bought, sold) > plan.Money(w.money.at(month)) {
		return
	}
	o := &owning{bought: bought, sold: sold, energy: before.energy, last: before}
	for i := range w.stages[sold] {
		st := &w.stages[sold][i]
		if covers(bought, st.needs) && (o.stage == nil || st.usable > o.stage.usable) {
			o.stage = st
		}
	}
	if o.stage != nil {
		o.energy += o.stage.usable
	}
	key := fmt.Sprint(sold, bought)
	if old, ok := seen[key]; !ok {
		seen[key] = o
		*order = append(*order, key)
	} else if o.energy > old.energy {
		seen[key] = o
	}
}

// covers reports whether quantities are at least those needed.
func covers(bought, needs []float64) bool {
	const hair = 1e-6 // metres, against the rounding of sums
	for i := range needs {
		if bought[i] < needs[i]-hair {
			return false
		}
	}
	return true
}

// with returns what is bought once a stage's needs are met, with every order begun bought whole.
func (w *way) with(bought []float64, st *stage) []float64 {
	out := append([]float64(nil), bought...)
	placed := make([]bool, w.orders)
	for i, n := range st.needs {
		out[i] = math.Max(out[i], n)
		if at := w.lines[i].order; at >= 0 && out[i] > 0 {
			placed[at] = true
		}
	}
	for i := range w.lines {
		if at := w.lines[i].order; at >= 0 && placed[at] {
			out[i] = w.lines[i].bill.Buy
		}
	}
	return out
}

// outlay returns what has been spent, less what was sold, once the given quantities are bought.
func (w *way) outlay(bought []float64, sold int) plan.Money {
	spend, shipping, tax := w.spent(bought)
	return spend + shipping + tax - w.credit(sold)
}

// spent returns the money for purchases. Lines and tax are rounded to the cent on the sum so far, so that the
// months add up to the target's bill.
func (w *way) spent(bought []float64) (spend, shipping, tax plan.Money) {
	placed := make([]bool, w.orders)
	for i, n := range bought {
		if n <= 0 {
			continue
		}
		spend += w.lineCents(i, n)
		if at := w.lines[i].order; at >= 0 {
			placed[at] = true
		}
	}
	for at, is := range placed {
		if is {
			shipping += w.ships[at]
		}
	}
	return spend, shipping, catalog.RoundCents(w.p.Scenario.Tax * float64(spend+shipping))
}

// lineCents returns the cost in cents of the first n of a line.
func (w *way) lineCents(i int, n float64) plan.Money {
	l := &w.lines[i].bill
	if n >= l.Buy {
		return l.Line
	}
	return catalog.RoundCents(n * 100 * l.UnitPrice)
}
