package next

import "cartwright/optimize/plan"

// mostEnergy returns of some states the one with the most energy on the way if its cart stays for some months more; of
// equals the first.
func mostEnergy(level []*owning, months int) *owning {
	worth := func(o *owning) float64 {
		if o.stage == nil {
			return o.energy
		}
		return o.energy + float64(months)*o.stage.usable
	}
	best := level[0]
	for _, o := range level[1:] {
		if worth(o) > worth(best) {
			best = o
		}
	}
	return best
}

// onward returns a month after a state in which the cart becomes as large as the cash allows, and nothing else is looked
// at: where the search is stopped it gives an order of purchases at once, and maybe not the best.
func (w *way) onward(before *owning, month int) *owning {
	o := &owning{bought: before.bought, sold: before.sold, stage: before.stage, last: before}
	for sold := range w.stages {
		if before.sold&^sold != 0 {
			continue // a sale is never undone
		}
		for i := range w.stages[sold] {
			st := &w.stages[sold][i]
			if o.stage != nil && st.usable <= o.stage.usable {
				continue
			}
			if bought := w.with(before.bought, st); w.outlay(bought, sold) <= plan.Money(w.money.at(month)) {
				o.bought, o.sold, o.stage = bought, sold, st
			}
		}
	}
	o.energy = before.energy
	if o.stage != nil {
		o.energy += o.stage.usable
	}
	return o
}

// stands reports whether a cart stands in some month.
func stands(steps []*owning) bool {
	for _, o := range steps {
		if o.stage != nil {
			return true
		}
	}
	return false
}
