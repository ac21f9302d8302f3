package relax

import (
	"math"

	"cartwright/optimize/chassis"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// What a scenario may state at the loosest, and what limits nothing any more.
const (
	leastCasterFactor = 1    // below it casters would be loaded beyond their rating
	leastRolling      = 0.01 // %: no floor is so smooth
	mostGrip          = 2    // no brake grips so well
)

// floorLevers are what the floor asks of the cart: its slope, how it rolls there, how its brakes grip, and the factor
// of the casters.
func floorLevers(s *scenarios.Scenario) []Lever {
	list := []Lever{{Name: "caster factor", step: 0.01, Nudge: 0.25, least: leastCasterFactor, End: math.Min(leastCasterFactor, s.CasterFactor),
		Get: func(s *scenarios.Scenario) float64 { return s.CasterFactor },
		set: func(s *scenarios.Scenario, v float64) { s.CasterFactor = v },
		shown: func(p *plan.Plan, s *scenarios.Scenario) float64 {
			return p.Casters.RatingEachKg / chassis.CasterLoadKg(p.MassKg, 1, s.Cart.Casters)
		}}}
	if s.Limits.PushN > 0 {
		list = append(list, Lever{Name: "rolling", Unit: "%", step: 0.01, Nudge: 0.5, End: math.Min(leastRolling, 100*s.Cart.Rolling),
			Get: func(s *scenarios.Scenario) float64 { return 100 * s.Cart.Rolling },
			set: func(s *scenarios.Scenario, v float64) { s.Cart.Rolling = v / 100 },
			shown: func(p *plan.Plan, s *scenarios.Scenario) float64 {
				return 100 * (s.Limits.PushN/chassis.PushN(p.MassKg, 1, 0) - s.Limits.Slope)
			}})
	}
	if s.Limits.Slope > 0 {
		list = append(list,
			Lever{Name: "slope", Unit: "%", step: 0.01, Nudge: 1, None: true, End: 0,
				Get: func(s *scenarios.Scenario) float64 { return 100 * s.Limits.Slope },
				set: func(s *scenarios.Scenario, v float64) { s.Limits.Slope = v / 100 }},
			Lever{Name: "grip", Up: true, step: 0.01, Nudge: 0.1, End: math.Max(mostGrip, s.Cart.Grip),
				Get: func(s *scenarios.Scenario) float64 { return s.Cart.Grip },
				set: func(s *scenarios.Scenario, v float64) { s.Cart.Grip = v }})
	}
	return list
}
