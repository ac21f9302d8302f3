package model

import (
	"math"
	"strconv"

	"cartwright/optimize/bench"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/milp"
	"cartwright/optimize/plan"
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
func (p *program) slot(kind choice.SlotKind, of int, s market.Slot, count milp.Expr, least, most int) {
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
func (p *program) usable(options []market.Option, heavy bool, serves func(*market.Option) bool, alike func(*market.Option)) []market.Option {
	var kept []market.Option
	for i := range options {
		if serves != nil && !serves(&options[i]) {
			continue
		}
		o := options[i]
		if alike != nil {
			alike(&o)
		}
		if p.market.ShippingFixed {
			if !p.market.CanHave(&o) {
				continue
			}
			p.market.Price(&o)
		}
		kept = append(kept, o)
	}
	return p.market.Prune(kept, heavy && !p.Space.CannotTip)
}

// fixed reports whether supply and strings are given: then currents and connections are, too.
func (p *program) fixed() bool {
	for _, r := range p.Space.strings {
		if r.lo != r.hi {
			return false
		}
	}
	return len(p.Space.supplies) == 1
}

// fault returns the prospective fault current of the bus, and the least and the most it can be.
func (p *program) fault() (e milp.Expr, least, most float64) {
	for i, r := range p.Space.strings {
		k := p.stack(i)
		e.Add(k.ShortA, p.strings[i])
		least += float64(r.lo) * k.ShortA
		most += float64(r.hi) * k.ShortA
	}
	return e, least, most
}

// breaksAll takes the interrupting rating out of an option that breaks every fault there can be.
func breaksAll(most float64) func(*market.Option) {
	return func(o *market.Option) {
		if plan.AtLeast(o.InterruptingA, most) {
			o.InterruptingA = math.Inf(1)
		}
	}
}

// layStrings gives every string a cable and a device that can break what the others feed into its fault.
func (p *program) layStrings() {
	_, least, most := p.fault()
	for i, r := range p.Space.strings {
		k := p.stack(i)
		if k.Options == nil {
			continue
		}
		calm := wiring.StringFaultA(k.ShortA, math.Max(k.ShortA, least)) // holds in the whole space
		options := p.usable(k.Options, p.Bench.Tips.HeavyBoard, func(o *market.Option) bool { return plan.AtLeast(o.InterruptingA, calm) },
			breaksAll(math.Max(k.ShortA, most-k.ShortA)))
		s := market.Slot{Name: "string " + k.Battery.ID, Count: r.hi, Options: options}
		p.slot(choice.SlotString, i, s, milp.Sum(milp.T(1, p.strings[i])), r.lo, r.hi)
	}
}

// laySupply gives every inverter its main and all together their feeder.
func (p *program) laySupply() {
	_, least, most := p.fault()
	for i, at := range p.Space.supplies {
		v := &p.Bench.Supplies[at]
		count := func(n int) milp.Expr { return milp.Sum(milp.T(float64(n), p.supply[i])) }
		sure := 0
		if len(p.Space.supplies) == 1 {
			sure = 1
		}
		name := v.Inverter.ID + " x" + strconv.Itoa(v.Units)
		if v.Main != nil {
			options := p.usable(v.Main, p.Bench.Tips.HeavyBoard, func(o *market.Option) bool { return plan.AtLeast(o.InterruptingA, least) }, breaksAll(most))
			p.slot(choice.SlotMain, i, market.Slot{Name: "main " + name, Count: v.Units, Options: options}, count(v.Units), sure*v.Units, v.Units)
		}
		if v.Feeder != nil {
			s := market.Slot{Name: "feeder " + name, Count: 1, Options: p.usable(v.Feeder, p.Bench.Tips.HeavyBoard, nil, nil)}
			p.slot(choice.SlotFeeder, i, s, count(1), sure, 1)
		}
	}
}

// layFixed fills what every plan has.
func (p *program) layFixed() {
	for _, s := range p.Bench.Fixed {
		s.Options = p.usable(s.Options, p.Bench.Tips.HeavyBoard, nil, nil)
		p.slot(choice.SlotFixed, 0, s, just(s.Count), s.Count, s.Count)
	}
}

// layBusbars chooses the pair of bus bars.
func (p *program) layBusbars() {
	current := func(v *bench.Supply) float64 { return wiring.BusbarA(v.BusA, p.Bench.DcA) }
	least := -p.largestSupply(func(v *bench.Supply) float64 { return -current(v) })
	serves := func(o *market.Option) bool { return plan.AtLeast(o.RatingA, least) }
	var alike func(*market.Option)
	if p.fixed() {
		studs := p.Bench.Supplies[p.Space.supplies[0]].Units
		for _, r := range p.Space.strings {
			studs += r.lo
		}
		serves = func(o *market.Option) bool { return plan.AtLeast(o.RatingA, least) && o.Studs >= studs }
		alike = func(o *market.Option) { o.RatingA, o.Studs = least, studs }
	}
	s := market.Slot{Name: "bus bars", Count: 1, Options: p.usable(p.Bench.Busbars, p.Bench.Tips.HeavyBoard, serves, alike)}
	p.slot(choice.SlotBusbar, 0, s, just(1), 1, 1)
}

// layCasters chooses the set of casters; what they must carry is known once everything is weighed.
func (p *program) layCasters() {
	s := market.Slot{Name: "casters", Count: 1, Options: p.usable(p.Bench.Casters, p.Bench.Tips.HeavyCasters, nil, nil)}
	p.slot(choice.SlotCasters, 0, s, just(1), 1, 1)
}

// fillSlots makes the variables of every slot: how many of its count each option fills.
func (p *program) fillSlots() {
	for at := range p.slots {
		v := &p.slots[at]
		for i := range v.slot.Options {
			least := 0
			if len(v.slot.Options) == 1 {
				least = v.least
			}
			name := v.slot.Name + " by " + describe(p.Bench, &v.slot.Options[i]) + " " + number(i)
			v.filling = append(v.filling, p.Model.Integer(name, float64(least), float64(v.most)))
		}
		p.Model.Row("fill "+v.slot.Name, minus(sum(v.filling, one), v.count), milp.Equal, 0)
	}
}

// describe names an option in a variable's name.
func describe(b *bench.Bench, o *market.Option) string {
	if o.Part != "" {
		return o.Part
	}
	name := o.Wire.Cable.ID
	if o.Wire.Sets > 1 {
		name += " x" + strconv.Itoa(o.Wire.Sets)
	}
	if o.Wire.Device != nil {
		name += " " + o.Wire.Device.ID
	}
	if o.Wire.Ground != nil {
		name += " " + o.Wire.Ground.ID
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
		case choice.SlotString:
			own := p.stack(v.of).ShortA
			others := minus(fault, milp.Expr{})
			others.Const(-own)
			p.breakFault(v, others, most-own)
		case choice.SlotMain:
			p.breakFault(v, fault, most)
		case choice.SlotFixed:
			for j := range v.slot.Options {
				spaces.Add(float64(v.slot.Options[j].Spaces-v.slot.Options[j].Poles), v.filling[j])
			}
		case choice.SlotBusbar:
			p.loadBusbars(v)
		}
	}
	if p.Bench.SpacesTold {
		p.Model.Row("load-centre spaces", spaces, milp.AtLeast, 0)
	}
}

// breakFault adds, for each option whose interrupting rating the fault current could exceed, that it
// then fills nothing.
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

// loadBusbars asks for bars that carry the bus current and have a stud for everything.
func (p *program) loadBusbars(v *slotVars) {
	p.Model.Row("bus bar current", minus(
		sum(v.filling, func(i int) float64 { return v.slot.Options[i].RatingA }),
		p.bySupply(func(v *bench.Supply) float64 { return wiring.BusbarA(v.BusA, p.Bench.DcA) })), milp.AtLeast, 0)
	e := sum(v.filling, func(i int) float64 { return float64(v.slot.Options[i].Studs) })
	e.AddExpr(-1, sum(p.strings, one))
	e.AddExpr(-1, p.bySupply(func(v *bench.Supply) float64 { return float64(v.Units) }))
	p.Model.Row("bus bar studs", e, milp.AtLeast, 0)
}
