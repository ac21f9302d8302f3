package view

import (
	"fmt"
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

// sheet shows a scenario a column, and what each plan is.
func (c CompareScenarios) sheet() sheet {
	u := unitsOf(c.Sides[0].Scenario)
	t := &table{columns: []column{text("")}}
	var whole []string
	for _, s := range c.Sides {
		t.columns = append(t.columns, number(strings.ReplaceAll(s.Scenario.Name, " ", "\n")))
		one := s.Scenario.Name + ": " + coreText(s.Plan.Core)
		if names := bindsAll(s.Plan); len(names) > 0 {
			one += "; limited by " + strings.Join(names, ", ")
		}
		whole = append(whole, one)
	}
	row := func(name string, value func(s Side) string) {
		t.row(append([]string{name}, each(c.Sides, value)...)...)
	}
	row("cost", func(s Side) string { return money(s.Plan.Cost) + " " + s.Scenario.Currency })
	row("usable kWh", func(s Side) string { return fixed(s.Plan.UsableKWh, 2) })
	row("lasts h", func(s Side) string { return fixed(s.Plan.AutonomyH, 1) })
	row("mass "+u.unit("kg"), func(s Side) string { return u.fixed(s.Plan.MassKg, "kg") })
	row("each usable kWh", func(s Side) string { return fixed(s.Plan.CostPerUsableKWh, 2) + " " + s.Scenario.Currency })
	row("each extra kWh", func(s Side) string {
		if s.Plan.CostPerExtraKWh == 0 {
			return none
		}
		return extraText(s.Plan.CostPerExtraKWh) + " " + s.Scenario.Currency
	})
	t.notes = []string{"Extra kWh: usable kWh beyond those of the batteries owned today."}
	return append(sheet{{title: c.answer()}, {title: "First plans side by side", table: t}, {title: "On the cart", bullets: whole}}, cautions(c.Cautions)...)
}

// answer says by how much the first plan of one scenario is cheaper, where both are in one currency.
func (c CompareScenarios) answer() string {
	a, b := c.Sides[0], c.Sides[1]
	if a.Plan.Cost > b.Plan.Cost {
		a, b = b, a
	}
	switch {
	case a.Scenario.Currency != b.Scenario.Currency:
		return fmt.Sprintf("%s costs %s %s, %s %s %s.", a.Scenario.Name, money(a.Plan.Cost), a.Scenario.Currency, b.Scenario.Name, money(b.Plan.Cost), b.Scenario.Currency)
	case a.Plan.Cost == b.Plan.Cost:
		return fmt.Sprintf("%s and %s cost the same: %s %s.", a.Scenario.Name, b.Scenario.Name, money(a.Plan.Cost), a.Scenario.Currency)
	}
	return fmt.Sprintf("%s costs %s %s less than %s: %s, not %s.", a.Scenario.Name, money(b.Plan.Cost-a.Plan.Cost), a.Scenario.Currency,
		b.Scenario.Name, money(a.Plan.Cost), money(b.Plan.Cost))
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
