package year

import (
	"cartwright/optimize/energy"
	"cartwright/scenarios"
)

// Load is the mean watts of the loads in each hour of the day, the same every day.
type Load struct {
	ACW [24]float64 // through the inverter
	DCW [24]float64 // from the bus itself
}

// LoadOf returns the loads of a scenario averaged over each hour of the day and over the days measured. A step that
// spans two hours counts pro rata in each.
func LoadOf(s *scenarios.Scenario, d *energy.Demand) Load {
	step, start := d.StepH*60, 0.0
	if s.Measured != nil {
		start = float64(s.Measured.StartMin)
	}
	days := d.RecordH() / 24
	var l Load
	for t := range d.Steps() {
		from := start + float64(t)*step
		for to := from + step; from < to; {
			h := int(from/60) % 24
			next := min(to, float64(int(from/60)+1)*60)
			share := (next - from) / 60 / days
			l.ACW[h] += d.ACW[t] * share
			l.DCW[h] += d.DCW[t] * share
			from = next
		}
	}
	return l
}

// BusW returns the watts asked of the bus in each hour of the day, with inverters of an efficiency (0..1) and an idle
// draw of idleW for all units together.
//
//	D = P / efficiency + idle + Q
//
// Source: as for energy.Demand.BusW.
func (l *Load) BusW(efficiency, idleW float64) [24]float64 {
	var bus [24]float64
	for h := range bus {
		bus[h] = l.ACW[h]/efficiency + idleW + l.DCW[h]
	}
	return bus
}

// Hours is a year of an array and loads.
type Hours struct {
	SunWh     []float64   // what the array gives in each hour, after what is cut off
	ClippedWh float64     // what is cut off over the year
	BusWh     [24]float64 // asked of the bus in each hour of the day
	Load      Load
}

// HoursOf returns the year of an array and loads. Each of the modules gives moduleW hour by hour, the inverters take at
// most mostW of it, and the loads ask busWh of the bus in each hour of the day.
func HoursOf(moduleW []float64, modules int, mostW float64, load Load, busWh [24]float64) *Hours {
	y := &Hours{SunWh: make([]float64, len(moduleW)), BusWh: busWh, Load: load}
	for h, watts := range moduleW {
		all := watts * float64(modules)
		y.SunWh[h] = min(all, mostW)
		y.ClippedWh += all - y.SunWh[h]
	}
	return y
}

// Net returns what the sun gives less what is asked of the bus, in Wh hour by hour.
func (y *Hours) Net() []float64 { return y.NetInto(nil) }

// NetInto is Net that reuses the memory of a slice no longer needed, if it is large enough.
func (y *Hours) NetInto(room []float64) []float64 {
	net := room[:0]
	if cap(net) < len(y.SunWh) {
		net = make([]float64, 0, len(y.SunWh))
	}
	for day := 0; day+24 <= len(y.SunWh); day += 24 {
		for h, sun := range y.SunWh[day : day+24] {
			net = append(net, sun-y.BusWh[h])
		}
	}
	return net
}

// AskedWh returns the energy asked of the bus over the year.
func (y *Hours) AskedWh() float64 {
	day := 0.0
	for _, wh := range y.BusWh {
		day += wh
	}
	return day * float64(len(y.SunWh)) / 24
}
