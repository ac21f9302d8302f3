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

// sheet shows a choice a row, then what leaves the cart and what cannot be.
func (c Compare) sheet() sheet {
	u, currency := unitsOf(c.Scenario), c.Scenario.Currency
	t := &table{columns: []column{text("buy"), number("usable\nkWh"), number("lasts\nh"), number("mass\n" + u.unit("kg")),
		number("mass left\n" + u.unit("kg")), number("cost\n" + currency), number("each extra\nkWh"), text("saved\nby"), number("lifetime\nkWh"), text("what binds")}}
	var leave, cannot, whole []string
	for i := range c.Table.Outcomes {
		o := &c.Table.Outcomes[i]
		p := o.Plan
		if p == nil {
			cannot = append(cannot, label(o)+": "+strings.Join(c.reasons(o), "; "))
			t.row(label(o), "cannot be", "", "", "", "", "", "", "", "")
			continue
		}
		spare := ""
		if kg := c.spareKg(p); !math.IsInf(kg, 1) {
			spare = u.fixed(kg, "kg")
		}
		t.row(label(o), fixed(p.UsableKWh, 2), fixed(p.AutonomyH, 1), u.fixed(p.MassKg, "kg"), spare, money(p.Cost),
			stated(p.CostPerExtraKWh, 2), month(o), stated(p.CostPerLifetimeKWh, 3), strings.Join(binds(p), ", "))
		for _, l := range o.Left {
			leave = append(leave, fmt.Sprintf("%s: %d x %s cannot stay: %s", label(o), l.Count, l.Part, l.Reason))
		}
		whole = append(whole, fmt.Sprintf("%s: %s", label(o), coreText(p.Core)))
	}
	t.notes = []string{fmt.Sprintf("Each extra kWh: cost over the usable kWh beyond the %s kWh of the batteries owned today.", fixed(c.Table.OwnedKWh, 2)),
		"Saved by: the month, counted from now as 0, in which savings reach the cost. Lifetime kWh: cost for each."}
	s := sheet{{title: "Choices for " + c.Scenario.Name, table: t}}
	if len(leave) > 0 {
		s = append(sheet{{title: "Taken off the cart:", bullets: leave}}, s...)
	}
	if len(cannot) > 0 {
		s = append(s, section{title: "What cannot be:", bullets: cannot})
	}
	s = append(s, section{title: "On the cart:", bullets: whole})
	return append(s, cautions(c.Cautions)...)
}

// reasons says why a choice cannot be, and what would have to give.
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

// binds names the limits that bind. Autonomy is an outcome of a choice.
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
