package relax

import "cartwright/scenarios"

// floorLevers are what is wished of the cart on its floor: the slope it stands on. How it rolls there and how its brakes
// grip are facts, and the factor of the casters is a margin of safety: nobody is told to state better ones.
func floorLevers(s *scenarios.Scenario) []Lever {
	if s.Limits.Slope == 0 {
		return nil
	}
	return []Lever{{Name: "slope", Unit: "%", step: 0.01, Nudge: 1, None: true, End: 0,
		Get: func(s *scenarios.Scenario) float64 { return 100 * s.Limits.Slope },
		set: func(s *scenarios.Scenario, v float64) { s.Limits.Slope = v / 100 }}}
}
