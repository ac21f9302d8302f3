package audit

import (
	"math"

	"cartwright/optimize/plan"
)

const (
	ruleSpend    = "spend"
	ruleShipping = "shipping"
	ruleTax      = "tax"
	ruleCredit   = "credit"
	ruleCost     = "cost"
	ruleBudget   = "budget"
	rulePerKWh   = "cost per usable kWh"
	rulePerLife  = "cost per lifetime kWh"
)

var costRules = []Rule{
	{ruleSpend, "", "spend = sum of the bill's lines", "arithmetic"},
	{ruleShipping, "", "once for each vendor bought from: the largest shipping of the offers bought there", "the catalogue"},
	{ruleTax, "", "tax rate * (spend + shipping), to the cent", fromScenario},
	{ruleCredit, "", "credit = sum of the bill's credits", "arithmetic"},
	{ruleCost, "", "cost = spend + shipping + tax - credit", "arithmetic"},
	{ruleBudget, "", "cost <= budget and what is in hand from parts sold before", fromScenario},
	{rulePerKWh, "", "cost / usable kWh", "arithmetic"},
	{rulePerLife, "", "cost / sum of usable kWh * min(cycle life, calendar years * cycles a year); 0 where a battery states neither", "the divisor of the throughput cost; that age ends it too: " + practice},
}

// costs checks whether the sums of the bill are true to the cent, and within the budget.
func (a *auditor) costs() {
	p := a.p
	var spend, credit plan.Money
	for _, l := range p.Bill {
		spend += l.Line
		credit += l.Credit
	}
	a.sameMoney(ruleSpend, p.Spend, spend)
	a.sameMoney(ruleShipping, p.Shipping, a.shipping())
	a.cents(ruleTax, p.Tax, a.s.Tax*float64(p.Spend+p.Shipping), "")
	a.sameMoney(ruleCredit, p.Credit, credit)
	a.sameMoney(ruleCost, p.Cost, p.Spend+p.Shipping+p.Tax-p.Credit)
	if a.s.Limits.Budget != math.MaxInt64 {
		limit := (a.s.Limits.Budget + a.s.Sold).Units()
		a.tell(ruleBudget, p.Cost.Units(), limit, int64(p.Cost) <= int64(a.s.Limits.Budget+a.s.Sold), limit-p.Cost.Units(), "")
		a.note(plan.LimitBudget, a.s.Currency, p.Cost.Units(), limit, false)
	}
	a.perEnergy()
}

// sameMoney notes the check that two amounts are the same to the cent.
func (a *auditor) sameMoney(rule string, stated, truth plan.Money) {
	a.exactly(rule, stated.Units(), truth.Units(), "")
}

// shipping returns what the vendors bought from charge for shipping, each once.
func (a *auditor) shipping() plan.Money {
	most := map[string]plan.Money{}
	for i := range a.p.Bill {
		l := &a.p.Bill[i]
		if l.Buy > 0 {
			price, _ := a.priceOf(l)
			most[l.Vendor] = max(most[l.Vendor], plan.Money(price.shipping))
		}
	}
	sum := plan.Money(0)
	for _, m := range most { // a sum of whole numbers is the same in any order
		sum += m
	}
	return sum
}

// perEnergy checks whether the stated costs of a kWh of usable, extra and lifetime energy are true.
func (a *auditor) perEnergy() {
	a.truly(rulePerKWh, a.p.CostPerUsableKWh, a.p.Cost.Units()/(a.usableWh()/1000), "")
	a.truly(rulePerKWh, a.p.CostPerExtraKWh, perExtra(a.p.Cost.Units(), a.usableWh()-a.ownedWh()), "")
	life := a.lifetimeWh()
	if life == 0 {
		life = math.Inf(1) // the cost of a kWh is 0 then
	}
	a.truly(rulePerLife, a.p.CostPerLifetimeKWh, a.p.Cost.Units()/(life/1000), "")
}

// perExtra returns the cost of a usable kWh beyond those owned, 0 where there is none.
func perExtra(costUnits, extraWh float64) float64 {
	if extraWh < 1e-6 {
		return 0 // what rounding leaves
	}
	return costUnits / (extraWh / 1000)
}

// ownedWh returns the usable energy in Wh of the owned batteries, in whole strings; of groups that may not share a bus,
// that of the group with the most.
func (a *auditor) ownedWh() float64 {
	sums, most := map[string]float64{}, 0.0
	for _, b := range a.stock.batteries { // the order of a map changes each sum by rounding at most
		modules := 0.0
		for _, h := range a.s.Have {
			if h.PartID == b.ID {
				modules += h.Count
			}
		}
		series := math.Round(a.s.Bus.NominalV / b.NominalV)
		if series < 1 || series > float64(b.MaxSeries) || series*b.MaxV > a.s.Bus.HighV || series*b.NominalV < a.s.Bus.LowV {
			continue
		}
		strings := math.Floor(modules / series)
		if b.MaxParallel > 0 {
			strings = math.Min(strings, float64(b.MaxParallel))
		}
		group := b.Group
		if group == "" {
			group = "alone\x00" + b.ID
		}
		sums[group] += strings * series * a.usableOf(&bank{Battery: b})
		most = math.Max(most, sums[group])
	}
	return most
}

// lifetimeWh returns the energy in Wh the batteries give to the bus until they are worn out or too old; 0 where one of
// them states neither cycle life nor calendar years.
//
//	sum U · modules · min(cycle_life, calendar_years · cycles a year)
func (a *auditor) lifetimeWh() float64 {
	life, cycles := 0.0, a.cyclesAYear()
	for i := range a.strings {
		b := &a.strings[i]
		lasts := math.Inf(1)
		if b.CycleLife > 0 {
			lasts = b.CycleLife
		}
		if b.CalendarYears > 0 {
			lasts = math.Min(lasts, b.CalendarYears*cycles)
		}
		if math.IsInf(lasts, 1) {
			return 0
		}
		life += a.usableOf(b) * b.modules() * lasts
	}
	return life
}

// cyclesAYear returns how often in a year the usable energy is drawn: by the mean day of the record on the
// days of use, or with sun by the year itself.
func (a *auditor) cyclesAYear() float64 {
	if a.inverter == nil || a.demand == nil {
		return 0
	}
	if a.year != nil {
		return a.year.cycles
	}
	return a.busEnergy().meanDayWh() * a.s.UseDays / a.usableWh()
}
