package view

import (
	"fmt"
	"math"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/why"
	"cartwright/scenarios"
)

// WhyPart shows why a part is or is not in the best plan, and at which price it would be.
type WhyPart struct {
	Scenario *scenarios.Scenario
	Catalog  *catalog.Catalog
	Answer   *why.PartAnswer
	Cautions []string
}

// unit returns the SI unit the part is counted in: "each", or "m" for cable.
func (w WhyPart) unit() string { return countedIn(w.Catalog, w.Answer.Part) }

// units returns the units the answer is told in.
func (w WhyPart) units() units { return unitsOf(w.Scenario) }

// quantities returns how much of the part a plan has, and how much of it is bought.
func (w WhyPart) quantities(p *plan.Plan) (has, buys float64) {
	for _, l := range p.Bill {
		if l.Part == w.Answer.Part && !plan.IsEnd(l.Kind) {
			has += l.Quantity
			buys += l.Buy
		}
	}
	return has, buys
}

// sheet gives the answer and compares the plans.
func (w WhyPart) sheet() sheet {
	s := sheet{w.answer()}
	if w.Answer.With != nil {
		s = append(s, w.compare())
	}
	return append(s, cautions(w.Cautions)...)
}

// answer says why in words.
func (w WhyPart) answer() section {
	a, currency := w.Answer, w.Scenario.Currency
	name := a.Part
	if e, ok := w.Catalog.Find(a.Part); ok && e.Name != "" {
		name += " (" + e.Name + ")"
	}
	switch {
	case a.Best == nil && a.With == nil:
		return section{title: fmt.Sprintf("No plan for %s meets all limits, with %s or without.", w.Scenario.Name, name),
			prose: []string{w.obstacles()}}
	case a.With == nil:
		return section{title: fmt.Sprintf("No plan for %s that has %s meets all limits.", w.Scenario.Name, name),
			prose: []string{w.obstacles()}}
	case a.InBest:
		has, buys := w.quantities(a.Best)
		return section{title: fmt.Sprintf("%s is in the cheapest plan for %s.", name, w.Scenario.Name),
			prose: []string{fmt.Sprintf("The plan has %s, of which %s to be bought.", w.amount(has), w.amount(buys))}}
	}
	s := section{title: fmt.Sprintf("%s is not in the cheapest plan for %s.", name, w.Scenario.Name)}
	if a.Best == nil {
		s.title = fmt.Sprintf("No plan for %s meets all limits; with %s only the budget stands in the way.", w.Scenario.Name, name)
	}
	more := ""
	switch {
	case a.Best == nil:
	case a.Costs == 0:
		more = ", no more than the cheapest"
	default:
		more = ", " + fixed(a.Costs, 2) + " more than the cheapest"
	}
	if over := w.overBudget(); over > 0 {
		more += " and " + money(over) + " over the budget"
	}
	s.prose = []string{fmt.Sprintf("The cheapest plan that has it costs %s %s%s.", money(a.With.Cost), currency, more)}
	if p := w.price(); p != "" {
		s.prose = append(s.prose, p)
	}
	return s
}

// obstacles says what keeps the part out of every plan.
func (w WhyPart) obstacles() string {
	a := w.Answer
	switch {
	case len(a.Reasons) > 0:
		return "No limit is to blame: " + strings.Join(a.Reasons, "; ") + "."
	case a.Unfit:
		return "No limit is to blame: it does not fit the bus, the loads or the wiring rules, or nothing asks for such a part."
	case len(a.KeptOutBy) == 0:
		return "No single limit keeps it out."
	case len(a.KeptOutBy) == 1:
		return "One limit keeps it out: " + a.KeptOutBy[0] + "."
	}
	return "Without any one of these limits some plan could have it: " + strings.Join(a.KeptOutBy, ", ") + "."
}

// overBudget returns by how much the cheapest plan that has the part is dearer than the money in hand.
func (w WhyPart) overBudget() plan.Money {
	l := w.Scenario.Limits
	if l.Budget == math.MaxInt64 {
		return 0
	}
	return w.Answer.With.Cost - plan.Money(l.Budget+w.Scenario.Sold)
}

// amount returns a number of the part with its unit.
func (w WhyPart) amount(n float64) string {
	if u := w.units(); w.unit() == "m" {
		return withUnit(short(u.figure(n, "m"), 2), u.unit("m"))
	}
	return short(n, 0)
}

// price says at or below which price the part is worth buying, or why no price matters.
func (w WhyPart) price() string {
	a, currency := w.Answer, w.Scenario.Currency
	each, buys, u := "each", 0.0, w.units()
	if w.unit() == "m" {
		each = "for 1 " + u.unit("m")
	}
	now, below := a.Price/u.figure(1, w.unit()), a.EntersAt/u.figure(1, w.unit())
	switch {
	case a.StaysOut:
		return fmt.Sprintf("Now it costs %s %s %s; even for nothing it would be in no cheapest plan.", fixed(now, 2), currency, each)
	case a.Priced:
		_, buys = w.quantities(a.At)
		return fmt.Sprintf("It is worth buying at %s %s %s or less; now it costs %s. At that price the cheapest plan buys %s.",
			fixed(below, 2), currency, each, fixed(now, 2), w.amount(buys))
	}
	if _, buys = w.quantities(a.With); buys == 0 {
		return "That plan uses what is owned of it, so its price does not matter."
	}
	return ""
}

// compared is a plan of the comparison.
type compared struct {
	label string
	plan  *plan.Plan
}

// plans lists the plans to compare.
func (w WhyPart) plans() []compared {
	a := w.Answer
	list := []compared{{"the cheapest", a.Best}}
	if !a.InBest {
		list = append(list, compared{"the cheapest with it", a.With}, compared{"at that price", a.At})
	}
	kept := list[:0]
	for _, c := range list {
		if c.plan != nil {
			kept = append(kept, c)
		}
	}
	return kept
}

// compare sets the plans side by side.
func (w WhyPart) compare() section {
	of, u := w.Answer.Part, w.units()
	t := &table{columns: []column{
		text("plan"), text("batteries, inverter"), number("of it\n" + u.unit(w.unit())), number("cost\n" + w.Scenario.Currency),
		number("usable\nkWh"), number("autonomy\nh"), number("mass\n" + u.unit("kg")),
	}}
	for _, c := range w.plans() {
		has, _ := w.quantities(c.plan)
		t.row(c.label, core(c.plan.Core), short(u.figure(has, w.unit()), 2), money(c.plan.Cost), fixed(c.plan.UsableKWh, 2),
			fixed(c.plan.AutonomyH, 1), u.fixed(c.plan.MassKg, "kg"))
	}
	t.notes = []string{"Of it: how much of " + of + " stands on the cart."}
	return section{title: "Compared", table: t}
}
