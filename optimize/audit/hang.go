package audit

import (
	"fmt"
	"math"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// hangLoads puts the loads on circuits and legs so that the larger leg's peak is least.
func (in *installer) hangLoads() {
	a := in.auditor()
	found, proven := spread(in.s, a.threeWire(), math.Inf(1), math.Inf(1))
	if !proven {
		in.notes = append(in.notes, "the search for the best circuits and legs for the loads was cut short")
	}
	if found.best == nil {
		if in.s.Measured == nil {
			in.lack("circuits that carry all loads")
		}
		found.best = &found.h
	}
	h := found.best
	for c := range in.s.Circuits {
		told := plan.Circuit{Circuit: in.s.Circuits[c].Name, Leg: string(h.circuitLegs[c]), Loads: []string{},
			CurrentA: circuitA(in.s, h, c), DeviceA: in.s.Circuits[c].DeviceA}
		for i := range in.s.Loads {
			if h.circuits[i] == c {
				told.Loads = append(told.Loads, in.s.Loads[i].Name)
			}
		}
		in.p.Circuits = append(in.p.Circuits, told)
	}
	for i := range in.s.Loads {
		l := &in.s.Loads[i]
		if !l.DC && l.Leg == scenarios.LegAuto && isLeg(string(h.legs[i])) {
			in.p.Legs = append(in.p.Legs, plan.LegLoad{Load: l.Name, Leg: string(h.legs[i])})
		}
	}
}

// installArray takes the array of most watts, all inputs alike, that the inverter and the room take and the owned
// modules of one kind make up.
func (in *installer) installArray() {
	a := in.auditor()
	if a.inverter == nil || in.s.Sun == nil {
		return
	}
	var best *array
	for i := range in.c.Solar {
		m := &in.c.Solar[i]
		for k := 1; k <= int(a.units)*a.inverter.MPPTInputs; k++ {
			for s := 1; s*k <= in.count(m.ID); s++ {
				for p := 1; p*s*k <= in.count(m.ID); p++ {
					x := &array{m, float64(s), float64(p), float64(k)}
					if a.takes(x) && (best == nil || x.watts() > best.watts()) {
						best = x
					}
				}
			}
		}
	}
	if best == nil {
		return
	}
	in.p.Core.Solar = []plan.CoreSolar{{Part: best.ID, Series: int(best.series), Parallel: int(best.parallel), Inputs: int(best.inputs)}}
	in.use(best.ID, best.modules(), fmt.Sprintf("array of %g in series, %g in parallel on %g inputs", best.series, best.parallel, best.inputs))
}

// takes reports whether the inverter's inputs and the room take an array.
func (a *auditor) takes(x *array) bool {
	trial := auditor{s: a.s, stock: a.stock, units: a.units, inverter: a.inverter, array: x,
		p: &plan.Plan{Core: plan.Core{Solar: []plan.CoreSolar{{}}}}}
	trial.solar()
	return trial.findings.audit().Passed
}
