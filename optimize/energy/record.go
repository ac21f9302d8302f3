package energy

import (
	"fmt"
	"math"

	"cartwright/scenarios"
)

const (
	dayMin         = 1440 // minutes of a day
	longestStepMin = 60   // minutes; a step is never longer
)

// DemandOf returns the demand of a scenario's loads.
//
// Of a load list the record is one day, its steps 60 minutes or the largest divisor of 60 minutes on
// which all times of day fall. Loads of leg "auto" are put on the legs so that the larger leg's peak is
// least (see Demand.LegsProven and the notes at maxNodes). A load of "both" legs counts half on each.
//
// Of measured loads the record and its steps are as measured; the peaks are the measured means, and no
// start increment is known. Watts measured without legs count wholly on leg A, which is the safe
// reading where the inverter has two: what hangs where was not measured.
//
// It returns an error for loads no scenario file can state: a time that ends where it begins, a leg
// that is none, a number that is negative or not finite, measured loads that fill no whole days.
func DemandOf(s *scenarios.Scenario) (*Demand, error) {
	if s.Measured != nil {
		if len(s.Loads) > 0 {
			return nil, fmt.Errorf("energy: loads are both listed and measured; state one of them")
		}
		return measuredDemand(s.Measured)
	}
	for i := range s.Loads {
		if err := checkLoad(&s.Loads[i]); err != nil {
			return nil, err
		}
	}
	return listedDemand(s.Loads), nil
}

// measuredDemand returns the demand of a measured record.
func measuredDemand(m *scenarios.Measured) (*Demand, error) {
	if m.StepMin < 1 || m.StepMin > longestStepMin || dayMin%m.StepMin != 0 {
		return nil, fmt.Errorf("energy: measured step of %d min; use 1 to %d min that divide the day",
			m.StepMin, longestStepMin)
	}
	steps := len(m.LegA)
	if steps == 0 || steps*m.StepMin%dayMin != 0 {
		return nil, fmt.Errorf("energy: %d measured steps of %d min are no whole days", steps, m.StepMin)
	}
	if m.ByLeg && len(m.LegB) != steps {
		return nil, fmt.Errorf("energy: %d measured steps on leg A, %d on leg B", steps, len(m.LegB))
	}
	d := newDemand(steps, m.StepMin)
	d.LegsProven = true
	for t := range steps {
		d.PeakAW[t] = m.LegA[t]
		if m.ByLeg {
			d.PeakBW[t] = m.LegB[t]
		}
		if !isAmount(d.PeakAW[t]) || !isAmount(d.PeakBW[t]) {
			return nil, fmt.Errorf("energy: measured step %d: watts must be finite and not negative", t+1)
		}
		d.ACW[t] = d.PeakAW[t] + d.PeakBW[t]
		d.PeakW[t] = d.ACW[t]
	}
	return d, nil
}

// listedDemand returns the demand of a checked load list.
func listedDemand(loads []scenarios.Load) *Demand {
	step := stepMin(loads)
	d := newDemand(dayMin/step, step)
	legs, proven := assignLegs(loads, step)
	d.LegsProven = proven
	for i := range loads {
		l := &loads[i]
		if !l.DC && l.Leg == scenarios.LegAuto {
			d.Legs = append(d.Legs, LegLoad{Load: l.Name, Leg: legs[i]})
		}
		if !l.DC && l.Leg == scenarios.LegBoth {
			d.NeedsBothLegs = true
		}
		for t := range d.Steps() {
			if onAt(l, t*step) {
				d.add(t, l, legs[i])
			}
		}
	}
	return d
}

// add counts load l, which is on in step t, with the given leg.
func (d *Demand) add(t int, l *scenarios.Load, leg scenarios.Leg) {
	watts := peakW(l)
	if l.DC {
		d.DCW[t] += watts * l.Duty
		d.PeakDCW[t] += watts
		return
	}
	d.ACW[t] += watts * l.Duty
	d.PeakW[t] += watts
	switch leg {
	case scenarios.LegA:
		d.PeakAW[t] += watts
	case scenarios.LegB:
		d.PeakBW[t] += watts
	default: // half on each
		d.PeakAW[t] += watts / 2
		d.PeakBW[t] += watts / 2
	}
	if l.Count > 0 {
		d.StartW[t] = max(d.StartW[t], (l.Start-1)*l.Watts)
	}
}

// newDemand returns a demand of nothing, of some steps of stepMin minutes.
func newDemand(steps, stepMin int) *Demand {
	series := func() []float64 { return make([]float64, steps) }
	return &Demand{
		StepH: float64(stepMin) / 60,
		ACW:   series(), DCW: series(),
		PeakW: series(), PeakAW: series(), PeakBW: series(), PeakDCW: series(),
		StartW: series(),
	}
}

// peakW returns the watts of a load with all its units on.
func peakW(l *scenarios.Load) float64 { return l.Watts * float64(l.Count) }

// stepMin returns the largest divisor of 60 minutes on which all times of day of the loads fall.
func stepMin(loads []scenarios.Load) int {
	step := longestStepMin
	for i := range loads {
		if !loads[i].AllDay {
			step = gcd(gcd(step, loads[i].FromMin), loads[i].ToMin)
		}
	}
	return step
}

// gcd returns the greatest common divisor of a > 0 and b >= 0 (Euclid, Elements VII.2).
func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// onAt reports whether a load is on in the step that begins at a minute of the day.
func onAt(l *scenarios.Load, minute int) bool {
	if l.AllDay {
		return true
	}
	if l.FromMin < l.ToMin {
		return l.FromMin <= minute && minute < l.ToMin
	}
	return l.FromMin <= minute || minute < l.ToMin // past midnight
}

// checkLoad returns an error that names the first thing no load can have.
func checkLoad(l *scenarios.Load) error {
	bad := func(what string) error { return fmt.Errorf("energy: load %q: %s", l.Name, what) }
	if !isAmount(l.Watts) {
		return bad("watts must be finite and not negative")
	}
	if l.Count < 0 {
		return bad("count must not be negative")
	}
	if !(l.Duty >= 0 && l.Duty <= 1) {
		return bad("duty must be between 0 and 1")
	}
	if !isAmount(l.Start) {
		return bad("start must be finite and not negative")
	}
	if !l.AllDay {
		if !inDay(l.FromMin) || !inDay(l.ToMin) {
			return bad("from and to must be minutes of one day")
		}
		if l.FromMin == l.ToMin {
			return bad("from and to must differ; all day is neither")
		}
	}
	if l.DC {
		return nil // a load on the bus has no leg
	}
	switch l.Leg {
	case scenarios.LegA, scenarios.LegB, scenarios.LegBoth, scenarios.LegAuto:
		return nil
	}
	return bad(fmt.Sprintf("leg %q is none; use A, B, both or auto", l.Leg))
}

// inDay reports whether a minute is one of a day, its end included.
func inDay(minute int) bool { return minute >= 0 && minute <= dayMin }

// isAmount reports whether x is finite and not negative.
func isAmount(x float64) bool { return x >= 0 && !math.IsInf(x, 1) }
