package optimize

import (
	"math"
	"strconv"

	"cartwright/optimize/milp"
	"cartwright/optimize/wiring"
)

// recharge asks that the chargers give, and the strings take, the energy of the autonomy in time.
func (p *program) recharge() {
	if p.b.s.Recharge == nil {
		return
	}
	// In ampere-hours at the bus voltage. The lossiest battery present sets what has to go in.
	back := func(own *stack) milp.Expr {
		return p.bySupply(func(v *supply) float64 { return p.b.rechargeA(v, own) })
	}
	charger := p.bySupply(func(v *supply) float64 { return v.chargerA })
	taken := p.byString(func(k *stack) float64 { return k.chargeA })
	for i := range p.sp.strings {
		own := p.stack(i)
		most := p.largestSupply(func(v *supply) float64 { return p.b.rechargeA(v, own) })
		row := func(name string, have milp.Expr) {
			e := minus(have, back(own))
			e.Add(-most, p.present[i])
			p.m.Row(name+" "+own.bat.ID, e, milp.AtLeast, -most)
		}
		row("recharge by the charger", charger)
		row("recharge of the batteries", taken)
	}
}

// fill makes the variables of a slot: how many of its count each option fills. The count is an
// expression; most is its largest value and least its smallest.
func (p *program) fill(kind slotKind, of int, s slot, count milp.Expr, least, most int) *slotVars {
	v := slotVars{slot: s, kind: kind, of: of}
	for i := range s.options {
		lo := 0.0
		if len(s.options) == 1 {
			lo = float64(least)
		}
		v.filling = append(v.filling, p.m.Integer(s.name+" by "+p.b.describe(&s.options[i])+" "+number(i), lo, float64(most)))
	}
	p.m.Row("fill "+s.name, minus(sum(v.filling, one), count), milp.Equal, 0)
	p.slots = append(p.slots, v)
	return &p.slots[len(p.slots)-1]
}

// describe names an option in a variable's name.
func (b *bench) describe(o *option) string {
	if o.part != "" {
		return o.part
	}
	name := o.wire.Cable.ID
	if o.wire.Sets > 1 {
		name += " x" + strconv.Itoa(o.wire.Sets)
	}
	if o.wire.Device != nil {
		name += " " + o.wire.Device.ID
	}
	if o.wire.Ground != nil {
		name += " " + o.wire.Ground.ID
	}
	return name
}

// fault returns the prospective fault current of the bus, and the least and the most it can be.
func (p *program) fault() (e milp.Expr, least, most float64) {
	for i, r := range p.sp.strings {
		k := p.stack(i)
		e.Add(k.shortA, p.strings[i])
		least += float64(r.lo) * k.shortA
		most += float64(r.hi) * k.shortA
	}
	return e, least, most
}

// wireStrings gives every string a cable and a device that can break what the others feed into its fault.
func (p *program) wireStrings() {
	fault, least, most := p.fault()
	for i, r := range p.sp.strings {
		k := p.stack(i)
		if k.options == nil {
			continue
		}
		calm := wiring.StringFaultA(k.shortA, math.Max(k.shortA, least)) // holds in the whole space
		s := slot{name: "string " + k.bat.ID, count: r.hi, options: p.usable(k.options, func(o *option) bool {
			return o.interruptingA >= calm
		})}
		v := p.fill(slotString, i, s, milp.Sum(milp.T(1, p.strings[i])), r.lo, r.hi)
		others := minus(fault, milp.Expr{})
		others.Const(-k.shortA)
		p.breakFault(v, others, most-k.shortA, r.hi)
	}
}

// wireSupply gives every inverter its main and all together their feeder.
func (p *program) wireSupply() {
	fault, least, most := p.fault()
	for i, at := range p.sp.supplies {
		v := &p.b.supplies[at]
		count := func(n int) milp.Expr { return milp.Sum(milp.T(float64(n), p.supply[i])) }
		sure := 0
		if len(p.sp.supplies) == 1 {
			sure = 1
		}
		name := v.inv.ID + " x" + strconv.Itoa(v.units)
		if v.main != nil {
			s := slot{name: "main " + name, count: v.units, options: p.usable(v.main, func(o *option) bool {
				return o.interruptingA >= least
			})}
			p.breakFault(p.fill(slotMain, i, s, count(v.units), sure*v.units, v.units), fault, most, v.units)
		}
		if v.feeder != nil {
			s := slot{name: "feeder " + name, count: 1, options: p.usable(v.feeder, nil)}
			p.fill(slotFeeder, i, s, count(1), sure, 1)
		}
	}
}

// usable returns the options that serve, pruned to the lightest and cheapest where tipping is settled.
func (p *program) usable(options []option, serves func(*option) bool) []option {
	var kept []option
	for i := range options {
		if serves == nil || serves(&options[i]) {
			kept = append(kept, options[i])
		}
	}
	if p.sp.settled {
		kept = p.b.market.prune(kept, false)
	}
	return kept
}

// breakFault adds, for each option whose interrupting rating the fault current could exceed, that it
// then fills nothing.
func (p *program) breakFault(v *slotVars, fault milp.Expr, most float64, count int) {
	for i := range v.slot.options {
		rating := v.slot.options[i].interruptingA
		if rating >= most {
			continue
		}
		used := v.filling[i]
		if count > 1 {
			name := v.slot.name + " " + number(i)
			used = p.m.Binary("used " + name)
			p.m.Row("filled only if used "+name, milp.Sum(milp.T(1, v.filling[i]), milp.T(-float64(count), used)), milp.AtMost, 0)
		}
		// In units of the largest fault current, so that the row is of the size of its neighbours.
		e := milp.Sum(milp.T((most-rating)/most, used))
		e.AddExpr(1/most, fault)
		p.m.Row("interrupting rating "+v.slot.name+" "+number(i), e, milp.AtMost, 1)
	}
}

// fillFixed fills what every plan has, and asks the load centre for a space for every breaker pole.
func (p *program) fillFixed() {
	var spaces milp.Expr
	for _, s := range p.b.fixed {
		s.options = p.usable(s.options, nil)
		var n milp.Expr
		n.Const(float64(s.count))
		v := p.fill(slotFixed, 0, s, n, s.count, s.count)
		for i := range s.options {
			spaces.Add(float64(s.options[i].spaces-s.options[i].poles), v.filling[i])
		}
	}
	if p.b.spacesTold {
		p.m.Row("load-centre spaces", spaces, milp.AtLeast, 0)
	}
}

// fillBusbars chooses the pair of bus bars.
func (p *program) fillBusbars() {
	current := func(v *supply) float64 { return wiring.BusbarA(v.busA, p.b.dcA) }
	least := -p.largestSupply(func(v *supply) float64 { return -current(v) })
	s := slot{name: "bus bars", count: 1, options: p.usable(p.b.busbars, func(o *option) bool { return o.ratingA >= least })}
	var n milp.Expr
	n.Const(1)
	v := p.fill(slotBusbar, 0, s, n, 1, 1)
	p.m.Row("bus bar current", minus(
		sum(v.filling, func(i int) float64 { return v.slot.options[i].ratingA }), p.bySupply(current)), milp.AtLeast, 0)
	e := sum(v.filling, func(i int) float64 { return float64(v.slot.options[i].studs) })
	e.AddExpr(-1, sum(p.strings, one))
	e.AddExpr(-1, p.bySupply(func(v *supply) float64 { return float64(v.units) }))
	p.m.Row("bus bar studs", e, milp.AtLeast, 0)
}

// fillCasters chooses the set of casters; what they must carry is known once everything is weighed.
func (p *program) fillCasters() {
	var n milp.Expr
	n.Const(1)
	p.fill(slotCasters, 0, slot{name: "casters", count: 1, options: p.usable(p.b.casters, nil)}, n, 1, 1)
}
