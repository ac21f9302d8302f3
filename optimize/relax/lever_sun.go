package relax

import (
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// sunLevers are the share of the year to be served, and how many solar modules there is room for.
func sunLevers(s *scenarios.Scenario) []Lever {
	var list []Lever
	if s.Sun == nil {
		return nil
	}
	if s.Limits.Served > 0 {
		list = append(list, Lever{Name: "served", Unit: "%", step: 0.01, Nudge: 1, None: true, End: 0,
			Get:   func(s *scenarios.Scenario) float64 { return 100 * s.Limits.Served },
			set:   func(s *scenarios.Scenario, v float64) { s.Limits.Served = v / 100 },
			shown: func(p *plan.Plan, _ *scenarios.Scenario) float64 { return 100 * p.Year.Served }})
	}
	if s.Sun.Most > 0 {
		list = append(list, Lever{Name: "solar modules", Unit: "each", Up: true, step: 1, Nudge: 1, End: max(anyModules, float64(s.Sun.Most)),
			Get: func(s *scenarios.Scenario) float64 { return float64(s.Sun.Most) },
			set: func(s *scenarios.Scenario, v float64) {
				more := *s.Sun
				more.Most = int(v)
				s.Sun = &more
			},
			shown: func(p *plan.Plan, _ *scenarios.Scenario) float64 {
				n := 0
				for _, a := range p.Core.Solar {
					n += a.Series * a.Parallel * a.Inputs
				}
				return float64(n)
			}})
	}
	return list
}

// anyModules is more than the inputs of any inverter take.
const anyModules = 1000
