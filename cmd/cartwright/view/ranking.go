package view

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// orders names the order of a ranking.
var orders = map[question.By]string{
	question.ByCost:   "cheapest first",
	question.ByMass:   "lightest first",
	question.ByLife:   "least cost per lifetime kWh first",
	question.ByEnergy: "most usable energy first",
}

// A merit is a figure that plans are compared by. Its label says what the best plan is ahead in.
type merit struct {
	label    string
	unit     string // of the value, in SI
	value    func(*plan.Plan) float64
	decimals int
	most     bool // more is better
}

// merits lists what plans are compared by, in the order they are named in.
var merits = []merit{
	{"cost", "", func(p *plan.Plan) float64 { return p.Cost.Units() }, 2, false},
	{"energy", "kWh", func(p *plan.Plan) float64 { return p.UsableKWh }, 2, true},
	{"autonomy", "h", func(p *plan.Plan) float64 { return p.AutonomyH }, 1, true},
	{"mass", "kg", func(p *plan.Plan) float64 { return p.MassKg }, 1, false},
	{"kWh cost", "", func(p *plan.Plan) float64 { return p.CostPerUsableKWh }, 2, false},
}

// aheadIn returns, for each plan, the list of what no other is better in. Figures that are shown as the same
// are the same; then the plan ranked first has it. A lone plan is ahead in nothing.
func aheadIn(plans []plan.Plan) []string {
	best := make([][]string, len(plans))
	for _, m := range merits {
		scale := math.Pow(10, float64(m.decimals))
		winner, differ := 0, false
		for i := range plans {
			v, w := math.Round(m.value(&plans[i])*scale), math.Round(m.value(&plans[winner])*scale)
			differ = differ || v != w
			if m.most && v > w || !m.most && v < w {
				winner = i
			}
		}
		if differ {
			best[winner] = append(best[winner], m.label)
		}
	}
	labels := make([]string, len(plans))
	for i := range best {
		labels[i] = items(best[i]...)
	}
	return labels
}

// firstRanks is how many ranks the short answer shows where nobody asked for a number.
const firstRanks = 5

// aheadText says in a sentence which plan is ahead in what.
func aheadText(plans []plan.Plan, ahead []string) string {
	var parts []string
	for i, what := range ahead {
		if what != "" {
			parts = append(parts, fmt.Sprintf("plan %d in %s", plans[i].Rank, joined(what)))
		}
	}
	if len(parts) == 0 {
		return "All are alike in these figures."
	}
	return "Ahead: " + strings.Join(parts, "; ") + "."
}

// ranking compares the plans: a line of figures for each and, in full, below it the differences to the first.
func (p Plans) ranking() section {
	currency, u := p.Scenario.Currency, p.units()
	t := &table{columns: []column{
		number("#"), text("batteries, inverter"), number("cost\n" + currency), number("usable\nkWh"),
		number("lasts\nh"), number("mass\n" + u.unit("kg")), number(currency + "/\nkWh"),
	}}
	extra := tellsExtra(p.Result.Plans)
	if extra {
		t.columns = append(t.columns, number(currency+"/\nextra"))
	}
	life := p.By == question.ByLife
	if life {
		t.columns = append(t.columns, number(currency+"/\nlifetime kWh"))
	}
	plans := p.Result.Plans
	ahead := aheadIn(plans)
	listed := len(plans)
	if !p.Full && !p.Asked && listed > firstRanks {
		listed = firstRanks
	}
	if p.Full {
		t.columns = append(t.columns, text("ahead in"))
	}
	series, unproven := false, false
	for i := range plans[:listed] {
		one, first := &plans[i], &plans[0]
		figure := func(value func(*plan.Plan) float64, decimals int) string {
			s := fixed(value(one), decimals)
			if p.Full && i > 0 {
				s += "\n" + signed(value(one)-value(first), decimals)
			}
			return s
		}
		rank := strconv.Itoa(one.Rank)
		if !one.Proven {
			rank, unproven = "*"+rank, true
		}
		cells := []string{rank, core(one.Core)}
		for _, m := range merits {
			cells = append(cells, figure(func(q *plan.Plan) float64 { return u.figure(m.value(q), m.unit) }, m.decimals))
		}
		if extra {
			cells = append(cells, extraText(one.CostPerExtraKWh))
		}
		if life {
			cells = append(cells, figure(func(q *plan.Plan) float64 { return q.CostPerLifetimeKWh }, lifeDecimals))
		}
		if p.Full {
			cells = append(cells, ahead[i])
		}
		t.row(cells...)
		series = series || inSeries(one.Core)
	}
	switch {
	case len(plans) < 2:
	case p.Full:
		t.notes = append(t.notes, "Second line of a plan: difference to the first plan.")
	default:
		t.notes = append(t.notes, aheadText(plans, ahead))
	}
	var more []string
	if extra {
		more = append(more, extraNote)
	}
	if rest := plans[listed:]; len(rest) > 0 {
		more = append(more, fmt.Sprintf("Plans %d to %d: see --full.", rest[0].Rank, rest[len(rest)-1].Rank))
	}
	if len(more) > 0 {
		t.notes = append(t.notes, strings.Join(more, " "))
	}
	if series {
		t.notes = append(t.notes, seriesNote)
	}
	if slices.ContainsFunc(plans, func(p plan.Plan) bool { return p.Cost < 0 }) {
		t.notes = append(t.notes, "A cost below 0: what is sold brings more than is spent, and you are paid the difference. Divided by kWh it says nothing about what energy costs.")
	}
	if unproven {
		t.notes = append(t.notes, "* not proven: a better plan may exist.")
	}
	title := count(len(plans), "plan", "plans") + " for " + p.Scenario.Name + ", " + orders[p.By]
	return section{title: title, table: t}
}

// tellsExtra reports whether the cost of extra energy is another figure than the cost of all: something is owned.
func tellsExtra(plans []plan.Plan) bool {
	return slices.ContainsFunc(plans, func(p plan.Plan) bool { return p.CostPerExtraKWh != p.CostPerUsableKWh })
}

// extraText returns what an extra kWh costs; nothing where there is none.
func extraText(v float64) string {
	if v == 0 {
		return none
	}
	return fixed(v, 2)
}

const extraNote = "Extra: for each kWh beyond those owned today."

// lifeDecimals is to how many decimals a cost per lifetime kWh is shown: it is a matter of cents.
const lifeDecimals = 4

// records holds the ranking, or the bill of the plan that was asked for by rank.
func (p Plans) records() [][]string {
	if p.Show > 0 {
		return p.billRecords()
	}
	rows := [][]string{{"rank", "batteries", "inverter", "cost", "spend", "shipping", "tax", "credit", "currency",
		"usable_kwh", "autonomy_h", "mass_kg", "cost_per_usable_kwh", "ahead_in", "cost_difference", "proven", "cost_per_extra_kwh"}}
	ahead := aheadIn(p.Result.Plans)
	for i := range p.Result.Plans {
		one := &p.Result.Plans[i]
		rows = append(rows, []string{
			strconv.Itoa(one.Rank), batteries(one.Core), inverter(one.Core),
			money(one.Cost), money(one.Spend), money(one.Shipping), money(one.Tax), money(one.Credit),
			p.Scenario.Currency, exact(one.UsableKWh), exact(one.AutonomyH), exact(one.MassKg),
			exact(one.CostPerUsableKWh), joined(ahead[i]), money(one.Cost - p.Result.Plans[0].Cost),
			strconv.FormatBool(one.Proven), orEmpty(one.CostPerExtraKWh),
		})
	}
	return rows
}

// orEmpty returns a figure unrounded, nothing where it is 0 and so not stated.
func orEmpty(v float64) string {
	if v == 0 {
		return ""
	}
	return exact(v)
}

// exact returns a figure unrounded, for programs.
func exact(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
