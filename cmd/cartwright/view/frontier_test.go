package view

import (
	"testing"

	"cartwright/optimize/frontier"
	"cartwright/optimize/plan"
)

// someStairs is a hand-made staircase of four steps; its figures are chosen to be told apart, not computed.
func someStairs(of frontier.Axis) Frontier {
	s := sample().Scenario
	s.Sold = 30000
	f := &frontier.Staircase{Axis: of, Unit: "h", Complete: true}
	switch of {
	case frontier.AxisMass:
		f.Unit = "kg"
	case frontier.AxisServed:
		f.Unit = "%"
	}
	for i, at := range []float64{4.25, 8.5, 30.125, 31} {
		p := second()
		if i == 3 {
			p = first()
		}
		p.Cost = 100000 + 12345*plan.Money(i*i)
		if of == frontier.AxisMass {
			at = 250 - at
		}
		f.Steps = append(f.Steps, frontier.Step{At: at, Cost: p.Cost.Units(), Plan: p, Knee: i == 2})
	}
	return Frontier{Scenario: s, Staircase: f, Cautions: []string{"Arcs can kill."}}
}

func TestFrontierInEveryFormat(t *testing.T) {
	stopped, none, early := someStairs(frontier.AxisAutonomy), someStairs(frontier.AxisMass), someStairs(frontier.AxisMass)
	stopped.Staircase.Complete = false
	none.Staircase.Steps = nil
	early.Staircase.Steps, early.Staircase.Complete = nil, false
	for _, c := range []struct {
		file   string
		answer Frontier
		format Format
	}{
		{"frontier.txt", someStairs(frontier.AxisAutonomy), Table},
		{"frontier.md", someStairs(frontier.AxisAutonomy), Markdown},
		{"frontier.csv", someStairs(frontier.AxisAutonomy), CSV},
		{"frontier.json", someStairs(frontier.AxisAutonomy), JSON},
		{"frontier-mass.txt", someStairs(frontier.AxisMass), Table},
		{"frontier-served.txt", someStairs(frontier.AxisServed), Table},
		{"frontier-budget.txt", someStairs(frontier.AxisBudget), Table},
		{"frontier-stopped.txt", stopped, Table},
		{"frontier-none.txt", none, Table},
		{"frontier-none.json", none, JSON},
		{"frontier-early.txt", early, Table},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}
