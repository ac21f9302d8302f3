package search

import (
	"context"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// However little room there is for open nodes: a plan that is said to be proven is the one that is found with all the room
// there may be, what may be missing is said, and no bound is above what there is.
func TestLittleRoom(t *testing.T) {
	full, half, none := 0, 0, 0
	for _, name := range []string{"cider-shed", "star-party"} {
		b := laid(t, name)
		for _, by := range []question.By{question.ByCost, question.ByMass, question.ByLife, question.ByEnergy} {
			all := within(t, b, by, mostNodes)
			if all.Solver.Status != question.Optimal {
				t.Fatalf("%s by %s: %s with all the room there is", name, by, all.Solver.Status)
			}
			for _, room := range []int{2, 8, 32, 128} {
				few := within(t, b, by, room)
				proved := 0
				for i := range few.Plans {
					if !few.Plans[i].Proven {
						continue
					}
					proved++
					if proved != i+1 {
						t.Errorf("%s by %s, room for %d: rank %d is proven and the one before is not", name, by, room, i+1)
					}
					if got, want := key(&few.Plans[i]), key(&all.Plans[i]); got != want {
						t.Errorf("%s by %s, room for %d: rank %d is told as proven, and is %s instead of %s", name, by, room, i+1, got, want)
					}
				}
				switch s := few.Solver; {
				case s.Status == question.Optimal && proved == len(all.Plans):
					full++
				case s.Status != question.MemoryLimit:
					t.Errorf("%s by %s, room for %d: %q with %d plans proved of %d", name, by, room, s.Status, proved, len(all.Plans))
				case proved > 0:
					half++
				default:
					none++
				}
				if few.Solver.Gap > 0 && by == question.ByCost {
					first, best := float64(few.Plans[0].Cost), float64(all.Plans[0].Cost)
					if bound := first * (1 - few.Solver.Gap); bound > best+1 {
						t.Errorf("%s, room for %d: no plan is said to be below %.0f cents, and there is one of %.0f", name, room, bound, best)
					}
				}
			}
		}
	}
	t.Logf("%d searches had room enough, %d proved some of their ranks, %d none", full, half, none)
	if full == 0 || half == 0 || none == 0 {
		t.Error("not every case was met")
	}
}

// laid lays a demo out.
func laid(t *testing.T, demo string) *bench.Bench {
	t.Helper()
	s, err := scenarios.Demo(demo)
	if err != nil {
		t.Fatal(err)
	}
	b, err := bench.Lay(context.Background(), question.Problem{Scenario: s, Catalog: catalog.Embedded()}, "", &bench.Before{})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// within ranks five plans with room for so many open nodes.
func within(t *testing.T, b *bench.Bench, by question.By, room int) *question.Result {
	t.Helper()
	ctx := context.Background()
	o := question.Options{Plans: 5, By: by}.WithDefaults(question.Problem{Scenario: b.Scenario, Catalog: b.Catalog})
	r := newRanking(newSearch(ctx, b, by, o.Plans), o)
	if r.room = room; len(r.nodes) > room {
		r.makeRoom()
	}
	if err := r.run(ctx); err != nil {
		t.Fatal(err)
	}
	out, err := r.result()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// key says which plan it is, and what it costs.
func key(p *plan.Plan) string {
	text := p.Cost.String() + " " + p.Core.Inverter.Part
	for _, b := range p.Core.Batteries {
		text += " " + b.Part
	}
	return text
}
