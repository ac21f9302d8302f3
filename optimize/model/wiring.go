package model

import (
	"math"
	"slices"
	"strconv"

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

// usable returns the options that serve, without those that another dominates. First alike, where given, makes figures
// equal whose difference no longer matters. Heavy says that mass may help there against tipping.
func (p *program) usable(options []market.Option, heavy bool, serves func(*market.Option) bool, alike func(*market.Option)) []market.Option {
	heavy = heavy && !p.Space.CannotTip
	if p.market.ShippingFixed {
		options = p.market.Priced(options, heavy)
		if alike == nil && (serves == nil || !slices.ContainsFunc(options, func(o market.Option) bool { return !serves(&o) })) {
			return slices.Clone(options) // none dominates another there
		}
	}
	return p.serving(options, heavy, serves, alike)
}

// serving is usable for options that have their prices.
func (p *program) serving(options []market.Option, heavy bool, serves func(*market.Option) bool, alike func(*market.Option)) []market.Option {
	kept := make([]market.Option, 0, len(options))
	for i := range options {
		if serves != nil && !serves(&options[i]) {
			continue
		}
		o := options[i]
		if alike != nil {
			alike(&o)
		}
		kept = append(kept, o)
	}
	return p.market.Prune(kept, heavy)
}

// fixed reports whether supply and strings are given, and with them currents and connections.
func (p *program) fixed() bool {
	for _, r := range p.Space.strings {
		if r.lo != r.hi {
			return false
		}
	}
	return len(p.Space.supplies) == 1
}

// breaksAll returns a function that makes the interrupting rating of an option +Inf if it breaks every possible fault.
func breaksAll(most float64) func(*market.Option) {
	return func(o *market.Option) {
		if plan.AtLeast(o.InterruptingA, most) {
			o.InterruptingA = math.Inf(1)
		}
	}
}

// layStrings adds the slots of the strings, with the options that can break the least fault current there can be. Strings
// of one kind are wired alike, so where their number is given they are one place whose options count for all.
func (p *program) layStrings() {
	for i, r := range p.Space.strings {
		if p.ended() {
			return
		}
		k, least, most := p.stack(i), p.busOf[i].leastA, p.busOf[i].mostA
		classes := p.stringOptions(i)
		if classes == nil {
			continue
		}
		calm := wiring.StringFaultA(k.ShortA, math.Max(k.ShortA, least)) // the least fault current in the whole space
		serves := func(o *market.Option) bool { return plan.AtLeast(o.InterruptingA, calm) }
		alike := breaksAll(math.Max(k.ShortA, most-k.ShortA))
		if r.lo == r.hi {
			var all []market.Option
			for _, options := range classes {
				var wired []market.Option
				for _, o := range p.usable(options, p.Bench.Tips.HeavyBoard, serves, alike) {
					if o = o.Times(r.lo); p.market.CanHave(&o) {
						wired = append(wired, o)
					}
				}
				all = append(all, wired...)
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

// stringOptions returns the options of the i-th string range with any supply of the space, on a bus of any number of
// strings there may be; nil where there is no such run. Those that serve with the same supplies and numbers of strings
// are a class. An option never dominates one of another class, however cheap it is.
func (p *program) stringOptions(i int) [][]market.Option {
	if p.Bench.Scenario.Run(scenarios.RunString) == nil {
		return nil
	}
	if p.fixed() {
		return [][]market.Option{p.Bench.StringOptions(p.Space.supplies[0], p.Space.strings[i].stack, p.fewestStrings())}
	}
	counts := []int{p.fewestStrings()}
	if most := p.mostStrings(); wiring.BothEnds(p.Bench.Scenario, most) != wiring.BothEnds(p.Bench.Scenario, counts[0]) {
		counts = append(counts, most)
	}
	var options []market.Option
	where := map[wiring.Option]string{} // by option: the duties that it serves
	seen := map[wiring.Duty]bool{}
	for _, alike := range p.byCurrent {
		for _, n := range counts {
			d, _ := wiring.StringDuty(p.Bench.Scenario, p.stack(i).Battery, p.busA(alike), n)
			if seen[d] {
				continue
			}
			seen[d] = true
			serving, _ := p.Bench.RunOptions(d, true)
			for _, o := range serving {
				if where[o.Wire] == "" {
					options = append(options, o)
				}
				where[o.Wire] += strconv.Itoa(len(seen)) + " "
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

// fewestStrings and mostStrings return the least and the most strings in the space; the least is at least 1.
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
