package relax

import "cartwright/scenarios"

// floorLevers is the slope, if there is one. Rolling resistance and grip are facts, and caster_factor is a safety factor:
// the program never proposes to change those.
func floorLevers(s *scenarios.Scenario) []Lever {
	if s.Limits.Slope == 0 {
		return nil
	}
	return []Lever{{Name: "slope", Unit: "%", step: 0.01, Nudge: 1, None: true, End: 0,
		Get: func(s *scenarios.Scenario) float64 { return 100 * s.Limits.Slope },
		set: func(s *scenarios.Scenario, v float64) { s.Limits.Slope = v / 100 }}}
}
