package search

import (
	"context"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/milp"
	"cartwright/optimize/model"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// A core whose solve ended with the best point found, unproved and not by time, once left the ranking "optimal"
// and the ranks after it "proven".
func TestUnprovedCore(t *testing.T) {
	s, err := scenarios.Demo("star-party")
	if err != nil {
		t.Fatal(err)
	}
	p := question.Problem{Scenario: s, Catalog: catalog.Embedded()}
	b, err := bench.Lay(p, "", &bench.Before{})
	if err != nil {
		t.Fatal(err)
	}
	o := question.Options{Plans: 3}.WithDefaults(p)
	r := &ranking{search: newSearch(b, o.By), o: o}
	r.seen, r.best = map[string]bool{}, map[string][2]float64{}
	ctx := context.Background()
	first := r.nextCores(ctx)
	if len(first) == 0 {
		t.Fatal("there is no core to solve")
	}
	solved := 0
	for _, n := range first {
		a := model.Solve(ctx, b, &n.core, model.Ask{By: o.By, Market: r.marketOf(n)})
		if a.Err != nil {
			t.Fatal(a.Err)
		}
		if a.Status == milp.Proved {
			a.Status = milp.Best
			solved++
		}
		if err := r.take(n, &a); err != nil {
			t.Fatal(err)
		}
		for _, m := range r.nodes {
			if m.kind == coreNode && m.found != nil && m.score > n.score {
				t.Errorf("an unproved cost serves as the bound %v of its core, which was bounded by %v", m.score, n.score)
			}
		}
	}
	if solved == 0 {
		t.Fatal("no core was solved")
	}
	if err := r.run(ctx); err != nil {
		t.Fatal(err)
	}
	out, err := r.result()
	if err != nil {
		t.Fatal(err)
	}
	if out.Solver.Status != question.GaveUp {
		t.Errorf("the ranking is %q", out.Solver.Status)
	}
	for _, x := range out.Plans {
		if x.Proven {
			t.Errorf("plan %d is told as proven", x.Rank)
		}
	}
}
