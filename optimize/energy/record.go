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
// For a load list the record is one day, in steps of 60 minutes or of the largest divisor of 60 minutes on
// which all times of day fall. Loads of leg "auto" are put on the legs so that the larger leg's peak is
// least (see Demand.LegsProven and maxNodes). A load of "both" legs counts half on each.
//
// For measured loads the record and its steps are as measured; the peaks are the measured means, and no
// starts are known. Watts measured without legs count wholly on leg A: which leg has what was not measured, and
// for an inverter with two this is the safe side.
//
// It returns an error for loads that fit no circuit, and for loads no scenario file can state: a time that ends
// where it begins, an unknown leg, a number that is negative or not finite, measured loads that do not fill whole days.
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
	return listedDemand(s)
}

// measuredDemand returns the demand of a measured record.
func measuredDemand(m *scenarios.Measured) (*Demand, error) {
	if m.StepMin < 1 || m.StepMin > longestStepMin || dayMin%m.StepMin != 0 {
		return nil, fmt.Errorf("energy: measured step of %d min; use 1 to %d min that divide the day",
			m.StepMin, longestStepMin)
	}
	steps := len(m.LegA)
	if steps == 0 || steps*m.StepMin%dayMin != 0 {
		return nil, fmt.Errorf("energy: %d measured steps of %d min do not fill whole days", steps, m.StepMin)
	}
	if m.ByLeg && len(m.LegB) != steps {
		return nil, fmt.Errorf("energy: %d measured steps on leg A, %d on leg B", steps, len(m.LegB))
	}
	d := newDemand(steps, m.StepMin)
	d.LegsProven = true
	for t := range steps {
		d.PeakAVA[t] = m.LegA[t]
		if m.ByLeg {
			d.PeakBVA[t] = m.LegB[t]
		}
		if !isAmount(d.PeakAVA[t]) || !isAmount(d.PeakBVA[t]) {
			return nil, fmt.Errorf("energy: measured step %d: watts must be finite and not negative", t+1)
		}
		d.ACW[t] = d.PeakAVA[t] + d.PeakBVA[t]
		d.PeakVA[t], d.SurgeVA[t] = d.ACW[t], d.ACW[t]
		d.LegSurgeVA[t] = max(d.PeakAVA[t], d.PeakBVA[t])
	}
	return d, nil
}

// listedDemand returns the demand of a checked load list.
func listedDemand(s *scenarios.Scenario) (*Demand, error) {
	placed, err := place(s)
	if err != nil {
		return nil, err
	}
	step := stepMin(s.Loads)
	d := newDemand(dayMin/step, step)
	d.LegsProven, d.Circuits = placed.proven, placed.circuitLoads()
	lists := listOf(s)
	for i := range s.Loads {
		l := &s.Loads[i]
		if l.DC {
			continue
		}
		if placed.legs[i] == scenarios.LegBoth {
			d.NeedsBothLegs = true
		} else if l.Leg == scenarios.LegAuto {
			d.Legs = append(d.Legs, LegLoad{Load: l.Name, Leg: placed.legs[i]})
		}
	}
	for t := range d.Steps() {
		var all, legA, legB, bus []part
		for i := range s.Loads {
			l := &s.Loads[i]
			if !onAt(l, t*step) {
				continue
			}
			if l.DC {
				d.DCW[t] += peakW(l) * l.Duty
				bus = append(bus, part{list: lists[i], amount: peakW(l)})
				continue
			}
			d.ACW[t] += peakW(l) * l.Duty
			whole := part{list: lists[i], amount: voltAmperes(l), start: startVA(l)}
			all = append(all, whole)
			a, b := legShares(placed.legs[i])
			legA = append(legA, whole.times(a))
			legB = append(legB, whole.times(b))
		}
		var surgeA, surgeB float64
		d.PeakVA[t], d.SurgeVA[t] = peaks(all, len(s.OneAtATime))
		d.PeakAVA[t], surgeA = peaks(legA, len(s.OneAtATime))
		d.PeakBVA[t], surgeB = peaks(legB, len(s.OneAtATime))
		d.LegSurgeVA[t] = max(surgeA, surgeB)
		d.PeakDCW[t], _ = peaks(bus, len(s.OneAtATime))
	}
	return d, nil
}

// times returns a part scaled to a share of it.
func (p part) times(share float64) part {
	return part{list: p.list, amount: share * p.amount, start: share * p.start}
}

// legShares returns what share of a load is on each leg; a load between the legs is half on each.
func legShares(leg scenarios.Leg) (a, b float64) {
	switch leg {
	case scenarios.LegA:
		return 1, 0
	case scenarios.LegB:
		return 0, 1
	}
	return 0.5, 0.5
}

// newDemand returns a demand of zeros.
func newDemand(steps, stepMin int) *Demand {
	series := func() []float64 { return make([]float64, steps) }
	return &Demand{
		StepH: float64(stepMin) / 60,
		ACW:   series(), DCW: series(),
		PeakVA: series(), PeakAVA: series(), PeakBVA: series(), PeakDCW: series(),
		SurgeVA: series(), LegSurgeVA: series(),
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

// checkLoad returns an error for the first value that no load can have.
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
			return bad("from and to must differ; leave out both for all day")
		}
	}
	if l.DC {
		return nil // a load on the bus has no leg
	}
	switch l.Leg {
	case scenarios.LegA, scenarios.LegB, scenarios.LegBoth, scenarios.LegAuto:
		return nil
	}
	return bad(fmt.Sprintf("unknown leg %q; use A, B, both or auto", l.Leg))
}

// inDay reports whether a minute is within a day, midnight at both ends included.
func inDay(minute int) bool { return minute >= 0 && minute <= dayMin }

// isAmount reports whether x is finite and not negative.
func isAmount(x float64) bool { return x >= 0 && !math.IsInf(x, 1) }
