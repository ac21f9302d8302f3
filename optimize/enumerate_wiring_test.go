package optimize_test

import (
	"fmt"
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// take is so much of a part.
type take struct {
	good     *good
	quantity float64
}

// listKey is a path and the fault current in it.
type listKey struct {
	duty, part string
	units      int
	faultA     float64
}

// options returns every way to wire a path: all cables in one or two sets, with all devices, all grounds and all
// conduits, that the rules pass.
func (e *enumeration) options(d wiring.Duty, units int, part string, faultA float64) []option {
	key := listKey{fmt.Sprint(d), part, units, faultA}
	if list, ok := e.lists[key]; ok {
		return list
	}
	grounds := []*catalog.Cable{nil}
	if d.Ground {
		grounds = nil
		for i := range e.c.Cables {
			grounds = append(grounds, &e.c.Cables[i])
		}
	}
	var list []option
	for i := range e.c.Cables {
		for sets := 1; sets <= 2; sets++ {
			for _, o := range e.protections(&d) {
				for _, ground := range grounds {
					o.Cable, o.Sets, o.Ground = &e.c.Cables[i], sets, ground
					if e.rules.Check(d, o, faultA).OK() {
						list = append(list, e.piped(d, o)...)
					}
				}
			}
		}
	}
	e.lists[key] = list
	return list
}

// protections returns every way to protect a path: by the battery's own device, by one that is bought, and at both
// ends by two.
func (e *enumeration) protections(d *wiring.Duty) []wiring.Option {
	if d.OwnBreakerA > 0 {
		return []wiring.Option{{}}
	}
	var list []wiring.Option
	ends := max(1, d.Devices)
	if d.BuiltInA > 0 && ends == 1 {
		list = append(list, wiring.Option{BuiltIn: true})
	}
	for i := range e.c.Devices {
		dev := &e.c.Devices[i]
		list = append(list, wiring.Option{Device: dev, Devices: ends})
		if d.BuiltInA > 0 && ends == 2 {
			list = append(list, wiring.Option{Device: dev, Devices: 1, BuiltIn: true})
		}
	}
	return list
}

// piped returns an option in every conduit that holds it, where one is asked for.
func (e *enumeration) piped(d wiring.Duty, o wiring.Option) []option {
	if d.Conduit == "" {
		return []option{e.parts(d, o)}
	}
	var list []option
	for i := range e.c.Conduits {
		if pipe := &e.c.Conduits[i]; pipe.Type == d.Conduit && wiring.Holds(e.rules, &d, &o, pipe) {
			o.Conduit = pipe
			list = append(list, e.parts(d, o))
		}
	}
	return list
}

// parts returns what an option takes, and asks.
func (e *enumeration) parts(d wiring.Duty, o wiring.Option) option {
	var out option
	add := func(id string, quantity float64) {
		if quantity > 0 {
			out.takes = append(out.takes, take{e.market.goods[id], quantity})
		}
	}
	if o.Cable != nil {
		lines := float64(o.Sets * d.Conductors)
		links := float64(o.Sets * d.Links)
		add(o.Cable.ID, lines*e.bought(d.LengthM)+links*e.bought(d.LinkM))
		add(endOf(o.Cable.ID), 2*(lines+links))
	}
	if o.Ground != nil {
		add(o.Ground.ID, e.bought(d.LengthM))
		add(endOf(o.Ground.ID), 2)
	}
	if o.Device != nil {
		add(o.Device.ID, float64(o.Devices))
	}
	if o.Conduit != nil {
		add(o.Conduit.ID, d.LengthM)
		add(endOf(o.Conduit.ID), 2)
	}
	out.asks = e.asksOf(d, o)
	return out
}

// bought returns the length bought of a conductor.
func (e *enumeration) bought(m float64) float64 {
	m *= 1 + e.s.Cable.Slack
	if step := e.s.Cable.StepM; step > 0 {
		m = math.Ceil(m/step-near) * step
	}
	return m
}

// fixed returns the options of what every core has: circuits behind the inverters, the inlet, the bond, and the
// frame's stock where that has a price.
func (e *enumeration) fixed() (paths [][]option) {
	var stock option
	for _, x := range e.s.Cart.Pieces {
		if g := e.market.goods[x.Section]; g.sellers[0].price > 0 {
			stock.takes = append(stock.takes, take{g, x.LengthM * float64(x.Count)})
		}
	}
	paths = append(paths, []option{stock})
	for i := range e.s.Circuits {
		if !e.s.Circuits[i].DC {
			d := e.circuitDuty(&e.s.Circuits[i])
			paths = append(paths, e.options(d, 0, "", e.s.ACFaultA))
		}
	}
	if d, planned := e.inletDuty(); planned {
		paths = append(paths, e.options(d, 0, "", e.s.ACFaultA))
	}
	if d, planned := e.bondDuty(); planned {
		var list []option
		for i := range e.c.Cables {
			o := wiring.Option{Sets: 1, Ground: &e.c.Cables[i]}
			if isGround(e.s.Rules, o.Ground) {
				list = append(list, e.piped(d, o)...)
			}
		}
		paths = append(paths, list)
	}
	return paths
}

// isGround reports whether a cable is in the tables of a rule set.
func isGround(rules scenarios.Rules, c *catalog.Cable) bool {
	if rules == scenarios.IEC {
		return c.Size.Metric() && c.Material == "copper"
	}
	return !c.Size.Metric() && (c.Material == "copper" || c.Size != "14 AWG")
}

// paths returns the options of every path of a core but those that every core has, each path by itself, strings of a
// kind alike; ok is false if a path has no option.
func (e *enumeration) paths(n []int, inv *catalog.Inverter, units int) (paths [][]option, ok bool) {
	busA := 0.0 // of a fault
	for b := range n {
		busA += float64(n[b]) * e.shortA(&e.c.Batteries[b])
	}
	add := func(count int, list []option) bool {
		for range count {
			paths = append(paths, list)
		}
		return count == 0 || len(list) > 0
	}
	for b := range n {
		if n[b] == 0 {
			continue
		}
		bat := &e.c.Batteries[b]
		own := e.shortA(bat)
		if d, planned := e.stringDuty(bat, e.busA(inv, units), sum(n)); planned &&
			!add(1, alike(n[b], e.options(d, 0, bat.ID, max(own, busA-own)))) {
			return nil, false
		}
	}
	if d, planned := e.mainDuty(inv); planned && !add(units, e.options(d, units, inv.ID, busA)) {
		return nil, false
	}
	if d, planned := e.feederDuty(inv); planned && !add(units, e.options(d, units, inv.ID, e.s.ACFaultA)) {
		return nil, false
	}
	if e.field != nil {
		d, planned := e.solarDuty(e.field)
		if planned && !add(e.field.inputs, e.options(d, 0, "", d.DesignA)) {
			return nil, false
		}
		if planned && e.field.fused() && !add(1, e.stringFuses(e.field)) {
			return nil, false
		}
	}
	for i := range e.s.Circuits {
		if c := &e.s.Circuits[i]; c.DC {
			if d := e.circuitDuty(c); !add(1, e.options(d, 0, "", busA)) {
				return nil, false
			}
		}
	}
	return paths, true
}

// alike returns options of which so many are built alike.
func alike(count int, list []option) []option {
	var all []option
	for _, o := range list {
		o.takes = slices.Clone(o.takes)
		for i := range o.takes {
			o.takes[i].quantity *= float64(count)
		}
		all = append(all, o)
	}
	return all
}
