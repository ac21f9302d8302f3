package view

import (
	"fmt"
	"math"
	"strings"

	"cartwright/optimize/compare"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Compare shows choices side by side, what is owned with nothing bought first.
type Compare struct {
	Scenario *scenarios.Scenario
	Table    *compare.Table
	Cautions []string
	// Notices says which batteries never share a bus only because the catalogue states no common group.
	Notices []string
}

// named says what a choice buys: "2 x ember-5".
func named(list []compare.Line, none string) string {
	var parts []string
	for _, l := range list {
		parts = append(parts, fmt.Sprintf("%d x %s", l.Count, l.Part))
	}
	if len(parts) == 0 {
		return none
	}
	return strings.Join(parts, " + ")
}

// label names a choice.
func label(o *compare.Outcome) string { return named(o.Buy, "nothing bought") }

// sheet answers first, then shows the choices side by side, what each is and which are not possible.
func (c Compare) sheet() sheet {
	var cannot, whole []string
	s := sheet{c.answer()}
	if !c.Table.Complete {
		s[0].prose = append(s[0].prose, "NOT COMPLETE: stopped before every choice was worked out.")
	}
	for i := range c.Table.Outcomes {
		o := &c.Table.Outcomes[i]
		if o.Plan == nil {
			cannot = append(cannot, label(o)+": "+strings.Join(c.reasons(o), "; "))
			continue
		}
		for _, l := range o.Left {
			s[0].bullets = append(s[0].bullets, fmt.Sprintf("%s: %d x %s %s off the cart: %s.", label(o), l.Count, l.Part, map[bool]string{true: "comes", false: "come"}[l.Count == 1], l.Reason))
		}
		one := label(o) + ": " + coreText(o.Plan.Core)
		if names := binds(o.Plan); len(names) > 0 {
			one += "; limited by " + strings.Join(names, ", ")
		}
		whole = append(whole, one)
	}
	s = append(noticed(s, c.Notices), c.sideBySide()...)
	if len(cannot) > 0 {
		s = append(s, section{title: "What is not possible", bullets: cannot})
	}
	if len(whole) > 0 {
		s = append(s, section{title: "On the cart", bullets: whole})
	}
	return append(s, cautions(c.Cautions)...)
}

// answer names the choice whose extra energy is cheapest, and the one that costs least.
func (c Compare) answer() section {
	var best, least *compare.Outcome
	possible := false
	for i := range c.Table.Outcomes[1:] {
		o := &c.Table.Outcomes[i+1]
		if o.Plan == nil {
			continue
		}
		possible = true
		if least == nil || o.Plan.Cost < least.Plan.Cost {
			least = o
		}
		if extra := o.Plan.CostPerExtraKWh; extra != 0 && (best == nil || extra < best.Plan.CostPerExtraKWh) {
			best = o
		}
	}
	currency, owned := c.Scenario.Currency, fixed(c.Table.OwnedKWh, 2)
	switch {
	case !possible:
		return section{title: "None of these choices is possible."}
	case best == nil:
		return section{title: fmt.Sprintf("No choice gives more usable energy than the %s kWh owned today.", owned), prose: c.sunniest()}
	}
	more := fmt.Sprintf("%s kWh more than the %s owned today, for %s %s; %s.", fixed(best.Plan.UsableKWh-c.Table.OwnedKWh, 2), owned,
		money(best.Plan.Cost), currency, savedBy(best))
	if least != best {
		more += fmt.Sprintf(" Least to pay: %s, %s %s.", label(least), money(least.Plan.Cost), currency)
	}
	return section{title: fmt.Sprintf("Cheapest extra energy: %s, at %s %s for each extra kWh.", label(best), fixed(best.Plan.CostPerExtraKWh, 2), currency),
		prose: append([]string{more}, c.sunniest()...)}
}

// sunniest names, of a scenario with sun, the choice that serves most of the year.
func (c Compare) sunniest() []string {
	var most *compare.Outcome
	for i := range c.Table.Outcomes[1:] {
		o := &c.Table.Outcomes[i+1]
		if o.Plan != nil && o.Plan.Year != nil && (most == nil || o.Plan.Year.Served > most.Plan.Year.Served) {
			most = o
		}
	}
	if most == nil {
		return nil
	}
	text := fmt.Sprintf("Most sun: %s, with which it serves %s %% of the year", label(most), percent(most.Plan.Year.Served))
	if now := c.Table.Outcomes[0].Plan; now != nil && now.Year != nil {
		text += fmt.Sprintf(", against %s %% with nothing bought", percent(now.Year.Served))
	}
	return []string{text + "."}
}

// savedBy says in words when savings reach a choice.
func savedBy(o *compare.Outcome) string {
	switch {
	case !o.Reached:
		return "savings never reach it"
	case o.Month == 0:
		return "the money is there now"
	}
	return "saved by " + month(o)
}

// abreast is how many choices stand side by side in one table.
const abreast = 4

// sideBySide shows a choice a column, as many tables of them as it takes.
func (c Compare) sideBySide() sheet {
	u, currency := unitsOf(c.Scenario), c.Scenario.Currency
	var s sheet
	for from := 0; from < len(c.Table.Outcomes); from += abreast {
		some := c.Table.Outcomes[from:min(from+abreast, len(c.Table.Outcomes))]
		t := &table{columns: []column{text("")}}
		for i := range some {
			t.columns = append(t.columns, number(strings.NewReplacer(" + ", " +\n", " x ", " x\n", " bought", "\nbought").Replace(label(&some[i]))))
		}
		row := func(name string, value func(o *compare.Outcome) string) {
			cells := []string{name}
			for i := range some {
				cells = append(cells, none)
				if some[i].Plan != nil {
					cells[i+1] = value(&some[i])
				}
			}
			t.row(cells...)
		}
		t.row(append([]string{"possible"}, each(some, func(o compare.Outcome) string { return map[bool]string{true: "yes", false: "no"}[o.Plan != nil] })...)...)
		row("usable kWh", func(o *compare.Outcome) string { return fixed(o.Plan.UsableKWh, 2) })
		row("lasts h", func(o *compare.Outcome) string { return fixed(o.Plan.AutonomyH, 1) })
		if c.Scenario.Sun != nil {
			row("served %", func(o *compare.Outcome) string { return percent(o.Plan.Year.Served) })
		}
		row("mass "+u.unit("kg"), func(o *compare.Outcome) string { return u.fixed(o.Plan.MassKg, "kg") })
		if !math.IsInf(c.Scenario.Limits.MassKg, 1) {
			row("mass left "+u.unit("kg"), func(o *compare.Outcome) string { return u.fixed(c.spareKg(o.Plan), "kg") })
		}
		row("cost "+currency, func(o *compare.Outcome) string { return money(o.Plan.Cost) })
		row(currency+"/extra kWh", func(o *compare.Outcome) string { return extraText(o.Plan.CostPerExtraKWh) })
		row("saved by", month)
		row(currency+"/lifetime kWh", func(o *compare.Outcome) string { return stated(o.Plan.CostPerLifetimeKWh, lifeDecimals) })
		title := ""
		if from == 0 {
			title = "Choices for " + c.Scenario.Name
		}
		s = append(s, section{title: title, table: t})
	}
	s[len(s)-1].table.notes = []string{
		fmt.Sprintf("Extra kWh: usable kWh beyond the %s kWh of the batteries owned today.", fixed(c.Table.OwnedKWh, 2)),
		"Saved by: the month in which savings reach the cost; month 0 is now.",
	}
	return s
}

// reasons says why a choice is not possible, and what would have to change.
func (c Compare) reasons(o *compare.Outcome) []string {
	list := append([]string(nil), o.Reasons...)
	for _, change := range o.Changes {
		var parts []string
		for _, l := range change.Limits {
			parts = append(parts, unitsOf(c.Scenario).change(l))
		}
		list = append(list, "it would be possible with "+strings.Join(parts, " and "))
	}
	if len(list) == 0 {
		list = []string{"no change of a limit makes it possible"}
	}
	return list
}

// spareKg returns what a plan leaves of the limit of mass.
func (c Compare) spareKg(p *plan.Plan) float64 {
	for _, l := range p.Limits {
		if l.Name == plan.LimitMass {
			return l.Limit - p.MassKg
		}
	}
	return math.Inf(1)
}

// binds names the limits that bind; autonomy is none of them, since it is an outcome of a choice.
func binds(p *plan.Plan) []string {
	names := []string{}
	for _, l := range binding(p.Limits) {
		if l.Name != plan.LimitAutonomy {
			names = append(names, l.Name)
		}
	}
	return names
}

// month says when savings reach a choice.
func month(o *compare.Outcome) string {
	switch {
	case !o.Reached:
		return "never"
	case o.Month == 0:
		return "now"
	}
	return fmt.Sprintf("month %d", o.Month)
}
