package cli

import (
	"cartwright/cmd/cartwright/picture"
	"cartwright/optimize/frontier"
	"cartwright/scenarios"
)

// tradeoff returns a staircase as it is drawn.
func tradeoff(s *scenarios.Scenario, f *frontier.Staircase) *picture.Tradeoff {
	t := &picture.Tradeoff{Title: "Cost of autonomy for " + s.Name, XName: "autonomy at least, h", YName: "cost, " + s.Currency}
	switch f.Axis {
	case frontier.AxisMass:
		t.Title, t.XName, t.Falls = "Cost of mass for "+s.Name, "mass at most, kg", true
	case frontier.AxisServed:
		t.Title, t.XName = "Cost of sun for "+s.Name, "served by the sun at least, %"
	case frontier.AxisBudget:
		t.Title, t.CostAlong = "Autonomy for a budget, "+s.Name, true
		t.XName, t.YName = "budget, "+s.Currency, "autonomy, h"
	}
	for i := range f.Steps {
		step := &f.Steps[i]
		t.Points = append(t.Points, picture.Point{At: step.At, Cost: step.Cost, Name: picture.Names(&step.Plan), Knee: step.Knee})
	}
	return t
}
