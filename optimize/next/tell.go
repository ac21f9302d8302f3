package next

import (
	"cartwright/optimize/audit"
	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// tell fills in the months of a sequence from its steps, the target last, and audits every cart; one that stays, with nothing
// bought or sold, once.
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
		case m > 0 && o.stage == before.stage && len(month.Buy)+len(month.Sell) == 0:
			month.Cart = out.Months[m-1].Cart
		case o.stage != nil:
			p := o.stage.plan
			if err := w.auditCart(&p, o); err != nil {
				return err
			}
			month.Cart = &p
		}
		if month.Cart != nil && o != whole {
			out.EnergyOnTheWay += month.Cart.UsableKWh
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
