package audit

import (
	"fmt"
	"math"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// runs checks whether every cable path is wired, and wired correctly.
func (a *auditor) runs() {
	tasks := a.tasks()
	var strays []string
	for i := range a.p.Runs {
		r := &a.p.Runs[i]
		if taskOf(tasks, r) == nil {
			strays = append(strays, fmt.Sprintf("nothing for a %s run %s%s", r.Run, r.Name, r.Battery))
		} else if r.Count < 1 {
			strays = append(strays, fmt.Sprintf("a %s run %s%s of no path", r.Run, r.Name, r.Battery))
		}
	}
	a.none(ruleRunKinds, strays)
	for i := range tasks {
		t, wired := &tasks[i], 0.0
		var first *plan.Run
		for k := range a.p.Runs {
			r := &a.p.Runs[k]
			if !t.owns(r) {
				continue
			}
			wired += float64(r.Count)
			a.judge(t, r)
			if first == nil {
				first = r
			}
			if t.kind == scenarios.RunString {
				a.exactly(pathRule(t.kind, pathAlike), answered(wiredAlike(first, r)), 1, t.name())
			}
		}
		a.exactly(pathRule(t.kind, pathCount), wired, t.count, t.name())
	}
}

// wiredAlike reports whether two paths are built of the same parts.
func wiredAlike(x, y *plan.Run) bool {
	return x.Cable == y.Cable && x.Ground == y.Ground && x.Sets == y.Sets && x.Device == y.Device &&
		x.Devices == y.Devices && x.OwnDevice == y.OwnDevice && x.Conduit == y.Conduit
}

// taskOf returns the task an entry of the plan's runs belongs to, nil for none.
func taskOf(tasks []task, r *plan.Run) *task {
	for i := range tasks {
		if tasks[i].owns(r) {
			return &tasks[i]
		}
	}
	return nil
}

// judge checks whether one entry of the runs serves its task.
func (a *auditor) judge(t *task, r *plan.Run) {
	detail := t.name() + ": " + r.Cable
	rule := func(check string) string { return pathRule(t.kind, check) }
	a.truly(rule(pathLength), r.LengthM, t.lengthM, detail)
	a.truly(rule(pathBought), r.BoughtM, a.conductorM(t.lengthM), detail)
	a.exactly(rule(pathConductors), float64(r.Conductors), float64(t.conductors), detail)
	a.exactly(rule(pathDevices), float64(r.Devices), devicesOf(t, r), detail)
	if r.Devices > 0 || t.kind == scenarios.RunBond {
		a.exactly(rule(pathDevices), named(r.Device), math.Min(1, devicesOf(t, r)), detail)
	}
	a.judgeLinks(t, r, detail)
	if t.kind == scenarios.RunString {
		valid := !r.OwnDevice || t.own != nil
		a.exactly(rule(pathOwnDevice), answered(valid), 1, detail)
	} else if r.OwnDevice {
		a.exactly(rule(pathDevices), 1, 0, detail+": no battery's own device is there")
	}
	if t.ownBreakerA > 0 {
		a.exactly(rule(pathOwnBreaker), named(r.Device), 0, detail)
	}
	if !t.ground {
		a.exactly(rule(pathNoGround), named(r.Ground), 0, detail)
	}
	if t.kind == scenarios.RunBond {
		a.exactly(rule(pathConductors), float64(r.Sets), 1, detail+": sets")
		a.exactly(rule(pathNoLine), named(r.Cable)+named(r.Device), 0, detail)
	}
	if t.array == nil {
		a.exactly(rule(pathDevices), named(r.StringFuse)+float64(r.StringFuses)+float64(r.Devices), float64(r.Devices), detail)
	}
	for _, c := range a.rule(t, r).checks {
		a.passOn(t.kind, c, detail)
	}
}

// judgeLinks checks whether the modules of a string are linked, by one conductor from each to the next.
func (a *auditor) judgeLinks(t *task, r *plan.Run, detail string) {
	links, linkM := float64(t.links), 0.0
	if t.links > 0 {
		linkM = t.linkM
	}
	rule := pathConductors
	if t.kind == scenarios.RunString {
		rule = pathLinks
	}
	a.exactly(pathRule(t.kind, rule), float64(r.Links), links, detail+": links")
	a.truly(pathRule(t.kind, rule), r.LinkM, linkM, detail+": link_m")
}

// passOn tells a check of the rule set as one of a kind of path.
func (f *findings) passOn(kind scenarios.RunKind, c check, detail string) {
	margin := math.Abs(c.value - c.limit)
	if !c.passed {
		margin = -margin
	}
	f.keep(plan.Check{
		Name: pathRule(kind, c.name), Passed: c.passed, Value: printable(c.value), Limit: printable(c.limit),
		Unit: c.unit, Source: c.source, Detail: detail,
	}, margin)
}

// named returns 1 for the id of a part and 0 for none.
func named(id string) float64 {
	if id == "" {
		return 0
	}
	return 1
}

// figuresOfRuns checks whether the stated figures of the runs are true.
func (a *auditor) figuresOfRuns() {
	tasks := a.tasks()
	for i := range a.p.Runs {
		r := &a.p.Runs[i]
		t := taskOf(tasks, r)
		if t == nil {
			continue
		}
		res := a.rule(t, r)
		drop := 100 * t.drop
		if t.kind == scenarios.RunBond {
			drop = 0 // no current flows in it
		}
		for _, f := range []struct {
			name          string
			stated, truth float64
		}{
			{"design_a", r.DesignA, t.designA},
			{"required_a", r.RequiredA, res.requiredA},
			{"allowed_a", r.AllowedA, res.allowedA},
			{"device_a", r.DeviceA, res.deviceA},
			{"drop_pct", r.DropPct, res.dropPct},
			{"drop_limit_pct", r.DropLimitPct, drop},
			{"fault_a", r.FaultA, t.faultA},
			{"interrupting_a", r.InterruptingA, res.interruptingA},
		} {
			a.truly(pathRule(t.kind, pathFigures), f.stated, f.truth, t.name()+": "+f.name)
		}
	}
}
