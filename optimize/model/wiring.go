package model

import (
	"math"
	"strconv"
	"strings"

	"cartwright/optimize/bench"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/milp"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
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

// layStrings gives every string a cable and a device that can break what the others feed into its fault. Strings of one
// kind are wired alike: where their number is given, they are one slot of as much.
func (p *program) layStrings() {
	_, least, most := p.fault()
	for i, r := range p.Space.strings {
		k := p.stack(i)
		classes := p.stringOptions(i)
		if classes == nil {
			continue
		}
		calm := wiring.StringFaultA(k.ShortA, math.Max(k.ShortA, least)) // holds in the whole space
		serves := func(o *market.Option) bool { return plan.AtLeast(o.InterruptingA, calm) }
		alike := breaksAll(math.Max(k.ShortA, most-k.ShortA))
		if r.lo == r.hi {
			var all []market.Option
			for _, options := range classes {
				var wired []market.Option
				for j := range options {
					wired = append(wired, options[j].Times(r.lo))
				}
				all = append(all, p.usable(wired, p.Bench.Tips.HeavyBoard, serves, alike)...)
			}
			s := market.Slot{Name: "string " + k.Battery.ID, Count: 1, Options: all}
			p.slot(choice.SlotString, i, s, just(1), 1, 1)
			p.slots[len(p.slots)-1].alike = r.lo
			continue
		}
		var all []market.Option
		for _, options := range classes {
			all = append(all, p.usable(options, p.Bench.Tips.HeavyBoard, serves, alike)...)
		}
		s := market.Slot{Name: "string " + k.Battery.ID, Count: r.hi, Options: all}
		p.slot(choice.SlotString, i, s, milp.Sum(milp.T(1, p.strings[i])), r.lo, r.hi)
	}
}

// stringOptions returns the options of the i-th string range beside any supply of the space, on a bus of any number of
// strings there may be; nil where there is no such run. Those that serve beside the same supplies and numbers are a
// class: of two classes none takes another's place, however cheap it is.
func (p *program) stringOptions(i int) [][]market.Option {
	if p.Bench.Scenario.Run(scenarios.RunString) == nil {
		return nil
	}
	counts := []int{p.fewestStrings()}
	if most := p.mostStrings(); wiring.BothEnds(p.Bench.Scenario, most) != wiring.BothEnds(p.Bench.Scenario, counts[0]) {
		counts = append(counts, most)
	}
	var options []market.Option
	where := map[wiring.Option]string{} // by option: beside which it serves
	for _, supply := range p.Space.supplies {
		for _, n := range counts {
			for _, o := range p.Bench.StringOptions(supply, p.Space.strings[i].stack, n) {
				if where[o.Wire] == "" {
					options = append(options, o)
				}
				where[o.Wire] += strconv.Itoa(supply) + "/" + strconv.Itoa(n) + " "
			}
		}
	}
	classes := [][]market.Option{}
	at := map[string]int{}
	for _, o := range options {
		class, known := at[where[o.Wire]]
		if !known {
			class = len(classes)
			at[where[o.Wire]] = class
			classes = append(classes, nil)
		}
		classes[class] = append(classes[class], o)
	}
	return classes
}

// fewestStrings and mostStrings return how many strings there are in the space at the least and at the most.
func (p *program) fewestStrings() int {
	n := 0
	for _, r := range p.Space.strings {
		n += r.lo
	}
	return max(1, n)
}

func (p *program) mostStrings() int {
	n := 0
	for _, r := range p.Space.strings {
		n += r.hi
	}
	return n
}

// laySupply gives every inverter its main and its feeder.
func (p *program) laySupply() {
	_, least, most := p.fault()
	for i, at := range p.Space.supplies {
		v := &p.Bench.Supplies[at]
		count := func(n int) milp.Expr { return milp.Sum(milp.T(float64(n), p.supply[i])) }
		sure := 0
		if len(p.Space.supplies) == 1 {
			sure = v.Units
		}
		name := v.Inverter.ID + " x" + strconv.Itoa(v.Units)
		if len(p.Space.supplies) > 1 {
			name += " supply " + number(i)
		}
		if v.Main != nil {
			options := p.usable(v.Main, p.Bench.Tips.HeavyBoard, func(o *market.Option) bool { return plan.AtLeast(o.InterruptingA, least) }, breaksAll(most))
			p.slot(choice.SlotMain, i, market.Slot{Name: "main " + name, Count: v.Units, Options: options}, count(v.Units), sure, v.Units)
		}
		if x := v.Array; x != nil {
			one := min(sure, 1)
			if v.Solar != nil {
				s := market.Slot{Name: "solar " + name + " " + number(i), Count: x.Inputs, Options: p.usable(v.Solar, p.Bench.Tips.HeavyBoard, nil, nil)}
				p.slot(choice.SlotSolar, i, s, count(x.Inputs), one*x.Inputs, x.Inputs)
			}
			if v.Fuses != nil {
				var all []market.Option
				for j := range v.Fuses {
					all = append(all, v.Fuses[j].Times(x.Inputs*x.Parallel))
				}
				s := market.Slot{Name: "string fuses " + name + " " + number(i), Count: 1, Options: p.usable(all, p.Bench.Tips.HeavyBoard, nil, nil)}
				p.slot(choice.SlotStringFuse, i, s, count(1), one, 1)
			}
		}
		if v.Feeder != nil {
			s := market.Slot{Name: "feeder " + name, Count: v.Units, Options: p.usable(v.Feeder, p.Bench.Tips.HeavyBoard, nil, nil)}
			p.slot(choice.SlotFeeder, i, s, count(v.Units), sure, v.Units)
		}
	}
}

// layFixed fills what every plan has.
func (p *program) layFixed() {
	_, least, most := p.fault()
	for _, s := range p.Bench.Fixed {
		var serves func(*market.Option) bool
		var alike func(*market.Option)
		switch s.For {
		case market.DC:
			serves, alike = func(o *market.Option) bool { return plan.AtLeast(o.InterruptingA, least) }, breaksAll(most)
		case market.Through:
			asked := -p.largestSupply(func(v *bench.Supply) float64 { return -wiring.ThroughA(v.BusA) })
			serves = func(o *market.Option) bool { return plan.AtLeast(o.RatingA, asked) }
			if len(p.Space.supplies) == 1 {
				alike = func(o *market.Option) { o.RatingA = asked }
			}
		}
		s.Options = p.usable(s.Options, p.Bench.Tips.HeavyBoard, serves, alike)
		p.slot(choice.SlotFixed, 0, s, just(s.Count), s.Count, s.Count)
	}
}

// layBusbars chooses the pair of bus bars.
func (p *program) layBusbars() {
	current := func(v *bench.Supply) float64 { return wiring.BusbarA(v.BusA) }
	least := -p.largestSupply(func(v *bench.Supply) float64 { return -current(v) })
	serves := func(o *market.Option) bool { return plan.AtLeast(o.RatingA, least) }
	var alike func(*market.Option)
	if p.fixed() {
		studs := wiring.BusbarStuds(p.fewestStrings(), p.Bench.Supplies[p.Space.supplies[0]].Units, p.Bench.DCCircuits)
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
	var words []string
	add := func(id string) { words = append(words, id) }
	w := &o.Wire
	if w.Cable != nil {
		add(w.Cable.ID)
	}
	if w.Sets > 1 {
		add("x" + strconv.Itoa(w.Sets))
	}
	if w.BuiltIn {
		add("own")
	}
	if w.Device != nil {
		add(w.Device.ID)
	}
	if w.Devices > 1 {
		add("x" + strconv.Itoa(w.Devices))
	}
	if w.Ground != nil {
		add(w.Ground.ID)
	}
	if w.Conduit != nil {
		add(w.Conduit.ID)
	}
	if len(words) == 0 {
		add("stock")
	}
	return strings.Join(words, " ")
}

// breakFaults sees that no device is asked to break more than it can, that all which the whole bus current flows
// through stands it, that strings of a kind are wired alike, and that bond and load centre fit the rest.
func (p *program) breakFaults() {
	fault, _, most := p.fault()
	for i := range p.slots {
		v := &p.slots[i]
		switch {
		case v.kind == choice.SlotString:
			if v.alike > 0 {
				continue // all is given
			}
			own := p.stack(v.of).ShortA
			others := minus(fault, milp.Expr{})
			others.Const(-own)
			p.breakFault(v, others, most-own)
			p.wireAlike(v)
			p.barBySupply(v, func(supply int) func(*market.Option) bool { return p.stringServes(v, supply) })
		case v.kind == choice.SlotMain, v.slot.For == market.DC:
			p.breakFault(v, fault, most)
		case v.slot.For == market.Through:
			p.barBySupply(v, func(supply int) func(*market.Option) bool {
				asked := wiring.ThroughA(p.Bench.Supplies[supply].BusA)
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

// stringServes says which options of a string serve beside a supply.
func (p *program) stringServes(v *slotVars, supply int) func(*market.Option) bool {
	serves := map[wiring.Option]bool{}
	for _, n := range []int{p.fewestStrings(), p.mostStrings()} {
		for _, o := range p.Bench.StringOptions(supply, p.Space.strings[v.of].stack, n) {
			serves[o.Wire] = true
		}
	}
	return func(o *market.Option) bool { return serves[o.Wire] }
}

// barBySupply asks, for each supply of the space, that options which do not serve beside it fill nothing.
func (p *program) barBySupply(v *slotVars, serving func(supply int) func(*market.Option) bool) {
	if len(p.supply) < 2 {
		return
	}
	for i, supply := range p.Space.supplies {
		serves := serving(supply)
		barred := sum(v.filling, func(j int) float64 {
			if serves(&v.slot.Options[j]) {
				return 0
			}
			return 1
		})
		if barred.Len() == 0 {
			continue
		}
		barred.Add(float64(v.most), p.supply[i])
		p.Model.Row(v.slot.Name+" beside supply "+number(i), barred, milp.AtMost, float64(v.most))
	}
}

// wireAlike asks that all strings of a kind have one option, and where the bus may have three strings or fewer, that
// they have a device at both ends just from three up.
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

// bothEnds returns a variable that is 1 just where the bus has so many strings that each has a device at both ends.
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
		p.bySupply(func(v *bench.Supply) float64 { return wiring.BusbarA(v.BusA) })), milp.AtLeast, 0)
	e := sum(v.filling, func(i int) float64 { return float64(v.slot.Options[i].Studs) })
	e.AddExpr(-1, sum(p.strings, one))
	e.AddExpr(-1, p.bySupply(func(v *bench.Supply) float64 { return float64(v.Units) }))
	p.Model.Row("bus bar studs", e, milp.AtLeast, float64(p.Bench.DCCircuits))
}
