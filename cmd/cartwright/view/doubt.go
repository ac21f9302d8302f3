//go:build !js

package view

import (
	"fmt"
	"strconv"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/doubt"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Doubt shows how the first plans fare when prices and loads are drawn at random.
type Doubt struct {
	Scenario *scenarios.Scenario
	Catalog  *catalog.Catalog
	Doubted  *doubt.Doubted
	Options  doubt.Options
	Cautions []string
}

// sheet shows every plan, what choosing the first may cost, the plan for the worst case, and what was drawn.
func (d Doubt) sheet() sheet {
	ranking := Plans{Scenario: d.Scenario, Catalog: d.Catalog, Result: d.Doubted.Ranking, By: question.ByCost, Distinct: question.DistinctCore}
	if len(d.Doubted.Plans) == 0 {
		return ranking.sheet()
	}
	return append(sheet{d.answer(), d.fares(), d.verdict(), d.drawn(), ranking.proof()}, cautions(d.Cautions)...)
}

// answer says how plan 1 fares, and which plan fails least.
func (d Doubt) answer() section {
	first := &d.Doubted.Plans[0]
	s := section{title: fmt.Sprintf("Plan 1 holds in %s %% of the draws, and is the cheapest that holds in %s %%.", percent(first.Feasible), percent(first.Cheapest)),
		prose: []string{coreText(first.Core) + "."}}
	if d.Doubted.Robust > 1 {
		s.prose = append(s.prose, fmt.Sprintf("Plan %d fails in the fewest draws.", d.Doubted.Robust))
	}
	return s
}

// fares is the table of the plans.
func (d Doubt) fares() section {
	currency := d.Scenario.Currency
	t := &table{columns: []column{
		number("#"), text("batteries, inverter"), number("cost as\nranked\n" + currency), number("mean\ncost\n" + currency),
		number("95 % cost\nat most\n" + currency), number("cheap-\nest\n%"), number("holds\n%"), text("breaks most often"),
	}}
	series := false
	for i := range d.Doubted.Plans {
		p := &d.Doubted.Plans[i]
		breaks := ""
		if len(p.Breaks) > 0 {
			breaks = fmt.Sprintf("%s %s %%", p.Breaks[0].Limit, percent(p.Breaks[0].Share))
		}
		t.row(strconv.Itoa(p.Rank), core(p.Core), money(p.Cost), fixed(p.MeanCost, 2), money(p.Cost95),
			percent(p.Cheapest), percent(p.Feasible), breaks)
		series = series || inSeries(p.Core)
	}
	t.notes = []string{"Cheapest: of the draws, in how many it is the cheapest plan that holds. Holds: in how many it meets its limits."}
	if series {
		t.notes = append(t.notes, seriesNote)
	}
	draws := count(d.Doubted.Draws, "draw", "draws")
	if d.Doubted.Stopped {
		draws = fmt.Sprintf("the first %s of %d", draws, d.Options.Draws)
	}
	return section{title: fmt.Sprintf("How %s for %s fare in %s", count(len(d.Doubted.Plans), "plan", "plans"),
		d.Scenario.Name, draws), table: t}
}

// verdict says what choosing the first plan may cost, and which one is best in the worst case.
func (d Doubt) verdict() section {
	currency := d.Scenario.Currency
	var lines []string
	switch r := d.Doubted.Regret; {
	case r == nil:
		lines = append(lines, "Regret of plan 1: it holds in no draw.")
	case r.Most == 0:
		lines = append(lines, fmt.Sprintf("Regret of plan 1: none; in all of the %s in which it holds it is the cheapest plan that does.",
			count(r.Draws, "draw", "draws")))
	default:
		lines = append(lines, fmt.Sprintf("Regret of plan 1: in the %s in which it holds it costs on average %s %s more than the cheapest plan that holds, "+
			"at most %s in 95 of 100 of them, and never more than %s.", count(r.Draws, "draw", "draws"), fixed(r.Mean, 2), currency, money(r.At95), money(r.Most)))
	}
	lines = append(lines, fmt.Sprintf("In %s %% of the draws plan 1 does not hold but another plan does; in %s %% none does.",
		percent(d.Doubted.FirstFails), percent(d.Doubted.NoneServes)))
	for i := range d.Doubted.Plans {
		if p := &d.Doubted.Plans[i]; p.Rank == d.Doubted.Robust {
			lines = append(lines, fmt.Sprintf("Best in the worst case: plan %d, which fails in the fewest draws, %s %%, and costs %s %s in the dearest.",
				p.Rank, percent(1-p.Feasible), money(p.Greatest), currency))
		}
	}
	return section{title: "What that means", prose: lines}
}

// drawn says what was drawn, and what was not.
func (d Doubt) drawn() section {
	o := d.Options
	loads := fmt.Sprintf("Each line of the load list: off by up to %s %% either way, by itself.", short(100*o.Loads, 2))
	if d.Scenario.Measured != nil {
		loads = fmt.Sprintf("The measured loads: off by up to %s %% either way, all by the same part.", short(100*o.Loads, 2))
	}
	if d.Scenario.Sun != nil {
		loads += fmt.Sprintf(" The sunshine of the year: off by up to %s %% either way, every hour by the same part.", short(100*o.Loads, 2))
	}
	return section{title: "What was drawn", bullets: []string{
		fmt.Sprintf("Each price: from the range the catalogue states, else off by up to %s %% either way; with it a part's offers and crimped ends.", short(100*o.Prices, 2)),
		loads,
		"All from triangular distributions, likeliest as stated, independently of each other; common practice, no source.",
		"Taken as certain: shipping, tax, and what owned parts are sold for. The plans are bought as they are.",
		fmt.Sprintf("Limits that can break: %s.", strings.Join(doubtLimits(d.Scenario), ", ")),
		fmt.Sprintf("Seed %d: the same seed gives the same draws.", o.Seed),
	}}
}

// doubtLimits lists the limits that prices and loads have a part in.
func doubtLimits(s *scenarios.Scenario) []string {
	list := []string{plan.LimitAutonomy, plan.LimitPower, plan.LimitLeg, plan.LimitSurge, plan.LimitBusCurrent}
	if s.Recharge != nil {
		list = append(list, plan.LimitCharger, plan.LimitCharge)
	}
	if s.Limits.Served > 0 {
		list = append(list, plan.LimitServed)
	}
	return append(list, plan.LimitBudget, plan.LimitBusbarCurrent)
}
