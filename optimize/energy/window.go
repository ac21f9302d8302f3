package energy

import (
	"math"
	"sort"

	"cartwright/optimize/plan"
)

// MaxAutonomyH is the longest autonomy given, one year in hours: with next to no demand it would have no end.
const MaxAutonomyH = 8760

// BusW returns the watts the bus supplies in each step, with an inverter of the given efficiency
// (0..1) and idle draw; idleW is of all units together.
//
//	D_t = P_t / efficiency + idle + Q_t
//
// Source: Masters, Renewable and Efficient Electric Power Systems (2004), Example 9.15: load through
// the inverter over its efficiency, plus the load on direct current; the idle draw is the maker's.
func (d *Demand) BusW(efficiency, idleW float64) []float64 {
	bus := make([]float64, d.Steps())
	for t := range bus {
		bus[t] = d.ACW[t]/efficiency + idleW + d.DCW[t]
	}
	return bus
}

// WindowWh returns the largest energy in Wh the bus gives over any stretch of the given length in
// hours. A stretch may begin anywhere and runs on from the record's end to its start, if need be more than once; a
// fraction of a step counts pro rata. The largest begins or ends at a step's edge, so only those are tried.
// Efficiency is 0..1, idleW is of all units together.
//
//	E = max over s of the integral of D from s to s + hours
//
// Source: the mass curve of Rippl (1883) with the record repeated, as Thomas and Burden (1963) have it;
// see Loucks and van Beek, Water Resource Systems Planning and Management, ch. 11.
func (d *Demand) WindowWh(efficiency, idleW, hours float64) float64 {
	hours = max(0, hours)
	c := newMassCurve(d.BusW(efficiency, idleW), d.StepH)
	recordH := d.RecordH()
	rounds := math.Floor(hours / recordH)
	steps := (hours - rounds*recordH) / d.StepH
	whole := math.Floor(steps)
	return rounds*c.recordWh() + c.mostWh(int(whole), steps-whole)
}

// AutonomyH returns the longest stretch in hours, wherever it begins, through which usableWh lasts: the
// longest A with WindowWh(efficiency, idleW, A) <= usableWh, at most MaxAutonomyH. It is exact, since
// WindowWh is piecewise linear in its length and never falls.
func (d *Demand) AutonomyH(efficiency, idleW, usableWh float64) float64 {
	if usableWh < 0 {
		return 0
	}
	c := newMassCurve(d.BusW(efficiency, idleW), d.StepH)
	recordWh, recordH := c.recordWh(), d.RecordH()
	if recordWh == 0 {
		return MaxAutonomyH
	}
	rounds := math.Floor(usableWh / recordWh)
	rest := usableWh - rounds*recordWh
	// Energy that lasts up to a stretch without demand lasts through it, even if the sum was rounded up.
	enough := rest + plan.Tolerance*usableWh
	// The number of whole steps that usableWh lasts: k + 1 is the first that is too many.
	whole := sort.Search(d.Steps(), func(k int) bool { return c.mostWh(k+1, 0) > enough })
	fraction := c.fraction(whole, rest)
	return min(MaxAutonomyH, rounds*recordH+(float64(whole)+fraction)*d.StepH)
}

// massCurve is the energy given since the start of a record, step by step, twice round.
type massCurve struct {
	stepWh []float64 // of each step
	sumWh  []float64 // of the first k steps, k = 0 to twice the record
}

func newMassCurve(watts []float64, stepH float64) *massCurve {
	n := len(watts)
	c := &massCurve{stepWh: make([]float64, n), sumWh: make([]float64, 2*n+1)}
	for t, w := range watts {
		c.stepWh[t] = w * stepH
	}
	for k := range 2 * n {
		c.sumWh[k+1] = c.sumWh[k] + c.stepWh[k%n]
	}
	return c
}

// recordWh returns the energy of the whole record.
func (c *massCurve) recordWh() float64 { return c.sumWh[len(c.stepWh)] }

// mostWh returns the largest energy of any stretch of some whole steps (at most the record) and a
// fraction of the step after, or of the one before them.
func (c *massCurve) mostWh(whole int, fraction float64) float64 {
	most := 0.0
	for s := range c.stepWh {
		most = max(most, c.spanWh(s, whole)+fraction*max(c.next(s, whole), c.last(s)))
	}
	return most
}

// fraction returns for how much of one more step, after or before some whole steps, usableWh lasts wherever the
// stretch lies. The record must have some demand.
func (c *massCurve) fraction(whole int, usableWh float64) float64 {
	least := math.Inf(1)
	for s := range c.stepWh {
		if more := max(c.next(s, whole), c.last(s)); more > 0 {
			least = min(least, (usableWh-c.spanWh(s, whole))/more)
		}
	}
	return max(0, least)
}

// spanWh returns the energy of some whole steps from step s on.
func (c *massCurve) spanWh(s, whole int) float64 { return c.sumWh[s+whole] - c.sumWh[s] }

// last returns the energy of the step before step s.
func (c *massCurve) last(s int) float64 { return c.stepWh[(s+len(c.stepWh)-1)%len(c.stepWh)] }

// next returns the energy of the step after some whole steps from step s on.
func (c *massCurve) next(s, whole int) float64 { return c.stepWh[(s+whole)%len(c.stepWh)] }
