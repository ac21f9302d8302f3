package model

import (
	"cartwright/optimize/bench"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/milp"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
)

// breakFaults requires that no device has to break more than it can, that everything the whole bus current flows
// through is rated for it, that strings of a kind are wired alike, and that bond and load centre suit the rest.
func (p *program) breakFaults() {
	fault := p.wholeFault()
	_, most := p.fault()
	for i := range p.slots {
		if p.ended() {
			return
		}
		v := &p.slots[i]
		switch {
		case v.kind == choice.SlotString:
			if v.alike > 0 {
				continue // its options were chosen for the fault current of this core
			}
			own, b := p.stack(v.of).ShortA, p.busOf[v.of]
			others := minus(b.fault, milp.Expr{})
			others.Const(-own)
			p.breakFault(v, others, b.mostA-own)
			p.wireAlike(v)
			p.barByCurrent(v, func(busA float64) func(*market.Option) bool { return p.stringServes(v, busA) })
		case v.kind == choice.SlotMain, v.slot.For == market.DC:
			p.breakFault(v, fault, most)
		case v.slot.For == market.Through:
			p.barByCurrent(v, func(busA float64) func(*market.Option) bool {
				asked := wiring.ThroughA(busA)
				return func(o *market.Option) bool { return plan.AtLeast(o.RatingA, asked) }
			})
		case v.kind == choice.SlotBusbar:
			p.loadBusbars(v)
		case v.slot.For == market.Bond:
			p.bond(v)
		case v.slot.For == market.Centre:
			p.centre(v)
		}
	}
}

// stringServes returns a test for the options of a string that serve at a bus current.
func (p *program) stringServes(v *slotVars, busA float64) func(*market.Option) bool {
	serves := map[wiring.Option]bool{}
	for _, n := range []int{p.fewestStrings(), p.mostStrings()} {
		options, _ := p.Bench.RunOptions(wiring.StringDuty(p.Bench.Scenario, p.stack(v.of).Battery, busA, n))
		for i := range options {
			serves[options[i].Wire] = true
		}
	}
	return func(o *market.Option) bool { return serves[o.Wire] }
}

// barByCurrent requires, for each bus current that a supply of the space causes, that options which do not serve at it
// are not used. Supplies that bar the same options have one row.
func (p *program) barByCurrent(v *slotVars, serving func(busA float64) func(*market.Option) bool) {
	if len(p.supply) < 2 {
		return
	}
	rows := map[string]milp.Expr{}
	beside := map[string][]int{} // by row: supplies
	var order []string
	for _, alike := range p.byCurrent {
		serves, which := serving(p.busA(alike)), ""
		barred := sum(v.filling, func(j int) float64 {
			if serves(&v.slot.Options[j]) {
				return 0
			}
			which += number(j) + " "
			return 1
		})
		if barred.Len() == 0 {
			continue
		}
		if beside[which] == nil {
			rows[which] = barred
			order = append(order, which)
		}
		beside[which] = append(beside[which], alike...)
	}
	for _, which := range order {
		row := rows[which]
		row.AddExpr(float64(v.most), p.anyOf(beside[which]))
		p.Model.Row(v.slot.Name+" beside supply "+number(beside[which][0]), row, milp.AtMost, float64(v.most))
	}
}

// wireAlike requires that all strings of a kind have one option and, where the number of strings decides, that they have
// a device at both ends if and only if the bus has three strings or more.
func (p *program) wireAlike(v *slotVars) {
	var ways milp.Expr
	for j, x := range v.filling {
		z := p.Model.Binary("alike " + v.slot.Name + " " + number(j))
		p.Model.Row("wired alike "+v.slot.Name+" "+number(j), milp.Sum(milp.T(1, x), milp.T(-float64(v.most), z)), milp.AtMost, 0)
		ways.Add(1, z)
	}
	p.Model.Row("one way for "+v.slot.Name, ways, milp.AtMost, 1)
	few, many := p.fewestStrings(), p.mostStrings()
	if wiring.BothEnds(p.Bench.Scenario, few) == wiring.BothEnds(p.Bench.Scenario, many) {
		return
	}
	both := p.bothEnds()
	const devices = 2
	single := sum(v.filling, func(j int) float64 {
		if protected(&v.slot.Options[j]) < devices {
			return 1
		}
		return 0
	})
	double := minus(sum(v.filling, one), single)
	single.Add(float64(v.most), both)
	double.Add(-float64(v.most), both)
	p.Model.Row("one end of "+v.slot.Name, single, milp.AtMost, float64(v.most))
	p.Model.Row("both ends of "+v.slot.Name, double, milp.AtMost, 0)
}

// protected returns how many devices a string's option has, the battery's own counted.
func protected(o *market.Option) int {
	if o.Wire.BuiltIn {
		return o.Wire.Devices + 1
	}
	return o.Wire.Devices
}

// bothEnds returns a variable that is 1 if and only if the bus has so many strings that each has a device at both ends.
func (p *program) bothEnds() milp.Var {
	if p.many != nil {
		return *p.many
	}
	z := p.Model.Binary("strings protected at both ends")
	p.many = &z
	from := p.fewestStrings()
	for !wiring.BothEnds(p.Bench.Scenario, from) {
		from++
	}
	all := sum(p.strings, one)
	all.Add(-float64(p.mostStrings()), z)
	p.Model.Row("both ends from some strings up", all, milp.AtMost, float64(from-1))
	all = sum(p.strings, one)
	all.Add(-float64(from), z)
	p.Model.Row("both ends not below them", all, milp.AtLeast, 0)
	return z
}

// breakFault requires that an option is not used where the fault current exceeds its interrupting rating.
func (p *program) breakFault(v *slotVars, fault milp.Expr, most float64) {
	for i := range v.slot.Options {
		rating := v.slot.Options[i].InterruptingA
		if plan.AtLeast(rating, most) {
			continue
		}
		used := v.filling[i]
		if v.most > 1 {
			name := v.slot.Name + " " + number(i)
			used = p.Model.Binary("used " + name)
			p.Model.Row("filled only if used "+name, milp.Sum(milp.T(1, v.filling[i]), milp.T(-float64(v.most), used)), milp.AtMost, 0)
		}
		// In units of the largest fault current, so that the row is of the size of its neighbours.
		e := milp.Sum(milp.T((most-rating)/most, used))
		e.AddExpr(1/most, fault)
		p.Model.Row("interrupting rating "+v.slot.Name+" "+number(i), e, milp.AtMost, 1)
	}
}

// loadBusbars requires bars that carry the bus current and have a stud for every connection.
func (p *program) loadBusbars(v *slotVars) {
	p.Model.Row("bus bar current", minus(
		sum(v.filling, func(i int) float64 { return v.slot.Options[i].RatingA }),
		p.bySupply(func(v *bench.Supply) float64 { return wiring.BusbarA(v.BusA) })), milp.AtLeast, 0)
	e := sum(v.filling, func(i int) float64 { return float64(v.slot.Options[i].Studs) })
	e.AddExpr(-1, sum(p.strings, one))
	e.AddExpr(-1, p.bySupply(func(v *bench.Supply) float64 { return float64(v.Units) }))
	p.Model.Row("bus bar studs", e, milp.AtLeast, float64(p.Bench.DCCircuits))
}
