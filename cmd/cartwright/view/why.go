package view

import (
	"fmt"
	"strings"

	"cartwright/optimize/plan"
	"cartwright/optimize/why"
	"cartwright/scenarios"
)

// Why shows what makes the best plan what it is: which limits bind and what a change of each would do; or,
// where no plan is possible, which limits contradict each other and what the ways out cost.
type Why struct {
	Scenario    *scenarios.Scenario
	Explanation *why.Explanation
	Cautions    []string
}

// sheet gives the best plan, what binds and the changes; or the conflict and the ways out.
func (w Why) sheet() sheet {
	e := w.Explanation
	if e.Best == nil {
		return append(w.conflict(), cautions(w.Cautions)...)
	}
	return append(sheet{w.best(), w.binding(), w.effects()}, cautions(w.Cautions)...)
}

// units returns the units the answer is told in.
func (w Why) units() units { return unitsOf(w.Scenario) }

// best names the best plan.
func (w Why) best() section {
	b := w.Explanation.Best
	return section{
		title: fmt.Sprintf("%s: the cheapest plan costs %s %s", w.Scenario.Name, money(b.Cost), w.Scenario.Currency),
		prose: []string{fmt.Sprintf("%s: %s kWh, %s h, %s.", coreText(b.Core),
			fixed(b.UsableKWh, 2), fixed(b.AutonomyH, 1), w.units().with(b.MassKg, "kg"))},
	}
}

// bound returns the limits that bind.
func (w Why) bound() []plan.Limit {
	return binding(w.Explanation.Best.Limits)
}

// binding shows the limits of which nothing is left.
func (w Why) binding() section {
	u := w.units()
	t := &table{columns: []column{text("limit"), number("has"), number("must be"), number("left"), text("unit")}}
	for _, l := range w.bound() {
		t.row(l.Name, u.fixed(l.Value, l.Unit), u.bound(l), u.fixed(l.Slack, l.Unit), u.unit(l.Unit))
	}
	if len(t.rows) == 0 {
		return section{title: "What binds", prose: []string{
			"No limit: the next smaller parts would not do."}}
	}
	t.notes = []string{fmt.Sprintf("A limit binds where at most %s %% of it is left.", short(plan.BindingShare*100, 1))}
	return section{title: "What binds", table: t}
}

// tells reports whether a change changes the best plan.
func tells(e *why.Effect, best *plan.Plan) bool {
	return e.Plan == nil || e.Plan.Cost != best.Cost || core(e.Plan.Core) != core(best.Core)
}

// effects shows what changes of limits would do, each solved again. Those that do nothing stand below.
func (w Why) effects() section {
	currency, best, u := w.Scenario.Currency, w.Explanation.Best, w.units()
	t := &table{columns: []column{
		text("limit"), number("now"), number("then"), text("unit"), number("cost\n" + currency),
		number("difference\n" + currency), text("batteries, inverter"),
	}}
	var idle []*why.Effect
	for i := range w.Explanation.Effects {
		e := &w.Explanation.Effects[i]
		if !tells(e, best) {
			idle = append(idle, e)
			continue
		}
		cells := []string{e.Limit, short(u.figure(e.From, e.Unit), 2), short(u.figure(e.To, e.Unit), 2), u.unit(e.Unit)}
		if e.Plan == nil {
			cells = append(cells, none, none, "no plan")
		} else {
			cells = append(cells, money(e.Plan.Cost), signed(-e.Saves, 2), core(e.Plan.Core))
		}
		t.row(cells...)
	}
	s := section{title: "What a change of one limit would do, solved again"}
	switch {
	case len(t.rows) > 0:
		s.table = t
	case w.Explanation.Complete:
		s.prose = []string{"No change of one limit by a natural step changes the best plan."}
	}
	if len(idle) > 0 {
		s.prose = append(s.prose, "The cheapest plan stays as it is with "+u.idle(idle)+".")
	}
	if !w.Explanation.Complete {
		s.prose = append(s.prose, "NOT COMPLETE: stopped before every limit was looked into. What is shown above is proven.")
	}
	return s
}

// idle lists changes that do nothing, those of a limit together: "autonomy 33 or 35 h; mass 182 kg".
func (u units) idle(list []*why.Effect) string {
	var parts []string
	for i := 0; i < len(list); i++ {
		e := list[i]
		words := e.Limit + " " + short(u.figure(e.To, e.Unit), 2)
		for i+1 < len(list) && list[i+1].Limit == e.Limit {
			i++
			words += " or " + short(u.figure(list[i].To, e.Unit), 2)
		}
		if e.Unit != "" {
			words += " " + u.unit(e.Unit)
		}
		parts = append(parts, words)
	}
	return strings.Join(parts, "; ")
}

// conflict shows the limits that contradict each other and the ways out, the cheapest first.
func (w Why) conflict() sheet {
	e, currency := w.Explanation, w.Scenario.Currency
	s := sheet{{title: "No plan for " + w.Scenario.Name + " meets all limits."}}
	if len(e.Reasons) > 0 {
		s = append(s, obstacles(e.Reasons))
	}
	if len(e.Conflict) > 0 {
		var limits []string
		for _, c := range e.Conflict {
			limits = append(limits, c.Name+" "+w.units().asked(c))
		}
		about := "Not even this limit alone can be met:"
		if len(limits) > 1 {
			about = "These limits contradict each other; without any one of them the others can be met:"
		}
		s = append(s, section{title: about, bullets: limits})
	}
	if len(e.WaysOut) == 0 {
		if len(e.Reasons) > 0 {
			s[0].prose = []string{"No change of the limits alone helps."}
			return s
		}
		s[0].prose = []string{"No change of the limits helps; the catalogue may hold no parts that fit this bus and these loads."}
		return s
	}
	t := &table{columns: []column{text("change"), number("then it costs\n" + currency), text("batteries, inverter")}}
	for _, out := range e.WaysOut {
		var changes []string
		for _, c := range out.Change.Limits {
			changes = append(changes, w.units().change(c))
		}
		t.row(strings.Join(changes, "\nand "), money(out.Plan.Cost), core(out.Plan.Core))
	}
	t.notes = []string{"Each is the smallest change of that limit that makes a plan possible, and the cheapest plan it allows."}
	return append(s, section{title: "The ways out, the cheapest first", table: t})
}
