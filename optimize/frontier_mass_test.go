package optimize_test

import (
	"context"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/frontier"
	"cartwright/optimize/question"
)

// Every step of the staircase of mass is that of an enumeration of all plans, and there is no other.
func TestBruteForceFrontierOfMass(t *testing.T) {
	steps := 0
	for seed := uint64(6e6); seed < 6e6+casesOfFrontier; seed++ {
		p := randomProblem(seed)
		got, err := frontier.Find(context.Background(), p, frontier.AxisMass, nil)
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		steps += len(got.Steps)
		ways := everyWay(t, p)
		least := func(kg float64) float64 {
			cost := math.Inf(1)
			for _, w := range ways {
				if w.massKg <= kg {
					cost = min(cost, w.cost)
				}
			}
			return cost
		}
		// A limit of a step's own mass allows its plan; one that is lower by a gram, the least step there is,
		// the next plan only.
		const gram, rounding = 0.001, 1e-7 // kg
		limit := math.Inf(1)
		for i := range got.Steps {
			s := &got.Steps[i]
			for _, kg := range []float64{limit, s.At + rounding} {
				if have, want := float64(s.Plan.Cost), least(kg); math.Abs(have-want) > roundingCents(&s.Plan) {
					t.Errorf("seed %d, step %d: at most %.7f kg cost %g cents, %g in the enumeration", seed, i+1, kg, have, want)
				}
			}
			limit = s.At - gram
		}
		if want := least(limit - rounding); !math.IsInf(want, 1) {
			t.Errorf("seed %d: after %d steps at most %.7f kg are not to be had; the enumeration has them for %g cents",
				seed, len(got.Steps), limit, want)
		}
		checkStairs(t, seed, got)
	}
	if steps < 2*casesOfFrontier {
		t.Errorf("%d steps in %d cases are too few to tell much", steps, casesOfFrontier)
	}
}

// everyWay returns cost and mass of every way to build every core, whatever the limits of budget and mass.
func everyWay(t *testing.T, p question.Problem) []worth {
	t.Helper()
	s := *p.Scenario
	s.Limits.Budget, s.Limits.MassKg = math.MaxInt64, math.Inf(1)
	e := newEnumeration(t, question.Problem{Scenario: &s, Catalog: p.Catalog})
	var ways []worth
	for _, n := range e.stringVectors() {
		for i := range e.c.Inverters {
			inv := &e.c.Inverters[i]
			for units := 1; units <= inv.MaxUnits; units++ {
				if paths, ok := e.paths(n, inv, units); ok && e.supplies(n, inv, units) {
					ways = append(ways, e.waysOf(n, inv, units, paths)...)
				}
			}
		}
	}
	return ways
}

// waysOf returns every way to build one core.
func (e *enumeration) waysOf(n []int, inv *catalog.Inverter, units int, paths [][]option) []worth {
	h := e.heap(n, inv, units)
	lighter := h.lighterIsBetter()
	var ways []worth
	for level := range e.market.levels {
		core := e.coreCost(n, inv, units, level)
		wirings := e.wirings(paths, pricing{level, lighter})
		for _, f := range e.fittings(&h, n, inv, units, level) {
			for key, list := range wirings {
				if !key.fits(f.centre) || !key.bonded() {
					continue
				}
				for _, w := range list {
					if massKg, stands := h.with(f.boardKg+w.massKg, f.casters); stands {
						ways = append(ways, worth{core + f.cost + w.cost, massKg})
					}
				}
			}
		}
	}
	return different(ways, true)
}
