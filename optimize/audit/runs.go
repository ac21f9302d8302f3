package audit

import (
	"fmt"
	"math"
	"strings"

	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

const ruleRunKinds = "runs"

// The checks of a cable path that are made here; their names follow the kind of path.
const (
	pathCount      = "count"
	pathLength     = "length"
	pathConductors = "conductors"
	pathOwnBreaker = "own breaker"
	pathNoGround   = "no ground"
	pathFigures    = "figures"
)

// pathChecks are the checks of each kind of cable path: those made here, then those of the rule set in
// package wiring, by its names.
var pathChecks = []Rule{
	{pathCount, "", "each is wired, and once: strings of each battery, a main for each unit, one feeder, each circuit", fromParts},
	{pathLength, "m", "length as in the scenario", fromScenario},
	{pathConductors, "", "battery paths 2; 120 and 230 V 2; 120/240 3; 240 V without neutral 2", practice},
	{pathOwnBreaker, "", "no device is bought where the inverter's own breaker serves", fromScenario},
	{pathNoGround, "", "battery paths have no grounding conductor", practice},
	{"cable present", "", "a cable, in at least one set", ""},
	{"device present", "", "a device, where the inverter's own breaker does not serve", ""},
	{"device rating", "A", "rating >= the current asked for; of a branch the stated one", ""},
	{"standard rating", "A", "a standard rating of the rule set", ""},
	{"device voltage", "V", "the device stands bus high, or the ac volts", ""},
	{"device poles", "", "both hots of 240 V open", ""},
	{"interrupting rating", "A", "interrupting rating >= fault current", ""},
	{"cable listed", "", "size, material and insulation are in the rule set's tables", ""},
	{"parallel sets", "", "parallel sets only of large conductors", ""},
	{"voltage drop", "%", "drop <= the run's", ""},
	{"terminal ampacity", "A", "ampacity at the terminals' temperature >= the current asked for (nec)", ""},
	{"corrected ampacity", "A", "ampacity corrected for ambient and bundle >= design current", ""},
	{"cable protected", "A", "device rating <= what the corrected ampacity allows", ""},
	{"small conductor", "A", "device rating <= that of a small conductor (nec)", ""},
	{"fuse overload", "A", "fusing current of a gG fuse <= 1.45 * corrected ampacity (iec)", ""},
	{"ground present", "", "a grounding conductor", ""},
	{"ground listed", "", "the grounding conductor is in the rule set's tables", ""},
	{"ground size", "mm2", "the grounding conductor is large enough for the device (nec) or the line (iec)", ""},
	{pathFigures, "", "the stated currents, drop and ratings are true", fromParts},
}

// pathKinds are the kinds of cable path, in the order they are told.
var pathKinds = []scenarios.RunKind{
	scenarios.RunString, scenarios.RunMain, scenarios.RunFeeder, scenarios.RunBranch,
}

// runRules are the checks of the cable paths, by kind: those that a kind can fail.
func runRules() []Rule {
	rules := []Rule{{ruleRunKinds, "", "every run is of a known kind and serves a battery, inverter or circuit there is", fromParts}}
	for _, kind := range pathKinds {
		battery := kind == scenarios.RunString || kind == scenarios.RunMain
		for _, r := range pathChecks {
			grounded := strings.HasPrefix(r.Name, "ground ")
			if battery && grounded || !battery && r.Name == pathNoGround ||
				kind == scenarios.RunBranch && r.Name == pathOwnBreaker {
				continue
			}
			r.Name = pathRule(kind, r.Name)
			rules = append(rules, r)
		}
	}
	return rules
}

// pathRule names a check of a kind of path.
func pathRule(kind scenarios.RunKind, check string) string { return string(kind) + " " + check }

// runs tells whether every cable path is wired, and rightly.
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
		for k := range a.p.Runs {
			if r := &a.p.Runs[k]; t.owns(r) {
				wired += float64(r.Count)
				a.judge(t, r)
			}
		}
		a.exactly(pathRule(t.duty.Kind, pathCount), wired, t.count, t.name())
	}
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

// judge tells whether one entry of the runs serves its task.
func (a *auditor) judge(t *task, r *plan.Run) {
	d := &t.duty
	detail := t.name() + ": " + r.Cable
	rule := func(check string) string { return pathRule(d.Kind, check) }
	a.truly(rule(pathLength), r.LengthM, d.LengthM, detail)
	a.exactly(rule(pathConductors), float64(r.Conductors), float64(d.Conductors), detail)
	if d.OwnBreakerA > 0 {
		a.exactly(rule(pathOwnBreaker), named(r.Device), 0, detail)
	}
	if !d.Ground {
		a.exactly(rule(pathNoGround), named(r.Ground), 0, detail)
	}
	for _, c := range a.ruling(t, r).Checks {
		a.passOn(d.Kind, c, detail)
	}
}

// ruling returns what the rule set says of one entry of the runs.
func (a *auditor) ruling(t *task, r *plan.Run) wiring.Result {
	return wiring.For(a.s.Rules).Check(t.duty, wiring.Option{
		Cable: a.stock.cables[r.Cable], Sets: r.Sets,
		Device: a.stock.devices[r.Device], Ground: a.stock.cables[r.Ground],
	}, t.faultA)
}

// passOn tells a check of the rule set as one of a kind of path.
func (f *findings) passOn(kind scenarios.RunKind, c wiring.Check, detail string) {
	margin := math.Abs(c.Value - c.Limit)
	if !c.Passed {
		margin = -margin
	}
	f.keep(plan.Check{
		Name: pathRule(kind, c.Name), Passed: c.Passed, Value: printable(c.Value), Limit: printable(c.Limit),
		Unit: c.Unit, Source: c.Source, Detail: detail,
	}, margin)
}

// named returns 1 for the id of a part and 0 for none.
func named(id string) float64 {
	if id == "" {
		return 0
	}
	return 1
}

// figuresOfRuns tells whether the stated figures of the runs are true.
func (a *auditor) figuresOfRuns() {
	tasks := a.tasks()
	for i := range a.p.Runs {
		r := &a.p.Runs[i]
		t := taskOf(tasks, r)
		if t == nil {
			continue
		}
		d, res := &t.duty, a.ruling(t, r)
		for _, f := range []struct {
			name          string
			stated, truth float64
		}{
			{"design_a", r.DesignA, d.DesignA},
			{"required_a", r.RequiredA, res.RequiredA},
			{"allowed_a", r.AllowedA, res.AllowedA},
			{"device_a", r.DeviceA, res.DeviceA},
			{"drop_pct", r.DropPct, res.DropPct},
			{"drop_limit_pct", r.DropLimitPct, 100 * d.Drop},
			{"fault_a", r.FaultA, t.faultA},
			{"interrupting_a", r.InterruptingA, res.InterruptingA},
		} {
			a.truly(pathRule(d.Kind, pathFigures), f.stated, f.truth, t.name()+": "+f.name)
		}
	}
}
