package view

import (
	"strings"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Side is a scenario and its first plan.
type Side struct {
	Scenario *scenarios.Scenario
	Plan     *plan.Plan
}

// CompareScenarios shows the first plans of several scenarios side by side, told in the units of the first.
type CompareScenarios struct {
	Sides    []Side
	Cautions []string
}

// sheet shows a scenario a row.
func (c CompareScenarios) sheet() sheet {
	u := unitsOf(c.Sides[0].Scenario)
	t := &table{columns: []column{text("scenario"), text("batteries, inverter"), number("usable\nkWh"), number("lasts\nh"),
		number("mass\n" + u.unit("kg")), number("cost"), number("each usable\nkWh"), number("each extra\nkWh"), text("what binds")}}
	for _, s := range c.Sides {
		p := s.Plan
		t.row(s.Scenario.Name, core(p.Core), fixed(p.UsableKWh, 2), fixed(p.AutonomyH, 1), u.fixed(p.MassKg, "kg"),
			money(p.Cost)+" "+s.Scenario.Currency, fixed(p.CostPerUsableKWh, 2), extraText(p.CostPerExtraKWh), strings.Join(bindsAll(p), ", "))
	}
	t.notes = []string{"Each extra kWh: cost over the usable kWh beyond those of the batteries owned today."}
	return append(sheet{{title: "First plans side by side", table: t}}, cautions(c.Cautions)...)
}

// bindsAll names every limit that binds.
func bindsAll(p *plan.Plan) []string {
	names := []string{}
	for _, l := range binding(p.Limits) {
		names = append(names, l.Name)
	}
	return names
}

// record holds everything, unrounded:
//
//	{"format":1,"command":"compare","scenarios":[{"scenario":"…","currency":"USD","rules":"nec","plan":{…}}],"cautions":["…"]}
func (c CompareScenarios) record() any {
	type side struct {
		Scenario string      `json:"scenario"`
		Currency string      `json:"currency"`
		Rules    string      `json:"rules"`
		Plan     *planRecord `json:"plan"`
	}
	return struct {
		Format    int      `json:"format"`
		Command   string   `json:"command"`
		Scenarios []side   `json:"scenarios"`
		Cautions  []string `json:"cautions"`
	}{jsonFormat, "compare", each(c.Sides, func(s Side) side {
		return side{s.Scenario.Name, s.Scenario.Currency, string(s.Scenario.Rules), whole(s.Plan)}
	}), listed(c.Cautions)}
}

// records holds a scenario a row.
func (c CompareScenarios) records() [][]string {
	rows := [][]string{{"scenario", "cost", "currency", "usable_kwh", "autonomy_h", "mass_kg", "cost_per_usable_kwh",
		"cost_per_extra_kwh", "batteries", "inverter", "binding"}}
	for _, s := range c.Sides {
		p, extra := s.Plan, ""
		if p.CostPerExtraKWh != 0 {
			extra = exact(p.CostPerExtraKWh)
		}
		rows = append(rows, []string{s.Scenario.Name, money(p.Cost), s.Scenario.Currency, exact(p.UsableKWh), exact(p.AutonomyH),
			exact(p.MassKg), exact(p.CostPerUsableKWh), extra, batteries(p.Core), inverter(p.Core), strings.Join(bindsAll(p), " + ")})
	}
	return rows
}
