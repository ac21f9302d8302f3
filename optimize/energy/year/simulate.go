package year

import "cartwright/scenarios/sky"

// Figures are the results of a year of an array, loads and a store.
type Figures struct {
	Served        float64 // share of what is asked of the bus that comes from sun and store
	ShortH        int     // hours in which something is short
	LongestShortH int     // the longest stretch of them, which may run across New Year
	ShortWh       float64 // from the wall
	SpilledWh     float64 // from the array, but neither loads nor store could take it
	ClippedWh     float64 // cut off before that, above what the inverters take
	SunWh         float64 // of the array, after what is cut off
	DrawnWh       float64 // from the store
	Cycles        float64 // drawn over the store's capacity; 0 without a store
	ServedLoadWh  float64 // of the loads themselves: sum of (P + Q) (1 - short / D)
	Months        [12]Month
}

// Month is a month's energy in Wh. LoadWh is what is asked of the bus.
type Month struct{ SunWh, LoadWh, ShortWh, SpilledWh float64 }

// Simulate runs a store through the year. Net is y.Net(), computed once for many stores. A record of fewer whole days
// goes round as a year does. It allocates nothing.
func Simulate(y *Hours, net []float64, s Store) Figures {
	r := run{y: y, store: s, stored: begin(net, s).stored}
	f := Figures{ClippedWh: y.ClippedWh}
	days := 0
	for m := range f.Months {
		until := min(days+sky.DaysOfMonth(m), len(net)/24)
		f.Months[m] = r.month(net, days, until)
		days = until
	}
	asked := 0.0
	for m := range f.Months {
		f.SunWh += f.Months[m].SunWh
		f.SpilledWh += f.Months[m].SpilledWh
		asked += f.Months[m].LoadWh
	}
	f.Served, f.ShortWh, f.DrawnWh = 1, r.shortWh, r.drawnWh
	if asked > 0 {
		f.Served = max(0, 1-f.ShortWh/asked)
		if f.Served < noise {
			f.Served = 0
		}
	}
	if s.CapacityWh > 0 {
		f.Cycles = f.DrawnWh / s.CapacityWh
	}
	f.ShortH, f.LongestShortH = r.shortH, r.longest(24*days)
	f.ServedLoadWh = r.servedWh(days)
	return f
}

// noise is a served share that only rounding leaves.
const noise = 1e-12

// run is a simulation under way.
type run struct {
	y      *Hours
	store  Store
	stored float64

	shortWh, drawnWh float64
	hourShortWh      [24]float64 // short in each hour of the day

	shortH  int
	stretch int // hours short up to now without a break
	first   int // length of the stretch that began with the year, once it is broken
	broken  bool
	most    int
}

// month runs through the days from..until-1 of the year.
func (r *run) month(net []float64, from, until int) Month {
	var m Month
	s, stored := r.store, r.stored
	for day := from; day < until; day++ {
		sun, net := r.y.SunWh[day*24:day*24+24], net[day*24:day*24+24]
		for h, asked := range &r.y.BusWh {
			n := net[h]
			m.SunWh += sun[h]
			m.LoadWh += asked
			if n >= 0 {
				x := min(n, s.ChargeW)
				if full := stored + x*s.RoundTrip; full < s.CapacityWh {
					stored = full
				} else {
					x = min(x, (s.CapacityWh-stored)/s.RoundTrip)
					stored = s.CapacityWh
				}
				m.SpilledWh += n - x
				r.served()
				continue
			}
			stored += n
			if stored >= 0 {
				r.drawnWh -= n
				r.served()
				continue
			}
			short := -stored
			stored = 0
			r.drawnWh += -n - short
			r.hourShortWh[h] += short
			r.shortWh += short
			m.ShortWh += short
			if short > tie*asked {
				r.shortH++
				r.stretch++
			} else {
				r.served()
			}
		}
	}
	r.stored = stored
	return m
}

// served ends a stretch of hours that are short.
func (r *run) served() {
	if r.stretch > 0 || !r.broken {
		r.end()
	}
}

func (r *run) end() {
	if !r.broken {
		r.first, r.broken = r.stretch, true
	}
	r.most = max(r.most, r.stretch)
	r.stretch = 0
}

// longest returns the longest stretch of short hours in a cyclic year of so many hours.
func (r *run) longest(year int) int {
	if !r.broken {
		return year
	}
	return max(r.most, r.stretch+r.first)
}

// servedWh returns the energy of the loads themselves that is served in so many days. In an hour that is partly short,
// the loads are served in the same share as the bus.
func (r *run) servedWh(days int) float64 {
	served, whole := 0.0, 0.0
	for h, asked := range r.y.BusWh {
		load := r.y.Load.ACW[h] + r.y.Load.DCW[h]
		served += load * float64(days)
		whole += load * float64(days)
		if r.hourShortWh[h] > 0 {
			served -= load * r.hourShortWh[h] / asked
		}
	}
	if served <= tie*whole { // what rounding leaves where nothing is served
		return 0
	}
	return served
}
