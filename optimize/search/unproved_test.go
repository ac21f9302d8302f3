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

// A core whose solve ended with the best point found, unproved, once left the ranking "optimal" and the ranks after it
// "proven"; and one that time cut short was told as a failure of the solver.
func TestUnprovedCore(t *testing.T) {
	for _, test := range []struct {
		name  string
		ended bool
		want  question.Status
	}{{"given up", false, question.GaveUp}, {"out of time", true, question.TimeLimit}} {
		t.Run(test.name, func(t *testing.T) { unproved(t, test.ended, test.want) })
	}
}

// unproved takes answers that are not proved, and goes on for as long as there is time.
func unproved(t *testing.T, ended bool, want question.Status) {
	t.Helper()
	s, err := scenarios.Demo("star-party")
	if err != nil {
		t.Fatal(err)
	}
	p := question.Problem{Scenario: s, Catalog: catalog.Embedded()}
	b, err := bench.Lay(context.Background(), p, "", &bench.Before{})
	if err != nil {
		t.Fatal(err)
	}
	o := question.Options{Plans: 3}.WithDefaults(p)
	r := newRanking(newSearch(context.Background(), b, o.By, o.Plans), o)
	r.seen, r.best = map[string]bool{}, map[string][2]float64{}
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
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
			a.Status, a.Ended = milp.Best, ended
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
	if ended {
		cancel()
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
	if out.Solver.Status != want {
		t.Errorf("the ranking is %q, want %q", out.Solver.Status, want)
	}
	for _, x := range out.Plans {
		if x.Proven {
			t.Errorf("plan %d is told as proven", x.Rank)
		}
	}
}
