package audit

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// restate makes all that a broken plan states about itself true again: figures, bill, sums and limits. So
// a mutation of what the cart is made of is found by the check of that, not by a figure left behind. It
// leans on the auditor's own arithmetic, which the good plans hold to figures worked out elsewhere.
func (k *cart) restate() {
	p := k.p
	a := k.auditor().of(p)
	a.recognise()
	k.rebill(a)
	a.installed()

	p.UsableKWh = a.usableWh() / 1000
	if a.inverter != nil && a.demand != nil {
		p.AutonomyH = a.hours()
	}
	k.refigure(a)
	p.Shipping = a.shipping()
	p.Tax = plan.Money(math.Round(k.s.Tax * float64(p.Spend+p.Shipping)))
	p.Cost = p.Spend + p.Shipping + p.Tax - p.Credit
	p.CostPerUsableKWh = p.Cost.Units() / math.Max(p.UsableKWh, 1e-6) // a number even of nothing
	p.CostPerExtraKWh = perExtra(a.p.Cost.Units(), a.usableWh()-a.ownedWh())
	p.CostPerLifetimeKWh = 0
	if life := a.lifetimeWh(); life > 0 {
		p.CostPerLifetimeKWh = p.Cost.Units() / (life / 1000)
	}
	p.Year = nil
	if y := a.year; y != nil {
		p.Year = k.told(y)
	}
	if k.s.Limits.Budget != math.MaxInt64 {
		a.note(plan.LimitBudget, k.s.Currency, p.Cost.Units(), (k.s.Limits.Budget + k.s.Sold).Units(), false)
	}
	p.Limits = a.truth
}

// refigure restates runs, shelves, mass, casters and balance.
func (k *cart) refigure(a *auditor) {
	p := k.p
	for i := range p.Circuits {
		if c := circuitNamed(k.s, p.Circuits[i].Circuit); c != noCircuit && a.demand != nil {
			p.Circuits[i].CurrentA, p.Circuits[i].DeviceA = circuitA(k.s, &a.hooked, c), k.s.Circuits[c].DeviceA
		}
	}
	tasks := a.tasks()
	for i := range p.Runs {
		r := &p.Runs[i]
		if t := taskOf(tasks, r); t != nil {
			res := a.rule(t, r)
			r.DesignA, r.RequiredA, r.AllowedA, r.DeviceA = t.designA, res.requiredA, res.allowedA, res.deviceA
			r.DropPct, r.DropLimitPct = res.dropPct, 100*t.drop
			if t.kind == scenarios.RunBond {
				r.DropLimitPct = 0
			}
			r.FaultA, r.InterruptingA = t.faultA, res.interruptingA
		}
	}
	for i := range p.Shelves {
		sh := &p.Shelves[i]
		sh.MassKg = 0
		for _, m := range sh.Batteries {
			sh.MassKg += float64(m.Modules) * k.part(m.Part).MassKg
		}
	}
	l := a.load()
	p.MassKg = a.massKg()
	p.Casters.Count, p.Casters.LoadEachKg = k.s.Cart.Casters, a.wheelKg()
	if set := a.stock.casters[p.Casters.Part]; set != nil {
		p.Casters.RatingEachKg = set.RatingKg
	}
	p.Balance = plan.Balance{CGHeightMM: 1000 * l.height / l.kg, RequiredDeg: k.s.Limits.TiltDeg,
		TiltDeg: math.Min(l.tipsDeg(l.side), l.tipsDeg(l.kg*k.s.Cart.WheelbaseM/2))}
}

// rebill restates the quantities, amounts and sums of the bill; parts that have no line yet are bought at
// their own price, and lines of nothing go.
func (k *cart) rebill(a *auditor) {
	p := k.p
	required := a.required()
	for _, x := range required.order {
		if _, known := a.stock.ends[x.part]; a.free(x) || x.ends && !known || a.stock.parts[x.part] == nil {
			continue
		}
		l := k.lineOf(a, x)
		l.Quantity = required.quantity[x]
		l.Have = math.Min(l.Have, l.Quantity)
		l.Buy = l.Quantity - l.Have
	}
	p.Spend, p.Credit = 0, 0
	kept := p.Bill[:0]
	for _, l := range p.Bill {
		_, called := required.quantity[of(&l)]
		kind := catalog.Kind(l.Kind)
		if !called && kind != catalog.KindSundry && kind != catalog.KindBusbar {
			l.Quantity, l.Have, l.Buy = 0, 0, 0
		}
		l.Line = plan.Money(math.Round(l.Buy * l.UnitPrice * 100))
		if l.Quantity > 0 || l.Sell > 0 || l.Buy > 0 {
			kept = append(kept, l)
			p.Spend += l.Line
			p.Credit += l.Credit
		}
	}
	p.Bill = kept
}

// lineOf returns the line of an article, a new one where there is none.
func (k *cart) lineOf(a *auditor, x article) *plan.Line {
	for i := range k.p.Bill {
		if of(&k.p.Bill[i]) == x {
			return &k.p.Bill[i]
		}
	}
	l := plan.Line{Part: x.part, Kind: string(a.stock.kinds[x.part]), Unit: a.unitOf(x)}
	if part := a.stock.parts[x.part]; part != nil {
		l.UnitPrice, l.Vendor = part.Price.Units(), part.Vendor
	}
	if a.stock.byLength(x.part) {
		l.UnitPrice = a.stock.metres[x.part] / 100
	}
	if x.ends {
		l.Kind += "-end"
		l.UnitPrice = a.stock.ends[x.part].Units()
	}
	k.p.Bill = append(k.p.Bill, l)
	return &k.p.Bill[len(k.p.Bill)-1]
}

// told returns a year as a plan tells it.
func (k *cart) told(y *year) *plan.Year {
	t := &plan.Year{Served: y.served, ShortH: y.shortH, LongestShortH: y.longestH, WallKWh: y.wallWh / 1000,
		SpilledKWh: y.spilledWh / 1000, ClippedKWh: y.clippedWh / 1000, SunKWh: y.sunWh / 1000, Cycles: y.cycles, Months: y.months[:]}
	if cents := k.s.GridCentsPerKWh * y.servedLoadWh / 1000; k.s.GridCentsPerKWh > 0 {
		saved := plan.Money(math.Round(cents))
		t.Saved = &saved
		if cents > 0 {
			years := float64(k.p.Cost) / cents
			t.PaybackYears = &years
		}
	}
	return t
}
