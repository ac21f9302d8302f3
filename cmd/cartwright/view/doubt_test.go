package view

import (
	"testing"

	"cartwright/optimize/doubt"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// someDoubt is a hand-made answer of two plans; its figures are chosen to be told apart, not computed.
func someDoubt() Doubt {
	s := sample()
	return Doubt{
		Scenario: s.Scenario, Catalog: s.Catalog,
		Options: doubt.Options{Plans: 2, Draws: 3000, Seed: 7, Prices: 0.1, Loads: 0.125},
		Doubted: &doubt.Doubted{
			Draws: 3000, Seed: 7, Ranking: s.Result,
			Plans: []doubt.PlanDoubt{
				{Rank: 1, Core: first().Core, Cost: first().Cost, Cheapest: 0.61234, Feasible: 0.75, MeanCost: 2361.234567,
					Cost95: 250012, Greatest: 261234, Breaks: []doubt.Break{{Limit: plan.LimitAutonomy, Share: 0.2}, {Limit: plan.LimitLeg, Share: 0.05}}},
				{Rank: 2, Core: second().Core, Cost: second().Cost, Cheapest: 0.0001, Feasible: 0.99999, MeanCost: 2511,
					Cost95: 260000, Greatest: 270001, Breaks: []doubt.Break{{Limit: plan.LimitBudget, Share: 0.00001}}},
			},
			Regret: &doubt.Regret{Draws: 2250, Mean: 12.345, At95: 9900, Most: 12345}, FirstFails: 0.249, NoneServes: 0.00001, Robust: 2,
		},
		Cautions: []string{"Arcs can kill."},
	}
}

func TestDoubtInEveryFormat(t *testing.T) {
	never := someDoubt()
	d := *never.Doubted
	d.Regret, d.Plans = nil, append([]doubt.PlanDoubt{}, d.Plans...)
	d.Plans[0].Feasible = 0
	never.Doubted = &d
	calm := someDoubt()
	same := *calm.Doubted
	same.Regret = &doubt.Regret{Draws: 2250}
	calm.Doubted = &same
	none := someDoubt()
	none.Doubted = &doubt.Doubted{Draws: 3000, Seed: 7, Ranking: &question.Result{Solver: question.Solver{Name: "cartwright", Version: "1",
		Status: question.Infeasible, Models: 9}, Changes: []question.Change{{Limits: []question.LimitChange{{Name: "mass", From: 90, To: 96.5, Unit: "kg"}}}}}}
	for _, c := range []struct {
		file   string
		answer Doubt
		format Format
	}{
		{"doubt.txt", someDoubt(), Table},
		{"doubt.md", someDoubt(), Markdown},
		{"doubt.csv", someDoubt(), CSV},
		{"doubt.json", someDoubt(), JSON},
		{"doubt-never.txt", never, Table},
		{"doubt-calm.txt", calm, Table},
		{"doubt-none.txt", none, Table},
		{"doubt-none.json", none, JSON},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}

// A share that is not nothing is not shown as nothing, nor one that is not all as all.
func TestPercent(t *testing.T) {
	for share, want := range map[float64]string{0: "0", 1: "100", 0.5: "50.0", 0.0004: "<0.1", 0.9996: ">99.9", 0.0006: "0.1", 0.9994: "99.9"} {
		if got := percent(share); got != want {
			t.Errorf("percent(%g) = %s, want %s", share, got, want)
		}
	}
}
