package audit

import (
	"math"
	"sort"

	"cartwright/optimize/plan"
)

// supplied is the energy that the bus gives, step by step, over a record that goes round.
type supplied struct {
	stepH  float64
	stepWh []float64
	sumWh  []float64 // of the first k steps, twice round
}

// busEnergy returns what the bus gives in each step: the loads through the inverter over its efficiency, the idle draw
// of all units, and the loads on the bus itself.
//
//	D = P / efficiency + u · idle + Q
func (a *auditor) busEnergy() *supplied {
	d, inv := a.demand, a.inverter
	n := len(d.acW)
	c := &supplied{stepH: d.stepH, stepWh: make([]float64, n), sumWh: make([]float64, 2*n+1)}
	for t := range n {
		c.stepWh[t] = (d.acW[t]/inv.Efficiency + a.units*inv.IdleW + d.dcW[t]) * d.stepH
	}
	for k := range 2 * n {
		c.sumWh[k+1] = c.sumWh[k] + c.stepWh[k%n]
	}
	return c
}

// roundWh returns the energy of the whole record.
func (c *supplied) roundWh() float64 { return c.sumWh[len(c.stepWh)] }

// mostWh returns the most energy of any stretch of so many hours. The largest begins or ends at a step's edge, since
// between edges the energy of a stretch changes linearly with where it begins.
func (c *supplied) mostWh(hours float64) float64 {
	n := len(c.stepWh)
	roundH := float64(n) * c.stepH
	rounds := math.Floor(hours / roundH)
	steps := (hours - rounds*roundH) / c.stepH
	whole := int(steps)
	return rounds*c.roundWh() + c.mostOf(whole, steps-float64(whole))
}

// mostOf returns the most energy of any stretch of whole steps, fewer than the record, and a part of a step
// before or after them.
func (c *supplied) mostOf(whole int, part float64) float64 {
	most := 0.0
	c.stretches(whole, func(wh, next float64) { most = math.Max(most, wh+part*next) })
	return most
}

// stretches visits every stretch of whole steps twice: with the step after it, and with the step before it.
func (c *supplied) stretches(whole int, visit func(wh, next float64)) {
	n := len(c.stepWh)
	for s := range n {
		wh := c.sumWh[s+whole] - c.sumWh[s]
		visit(wh, c.stepWh[(s+whole)%n])
		visit(wh, c.stepWh[(s+n-1)%n])
	}
}

// mostHours is the longest autonomy that is given: a year.
const mostHours = 8760

// lasts returns the longest stretch in hours through which some energy lasts, wherever it begins.
func (c *supplied) lasts(usableWh float64) float64 {
	round := c.roundWh()
	if round <= 0 {
		return mostHours
	}
	n := len(c.stepWh)
	rounds := math.Floor(usableWh / round * (1 + plan.Tolerance))
	rest := math.Max(0, usableWh-rounds*round)
	enough := rest + plan.Tolerance*usableWh
	// One step fewer than the first that is too many.
	whole := sort.Search(n, func(k int) bool { return c.mostOf(k+1, 0) > enough })
	part := math.Inf(1)
	if whole == n {
		part = 0
	}
	c.stretches(min(whole, n-1), func(wh, next float64) {
		if next > 0 && whole < n {
			part = math.Min(part, (rest-wh)/next)
		}
	})
	return math.Min(mostHours, float64(n)*c.stepH*rounds+(float64(whole)+math.Max(0, part))*c.stepH)
}

// meanDayWh returns the energy of the record's mean day.
func (c *supplied) meanDayWh() float64 {
	return c.roundWh() / (float64(len(c.stepWh)) * c.stepH) * 24
}
