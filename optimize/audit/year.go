package audit

import (
	"math"

	"cartwright/optimize/plan"
)

// yearH is the hours of a year; monthDays the days of its months, January first.
const yearH = 8760

var monthDays = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// year is the result of simulating sun and store, hour by hour.
type year struct {
	served                      float64
	shortH, longestH            float64
	wallWh, spilledWh           float64
	clippedWh, sunWh, loadWh    float64
	cycles                      float64
	servedLoadWh                float64 // the part of the loads' own energy that sun and store serve
	months                      [12]plan.Month
	shortAt                     []bool
	lowestWh, atStartWh, endsWh float64
}

// flow is what comes and goes in one hour, in Wh.
type flow struct{ sun, clipped, load, wanted float64 }

// simulate goes through the year hour by hour, from a full store, again and again until a year ends with the store as
// full as it began; that year counts.
func (a *auditor) simulate() *year {
	flows := a.flows()
	full := a.usableWh()
	start := full
	for {
		y := a.pass(flows, start, full)
		if math.Abs(y.endsWh-start) <= plan.Tolerance*full {
			return y
		}
		if lost := start - y.endsWh; lost > 0 && y.lowestWh > lost {
			// A year in which the store was never empty loses the same again, so years like it are skipped.
			start -= math.Floor(y.lowestWh/lost) * lost
			continue
		}
		start = y.endsWh
	}
}

// pass goes through one year.
func (a *auditor) pass(flows []flow, start, full float64) *year {
	trip, _ := a.lossiest()
	amps, _ := a.chargeA()
	mostIn := amps * a.s.Bus.NominalV // Wh in an hour
	y := &year{atStartWh: start, lowestWh: start, shortAt: make([]bool, len(flows))}
	stored, drawn := start, 0.0
	hour := 0
	for m, days := range monthDays {
		month := &y.months[m]
		for range min(days*24, len(flows)-hour) {
			f := &flows[hour]
			net, short, spilled := f.sun-f.load, 0.0, 0.0
			if net >= 0 {
				next := math.Min(full, stored+math.Min(net, mostIn)*trip)
				spilled = math.Max(0, net-(next-stored)/trip)
				stored = next
			} else {
				give := math.Min(-net, stored)
				stored, drawn, short = stored-give, drawn+give, -net-give
			}
			y.lowestWh = math.Min(y.lowestWh, stored)
			y.add(hour, f, short)
			y.spilledWh += spilled
			month.Sun += f.sun / 1000
			month.Load += f.load / 1000
			month.Short += short / 1000
			month.Spilled += spilled / 1000
			hour++
		}
	}
	y.endsWh = stored
	y.served = 1
	if y.loadWh > 0 {
		y.served = math.Max(0, 1-y.wallWh/y.loadWh)
	}
	y.cycles = drawn / full
	y.longestH = longest(y.shortAt)
	return y
}

// add counts one hour.
func (y *year) add(hour int, f *flow, short float64) {
	y.sunWh += f.sun
	y.clippedWh += f.clipped
	y.loadWh += f.load
	y.wallWh += short
	if f.load > 0 {
		y.servedLoadWh += f.wanted * (1 - short/f.load)
	}
	if short > plan.Tolerance*f.load {
		y.shortH++
		y.shortAt[hour] = true
	}
}

// longest returns the longest stretch of true, which goes on across the end.
func longest(marks []bool) float64 {
	most, run := 0, 0
	for i := range 2 * len(marks) {
		run++
		if !marks[i%len(marks)] {
			run = 0
		}
		most = max(most, min(run, len(marks)))
	}
	return float64(most)
}

// flows returns the year's hours: what the array gives, less what the inverter cuts off, and what is asked of the bus.
// Loads are averaged over each hour of the day, every day alike.
func (a *auditor) flows() []flow {
	ac, dc := a.demand.byHour(a.firstMin())
	sunW := a.sunW()
	most := math.Inf(1)
	if x := a.array; x != nil {
		most = a.inverter.SolarMaxW * x.inputs / a.fullestUnit(x)
	}
	flows := make([]flow, len(sunW))
	for h := range flows {
		f := &flows[h]
		f.sun = math.Min(sunW[h], most)
		f.clipped = sunW[h] - f.sun
		f.wanted = ac[h%24] + dc[h%24]
		f.load = ac[h%24]/a.inverter.Efficiency + a.units*a.inverter.IdleW + dc[h%24]
	}
	return flows
}

// firstMin returns the time of day of the record's first step, in minutes.
func (a *auditor) firstMin() int {
	if a.s.Measured != nil {
		return a.s.Measured.StartMin
	}
	return 0
}

// byHour returns the mean watts of each hour of the day, through the inverter and on the bus, of a record that
// begins at a minute of the day.
func (d *demand) byHour(firstMin int) (ac, dc [24]float64) {
	stepMin := int(math.Round(d.stepH * hourMin))
	perHour := float64(len(d.acW)*stepMin) / 24 // minutes of the record in each hour of the day
	for t := range d.acW {
		for m := range stepMin {
			h := (firstMin + t*stepMin + m) / hourMin % 24
			ac[h] += d.acW[t] / perHour
			dc[h] += d.dcW[t] / perHour
		}
	}
	return ac, dc
}
