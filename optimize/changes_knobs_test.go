package optimize_test

import (
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// knob is a limit of a scenario by its name in a change: its value, how finely a change of it is told, and
// the value at which it no longer limits.
type knob struct {
	step, open float64
	set        func(s *scenarios.Scenario, v float64)
	// rounding is how far the enumeration may be off, which does not round bills line by line as is done
	// with money.
	rounding float64
}

// knobs returns the limits that a scenario has.
func knobs(s *scenarios.Scenario) map[string]knob {
	all := map[string]knob{
		"autonomy": {0.01, 1.0 / 60, func(s *scenarios.Scenario, v float64) { s.AutonomyH = v }, 0},
		"tilt":     {0.01, 0.01, func(s *scenarios.Scenario, v float64) { s.Limits.TiltDeg = v }, 0},
	}
	if s.Recharge != nil {
		all["recharge within"] = knob{0.01, 31 * 24, func(s *scenarios.Scenario, v float64) { s.Recharge.WithinH = v }, 0}
	}
	if !math.IsInf(s.Limits.MassKg, 1) {
		all["mass"] = knob{0.01, math.Inf(1), func(s *scenarios.Scenario, v float64) { s.Limits.MassKg = v }, 0}
	}
	if s.Limits.Budget != math.MaxInt64 {
		all["budget"] = knob{0.01, 1e9, func(s *scenarios.Scenario, v float64) { s.Limits.Budget = catalog.CentsFrom(v) }, 0.03}
	}
	if s.Limits.Reserve > 0 {
		all["reserve"] = knob{0.01, 0, func(s *scenarios.Scenario, v float64) { s.Limits.Reserve = v / 100 }, 0}
	}
	if s.Limits.Slope > 0 {
		all["slope"] = knob{0.01, 0, func(s *scenarios.Scenario, v float64) { s.Limits.Slope = v / 100 }, 0}
	}
	if s.Limits.PushN > 0 {
		all["push"] = knob{0.01, 1e9, func(s *scenarios.Scenario, v float64) { s.Limits.PushN = v }, 0}
	}
	for i, r := range s.Runs {
		all["drop of the "+string(r.Kind)] = knob{0.001, 20, func(s *scenarios.Scenario, v float64) { s.Runs[i].Drop = v / 100 }, 0}
	}
	for i, c := range s.Circuits {
		all["drop of circuit "+c.Name] = knob{0.001, 20, func(s *scenarios.Scenario, v float64) { s.Circuits[i].Drop = v / 100 }, 0}
	}
	for i, sh := range s.Cart.Shelves {
		if !math.IsInf(sh.MaxMassKg, 1) {
			all["mass on shelf "+sh.Name] = knob{0.01, math.Inf(1),
				func(s *scenarios.Scenario, v float64) { s.Cart.Shelves[i].MaxMassKg = v }, 0}
		}
	}
	return all
}

// hard are values of limits that no cart keeps.
var hard = map[string]float64{
	"autonomy": 90, "recharge within": 0.02, "mass": 12, "budget": 0.5, "reserve": 99, "tilt": 75, "push": 3,
	"slope":              45,
	"drop of the string": 0.001, "drop of the main": 0.001, "drop of the feeder": 1e-6,
	"drop of circuit circuit 0": 0.001, "mass on shelf shelf 0": 0.1,
}

// tightened returns a random problem that has a plan with one of its limits made too hard to keep, and
// which.
func tightened(seed uint64) (question.Problem, string) {
	p := randomProblem(seed)
	all := knobs(p.Scenario)
	var names []string
	for name := range all {
		if _, known := hard[name]; known {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	const dice = 9 // of this test's own
	name := pick(newDice(seed^dice<<32), names...)
	all[name].set(p.Scenario, hard[name])
	return p, name
}
