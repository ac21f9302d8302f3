package model

import (
	"strconv"
	"strings"

	"cartwright/optimize/bench"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/milp"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
)

// laySupply adds the slots of every inverter: mains, solar runs and string fuses, feeders.
func (p *program) laySupply() {
	least, most := p.fault()
	for i, at := range p.Space.supplies {
		if p.ended() {
			return
		}
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
				for _, o := range p.usable(v.Fuses, p.Bench.Tips.HeavyBoard, nil, nil) {
					if o = o.Times(x.Inputs * x.Parallel); p.market.CanHave(&o) {
						all = append(all, o)
					}
				}
				s := market.Slot{Name: "string fuses " + name + " " + number(i), Count: 1, Options: all}
				p.slot(choice.SlotStringFuse, i, s, count(1), one, 1)
			}
		}
		if v.Feeder != nil {
			s := market.Slot{Name: "feeder " + name, Count: v.Units, Options: p.usable(v.Feeder, p.Bench.Tips.HeavyBoard, nil, nil)}
			p.slot(choice.SlotFeeder, i, s, count(v.Units), sure, v.Units)
		}
	}
}

// layFixed adds the slots that every plan has.
func (p *program) layFixed() {
	least, most := p.fault()
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

// layBusbars adds the slot of the pair of bus bars.
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

// layCasters adds the slot of the set of casters; the row for what they must carry is in weigh.
func (p *program) layCasters() {
	s := market.Slot{Name: "casters", Count: 1, Options: p.usable(p.Bench.Casters, p.Bench.Tips.HeavyCasters, nil, nil)}
	p.slot(choice.SlotCasters, 0, s, just(1), 1, 1)
}

// fillSlots makes the variables of every slot: how many of it each option fills.
func (p *program) fillSlots() {
	for at := range p.slots {
		if p.ended() {
			return
		}
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
