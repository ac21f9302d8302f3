package next

import (
	"context"
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/audit"
	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
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
// either buys what one more stage is short of or buys nothing.
func (w *way) schedule(ctx context.Context, month int) ([]*owning, error) {
	level := []*owning{{bought: make([]float64, len(w.lines))}}
	for m := range month {
		level = w.nextLevel(ctx, level, m)
	}
	if ctx.Err() != nil {
		return nil, question.ErrUnknown
	}
	best := level[0]
	for _, o := range level[1:] {
		if o.energy > best.energy {
			best = o
		}
	}
	steps := make([]*owning, month)
	for m := month - 1; m >= 0; m-- {
		steps[m] = best
		best = best.last
	}
	return steps, nil
}

// nextLevel returns everything that can be owned after a month, each with the most energy so far; not all of it where
// the context ends.
func (w *way) nextLevel(ctx context.Context, level []*owning, month int) []*owning {
	seen := map[string]*owning{}
	var order []string
	for _, before := range level {
		if ctx.Err() != nil {
			break
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
	var after []*owning
	for _, key := range order {
		after = append(after, seen[key])
	}
	return after
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

// tell fills in the months of a sequence from its steps, the target last, and audits every cart.
func (w *way) tell(out *Sequence, steps []*owning) error {
	before := &owning{bought: make([]float64, len(w.lines)), sold: -1}
	whole := &owning{bought: make([]float64, len(w.lines)), sold: 1<<len(w.early) - 1}
	for i := range w.lines {
		whole.bought[i] = w.lines[i].bill.Buy
	}
	ownedWh := energy.OwnedWh(w.p.Scenario, w.p.Catalog)
	spentBefore := [3]plan.Money{}
	outlayBefore := plan.Money(0)
	for m, o := range append(steps, whole) {
		var month Month
		month.Month = m
		month.Cash = plan.Money(w.money.at(m)) - outlayBefore
		month.Buy, month.Sell = w.purchases(before, o), w.sold(before, o)
		spend, shipping, tax := w.spent(o.bought)
		month.Shipping, month.Tax = shipping-spentBefore[1], tax-spentBefore[2]
		month.Outlay = w.outlay(o.bought, o.sold)
		month.Left = plan.Money(w.money.at(m)) - month.Outlay
		switch {
		case o == whole:
			month.Cart = out.Target
		case o.stage != nil:
			p := o.stage.plan
			if err := w.auditCart(&p, o); err != nil {
				return err
			}
			month.Cart = &p
			out.EnergyOnTheWay += p.UsableKWh
		}
		if month.Cart != nil {
			month.CostPerUsableKWh = month.Outlay.Units() / month.Cart.UsableKWh
			month.CostPerExtraKWh = energy.CostPerExtraKWh(month.Outlay.Units(), 1000*month.Cart.UsableKWh, ownedWh)
			check := audit.Extra(w.p.Scenario, w.p.Catalog, month.CostPerExtraKWh, month.Outlay.Units(), 1000*month.Cart.UsableKWh)
			if err := question.Agreed(*month.Cart, check); err != nil {
				return err
			}
		}
		out.Months = append(out.Months, month)
		spentBefore, outlayBefore, before = [3]plan.Money{spend, shipping, tax}, month.Outlay, o
	}
	return nil
}

// purchases returns what is bought between two states.
func (w *way) purchases(before, after *owning) []Purchase {
	var list []Purchase
	for i := range w.lines {
		n := after.bought[i] - before.bought[i]
		if n <= 0 {
			continue
		}
		l := &w.lines[i].bill
		list = append(list, Purchase{Part: l.Part, Kind: l.Kind, Quantity: n, Unit: l.Unit, Vendor: l.Vendor,
			UnitPrice: l.UnitPrice, Line: w.lineCents(i, after.bought[i]) - w.lineCents(i, before.bought[i])})
	}
	return list
}

// auditCart audits a cart on the way: everything except the loads' peaks, autonomy and recharge has to hold.
func (w *way) auditCart(p *plan.Plan, o *owning) error {
	s := *w.p.Scenario
	s.Have, s.AutonomyH, s.Recharge = w.holdings(o.bought, o.sold), 0, nil
	told := *p // extra energy is counted from what is owned by then
	told.CostPerExtraKWh = energy.CostPerExtraKWh(p.Cost.Units(), 1000*p.UsableKWh, energy.OwnedWh(&s, w.p.Catalog))
	p.Audit = audit.Plan(&s, w.p.Catalog, &told)
	var failed []plan.Check
	for _, c := range p.Audit.Checks {
		if !c.Passed && !bench.Short(c.Name) {
			failed = append(failed, c)
		}
	}
	if len(failed) > 0 {
		return &question.DisagreementError{Plan: *p, Failed: failed}
	}
	return nil
}
