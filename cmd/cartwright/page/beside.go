package page

import (
	"fmt"

	"cartwright/cmd/cartwright/picture"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// row is a plan of the ranking.
type row struct {
	Rank                            int
	Core, Cost, Usable, Hours, Mass string
	Proven                          bool
}

func rows(plans []plan.Plan, s *scenarios.Scenario) []row {
	u := told.UnitsOf(s)
	var list []row
	for i := range plans {
		p := &plans[i]
		list = append(list, row{Rank: p.Rank, Core: picture.Names(p), Cost: p.Cost.String(), Usable: told.Fixed(p.UsableKWh, 2),
			Hours: told.Fixed(p.AutonomyH, 1), Mass: u.Mass(p.MassKg), Proven: p.Proven})
	}
	return list
}

// compared is one figure of two plans.
type compared struct{ Name, A, B, More string }

// compare puts two plans side by side.
func compare(a, b *plan.Plan, s *scenarios.Scenario) []compared {
	u := told.UnitsOf(s)
	difference := func(from, to float64, decimals int) string {
		sign := "+"
		if to < from {
			sign = ""
		}
		return sign + told.Fixed(to-from, decimals)
	}
	massA, massB, unit := u.Figure(a.MassKg, "kg"), u.Figure(b.MassKg, "kg"), u.Unit("kg")
	list := []compared{
		{"batteries, inverter", picture.Names(a), picture.Names(b), ""},
		{"cost, " + s.Currency, a.Cost.String(), b.Cost.String(), difference(a.Cost.Units(), b.Cost.Units(), 2)},
		{"usable energy, kWh", told.Fixed(a.UsableKWh, 2), told.Fixed(b.UsableKWh, 2), difference(a.UsableKWh, b.UsableKWh, 2)},
		{"runs the loads for, h", told.Fixed(a.AutonomyH, 1), told.Fixed(b.AutonomyH, 1), difference(a.AutonomyH, b.AutonomyH, 1)},
		{"mass, " + unit, told.Fixed(massA, 1), told.Fixed(massB, 1), difference(massA, massB, 1)},
		{s.Currency + " for a usable kWh", told.Fixed(a.CostPerUsableKWh, 2), told.Fixed(b.CostPerUsableKWh, 2),
			difference(a.CostPerUsableKWh, b.CostPerUsableKWh, 2)},
		{"tips at", told.Angle(a.Balance.TiltDeg), told.Angle(b.Balance.TiltDeg), ""},
		{"what binds", binding(a), binding(b), ""},
	}
	if more := b.UsableKWh - a.UsableKWh; more > 0 && b.Cost > a.Cost {
		list = append(list, compared{Name: "extra money for each extra usable kWh", More: told.Fixed((b.Cost-a.Cost).Units()/more, 2) + " " + s.Currency})
	}
	return list
}

// binding names the limits that the plan uses up.
func binding(p *plan.Plan) string {
	words := ""
	for _, l := range p.Limits {
		if l.Binding {
			if words != "" {
				words += ", "
			}
			words += l.Name
		}
	}
	if words == "" {
		return "nothing"
	}
	return fmt.Sprint(words)
}
