package audit

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
)

const (
	ruleBusbars       = "bus bars"
	ruleBusbarCurrent = "bus bar current"
	ruleBusbarStuds   = "bus bar studs"
)

var busbarRules = []Rule{
	{ruleBusbars, "", "one pair of bus bars", practice},
	{ruleBusbarCurrent, "A", "1.25 * (what flows to or from all units at bus low, and the dc loads' peak) <= rating", "by analogy with NEC 215.3; " + practice},
	{ruleBusbarStuds, "each", "strings, inverter units and dc circuits <= studs", practice},
}

// continuous is the factor on current that flows for hours: NEC 210.20(A), 215.3; for bus bars, under either rule set,
// by analogy.
const continuous = 1.25

// busbars checks whether the bus bars carry the current and have a stud for each connection.
func (a *auditor) busbars() {
	pairs := 0.0
	for _, l := range a.p.Bill {
		if l.Kind == string(catalog.KindBusbar) {
			pairs += l.Quantity
		}
	}
	a.exactly(ruleBusbars, pairs, 1, "")
	studs := a.studs()
	for _, l := range a.p.Bill {
		bar := a.stock.busbars[l.Part]
		if bar == nil || l.Kind != string(catalog.KindBusbar) || l.Quantity == 0 {
			continue
		}
		if a.inverter != nil && a.demand != nil {
			a.limited(ruleBusbarCurrent, plan.LimitBusbarCurrent, continuous*a.busA(), bar.RatingA, false, bar.ID)
		}
		a.limited(ruleBusbarStuds, plan.LimitBusbarStuds, studs, float64(bar.Studs), false, bar.ID)
	}
}

// studs returns how many connections each bus bar has: strings, inverter units and dc circuits.
func (a *auditor) studs() float64 {
	studs := a.units
	for _, b := range a.strings {
		studs += b.count
	}
	for i := range a.s.Circuits {
		studs += answered(a.s.Circuits[i].DC)
	}
	return studs
}
