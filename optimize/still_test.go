package optimize_test

import (
	"encoding/json"
	"testing"

	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/relax"
	"cartwright/optimize/search"
)

// Where a best plan is said to be the best of tighter limits still, the whole search finds the same plan; with shops'
// orders, ties and all.
func TestStillTheBest(t *testing.T) {
	still, other := 0, 0
	for _, by := range []question.By{question.ByCost, question.ByLife, question.ByMass, question.ByEnergy} {
		for seed := range uint64(20 * *times) {
			p := randomProblem(44e6 + seed)
			if seed%3 == 0 {
				p = sixShops(45e6 + seed)
			}
			best, err := search.First(t.Context(), p, &bench.Before{}, by, false)
			if err != nil || best == nil {
				continue
			}
			for _, l := range relax.Levers(p.Scenario) {
				to, ok := l.Moved(l.Get(p.Scenario), false)
				if !ok {
					continue
				}
				q := relax.With(p, []relax.Lever{l}, []float64{to})
				got, err := search.Still(t.Context(), q, &bench.Before{}, by, best)
				if err != nil {
					t.Fatal(err)
				}
				if got == nil {
					other++
					continue
				}
				still++
				want, err := search.First(t.Context(), q, &bench.Before{}, by, false)
				if err != nil || want == nil {
					t.Fatalf("%s, %d, %s: %v, %v", by, seed, l.Name, want, err)
				}
				if a, b := planText(t, got), planText(t, want); a != b {
					t.Errorf("%s, %d, %s: it is not the best still\n%s\nwant\n%s", by, seed, l.Name, a, b)
				}
			}
		}
	}
	if still < 10 || other < 3 {
		t.Errorf("%d are best still, %d are not known to be", still, other)
	}
}

func planText(t *testing.T, p *plan.Plan) string {
	t.Helper()
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
