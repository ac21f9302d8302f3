package view

import (
	"strconv"

	"cartwright/optimize/frontier"
	"cartwright/optimize/plan"
)

// frontierRecord is the JSON of the frontier command, format 1:
//
//	{"format":1,"command":"frontier","scenario":"…","currency":"USD","rules":"nec",
//	 "of":"mass","unit":"kg","complete":true,
//	 "steps":[{"at":0,"cost":0,"knee":false,"plan":{…}}],"cautions":["…"]}
//
// Steps go from the cheapest to the dearest. At is the autonomy in h or the share served in % up to which, or the mass in kg
// from which, the step's plan is the cheapest; of a budget it is the autonomy that the cost buys. Plans are
// brief: cost, usable_kwh, autonomy_h, mass_kg, cost_per_usable_kwh, core. Complete says that there is no
// step beyond the last.
type frontierRecord struct {
	heading
	Of       frontier.Axis `json:"of"`
	Unit     string        `json:"unit"`
	Complete bool          `json:"complete"`
	Steps    []stepRecord  `json:"steps"`
	Cautions []string      `json:"cautions"`
}

// stepRecord is a step in JSON.
type stepRecord struct {
	At   float64      `json:"at"`
	Cost plan.Money   `json:"cost"`
	Knee bool         `json:"knee"`
	Plan *briefRecord `json:"plan"`
}

// record holds everything, unrounded.
func (f Frontier) record() any {
	s := f.Staircase
	r := frontierRecord{
		heading: headingOf("frontier", f.Scenario), Of: s.Axis, Unit: s.Unit, Complete: s.Complete, Steps: []stepRecord{},
		Cautions: listed(f.Cautions),
	}
	for i := range s.Steps {
		step := &s.Steps[i]
		r.Steps = append(r.Steps, stepRecord{step.At, step.Plan.Cost, step.Knee, brief(&step.Plan)})
	}
	return r
}

// records holds a step a row.
func (f Frontier) records() [][]string {
	rows := [][]string{{"step", "of", "at", "unit", "cost", "currency", "more", "usable_kwh", "autonomy_h", "mass_kg",
		"cost_per_usable_kwh", "batteries", "inverter", "knee"}}
	for i := range f.Staircase.Steps {
		s := &f.Staircase.Steps[i]
		more := plan.Money(0)
		if i > 0 {
			more = s.Plan.Cost - f.Staircase.Steps[i-1].Plan.Cost
		}
		rows = append(rows, []string{strconv.Itoa(i + 1), string(f.Staircase.Axis), exact(s.At), f.Staircase.Unit,
			money(s.Plan.Cost), f.Scenario.Currency, money(more), exact(s.Plan.UsableKWh), exact(s.Plan.AutonomyH),
			exact(s.Plan.MassKg), exact(s.Plan.CostPerUsableKWh), batteries(s.Plan.Core),
			inverter(s.Plan.Core), strconv.FormatBool(s.Knee)})
	}
	return rows
}
