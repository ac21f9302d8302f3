package doubt

import (
	"sync"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/energy/array"
	"cartwright/optimize/energy/sun"
	"cartwright/optimize/energy/year"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// sunlight is the light on the modules over the year. Consecutive dark hours count as one, since the store only gives in
// them.
type sunlight struct {
	s       *scenarios.Scenario
	light   *sun.Year
	lit     []int    // hours with light
	dark    [][2]int // by lit hour: the dark hours before it, the end excluded
	last    [2]int   // the dark hours after the last
	modules []*catalog.Solar
	watts   [][]float64 // by module and lit hour, as drawn
}

// sunlightOf returns the light of a scenario in which a share is to be served; nil for any other.
func sunlightOf(s *scenarios.Scenario) *sunlight {
	if s.Sun == nil || s.Limits.Served <= 0 {
		return nil
	}
	l := &sunlight{s: s, light: sun.Of(s.Sun)}
	from := 0
	for h, wm2 := range l.light.Plane {
		if wm2 > 0 {
			l.lit, l.dark = append(l.lit, h), append(l.dark, [2]int{from, h})
			from = h + 1
		}
	}
	l.last = [2]int{from, len(l.light.Plane)}
	return l
}

// module returns the index of a module among those that some candidate has.
func (l *sunlight) module(m *catalog.Solar) int {
	for i, known := range l.modules {
		if known == m {
			return i
		}
	}
	l.modules, l.watts = append(l.modules, m), append(l.watts, make([]float64, len(l.lit)))
	return len(l.modules) - 1
}

// shine works out what each module gives when the light of every hour is off by the same factor.
func (l *sunlight) shine(factor float64) {
	for i, m := range l.modules {
		for at, h := range l.lit {
			l.watts[i][at] = sun.ModuleW(m, l.light.AirC[h], factor*l.light.Plane[h], l.s.Sun.Losses)
		}
	}
}

// farm is the array and store of a candidate.
type farm struct {
	on     *sunlight
	array  *array.Array // nil: none
	module int
	takenW float64
	store  year.Store
	net    []float64 // of lit hours and dark stretches, as drawn
	served float64   // as drawn
}

// farmOf returns the array and store of a plan.
func farmOf(l *sunlight, c *catalog.Catalog, one *candidate) *farm {
	f := &farm{on: l, store: year.StoreOf(l.s, one.strings), net: make([]float64, 0, 2*len(l.lit)+1)}
	for _, x := range one.p.Core.Solar {
		for i := range c.Solar {
			if m := &c.Solar[i]; m.ID == x.Part {
				f.array = &array.Array{Module: m, Series: x.Series, Parallel: x.Parallel, Inputs: x.Inputs}
				f.module, f.takenW = l.module(m), f.array.TakenW(one.inv, int(one.units))
			}
		}
	}
	return f
}

// serve simulates the year with the loads and the light drawn.
func (f *farm) serve(c *candidate, d *energy.Demand) {
	load := year.LoadOf(c.s, d)
	bus := load.BusW(c.inv.Efficiency, c.units*c.inv.IdleW)
	var until [25]float64 // what is asked for from midnight to an hour
	for h, wh := range bus {
		until[h+1] = until[h] + wh
	}
	asked := func(from, to int) float64 {
		return float64(to/24-from/24)*until[24] + until[to%24] - until[from%24]
	}
	net, modules := f.net[:0], 0.0
	var watts []float64
	if f.array != nil {
		modules, watts = float64(f.array.Modules()), f.on.watts[f.module]
	}
	for at, h := range f.on.lit {
		if night := f.on.dark[at]; night[0] < night[1] {
			net = append(net, -asked(night[0], night[1]))
		}
		sunWh := 0.0
		if watts != nil {
			sunWh = min(modules*watts[at], f.takenW)
		}
		net = append(net, sunWh-bus[h%24])
	}
	if f.on.last[0] < f.on.last[1] {
		net = append(net, -asked(f.on.last[0], f.on.last[1]))
	}
	f.net, f.served = net, 1
	if all := asked(0, len(f.on.light.Plane)); all > 0 {
		f.served = max(0, 1-year.Short(net, f.store).Wh/all)
	}
}

// serveAll simulates the years of all candidates in parallel.
func serveAll(list []*candidate, demands []*energy.Demand) {
	var wait sync.WaitGroup
	for i, c := range list {
		if c.farm != nil {
			wait.Go(func() { c.farm.serve(c, demands[i]) })
		}
	}
	wait.Wait()
}

// breaks reports whether less than limits.served is served.
func (f *farm) breaks() bool { return f != nil && !plan.AtLeast(f.served, f.on.s.Limits.Served) }
