package view

import (
	"fmt"
	"strconv"
	"strings"

	"cartwright/optimize/frontier"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Frontier shows the staircase of cost against autonomy, mass or sun, a row a step.
type Frontier struct {
	Scenario  *scenarios.Scenario
	Staircase *frontier.Staircase
	Cautions  []string
}

// axes says how each axis is told: its title, the heading of its column, and what a step means.
var axes = map[frontier.Axis]struct {
	title, head, note string
	decimals          int
}{
	frontier.AxisAutonomy: {"cost of autonomy", "autonomy\nup to ",
		"Autonomy up to: the step's plan is the cheapest for every autonomy above that of the step before it, up to its own.", 2},
	frontier.AxisMass: {"cost of mass", "mass\nfrom ",
		"Mass from: the step's plan is the cheapest for every mass limit below that of the step before it, down to its own.", 3},
	frontier.AxisServed: {"cost of sun", "served\nup to ",
		"Served up to: the step's plan is the cheapest for every share above that of the step before it, up to its own. " +
			"The first is the cheapest plan with no share asked for.", 2},
	frontier.AxisBudget: {"autonomy for a budget", "autonomy\n",
		"For every budget from the step's own up to that of the next, its plan runs longest.", 2},
}

// sheet shows every step.
func (f Frontier) sheet() sheet {
	if len(f.Staircase.Steps) == 0 {
		title := "No plan for " + f.Scenario.Name + " meets all limits, whatever it costs."
		if !f.Staircase.Complete {
			title = "Stopped before the first plan for " + f.Scenario.Name + " was found; that does not mean that there is none."
		}
		return append(sheet{{title: title}}, cautions(f.Cautions)...)
	}
	return append(sheet{f.answer(), f.steps()}, cautions(f.Cautions)...)
}

// answer tells the knee, and where the staircase begins and ends.
func (f Frontier) answer() section {
	u, steps := unitsOf(f.Scenario), f.Staircase.Steps
	tell := func(s *frontier.Step) string {
		at, cost := withUnit(fixed(u.figure(s.At, f.Staircase.Unit), axes[f.Staircase.Axis].decimals), u.unit(f.Staircase.Unit)), s.Cost
		return fmt.Sprintf("%s for %s %s", at, fixed(cost, 2), f.Scenario.Currency)
	}
	first, last := &steps[0], &steps[len(steps)-1]
	s := section{title: fmt.Sprintf("From %s to %s.", tell(first), tell(last)), prose: []string{}}
	if len(steps) == 1 {
		s.title = "One step: " + tell(first) + "."
	}
	for i := range steps {
		if steps[i].Knee {
			s.prose = append(s.prose, fmt.Sprintf("Step %d is the knee of the curve: %s.", i+1, tell(&steps[i])))
		}
	}
	return s
}

// steps is the table of steps. Batteries and inverter are named where they change.
func (f Frontier) steps() section {
	axis, currency, u := axes[f.Staircase.Axis], f.Scenario.Currency, unitsOf(f.Scenario)
	t := &table{columns: []column{
		number("#"), text("batteries, inverter"), number(axis.head + u.unit(f.Staircase.Unit)), number("cost\n" + currency), number("more\n" + currency),
		number("usable\nkWh"),
	}}
	if f.Staircase.Axis == frontier.AxisBudget {
		t.columns[2], t.columns[3] = number("budget\nfrom "+currency), number(axis.head+u.unit(f.Staircase.Unit))
	}
	other := number("mass\n" + u.unit("kg"))
	if f.Staircase.Axis == frontier.AxisMass {
		other = number("autonomy\nh")
	}
	t.columns = append(t.columns, other, text(""))
	var before *frontier.Step
	same, series := false, false
	for i := range f.Staircase.Steps {
		s := &f.Staircase.Steps[i]
		parts, more, knee := core(s.Plan.Core), "", ""
		if before != nil {
			more = signed(s.Cost-before.Cost, 2)
			if parts == core(before.Plan.Core) {
				parts, same = "same", true
			}
		}
		if s.Knee {
			knee = "knee"
		}
		at, cost := fixed(u.figure(s.At, f.Staircase.Unit), axis.decimals), fixed(s.Cost, 2)
		if f.Staircase.Axis == frontier.AxisBudget {
			at, cost = cost, at
		}
		figure := u.fixed(s.Plan.MassKg, "kg")
		if f.Staircase.Axis == frontier.AxisMass {
			figure = fixed(s.Plan.AutonomyH, 1)
		}
		t.row(strconv.Itoa(i+1), parts, at, cost, more, fixed(s.Plan.UsableKWh, 2), figure, knee)
		before = s
		series = series || inSeries(s.Plan.Core)
	}
	t.notes = []string{axis.note, "More: what the step costs more than the one before."}
	if same {
		t.notes = append(t.notes, "Same: batteries and inverter of the step before, with other cables, devices or casters.")
	}
	if series {
		t.notes = append(t.notes, seriesNote)
	}
	if f.Staircase.Axis == frontier.AxisBudget && f.Scenario.Sold != 0 {
		t.notes = append(t.notes, "The budget is all that may be spent, the "+money(plan.Money(f.Scenario.Sold))+" "+currency+
			" in hand from what was sold included.")
	}
	if f.Staircase.Complete {
		t.notes = append(t.notes, "Proven: no step is missing.")
	} else {
		t.notes = append(t.notes, "NOT COMPLETE: stopped before the last step was found. The steps above are proven.")
	}
	title := fmt.Sprintf("%s for %s", axis.title, f.Scenario.Name)
	return section{title: strings.ToUpper(title[:1]) + title[1:] + ": " + count(len(t.rows), "step", "steps"), table: t}
}
