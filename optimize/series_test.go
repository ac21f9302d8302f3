package optimize_test

import (
	"math"
	"testing"

	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
	"cartwright/scenarios"
)

// Every plan of a series of tighter limits is the one that a search of its own finds; with shops' orders, sun, ties and
// all.
func TestSeries(t *testing.T) {
	plans, none := 0, 0
	for seed := range uint64(12 * *times) {
		p := randomProblem(46e6 + seed)
		switch seed % 4 {
		case 1:
			p = sixShops(47e6 + seed)
		case 3:
			p = sunnyProblem(t, 48e6+seed)
		}
		free := *p.Scenario
		free.Limits.Budget = math.MaxInt64
		for _, way := range []struct {
			name    string
			tighten func(s *scenarios.Scenario, last *plan.Plan)
		}{
			{"autonomy", func(s *scenarios.Scenario, last *plan.Plan) { s.AutonomyH = last.AutonomyH + 1e-6 }},
			{"mass", func(s *scenarios.Scenario, last *plan.Plan) { s.Limits.MassKg = last.MassKg - 0.001 }},
			{"all", func(s *scenarios.Scenario, last *plan.Plan) {
				s.AutonomyH, s.Limits.MassKg = 1.1*s.AutonomyH, math.Min(s.Limits.MassKg, 1.05*last.MassKg)
				if s.Sun != nil {
					s.Limits.Served = math.Min(1, s.Limits.Served+0.02)
				}
			}},
		} {
			s := free
			series := search.NewSeries(question.Problem{Scenario: &s, Catalog: p.Catalog})
			for round := range 8 {
				scenario := s
				got, err := series.Next(t.Context(), &scenario)
				if err != nil {
					t.Fatalf("%s, %d, round %d: %v", way.name, seed, round, err)
				}
				want, err := search.First(t.Context(), question.Problem{Scenario: &scenario, Catalog: p.Catalog}, &bench.Before{}, question.ByCost, false)
				if err != nil {
					t.Fatalf("%s, %d, round %d: %v", way.name, seed, round, err)
				}
				if got == nil || want == nil {
					none++
					if got != nil || want != nil {
						t.Errorf("%s, %d, round %d: %v, want %v", way.name, seed, round, got, want)
					}
					break
				}
				plans++
				if a, b := planText(t, got), planText(t, want); a != b {
					t.Errorf("%s, %d, round %d:\n%s\nwant\n%s", way.name, seed, round, a, b)
					break
				}
				way.tighten(&s, got)
			}
		}
	}
	if plans < 60 || none < 5 {
		t.Errorf("%d plans and %d ends are too few to tell much", plans, none)
	}
	t.Logf("%d plans, %d ends", plans, none)
}
