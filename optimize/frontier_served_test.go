package optimize_test

import (
	"context"
	"math"
	"testing"

	"cartwright/optimize/frontier"
	"cartwright/optimize/question"
)

// Every step of the staircase of sun is that of an enumeration of all cores and arrays, and there is no other: what
// is asked for up to a step costs what its plan costs.
func TestBruteForceFrontierOfServed(t *testing.T) {
	const cases = 12
	steps := 0
	for seed := uint64(16e6); seed < 16e6+cases; seed++ {
		p := sunnyProblem(t, seed)
		got, err := frontier.Find(context.Background(), p, frontier.AxisServed, nil)
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		steps += len(got.Steps)
		s := *p.Scenario
		s.Limits.Served, s.Limits.Budget = 0, math.MaxInt64
		q := question.Problem{Scenario: &s, Catalog: p.Catalog}
		all := enumerate(t, q, question.ByCost)
		e := newEnumeration(t, q)
		share := make([]float64, len(all))
		for i := range all {
			e.field = all[i].field
			served, _ := e.year(all[i].batteries, &e.c.Inverters[all[i].inverter], all[i].units)
			share[i] = 100 * served
		}
		least := func(pct float64) float64 {
			cost := math.Inf(1)
			for i := range all {
				if share[i] >= pct {
					cost = min(cost, all[i].cost)
				}
			}
			return cost
		}
		const step, rounding = 1e-4, 1e-7 // percent: the least step there is, and the rounding of a year's sums
		from := 0.0
		for i := range got.Steps {
			s := &got.Steps[i]
			for _, pct := range []float64{from, s.At - rounding} {
				if have, want := float64(s.Plan.Cost), least(pct); math.Abs(have-want) > roundingCents(&s.Plan) {
					t.Errorf("seed %d, step %d: %.7f %% cost %g cents, %g in the enumeration", seed, i+1, pct, have, want)
				}
			}
			from = s.At + step
		}
		if want := least(from + rounding); !math.IsInf(want, 1) && from < 100 {
			t.Errorf("seed %d: after %d steps %.7f %% are not to be had; the enumeration has them for %g cents", seed, len(got.Steps), from, want)
		}
	}
	if steps < 2*cases {
		t.Errorf("%d steps in %d cases are too few to tell much", steps, cases)
	}
}
