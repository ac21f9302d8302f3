package audit

import (
	"fmt"
	"math"

	"cartwright/scenarios"
)

// demand is what the loads take, step by step over a record that goes round: one day of a load list, or the
// days that were measured. The audit works it out for itself, from the scenario and the legs the plan states.
type demand struct {
	stepH   float64
	acW     []float64 // mean through the inverter, duty counted
	dcW     []float64 // mean on the bus itself, duty counted
	all     moments   // through the inverter, whatever the leg
	legs    [2]moments
	dcPeakW []float64 // on the bus, what can be on together
}

// moments has for each step the volt-amperes that can be on together, and those with the start of one load on top.
type moments struct{ peak, surge []float64 }

// largest returns the largest peak and the largest surge.
func (m *moments) largest() (peak, surge float64) { return most(m.peak), most(m.surge) }

// most returns the largest of some numbers, at least 0.
func most(xs []float64) float64 {
	largest := 0.0
	for _, x := range xs {
		largest = math.Max(largest, x)
	}
	return largest
}

const (
	dayMin  = 1440 // minutes
	hourMin = 60
)

// recordOf returns the demand of a scenario's loads on the legs given, one for each load; an error for loads
// that no reader accepts.
func recordOf(s *scenarios.Scenario, legs []scenarios.Leg) (*demand, error) {
	if s.Measured != nil {
		return measuredRecord(s.Measured)
	}
	step := hourMin
	for i := range s.Loads {
		l := &s.Loads[i]
		if bad := absurdLoad(l); bad != "" {
			return nil, fmt.Errorf("load %s: %s", l.Name, bad)
		}
		if !l.AllDay {
			step = divisor(divisor(step, l.FromMin), l.ToMin)
		}
	}
	d := newRecord(dayMin/step, step)
	lists := listsOf(s)
	for t := range d.acW {
		var ac, dc []draw
		for i := range s.Loads {
			l := &s.Loads[i]
			if !isOn(l, t*step) {
				continue
			}
			watts := l.Watts * float64(l.Count)
			if l.DC {
				d.dcW[t] += watts * l.Duty
				dc = append(dc, draw{list: lists[i], amount: watts})
				continue
			}
			d.acW[t] += watts * l.Duty
			ac = append(ac, drawOf(l, lists[i], legs[i]))
		}
		d.all.peak[t], d.all.surge[t] = together(ac, func(*draw) float64 { return 1 })
		for k := range d.legs {
			d.legs[k].peak[t], d.legs[k].surge[t] = together(ac, func(x *draw) float64 { return x.share[k] })
		}
		d.dcPeakW[t], _ = together(dc, func(*draw) float64 { return 1 })
	}
	return d, nil
}

// measuredRecord returns the demand of a measured record, whose peaks are the measured means. What was
// measured without legs counts wholly on leg A.
func measuredRecord(m *scenarios.Measured) (*demand, error) {
	steps := len(m.LegA)
	if m.StepMin < 1 || m.StepMin > hourMin || steps == 0 || steps*m.StepMin%dayMin != 0 || m.ByLeg && len(m.LegB) != steps {
		return nil, fmt.Errorf("the measured loads do not fill whole days")
	}
	d := newRecord(steps, m.StepMin)
	for t := range steps {
		a, b := m.LegA[t], 0.0
		if m.ByLeg {
			b = m.LegB[t]
		}
		if !isAmount(a) || !isAmount(b) {
			return nil, fmt.Errorf("measured step %d: watts must be finite and not negative", t+1)
		}
		d.acW[t] = a + b
		for k, watts := range []float64{a, b} {
			d.legs[k].peak[t], d.legs[k].surge[t] = watts, watts
		}
		d.all.peak[t], d.all.surge[t] = a+b, a+b
	}
	return d, nil
}

func newRecord(steps, stepMin int) *demand {
	row := func() []float64 { return make([]float64, steps) }
	both := func() moments { return moments{row(), row()} }
	return &demand{stepH: float64(stepMin) / hourMin, acW: row(), dcW: row(), dcPeakW: row(),
		all: both(), legs: [2]moments{both(), both()}}
}

// draw is one load that is on: its volt-amperes (watts on the bus), what its start adds, and the share of both that is
// on each leg.
type draw struct {
	list          int // the one-at-a-time list it is on; noList: none
	amount, start float64
	share         [2]float64
}

// noList marks a load that may be on together with any other.
const noList = -1

func drawOf(l *scenarios.Load, list int, leg scenarios.Leg) draw {
	x := draw{list: list, amount: l.Watts * float64(l.Count) / l.PowerFactor}
	if l.Count > 0 {
		x.start = (l.Start - 1) * l.Watts / l.PowerFactor
	}
	switch leg {
	case scenarios.LegA:
		x.share = [2]float64{1, 0}
	case scenarios.LegB:
		x.share = [2]float64{0, 1}
	default:
		x.share = [2]float64{0.5, 0.5}
	}
	return x
}

// together returns the most that the draws of one moment can be together, each by its share, and the most
// with the start of one on top. Of a one-at-a-time list the largest is on, but one that starts stands for its
// list itself.
func together(draws []draw, share func(*draw) float64) (peak, surge float64) {
	var listed []float64 // list -> the largest of it
	for i := range draws {
		x := &draws[i]
		amount := x.amount * share(x)
		if x.list == noList {
			peak += amount
			continue
		}
		for len(listed) <= x.list {
			listed = append(listed, 0)
		}
		listed[x.list] = math.Max(listed[x.list], amount)
	}
	for _, amount := range listed {
		peak += amount
	}
	surge = peak
	for i := range draws {
		x := &draws[i]
		with := peak + x.start*share(x)
		if x.list != noList {
			with += x.amount*share(x) - listed[x.list]
		}
		surge = math.Max(surge, with)
	}
	return peak, surge
}

// listsOf returns for each load the index of the one-at-a-time list it is on, or noList.
func listsOf(s *scenarios.Scenario) []int {
	lists := make([]int, len(s.Loads))
	for i := range lists {
		lists[i] = noList
	}
	for k, list := range s.OneAtATime {
		for _, i := range list {
			if i >= 0 && i < len(lists) {
				lists[i] = k
			}
		}
	}
	return lists
}

// isOn reports whether a load is on in the step that begins at a minute of the day.
func isOn(l *scenarios.Load, minute int) bool {
	switch {
	case l.AllDay:
		return true
	case l.FromMin < l.ToMin:
		return l.FromMin <= minute && minute < l.ToMin
	}
	return l.FromMin <= minute || minute < l.ToMin // past midnight
}

// absurdLoad says what is wrong with a load that no reader accepts; "" for nothing.
func absurdLoad(l *scenarios.Load) string {
	switch {
	case !isAmount(l.Watts) || !isAmount(l.Start) || l.Count < 0:
		return "watts, start or count is negative or not finite"
	case !(l.Duty >= 0 && l.Duty <= 1) || !(l.PowerFactor > 0 && l.PowerFactor <= 1):
		return "duty or power factor is not between 0 and 1"
	case !l.AllDay && (l.FromMin == l.ToMin || l.FromMin < 0 || l.ToMin < 0 || l.FromMin > dayMin || l.ToMin > dayMin):
		return "from and to must be two times of one day"
	}
	return ""
}

// isAmount reports whether x is a number, not below 0 and not infinite.
func isAmount(x float64) bool { return x >= 0 && !math.IsInf(x, 1) }

// divisor returns the greatest common divisor (Euclid, Elements VII.2).
func divisor(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
