package view

import (
	"testing"

	"cartwright/optimize/compare"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// someChoices is a hand-made comparison: nothing bought, a choice that takes something off the cart, one that is saved
// for, two that cannot be. Its figures are chosen to be told apart, not computed.
func someChoices() Compare {
	s := sample()
	s.Scenario.Limits.MassKg = 211
	small, large := first(), second()
	small.CostPerExtraKWh, large.CostPerExtraKWh = 521.26, 364.1
	bare := first()
	bare.Cost, bare.UsableKWh, bare.CostPerExtraKWh = 9900, 5.3, 0
	line := func(n int, part string) compare.Line { return compare.Line{Part: part, Count: n} }
	return Compare{
		Scenario: s.Scenario, Cautions: []string{"Arcs can kill."},
		Notices: []string{"ember-5 and cask-15 state no common group, so they never share a bus (batteries.csv, parallel_group)"},
		Table: &compare.Table{Complete: true, OwnedKWh: 5.3, Outcomes: []compare.Outcome{
			{Plan: &bare, Kept: []compare.Line{line(2, "slate-48-100")}, Reached: true},
			{Buy: []compare.Line{line(2, "slate-48-50")}, Plan: &small, Kept: []compare.Line{line(2, "slate-48-100")}, Reached: true, Month: 3},
			{Buy: []compare.Line{line(8, "pebble-12-200"), line(1, "gust-5k-split")}, Plan: &large,
				Left: []compare.Left{{Part: "slate-48-100", Count: 2, Reason: "slate-48-100 and pebble-12-200 state no common group, so they never share a bus"}}},
			{Buy: []compare.Line{line(9, "slate-48-50")}, Reasons: []string{"the shelves have no room for so many modules"}},
			{Buy: []compare.Line{line(3, "slate-48-100")},
				Changes: []question.Change{{Limits: []question.LimitChange{{Name: plan.LimitMass, From: 211, To: 260.5, Unit: "kg"}}}}},
		}},
	}
}

// twoScenarios puts two plans side by side.
func twoScenarios() CompareScenarios {
	one, other, a, b := sample(), sunny(), first(), second()
	a.CostPerExtraKWh = 521.26
	return CompareScenarios{Sides: []Side{{one.Scenario, &a}, {other.Scenario, &b}}, Cautions: []string{"Arcs can kill."}}
}

func TestCompareInEveryFormat(t *testing.T) {
	none := someChoices()
	table := *none.Table
	table.Outcomes = append(table.Outcomes[:1:1], table.Outcomes[3:]...)
	none.Table, none.Notices = &table, nil
	stopped := someChoices()
	stopped.Table.Complete, stopped.Table.Outcomes = false, stopped.Table.Outcomes[:2]
	for _, c := range []struct {
		file   string
		answer Document
		format Format
	}{
		{"compare.txt", someChoices(), Table},
		{"compare.md", someChoices(), Markdown},
		{"compare.csv", someChoices(), CSV},
		{"compare.json", someChoices(), JSON},
		{"compare-stopped.txt", stopped, Table},
		{"compare-none.txt", none, Table},
		{"compare-scenarios.txt", twoScenarios(), Table},
		{"compare-scenarios.csv", twoScenarios(), CSV},
		{"compare-scenarios.json", twoScenarios(), JSON},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}
