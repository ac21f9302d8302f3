package audit

import (
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// task is one kind of cable path a plan must wire: what the path must do, how often it is there, and the
// fault current at its device. An entry of the plan's runs belongs to it by kind, battery and circuit.
type task struct {
	duty    wiring.Duty
	battery string  // whose string it is; else ""
	count   float64 // paths
	faultA  float64
}

// name says which path it is.
func (t *task) name() string {
	switch {
	case t.battery != "":
		return fmt.Sprintf("%s of %s", t.duty.Kind, t.battery)
	case t.duty.Name != "":
		return fmt.Sprintf("%s %s", t.duty.Kind, t.duty.Name)
	}
	return string(t.duty.Kind)
}

// owns reports whether an entry of the plan's runs belongs to the task.
func (t *task) owns(r *plan.Run) bool {
	return r.Run == string(t.duty.Kind) && r.Battery == t.battery && r.Name == t.duty.Name
}

// tasks returns the cable paths of the core, in the order they are told. A kind the scenario does not
// list is not planned.
func (a *auditor) tasks() []task {
	var tasks []task
	total := 0.0 // fault current on the bus bars: every string feeds it
	for _, b := range a.strings {
		total += b.count * shortCircuitA(b.Battery)
	}
	if run := a.s.Run(scenarios.RunString); run != nil {
		for _, b := range a.strings {
			own := shortCircuitA(b.Battery)
			// A fault on the bars draws the string's own current through its device, one on the string's
			// side that of all the others.
			tasks = append(tasks, task{a.busDuty(run, b.MaxDischargeA), b.ID, b.count, max(own, total-own)})
		}
	}
	if a.inverter == nil {
		return append(tasks, a.branches()...)
	}
	if run := a.s.Run(scenarios.RunMain); run != nil {
		tasks = append(tasks, task{a.busDuty(run, a.inverterA()), "", a.units, total})
	}
	if run := a.s.Run(scenarios.RunFeeder); run != nil {
		volts, poles, conductors := supplied(a.inverter.ACV)
		d := pathOf(run)
		d.DesignA = a.units * a.inverter.ContinuousW / volts
		d.NominalV, d.DeviceV, d.Poles, d.Conductors = volts, volts, poles, conductors
		d.AC, d.Ground = true, true
		tasks = append(tasks, task{d, "", 1, a.s.ACFaultA})
	}
	return append(tasks, a.branches()...)
}

// branches returns the scenario's branch circuits.
func (a *auditor) branches() []task {
	var tasks []task
	for i := range a.s.Circuits {
		c := &a.s.Circuits[i]
		poles, conductors := 1, 2
		if c.Volts == splitV {
			poles = 2
			if c.Neutral {
				conductors = 3
			}
		}
		tasks = append(tasks, task{wiring.Duty{
			Kind: scenarios.RunBranch, Name: c.Name, AC: true,
			DesignA: c.DeviceA, DeviceA: c.DeviceA, NominalV: c.Volts, DeviceV: c.Volts,
			Poles: poles, Conductors: conductors, Ground: true,
			LengthM: c.LengthM, AmbientC: c.AmbientC, Bundled: c.Bundled, TerminalC: c.TerminalC, Drop: c.Drop,
		}, "", 1, a.s.ACFaultA})
	}
	return tasks
}

// busDuty returns the duty of a two-wire path on the direct-current bus.
func (a *auditor) busDuty(run *scenarios.Run, designA float64) wiring.Duty {
	d := pathOf(run)
	d.DesignA, d.NominalV, d.DeviceV = designA, a.s.Bus.NominalV, a.s.Bus.HighV
	d.Poles, d.Conductors = 1, 2
	return d
}

// pathOf returns what a duty takes over from the scenario's run.
func pathOf(run *scenarios.Run) wiring.Duty {
	return wiring.Duty{
		Kind: run.Kind, LengthM: run.LengthM, AmbientC: run.AmbientC, Bundled: run.Bundled,
		TerminalC: run.TerminalC, Drop: run.Drop, OwnBreakerA: run.OwnBreakerA,
	}
}

// splitV is the volts between the hots of a three-wire supply: ANSI C84.1.
const splitV = 240

// supplied returns the volts at which an inverter's output carries its power, the poles that open all
// its hots, and its conductors beside the ground: two hots and a neutral of a three-wire one.
func supplied(acV string) (volts float64, poles, conductors int) {
	switch acV {
	case "120":
		return 120, 1, 2
	case "230":
		return 230, 1, 2
	}
	return splitV, 2, 3
}

// shortCircuitA returns the short-circuit current of one string: what the maker states, or else E / R of
// a module; modules in series add voltage and resistance alike.
func shortCircuitA(b *catalog.Battery) float64 {
	if b.ShortCircuitA > 0 {
		return b.ShortCircuitA
	}
	return b.MaxV / b.ResistanceOhm
}
