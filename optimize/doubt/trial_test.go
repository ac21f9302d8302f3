package doubt

import (
	"context"
	"slices"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/audit"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/rank"
	"cartwright/scenarios"
)

// In every draw the limits that a plan is said to break are those that its audit fails when the scenario
// has the loads drawn: the audit knows nothing of drawing.
func TestBrokenAsAudited(t *testing.T) {
	inDoubt := []string{plan.LimitPower, plan.LimitLeg, plan.LimitSurge, plan.LimitLegSurge, plan.LimitBusCurrent,
		plan.LimitPeakCurrent, plan.LimitCharger, plan.LimitCharge, plan.LimitAutonomy, plan.LimitServed, plan.LimitBusbarCurrent}
	broken := 0
	for _, name := range scenarios.DemoNames() {
		t.Run(name, func(t *testing.T) {
			s, err := scenarios.Demo(name)
			if err != nil {
				t.Fatal(err)
			}
			p := question.Problem{Scenario: s, Catalog: catalog.Embedded()}
			r, err := rank.Plans(context.Background(), p, question.Options{Plans: 3})
			if err != nil {
				t.Fatal(err)
			}
			o := Default()
			o.Loads = 0.6 // far enough that every limit breaks now and then
			dice := newDice(p, o)
			var list []*candidate
			light := sunlightOf(s)
			for i := range r.Plans {
				c, err := newCandidate(p, dice, light, &r.Plans[i])
				if err != nil {
					t.Fatal(err)
				}
				list = append(list, c)
			}
			d := newDemands(s, list)
			for range 60 {
				dice.throw()
				if err := d.draw(dice); err != nil {
					t.Fatal(err)
				}
				if light != nil {
					light.shine(dice.light)
					serveAll(list, d.of)
				}
				for i, c := range list {
					var got, want []string
					for _, limit := range c.broken(d.of[i], d.drawn[d.group[i]], c.p.Cost) {
						// The audit prices by the catalogue, and has a word of its own for circuits.
						if limit != plan.LimitBudget && !strings.HasPrefix(limit, "circuit ") {
							got = append(got, limit)
						}
					}
					drawn := *s
					drawn.Loads = slices.Clone(s.Loads)
					for k := range drawn.Loads {
						drawn.Loads[k].Watts *= dice.load[k]
					}
					if s.Measured != nil {
						drawn.Measured = scaled(s.Measured, dice.load[0])
					}
					if light != nil {
						drawn.Sun = offBy(s.Sun, light, dice.light)
					}
					for _, check := range audit.Plan(&drawn, p.Catalog, c.p).Checks {
						if !check.Passed && slices.Contains(inDoubt, check.Name) && !slices.Contains(want, check.Name) {
							want = append(want, check.Name)
						}
					}
					if slices.ContainsFunc(got, func(name string) bool { return strings.HasPrefix(name, "circuit ") }) {
						broken += len(got)
						continue // loads that fit no circuit have no legs to audit
					}
					slices.Sort(got)
					slices.Sort(want)
					if !slices.Equal(got, want) {
						t.Fatalf("plan %d breaks %q, its audit fails %q", c.p.Rank, got, want)
					}
					broken += len(got)
				}
			}
		})
	}
	if broken == 0 {
		t.Error("no limit broke in any draw: nothing was tested")
	}
}

// offBy returns a sun whose light on the modules is off by a factor, hour by hour.
func offBy(of *scenarios.Sun, l *sunlight, factor float64) *scenarios.Sun {
	s := *of
	w := &scenarios.Weather{TempC: l.light.AirC}
	for _, wm2 := range l.light.Plane {
		w.POA = append(w.POA, factor*wm2)
	}
	s.Hours = w
	return &s
}

// Draws are counted as documented, also where costs are equal and where nothing serves.
func TestTally(t *testing.T) {
	type outcome struct {
		cost  plan.Money
		fails string
	}
	of := func(cost plan.Money) outcome { return outcome{cost: cost} }
	list := []*candidate{{p: &plan.Plan{Rank: 1}}, {p: &plan.Plan{Rank: 2}}, {p: &plan.Plan{Rank: 3}}}
	for _, c := range []struct {
		name     string
		draws    [][3]outcome
		cheapest [3]float64
		feasible [3]float64
		regret   *Regret
		fails    float64
		none     float64
		robust   int
	}{
		{"of equally cheap ones the first in rank", [][3]outcome{{of(500), of(500), of(600)}, {of(700), of(600), of(600)}},
			[3]float64{0.5, 0.5, 0}, [3]float64{1, 1, 1}, &Regret{Draws: 2, Mean: 0.5, At95: 100, Most: 100}, 0, 0, 2},
		{"the cheapest that fails does not count", [][3]outcome{{{100, "budget"}, of(500), of(600)}, {of(700), {100, "surge"}, of(900)}},
			[3]float64{0.5, 0.5, 0}, [3]float64{0.5, 0.5, 1}, &Regret{Draws: 1}, 0.5, 0, 3},
		{"none serves", [][3]outcome{{{1, "mass"}, {1, "mass"}, {1, "mass"}}},
			[3]float64{}, [3]float64{}, nil, 0, 1, 1},
		{"equally robust: the least greatest cost, then the first in rank", [][3]outcome{{of(900), of(100), of(800)}, {of(100), of(800), of(100)}},
			[3]float64{0.5, 0.5, 0}, [3]float64{1, 1, 1}, &Regret{Draws: 2, Mean: 4, At95: 800, Most: 800}, 0, 0, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			tally := newTally(list, len(c.draws))
			for _, draw := range c.draws {
				tally.draw(func(i int) (plan.Money, []string) {
					if draw[i].fails != "" {
						return draw[i].cost, []string{draw[i].fails}
					}
					return draw[i].cost, nil
				})
			}
			var d Doubted
			tally.report(&d)
			for i, one := range d.Plans {
				if one.Cheapest != c.cheapest[i] || one.Feasible != c.feasible[i] {
					t.Errorf("plan %d: cheapest in %g, feasible in %g; want %g and %g", i+1, one.Cheapest, one.Feasible, c.cheapest[i], c.feasible[i])
				}
			}
			if (d.Regret == nil) != (c.regret == nil) || d.Regret != nil && *d.Regret != *c.regret {
				t.Errorf("regret %+v, want %+v", d.Regret, c.regret)
			}
			if d.FirstFails != c.fails || d.NoneServes != c.none || d.Robust != c.robust {
				t.Errorf("first fails in %g, none serves in %g, robust is %d; want %g, %g, %d", d.FirstFails, d.NoneServes, d.Robust, c.fails, c.none, c.robust)
			}
		})
	}
}
