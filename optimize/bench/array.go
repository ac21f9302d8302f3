package bench

import (
	"math"
	"sync"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/energy/array"
	"cartwright/optimize/energy/sun"
	"cartwright/optimize/energy/year"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// arrays lists the arrays that some inverters take and there is room for; none without sun.
func (b *Bench) arrays(v Serving) []*array.Array {
	s, inv := b.Scenario.Sun, v.Inverter
	if s == nil || !array.Inputs(inv) {
		return nil
	}
	most, rest := b.mostSeries(), b.otherSeries()
	var list []*array.Array
	for i := range b.Catalog.Solar {
		m := &b.Catalog.Solar[i]
		for k := 1; k <= v.Units*inv.MPPTInputs; k++ {
			for p := 1; Unmet(most, Hung{v, &array.Array{Module: m, Series: 1, Parallel: p, Inputs: k}}) == nil; p++ {
				for n := 1; ; n++ {
					x := Hung{v, &array.Array{Module: m, Series: n, Parallel: p, Inputs: k}}
					if Unmet(most, x) != nil {
						break
					}
					if Unmet(rest, x) == nil {
						list = append(list, x.Array)
					}
				}
			}
		}
	}
	return list
}

// addSupply lays out one supply, with an array or nil; it is left out where its main cannot be built.
func (b *Bench) addSupply(v Supply, x *array.Array) {
	s, inv, n := b.Scenario, v.Inverter, float64(v.Units)
	v.Array = x
	arrayW := 0.0
	if x != nil {
		arrayW = x.UnitW(inv, v.Units)
		if s.Sun.OnCart {
			v.ArrayKg = float64(x.Modules()) * x.Module.MassKg
		}
		v.Solar, _ = b.RunOptions(wiring.SolarDuty(s, b.Strung(x)))
		for _, f := range b.stringFuses(x) {
			o := b.Market.Single(f.ID)
			v.Fuses = b.Market.Keep(v.Fuses, &o, b.Tips.HeavyBoard)
		}
	}
	v.UnitA = wiring.UnitA(s, inv, arrayW)
	v.BusA = n*v.UnitA + b.DcA
	var ok bool
	if v.Main, ok = b.RunOptions(wiring.MainDuty(s, v.UnitA)); !ok {
		return
	}
	if s.Sun != nil {
		v.Sun = b.sunOf(&v)
		v.YearWh = (&year.Hours{SunWh: b.before.sun.none, BusWh: v.Sun.BusWh}).AskedWh()
	}
	b.Supplies = append(b.Supplies, v)
}

// Strung returns the modules on one input of an array.
func (b *Bench) Strung(x *array.Array) wiring.Strung {
	return wiring.Strung{Module: x.Module, Series: x.Series, Parallel: x.Parallel, ColdV: x.ColdV(b.Scenario.Sun)}
}

// stringFuses returns the fuses that may protect each string of modules; none where they need none.
func (b *Bench) stringFuses(x *array.Array) []*catalog.Device {
	d, listed := wiring.SolarDuty(b.Scenario, b.Strung(x))
	if !listed {
		return nil
	}
	return wiring.StringFuses(b.Rules, d, b.Strung(x), b.Catalog)
}

// sunOf returns the year of a supply with what is asked of the bus; what its array gives is filled in by Hours, when
// first needed.
func (b *Bench) sunOf(v *Supply) *year.Hours {
	l := b.before.sunOf(b.Scenario, b.Demand)
	idle := float64(v.Units) * v.Inverter.IdleW
	return &year.Hours{Load: l.load, BusWh: l.load.BusW(v.Inverter.Efficiency, idle)}
}

// Hours returns the year of a supply, hour by hour. What its array gives is worked out on first use: there may be
// thousands of supplies, and few are ever looked at.
func (b *Bench) Hours(supply int) *year.Hours {
	v := &b.Supplies[supply]
	l := b.before.sun
	l.lock.Lock()
	defer l.lock.Unlock()
	switch x := v.Array; {
	case v.Sun.SunWh != nil:
	case x == nil:
		v.Sun.SunWh = l.none
	default:
		v.Sun.SunWh, v.Sun.ClippedWh = l.array(x.Module, x.Modules(), x.TakenW(v.Inverter, v.Units), b.Scenario.Sun.Losses)
	}
	return v.Sun
}

// net returns what the sun gives a supply less what is asked of the bus, hour by hour. The slice is the caller's until
// it calls done. What the array gives is not kept, since most supplies are looked at once.
func (b *Bench) net(supply int) *[]float64 {
	v := &b.Supplies[supply]
	l := b.before.sun
	l.lock.Lock()
	defer l.lock.Unlock()
	y := *v.Sun
	switch x := v.Array; {
	case y.SunWh != nil:
	case x == nil:
		y.SunWh = l.none
	default:
		y.SunWh = year.HoursOf(l.module(x.Module, b.Scenario.Sun.Losses), x.Modules(), x.TakenW(v.Inverter, v.Units), l.load, [24]float64{}).SunWh
	}
	return b.before.netOf(&y)
}

// YearOf simulates the year of a supply with some strings.
func (b *Bench) YearOf(supply int, strings []energy.Strings) year.Figures {
	y := b.Hours(supply)
	net := b.before.netOf(y)
	defer b.before.done(net)
	return year.Simulate(y, *net, year.StoreOf(b.Scenario, strings))
}

// StoreWh returns a lower bound on the usable energy in Wh of any bank with a supply: what the autonomy needs, and with
// sun what limits.served needs if the bank were charged without limit and lost as little as the best battery. +Inf
// where no store would do.
func (b *Bench) StoreWh(supply int) float64 {
	v := &b.Supplies[supply]
	served := b.Scenario.Limits.Served
	if v.Sun == nil || served <= 0 || b.Partial {
		return v.NeedWh
	}
	if !v.sunStored {
		trip := 0.0
		for i := range b.Stacks {
			trip = math.Max(trip, b.Stacks[i].Battery.RoundTrip)
		}
		net := b.net(supply)
		defer b.before.done(net)
		least, ok := year.LeastStorage(*net, math.Inf(1), trip, (1-served)*v.YearWh)
		if !ok {
			least = math.Inf(1)
		}
		v.sunStoreWh, v.sunStored = least, true
	}
	return math.Max(v.NeedWh, v.sunStoreWh)
}

// netOf returns the net of a year, the caller's until it calls done. Its memory is reused: very many years are simulated.
func (l *Before) netOf(y *year.Hours) *[]float64 {
	net, some := l.nets.Get().(*[]float64)
	if !some {
		net = new([]float64)
	}
	*net = y.NetInto(*net)
	return net
}

func (l *Before) done(net *[]float64) { l.nets.Put(net) }

// sunlight is the sun of a scenario, and what modules and arrays give in it.
type sunlight struct {
	of      *scenarios.Sun
	load    year.Load
	light   *sun.Year
	none    []float64
	modules map[*catalog.Solar][]float64
	arrays  map[arraySize]arrayYear
	lock    sync.Mutex // cores are worked on in parallel
}

type arraySize struct {
	module *catalog.Solar
	n      int
	mostW  float64
}

type arrayYear struct {
	sunWh     []float64
	clippedWh float64
}

// array returns what n modules give hour by hour, of which the inverters take at most mostW, and what is cut off.
func (l *sunlight) array(m *catalog.Solar, n int, mostW, losses float64) ([]float64, float64) {
	key := arraySize{m, n, mostW}
	if a, known := l.arrays[key]; known {
		return a.sunWh, a.clippedWh
	}
	y := year.HoursOf(l.module(m, losses), n, mostW, l.load, [24]float64{})
	l.arrays[key] = arrayYear{y.SunWh, y.ClippedWh}
	return y.SunWh, y.ClippedWh
}

// module returns what one module gives hour by hour. It is worked out once.
func (l *sunlight) module(m *catalog.Solar, losses float64) []float64 {
	one, known := l.modules[m]
	if !known {
		one = l.light.ModuleW(m, losses)
		l.modules[m] = one
	}
	return one
}

// sunOf returns the sunlight of a scenario. It is worked out once.
func (l *Before) sunOf(s *scenarios.Scenario, d *energy.Demand) *sunlight {
	if l.sun == nil || l.sun.of != s.Sun {
		light := sun.Of(s.Sun)
		l.sun = &sunlight{of: s.Sun, light: light, none: make([]float64, len(light.Plane)),
			modules: map[*catalog.Solar][]float64{}, arrays: map[arraySize]arrayYear{}}
	}
	l.sun.load = year.LoadOf(s, d)
	return l.sun
}
