package optimize_test

import (
	"cartwright/catalog"
	"cartwright/optimize/wiring"
)

// option is what one way to wire a path takes.
type option struct {
	takes []take
	poles int // of a branch's device
}

// take is so much of a part.
type take struct {
	good     *good
	quantity float64
}

// listKey is a path and the fault current in it.
type listKey struct {
	kind, name string
	units      int
	faultA     float64
}

// options returns every way to wire a path: all cables in one or two sets, with all devices, with all
// grounds, that the rules pass.
func (e *enumeration) options(d wiring.Duty, units int, part string, faultA float64) []option {
	key := listKey{string(d.Kind), d.Name + part, units, faultA}
	if list, ok := e.lists[key]; ok {
		return list
	}
	devices := []*catalog.Device{nil}
	if d.OwnBreakerA == 0 {
		devices = nil
		for i := range e.c.Devices {
			devices = append(devices, &e.c.Devices[i])
		}
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
			for _, dev := range devices {
				for _, ground := range grounds {
					o := wiring.Option{Cable: &e.c.Cables[i], Sets: sets, Device: dev, Ground: ground}
					if e.rules.Check(d, o, faultA).OK() {
						list = append(list, e.parts(d, o))
					}
				}
			}
		}
	}
	e.lists[key] = list
	return list
}

// parts returns what an option takes.
func (e *enumeration) parts(d wiring.Duty, o wiring.Option) option {
	var out option
	add := func(id string, quantity float64) {
		out.takes = append(out.takes, take{e.market.goods[id], quantity})
	}
	add(o.Cable.ID, float64(d.Conductors*o.Sets)*d.LengthM)
	add(endOf(o.Cable.ID), float64(2*d.Conductors*o.Sets))
	if o.Ground != nil {
		add(o.Ground.ID, d.LengthM)
		add(endOf(o.Ground.ID), 2)
	}
	if o.Device != nil {
		add(o.Device.ID, 1)
		if d.Name != "" {
			out.poles = o.Device.Poles
		}
	}
	return out
}

// branches returns the options of every branch circuit.
func (e *enumeration) branches() (paths [][]option) {
	for i := range e.s.Circuits {
		d, _ := wiring.BranchDuty(e.s, &e.s.Circuits[i])
		paths = append(paths, e.options(d, 0, "", e.s.ACFaultA))
	}
	return paths
}

// paths returns the options of every path of a core but the branches, each path by itself; ok is false if
// a path has no option.
func (e *enumeration) paths(n []int, inv *catalog.Inverter, units int) (paths [][]option, ok bool) {
	busA := 0.0 // of a fault
	for b := range n {
		busA += float64(n[b]) * wiring.ShortCircuitA(&e.c.Batteries[b])
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
		own := wiring.ShortCircuitA(bat)
		if d, planned := wiring.StringDuty(e.s, bat); planned &&
			!add(n[b], e.options(d, 0, bat.ID, max(own, busA-own))) {
			return nil, false
		}
	}
	if d, planned := wiring.MainDuty(e.s, inv); planned && !add(units, e.options(d, units, inv.ID, busA)) {
		return nil, false
	}
	if d, planned := wiring.FeederDuty(e.s, inv, units); planned && !add(1, e.options(d, units, inv.ID, e.s.ACFaultA)) {
		return nil, false
	}
	return paths, true
}
