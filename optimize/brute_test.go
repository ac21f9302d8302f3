package optimize_test

import (
	"cmp"
	"context"
	"flag"
	"fmt"
	"math"
	"slices"
	"testing"

	"cartwright/optimize"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// times multiplies the number of random cases of the tests here, for a long look: with
// go test ./optimize -run 'TestBruteForce|TestLaw' -args -times 20.
var times = flag.Int("times", 1, "how many times as many random cases to look at as usual")

// The random cases compared with the enumeration, by what they are ranked by.
const (
	casesByCost    = 120
	casesByMass    = 30
	casesByLife    = 30
	casesByBattery = 30
	casesByEnergy  = 100
)

// The engine's first ten plans are those of an enumeration of all plans there are.
func TestBruteForce(t *testing.T) {
	for _, test := range []struct {
		name  string
		o     question.Options
		first uint64 // seed
		cases int
	}{
		{"cost", question.Options{By: question.ByCost}, 1e6, casesByCost},
		{"mass", question.Options{By: question.ByMass}, 2e6, casesByMass},
		{"life", question.Options{By: question.ByLife}, 3e6, casesByLife},
		{"battery", question.Options{Distinct: question.DistinctBattery}, 4e6, casesByBattery},
		{"energy", question.Options{By: question.ByEnergy}, 9e6, casesByEnergy},
	} {
		t.Run(test.name, func(t *testing.T) {
			possible, cases := 0, test.cases**times
			for seed := test.first; seed < test.first+uint64(cases); seed++ {
				if compare(t, seed, randomProblem(seed), test.o) {
					possible++
				}
			}
			t.Logf("%d of %d have a plan", possible, cases)
			if share := float64(possible) / float64(cases); share < 0.35 || share > 0.9 {
				t.Errorf("%.0f %% of the cases have a plan: too many or too few to tell much", 100*share)
			}
		})
	}
}

// compare compares one case, and reports whether it has a plan.
func compare(t *testing.T, seed uint64, p question.Problem, o question.Options) bool {
	t.Helper()
	got, err := optimize.Rank(context.Background(), p, o)
	if err != nil {
		t.Errorf("seed %d: %v", seed, err)
		return false
	}
	want := ranked(p, enumerate(t, p, o.By), o)
	if len(want) == 0 {
		if got.Solver.Status != question.Infeasible || len(got.Plans) > 0 {
			t.Errorf("seed %d: %s with %d plans; there is none", seed, got.Solver.Status, len(got.Plans))
		}
		return false
	}
	if got.Solver.Status != question.Optimal {
		t.Errorf("seed %d: %s; there are %d plans, the first %s", seed, got.Solver.Status, len(want), describe(p, &want[0]))
		return true
	}
	if n := min(len(want), p.Scenario.Solver.Plans); len(got.Plans) != n {
		t.Errorf("seed %d: %d plans, want %d", seed, len(got.Plans), n)
	}
	for k := range min(len(want), len(got.Plans)) {
		if wrong := differs(p, &got.Plans[k], want, k, o.By); wrong != "" {
			t.Errorf("seed %d, rank %d: %s", seed, k+1, wrong)
			return true
		}
	}
	return true
}

// ranked returns the enumerated plans in their order, as many as count as different.
func ranked(p question.Problem, all []total, o question.Options) []total {
	if o.By == question.ByLife { // what gives nothing in its life is not ranked by it
		all = slices.DeleteFunc(all, func(t total) bool { return t.lifeWh <= 0 })
	}
	slices.SortStableFunc(all, func(a, b total) int {
		first, second := [2]float64{a.cost, b.cost}, [2]float64{a.massKg, b.massKg}
		switch o.By {
		case question.ByMass:
			first, second = second, first
		case question.ByLife:
			first = [2]float64{a.cost / a.lifeWh, b.cost / b.lifeWh}
		case question.ByEnergy: // sums of the same modules in another order are the same
			first, second = [2]float64{-math.Round(1000 * a.wh), -math.Round(1000 * b.wh)}, first
		}
		return cmp.Or(cmp.Compare(first[0], first[1]), cmp.Compare(second[0], second[1]))
	})
	if o.Distinct != question.DistinctBattery {
		return all
	}
	var different []total
	seen := map[string]bool{}
	for _, t := range all {
		parts := ""
		for b, n := range t.batteries {
			if n > 0 {
				parts += p.Catalog.Batteries[b].ID + " "
			}
		}
		if !seen[parts] {
			different = append(different, t)
		}
		seen[parts] = true
	}
	return different
}

// differs tells in what a plan differs from the k-th of those enumerated, "" for nothing. Two plans that
// cost the same but for the rounding of their bills may stand either way round.
func differs(p question.Problem, got *plan.Plan, want []total, k int, by question.By) string {
	own := slices.IndexFunc(want, func(t total) bool { return t.core(p) == core(got) })
	if own < 0 {
		return fmt.Sprintf("%s at %s is no plan, or no different one", core(got), got.Cost)
	}
	rounding := roundingCents(got)
	for _, t := range []struct {
		of    string
		total *total
	}{{"its own core", &want[own]}, {"this rank", &want[k]}} {
		have, best, tolerance, unit := float64(got.Cost), t.total.cost, rounding, "cents"
		switch by {
		case question.ByMass:
			if t.of == "its own core" && math.Abs(have-best) > tolerance {
				return fmt.Sprintf("%s costs %g cents; of the lightest the cheapest is %s", core(got), have, describe(p, t.total))
			}
			have, best, tolerance, unit = got.MassKg, t.total.massKg, 1e-6*t.total.massKg, "kg"
		case question.ByLife:
			have /= want[own].lifeWh
			best /= t.total.lifeWh
			tolerance /= min(want[own].lifeWh, t.total.lifeWh)
			unit = "cents/Wh"
		case question.ByEnergy:
			if t.of == "this rank" && math.Abs(1000*got.UsableKWh-t.total.wh) > 0.01 {
				return fmt.Sprintf("%s gives %.6f Wh; of this rank the most is %.6f", core(got), 1000*got.UsableKWh, t.total.wh)
			}
		}
		if math.Abs(have-best) > tolerance {
			return fmt.Sprintf("%s has %.9g %s, %.6g kg; of %s the best is %s", core(got), have, unit, got.MassKg, t.of, describe(p, t.total))
		}
	}
	if by != question.ByMass && got.MassKg > want[own].massKg+1e-6*want[own].massKg {
		return fmt.Sprintf("%s weighs %.9g kg; of the cheapest the lightest is %s", core(got), got.MassKg, describe(p, &want[own]))
	}
	return ""
}

// roundingCents is how far a bill in whole cents may be off the sum of its parts: prices of cable are by
// the metre, and the tax is rounded once.
func roundingCents(p *plan.Plan) float64 {
	cents := 1.0
	for _, l := range p.Bill {
		if l.Kind == "cable" {
			cents++
		}
	}
	return cents
}

// core names a plan's core.
func core(p *plan.Plan) string {
	name := fmt.Sprintf("%d %s", p.Core.Inverter.Units, p.Core.Inverter.Part)
	for _, b := range p.Core.Batteries {
		name += fmt.Sprintf(", %d x %d %s", b.Strings, b.Series, b.Part)
	}
	for _, x := range p.Core.Solar {
		name += fmt.Sprintf(", %d x %d x %d %s", x.Inputs, x.Parallel, x.Series, x.Part)
	}
	return name
}

// core names an enumerated plan's core.
func (t *total) core(p question.Problem) string {
	name := fmt.Sprintf("%d %s", t.units, p.Catalog.Inverters[t.inverter].ID)
	for i, n := range t.batteries {
		if b := &p.Catalog.Batteries[i]; n > 0 {
			series, _ := energy.Fits(p.Scenario.Bus, b)
			name += fmt.Sprintf(", %d x %d %s", n, series, b.ID)
		}
	}
	if x := t.field; x != nil {
		name += fmt.Sprintf(", %d x %d x %d %s", x.inputs, x.parallel, x.series, x.module.ID)
	}
	return name
}

// describe tells an enumerated plan.
func describe(p question.Problem, t *total) string {
	return fmt.Sprintf("%s: %.6f cents, %.9g kg, %.6g cents a lifetime kWh", t.core(p), t.cost, t.massKg, 1000*t.cost/t.lifeWh)
}
