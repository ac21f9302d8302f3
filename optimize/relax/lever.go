// Package relax finds out which limits keep every plan out, and how far they have to give: limits as
// levers, changes, conflicts, and what else besides the limits leaves nothing to choose from.
package relax

import (
	"math"
	"slices"

	"cartwright/optimize/chassis"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Lever is one limit of a scenario that may be changed: how to read it, set it, and how far it may go. Safety factors,
// facts about the floor and the rules for wiring are not levers.
type Lever struct {
	Name  string
	Unit  string
	Up    bool    // a larger value is looser
	step  float64 // the resolution of a change
	Nudge float64 // a natural step to ask about: one more hour, ten more kilograms
	None  bool    // 0 is a valid value
	End   float64 // the value that no longer limits anything; never tighter than the scenario's
	Get   func(s *scenarios.Scenario) float64
	set   func(s *scenarios.Scenario, v float64)
	by    question.By                                       // the objective whose best plan shows the least change at once; "" where it has to be searched for
	shown func(p *plan.Plan, s *scenarios.Scenario) float64 // what a plan needs of the limit; nil: a plan does not show it
}

// Levers returns the limits a scenario states, in the order in which they are listed.
func Levers(s *scenarios.Scenario) []Lever {
	list := []Lever{
		{Name: "autonomy", Unit: "h", step: 0.01, Nudge: 1, End: math.Min(ShortestH, s.AutonomyH),
			Get:   func(s *scenarios.Scenario) float64 { return s.AutonomyH },
			set:   func(s *scenarios.Scenario, v float64) { s.AutonomyH = v },
			shown: func(p *plan.Plan, _ *scenarios.Scenario) float64 { return p.AutonomyH }},
	}
	if s.Recharge != nil {
		// A plan may run longer than it could recharge for in time, so its autonomy does not show what is possible.
		list[0].shown = nil
		list = append(list, Lever{Name: "recharge within", Unit: "h", Up: true, step: 0.01, Nudge: 1, End: math.Max(LongestH, s.Recharge.WithinH),
			Get: func(s *scenarios.Scenario) float64 { return s.Recharge.WithinH },
			set: func(s *scenarios.Scenario, v float64) {
				r := *s.Recharge
				r.WithinH = v
				s.Recharge = &r
			}})
	}
	if !math.IsInf(s.Limits.MassKg, 1) {
		list = append(list, Lever{Name: "mass", Unit: "kg", Up: true, step: 0.01, Nudge: 10, End: math.Inf(1), by: question.ByMass,
			Get:   func(s *scenarios.Scenario) float64 { return s.Limits.MassKg },
			set:   func(s *scenarios.Scenario, v float64) { s.Limits.MassKg = v },
			shown: func(p *plan.Plan, _ *scenarios.Scenario) float64 { return p.MassKg }})
	}
	if s.Limits.Budget != math.MaxInt64 {
		list = append(list, BudgetLever(s))
	}
	if s.Limits.Reserve > 0 {
		list = append(list, Lever{Name: "reserve", Unit: "%", step: 0.01, Nudge: 5, None: true, End: 0,
			Get: func(s *scenarios.Scenario) float64 { return 100 * s.Limits.Reserve },
			set: func(s *scenarios.Scenario, v float64) { s.Limits.Reserve = v / 100 }})
	}
	list = append(list, sunLevers(s)...)
	list = append(list, Lever{Name: "tilt", Unit: "deg", step: 0.01, Nudge: 1, End: math.Min(0.01, s.Limits.TiltDeg),
		Get:   func(s *scenarios.Scenario) float64 { return s.Limits.TiltDeg },
		set:   func(s *scenarios.Scenario, v float64) { s.Limits.TiltDeg = v },
		shown: func(p *plan.Plan, _ *scenarios.Scenario) float64 { return p.Balance.TiltDeg }})
	if s.Limits.PushN > 0 {
		list = append(list, Lever{Name: "push", Unit: "N", Up: true, step: 0.01, Nudge: 10, End: math.Max(anyPushN, s.Limits.PushN), by: question.ByMass,
			Get: func(s *scenarios.Scenario) float64 { return s.Limits.PushN },
			set: func(s *scenarios.Scenario, v float64) { s.Limits.PushN = v },
			shown: func(p *plan.Plan, s *scenarios.Scenario) float64 {
				return chassis.PushN(p.MassKg, s.Cart.Rolling, s.Limits.Slope)
			}})
	}
	return slices.Concat(list, floorLevers(s), dropLevers(s), shelfLevers(s))
}

// Values at which a limit no longer limits anything.
const (
	ShortestH   = 1.0 / 60 // the shortest autonomy that is tried
	LongestH    = 31 * 24  // the longest autonomy, and time to recharge, that is tried
	largestDrop = 20       // % of the nominal voltage
	AnyMassKg   = 1e5      // more than any cart carries
	anyPushN    = 1e6      // more than any cart needs
)

// BudgetLever is the lever of the budget, in currency units.
func BudgetLever(s *scenarios.Scenario) Lever {
	return Lever{Name: "budget", Unit: s.Currency, Up: true, step: 0.01, Nudge: 100, End: math.Inf(1), by: question.ByCost,
		Get: func(s *scenarios.Scenario) float64 { return s.Limits.Budget.Units() },
		set: func(s *scenarios.Scenario, v float64) {
			s.Limits.Budget = math.MaxInt64
			if !math.IsInf(v, 1) {
				s.Limits.Budget = cents(v)
			}
		},
		shown: func(p *plan.Plan, s *scenarios.Scenario) float64 { return p.Cost.Units() - s.Sold.Units() }}
}

// dropLevers are the voltage drops allowed on runs and circuits.
func dropLevers(s *scenarios.Scenario) []Lever {
	var list []Lever
	for i := range s.Runs {
		list = append(list, Lever{Name: "drop of the " + string(s.Runs[i].Kind), Unit: "%", Up: true, step: 0.001, Nudge: 1, End: math.Max(largestDrop, 100*s.Runs[i].Drop),
			Get: func(s *scenarios.Scenario) float64 { return 100 * s.Runs[i].Drop },
			set: func(s *scenarios.Scenario, v float64) {
				s.Runs = slices.Clone(s.Runs)
				s.Runs[i].Drop = v / 100
			}})
	}
	for i := range s.Circuits {
		list = append(list, Lever{Name: "drop of circuit " + s.Circuits[i].Name, Unit: "%", Up: true, step: 0.001, Nudge: 1, End: math.Max(largestDrop, 100*s.Circuits[i].Drop),
			Get: func(s *scenarios.Scenario) float64 { return 100 * s.Circuits[i].Drop },
			set: func(s *scenarios.Scenario, v float64) {
				s.Circuits = slices.Clone(s.Circuits)
				s.Circuits[i].Drop = v / 100
			}})
	}
	return list
}

// shelfLevers are the masses the shelves may carry.
func shelfLevers(s *scenarios.Scenario) []Lever {
	var list []Lever
	for i := range s.Cart.Shelves {
		if math.IsInf(s.Cart.Shelves[i].MaxMassKg, 1) {
			continue
		}
		list = append(list, Lever{Name: "mass on shelf " + s.Cart.Shelves[i].Name, Unit: "kg", Up: true, step: 0.01, Nudge: 10, End: math.Inf(1),
			Get: func(s *scenarios.Scenario) float64 { return s.Cart.Shelves[i].MaxMassKg },
			set: func(s *scenarios.Scenario, v float64) {
				s.Cart.Shelves = slices.Clone(s.Cart.Shelves)
				s.Cart.Shelves[i].MaxMassKg = v
			},
			shown: func(p *plan.Plan, _ *scenarios.Scenario) float64 { return p.Shelves[i].MassKg }})
	}
	return list
}

// loosens reports whether a is a looser value of the lever than b.
func (l *Lever) loosens(a, b float64) bool {
	if l.Up {
		return a > b
	}
	return a < b
}

// Moved returns the value one Nudge looser or tighter than from, and whether the limit may have it.
func (l *Lever) Moved(from float64, looser bool) (to float64, ok bool) {
	to = from - l.Nudge
	if l.Up == looser {
		to = from + l.Nudge
	}
	return to, to > 0 || to == 0 && l.None
}

// Opened returns a copy of a problem in which levers no longer limit anything.
func Opened(p question.Problem, levers []Lever) question.Problem {
	ends := make([]float64, len(levers))
	for i := range levers {
		ends[i] = levers[i].End
	}
	return With(p, levers, ends)
}

// With returns a copy of a problem with levers set.
func With(p question.Problem, levers []Lever, values []float64) question.Problem {
	s := *p.Scenario
	for i := range levers {
		levers[i].set(&s, values[i])
	}
	p.Scenario = &s
	return p
}
