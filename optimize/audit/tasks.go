package audit

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// task is one kind of cable path a plan must wire: what the path must do, how often it is there, and what its
// device must break. An entry of the plan's runs belongs to it by kind, battery and circuit.
type task struct {
	kind    scenarios.RunKind
	circuit string // of a branch or a dc circuit
	battery string // whose string it is
	count   float64

	designA      float64 // carried continuously
	dropA, dropV float64 // the current the drop is computed for, and the volts it is a share of
	deviceV      float64 // least voltage rating of the device
	poles        int     // least number of poles of the device
	conductors   int     // of one set, without the ground
	ac, ground   bool

	lengthM      float64
	links        int // of each string, one conductor each
	linkM        float64
	ambientC     float64
	bundled      int
	terminalC    float64 // 0: not stated, so the rule set decides
	drop         float64 // 0..1
	conduit      string  // a type
	ownBreakerA  float64 // of the inverter; no device is bought
	exactA       float64 // the rating its device must have; 0: by its current
	mostA        float64 // the largest device its battery's maker allows; 0: any
	bothEnds     bool    // a device at either end
	reversible   bool    // current runs both ways
	fine         bool    // fine strand asked for
	faultA       float64
	own          *catalog.Battery // whose own device may serve; nil: none
	stringFuses  int              // of strings of modules on the path
	stringFuseV  float64
	array        *array
	groundDevice float64 // bond: the rating of the largest main's device (nec)
	groundLine   float64 // bond: the line area it goes with, mm2 (iec)
}

// name says which path it is.
func (t *task) name() string {
	switch {
	case t.battery != "":
		return fmt.Sprintf("%s of %s", t.kind, t.battery)
	case t.circuit != "":
		return fmt.Sprintf("%s %s", t.kind, t.circuit)
	}
	return string(t.kind)
}

// owns reports whether an entry of the plan's runs belongs to the task.
func (t *task) owns(r *plan.Run) bool {
	return r.Run == string(t.kind) && r.Battery == t.battery && r.Name == t.circuit
}

// tasks returns the cable paths of the core, in the order they are listed. A kind of run that the scenario does not list
// is not planned.
func (a *auditor) tasks() []task {
	tasks := append(a.stringTasks(), a.inverterTasks()...)
	tasks = append(tasks, a.circuitTasks()...)
	tasks = append(tasks, a.inletTask()...)
	tasks = append(tasks, a.solarTask()...)
	return append(tasks, a.bondTask()...)
}

// bothEndsM is the length above which a string's cable is protected at both ends, from mostFeeding strings on:
// with so many the others together may feed it with more than its own device lets through. NEC 240.21(B)(1),
// IEC 60364-4-43 clause 433.2.2.
const (
	bothEndsM   = 3
	mostFeeding = 3
)

// stringTasks returns the paths from the strings to the bus bars.
func (a *auditor) stringTasks() (tasks []task) {
	run := a.s.Run(scenarios.RunString)
	if run == nil {
		return nil
	}
	total, strings := a.busFaultA(), 0.0
	for _, b := range a.strings {
		strings += b.count
	}
	for _, b := range a.strings {
		t := a.busTask(run, b.MaxDischargeA)
		if a.inverter != nil {
			t.designA = math.Min(b.MaxDischargeA, a.busA())
		}
		t.dropA = t.designA
		// A fault on the bars draws the string's own current through its device, one on the string's side that
		// of all the others.
		own := shortCircuitA(b.Battery)
		t.battery, t.count, t.faultA, t.mostA = b.ID, b.count, math.Max(own, total-own), b.MaxFuseA
		t.links, t.linkM = int(math.Max(0, b.series-1)), run.LinkM
		t.bothEnds = strings >= mostFeeding && !plan.AtMost(run.LengthM, bothEndsM)
		t.ownBreakerA = 0 // an inverter's breaker protects no string
		t.reversible, t.fine = true, a.s.Cable.Fine
		if b.series == 1 && b.OwnDeviceA > 0 && b.OwnInterruptingA > 0 {
			t.own = b.Battery
		}
		tasks = append(tasks, t)
	}
	return tasks
}

// inverterTasks returns the main and the feeder of each inverter unit.
func (a *auditor) inverterTasks() (tasks []task) {
	if a.inverter == nil {
		return nil
	}
	if run := a.s.Run(scenarios.RunMain); run != nil {
		t := a.busTask(run, a.unitA())
		t.count, t.faultA, t.reversible, t.fine = a.units, a.busFaultA(), true, a.s.Cable.Fine
		tasks = append(tasks, t)
	}
	if run := a.s.Run(scenarios.RunFeeder); run != nil {
		volts, poles, conductors := outputOf(a.inverter.ACV)
		t := pathOf(run, a.inverter.ContinuousW/volts, volts)
		if a.threeWire() { // a leg's whole power between one hot and the neutral
			t.designA = math.Max(t.designA, a.inverter.LegW/(volts/2))
			t.dropA = t.designA
		}
		t.poles, t.conductors, t.count = poles, conductors, a.units
		t.ac, t.ground, t.faultA = true, true, a.s.ACFaultA
		tasks = append(tasks, t)
	}
	return tasks
}

// circuitTasks returns the scenario's circuits: branches behind the load centre, and those on the bus.
func (a *auditor) circuitTasks() (tasks []task) {
	for i := range a.s.Circuits {
		c := &a.s.Circuits[i]
		t := task{kind: scenarios.RunBranch, circuit: c.Name, count: 1,
			designA: c.DeviceA, dropA: c.DeviceA, exactA: c.DeviceA, dropV: c.Volts, deviceV: c.Volts,
			poles: 1, conductors: 2, ac: true, ground: true, faultA: a.s.ACFaultA, conduit: c.Conduit,
			lengthM: c.LengthM, ambientC: c.AmbientC, bundled: c.Bundled, terminalC: c.TerminalC, drop: c.Drop}
		switch {
		case c.DC:
			t.kind, t.ac, t.ground, t.faultA = scenarios.RunDC, false, false, a.busFaultA()
			t.dropV, t.deviceV = a.s.Bus.NominalV, a.s.Bus.HighV
		case c.Volts == splitV:
			t.poles = 2
			if c.Neutral {
				t.conductors = 3
			}
		}
		tasks = append(tasks, t)
	}
	return tasks
}

// inletTask returns the path from the supply to the charger, which is wired like a branch.
func (a *auditor) inletTask() []task {
	run := a.s.Run(scenarios.RunInlet)
	if run == nil || a.s.Recharge == nil || a.s.Recharge.Supply == nil {
		return nil
	}
	from := a.s.Recharge.Supply
	t := pathOf(run, from.DeviceA, from.Volts)
	t.exactA, t.count, t.ac, t.ground, t.faultA = from.DeviceA, 1, true, true, a.s.ACFaultA
	if from.Volts == splitV {
		t.poles, t.conductors = 2, 3
	}
	return []task{t}
}

// bondTask returns the bond of frame and bus, one grounding conductor sized by the largest main.
func (a *auditor) bondTask() []task {
	run := a.s.Run(scenarios.RunBond)
	if run == nil {
		return nil
	}
	t := pathOf(run, 0, a.s.Bus.NominalV)
	t.count, t.conductors, t.ground = 1, 0, true
	for i := range a.p.Runs {
		r := &a.p.Runs[i]
		if r.Run != string(scenarios.RunMain) {
			continue
		}
		rating := 0.0
		if main := a.s.Run(scenarios.RunMain); main != nil {
			rating = main.OwnBreakerA
		}
		if d := a.stock.devices[r.Device]; d != nil {
			rating = math.Max(rating, d.RatingA)
		}
		t.groundDevice = math.Max(t.groundDevice, rating)
		if cable := a.stock.cables[r.Cable]; cable != nil {
			t.groundLine = math.Max(t.groundLine, float64(r.Sets)*cable.Size.AreaMM2())
		}
	}
	return []task{t}
}

// busTask returns a two-wire path on the direct-current bus.
func (a *auditor) busTask(run *scenarios.Run, designA float64) task {
	t := pathOf(run, designA, a.s.Bus.NominalV)
	t.deviceV = a.s.Bus.HighV
	return t
}

// pathOf returns a two-wire path as the scenario's run asks for it.
func pathOf(run *scenarios.Run, designA, volts float64) task {
	return task{kind: run.Kind, designA: designA, dropA: designA, dropV: volts, deviceV: volts, poles: 1, conductors: 2,
		lengthM: run.LengthM, ambientC: run.AmbientC, bundled: run.Bundled, terminalC: run.TerminalC,
		drop: run.Drop, ownBreakerA: run.OwnBreakerA, conduit: run.Conduit}
}

// splitV is the volts between the hots of a three-wire supply: ANSI C84.1.
const splitV = 240

// outputOf returns the volts between the hots of an inverter's output, the poles that open all its hots, and its
// conductors without the ground: two hots and a neutral for a three-wire one.
func outputOf(acV string) (volts float64, poles, conductors int) {
	switch acV {
	case "120":
		return 120, 1, 2
	case "230":
		return 230, 1, 2
	}
	return splitV, 2, 3
}

// busFaultA returns the fault current on the bus bars: every string feeds it.
func (a *auditor) busFaultA() float64 {
	total := 0.0
	for _, b := range a.strings {
		total += b.count * shortCircuitA(b.Battery)
	}
	return total
}

// shortCircuitA returns the short-circuit current of one string: what the maker states, or else E / R of
// a module; modules in series add voltage and resistance alike.
func shortCircuitA(b *catalog.Battery) float64 {
	if b.ShortCircuitA > 0 {
		return b.ShortCircuitA
	}
	return b.MaxV / b.ResistanceOhm
}
