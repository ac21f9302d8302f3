package optimize_test

import (
	"context"
	"testing"

	"cartwright/optimize"
	"cartwright/optimize/question"
)

// The engine's first ten plans are those of an enumeration of all cores and arrays, each simulated over the year, on 60
// small catalogues with sun.
func TestBruteForceSun(t *testing.T) {
	for _, test := range []struct {
		by    question.By
		first uint64 // seed
		cases int
	}{
		{question.ByCost, 12e6, 30}, {question.ByMass, 13e6, 10}, {question.ByLife, 14e6, 10}, {question.ByEnergy, 15e6, 10},
	} {
		t.Run(string(test.by), func(t *testing.T) {
			possible, sunny, served, cases := 0, 0, 0, test.cases**times
			for seed := test.first; seed < test.first+uint64(cases); seed++ {
				p := sunnyProblem(t, seed)
				if !compare(t, seed, p, question.Options{By: test.by}) {
					continue
				}
				possible++
				if p.Scenario.Limits.Served > 0 {
					served++
				}
				got, err := optimize.Rank(context.Background(), p, question.Options{By: test.by})
				if err != nil {
					t.Fatal(err)
				}
				for i := range got.Plans {
					sunny += len(got.Plans[i].Core.Solar)
				}
			}
			t.Logf("%d of %d have a plan, %d of them serve a share asked for; %d plans have an array", possible, cases, served, sunny)
			if share := float64(possible) / float64(cases); share < 0.3 || share > 0.95 || served == 0 || sunny < possible {
				t.Errorf("%.0f %% of the cases have a plan: too many or too few to tell much", 100*share)
			}
		})
	}
}
