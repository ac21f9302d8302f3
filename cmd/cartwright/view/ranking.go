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
	question.ByCost: "cheapest first",
	question.ByMass: "lightest first",
	question.ByLife: "least cost per lifetime kWh first",
}

// A merit is a figure that plans are compared by. Its label says what the best plan is best at.
type merit struct {
	label    string
	value    func(*plan.Plan) float64
	decimals int
	most     bool // more is better
}

// merits lists what plans are compared by, in the order they are named in.
var merits = []merit{
	{"cost", func(p *plan.Plan) float64 { return p.Cost.Units() }, 2, false},
	{"energy", func(p *plan.Plan) float64 { return p.UsableKWh }, 2, true},
	{"autonomy", func(p *plan.Plan) float64 { return p.AutonomyH }, 1, true},
	{"mass", func(p *plan.Plan) float64 { return p.MassKg }, 1, false},
	{"kWh cost", func(p *plan.Plan) float64 { return p.CostPerUsableKWh }, 2, false},
}

// bestAt returns, for each plan, what it is best at among all of them, one merit a line. Figures that are shown as the same
// are the same; then the plan ranked first has it. A lone plan is best at nothing.
func bestAt(plans []plan.Plan) []string {
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
		labels[i] = strings.Join(best[i], "\n")
	}
	return labels
}

// coreLines returns the batteries and the inverter of a plan, one a line.
func coreLines(c plan.Core) string { return batteries(c) + "\n" + inverter(c) }

// batteries returns the battery modules of a core, one part a line: "3 x slate-48" or, where strings have
// several modules, "2 x 4 pebble-12" for two strings of four.
func batteries(c plan.Core) string {
	var lines []string
	for _, b := range c.Batteries {
		if b.Series > 1 {
			lines = append(lines, fmt.Sprintf("%d x %d %s", b.Strings, b.Series, b.Part))
		} else {
			lines = append(lines, fmt.Sprintf("%d x %s", b.Strings, b.Part))
		}
	}
	return strings.Join(lines, "\n")
}

// inverter returns the inverters of a core.
func inverter(c plan.Core) string { return fmt.Sprintf("%d x %s", c.Inverter.Units, c.Inverter.Part) }

// ranking compares the plans: a line of figures for each and below it the differences to the first.
func (p Plans) ranking() section {
	currency := p.Scenario.Currency
	t := &table{columns: []column{
		number("#"), text("batteries,\ninverter"), number("cost\n" + currency), number("usable\nkWh"),
		number("autonomy\nh"), number("mass\nkg"), number(currency + " per\nusable\nkWh"),
	}}
	life := p.By == question.ByLife
	if life {
		t.columns = append(t.columns, number(currency+" per\nlifetime\nkWh"))
	}
	t.columns = append(t.columns, text("best at"))
	plans := p.Result.Plans
	best := bestAt(plans)
	series, unproven := false, false
	for i := range plans {
		one, first := &plans[i], &plans[0]
		figure := func(value func(*plan.Plan) float64, decimals int) string {
			s := fixed(value(one), decimals)
			if i > 0 {
				s += "\n" + signed(value(one)-value(first), decimals)
			}
			return s
		}
		rank := strconv.Itoa(one.Rank)
		if !one.Proven {
			rank, unproven = "*"+rank, true
		}
		cells := []string{rank, coreLines(one.Core)}
		for _, m := range merits {
			cells = append(cells, figure(m.value, m.decimals))
		}
		if life {
			cells = append(cells, figure(func(q *plan.Plan) float64 { return q.CostPerLifetimeKWh }, lifeDecimals))
		}
		t.row(append(cells, best[i])...)
		for _, b := range one.Core.Batteries {
			series = series || b.Series > 1
		}
	}
	if len(plans) > 1 {
		t.notes = append(t.notes, "Second line of a plan: difference to the first plan.")
	}
	if series {
		t.notes = append(t.notes, `"2 x 4 part": 2 strings of 4 modules in series.`)
	}
	if slices.ContainsFunc(plans, func(p plan.Plan) bool { return p.Cost < 0 }) {
		t.notes = append(t.notes, "A cost below 0: what is sold brings more than is spent, and you are paid the difference. Divided by kWh it says nothing of what energy costs.")
	}
	if unproven {
		t.notes = append(t.notes, "* not proven: a better plan may exist.")
	}
	title := count(len(plans), "plan", "plans") + " for " + p.Scenario.Name + ", " + orders[p.By]
	return section{title: title, table: t}
}

// lifeDecimals is to how many decimals a cost per lifetime kWh is shown: it is a matter of cents.
const lifeDecimals = 4

// records holds the ranking, or the bill of the plan that was asked for by rank.
func (p Plans) records() [][]string {
	if p.Show > 0 {
		return p.billRecords()
	}
	rows := [][]string{{"rank", "batteries", "inverter", "cost", "spend", "shipping", "tax", "credit", "currency",
		"usable_kwh", "autonomy_h", "mass_kg", "cost_per_usable_kwh", "best_at", "cost_difference", "proven"}}
	best := bestAt(p.Result.Plans)
	for i := range p.Result.Plans {
		one := &p.Result.Plans[i]
		rows = append(rows, []string{
			strconv.Itoa(one.Rank), strings.ReplaceAll(batteries(one.Core), "\n", " + "), inverter(one.Core),
			money(one.Cost), money(one.Spend), money(one.Shipping), money(one.Tax), money(one.Credit),
			p.Scenario.Currency, exact(one.UsableKWh), exact(one.AutonomyH), exact(one.MassKg),
			exact(one.CostPerUsableKWh), strings.ReplaceAll(best[i], "\n", ", "), money(one.Cost - p.Result.Plans[0].Cost),
			strconv.FormatBool(one.Proven),
		})
	}
	return rows
}

// exact returns a figure unrounded, for programs.
func exact(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
