package optimize

import (
	"math"
	"strconv"

	"cartwright/optimize/milp"
	"cartwright/optimize/wiring"
)

// laySlots lists what has to be filled, with the options that may. The casters and the bus bars come
// first: the solver decides in the order of the variables, and these are what the rest depends on.
func (p *program) laySlots() {
	p.layCasters()
	p.layBusbars()
	p.layStrings()
	p.laySupply()
	p.layFixed()
}

// slot adds a slot whose count lies between least and most.
func (p *program) slot(kind slotKind, of int, s slot, count milp.Expr, least, most int) {
	p.slots = append(p.slots, slotVars{slot: s, kind: kind, of: of, count: count, least: least, most: most})
}

// just returns the constant n as an expression.
func just(n int) milp.Expr {
	var e milp.Expr
	e.Const(float64(n))
	return e
}

// usable returns the options that serve, with what no longer tells them apart taken out by alike, and
// without those that another dominates. Heavy says that mass may help there against tipping.
func (p *program) usable(options []option, heavy bool, serves func(*option) bool, alike func(*option)) []option {
	var kept []option
	for i := range options {
		if serves != nil && !serves(&options[i]) {
			continue
		}
		o := options[i]
		if alike != nil {
			alike(&o)
		}
		if p.market.settled {
			if !p.market.canHave(&o) {
				continue
			}
			p.market.price(&o)
		}
		kept = append(kept, o)
	}
	return p.market.prune(kept, heavy && !p.sp.settled)
}

// fixed reports whether supply and strings are given: then currents and connections are, too.
func (p *program) fixed() bool {
	for _, r := range p.sp.strings {
		if r.lo != r.hi {
			return false
		}
	}
	return len(p.sp.supplies) == 1
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

// breaksAll takes the interrupting rating out of an option that breaks every fault there can be.
func breaksAll(most float64) func(*option) {
	return func(o *option) {
		if o.interruptingA >= most {
			o.interruptingA = math.Inf(1)
		}
	}
}

// layStrings gives every string a cable and a device that can break what the others feed into its fault.
func (p *program) layStrings() {
	_, least, most := p.fault()
	for i, r := range p.sp.strings {
		k := p.stack(i)
		if k.options == nil {
			continue
		}
		calm := wiring.StringFaultA(k.shortA, math.Max(k.shortA, least)) // holds in the whole space
		options := p.usable(k.options, p.b.tips.heavyBoard, func(o *option) bool { return o.interruptingA >= calm },
			breaksAll(math.Max(k.shortA, most-k.shortA)))
		s := slot{name: "string " + k.bat.ID, count: r.hi, options: options}
		p.slot(slotString, i, s, milp.Sum(milp.T(1, p.strings[i])), r.lo, r.hi)
	}
}

// laySupply gives every inverter its main and all together their feeder.
func (p *program) laySupply() {
	_, least, most := p.fault()
	for i, at := range p.sp.supplies {
		v := &p.b.supplies[at]
		count := func(n int) milp.Expr { return milp.Sum(milp.T(float64(n), p.supply[i])) }
		sure := 0
		if len(p.sp.supplies) == 1 {
			sure = 1
		}
		name := v.inv.ID + " x" + strconv.Itoa(v.units)
		if v.main != nil {
			options := p.usable(v.main, p.b.tips.heavyBoard, func(o *option) bool { return o.interruptingA >= least }, breaksAll(most))
			p.slot(slotMain, i, slot{name: "main " + name, count: v.units, options: options}, count(v.units), sure*v.units, v.units)
		}
		if v.feeder != nil {
			s := slot{name: "feeder " + name, count: 1, options: p.usable(v.feeder, p.b.tips.heavyBoard, nil, nil)}
			p.slot(slotFeeder, i, s, count(1), sure, 1)
		}
	}
}

// layFixed fills what every plan has.
func (p *program) layFixed() {
	for _, s := range p.b.fixed {
		s.options = p.usable(s.options, p.b.tips.heavyBoard, nil, nil)
		p.slot(slotFixed, 0, s, just(s.count), s.count, s.count)
	}
}

// layBusbars chooses the pair of bus bars.
func (p *program) layBusbars() {
	current := func(v *supply) float64 { return wiring.BusbarA(v.busA, p.b.dcA) }
	least := -p.largestSupply(func(v *supply) float64 { return -current(v) })
	serves := func(o *option) bool { return o.ratingA >= least }
	var alike func(*option)
	if p.fixed() {
		studs := p.b.supplies[p.sp.supplies[0]].units
		for _, r := range p.sp.strings {
			studs += r.lo
		}
		serves = func(o *option) bool { return o.ratingA >= least && o.studs >= studs }
		alike = func(o *option) { o.ratingA, o.studs = least, studs }
	}
	s := slot{name: "bus bars", count: 1, options: p.usable(p.b.busbars, p.b.tips.heavyBoard, serves, alike)}
	p.slot(slotBusbar, 0, s, just(1), 1, 1)
}

// layCasters chooses the set of casters; what they must carry is known once everything is weighed.
func (p *program) layCasters() {
	s := slot{name: "casters", count: 1, options: p.usable(p.b.casters, p.b.tips.heavyCasters, nil, nil)}
	p.slot(slotCasters, 0, s, just(1), 1, 1)
}

// fillSlots makes the variables of every slot: how many of its count each option fills.
func (p *program) fillSlots() {
	for at := range p.slots {
		v := &p.slots[at]
		for i := range v.slot.options {
			least := 0
			if len(v.slot.options) == 1 {
				least = v.least
			}
			name := v.slot.name + " by " + p.b.describe(&v.slot.options[i]) + " " + number(i)
			v.filling = append(v.filling, p.m.Integer(name, float64(least), float64(v.most)))
		}
		p.m.Row("fill "+v.slot.name, minus(sum(v.filling, one), v.count), milp.Equal, 0)
	}
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

// breakFaults sees that no device is asked to break more than it can, that the bus bars carry the
// current and have a stud for everything, and that the load centre has a space for every breaker pole.
func (p *program) breakFaults() {
	fault, _, most := p.fault()
	var spaces milp.Expr
	for i := range p.slots {
		v := &p.slots[i]
		switch v.kind {
		case slotString:
			own := p.stack(v.of).shortA
			others := minus(fault, milp.Expr{})
			others.Const(-own)
			p.breakFault(v, others, most-own)
		case slotMain:
			p.breakFault(v, fault, most)
		case slotFixed:
			for j := range v.slot.options {
				spaces.Add(float64(v.slot.options[j].spaces-v.slot.options[j].poles), v.filling[j])
			}
		case slotBusbar:
			p.loadBusbars(v)
		}
	}
	if p.b.spacesTold {
		p.m.Row("load-centre spaces", spaces, milp.AtLeast, 0)
	}
}

// breakFault adds, for each option whose interrupting rating the fault current could exceed, that it
// then fills nothing.
func (p *program) breakFault(v *slotVars, fault milp.Expr, most float64) {
	for i := range v.slot.options {
		rating := v.slot.options[i].interruptingA
		if rating >= most {
			continue
		}
		used := v.filling[i]
		if v.most > 1 {
			name := v.slot.name + " " + number(i)
			used = p.m.Binary("used " + name)
			p.m.Row("filled only if used "+name, milp.Sum(milp.T(1, v.filling[i]), milp.T(-float64(v.most), used)), milp.AtMost, 0)
		}
		// In units of the largest fault current, so that the row is of the size of its neighbours.
		e := milp.Sum(milp.T((most-rating)/most, used))
		e.AddExpr(1/most, fault)
		p.m.Row("interrupting rating "+v.slot.name+" "+number(i), e, milp.AtMost, 1)
	}
}

// loadBusbars asks for bars that carry the bus current and have a stud for everything.
func (p *program) loadBusbars(v *slotVars) {
	p.m.Row("bus bar current", minus(
		sum(v.filling, func(i int) float64 { return v.slot.options[i].ratingA }),
		p.bySupply(func(v *supply) float64 { return wiring.BusbarA(v.busA, p.b.dcA) })), milp.AtLeast, 0)
	e := sum(v.filling, func(i int) float64 { return float64(v.slot.options[i].studs) })
	e.AddExpr(-1, sum(p.strings, one))
	e.AddExpr(-1, p.bySupply(func(v *supply) float64 { return float64(v.units) }))
	p.m.Row("bus bar studs", e, milp.AtLeast, 0)
}
