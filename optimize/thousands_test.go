package optimize_test

import (
	"context"
	"testing"

	"cartwright/optimize"
	"cartwright/optimize/question"
)

// A catalogue of 5,000 parts is planned, and proved, by every objective.
func TestFiveThousandParts(t *testing.T) {
	p := Generated(4500, 400, 100)
	for _, by := range []question.By{question.ByCost, question.ByMass, question.ByLife} {
		r, err := optimize.Rank(context.Background(), p, question.Options{By: by, Plans: 3})
		if err != nil {
			t.Fatal(err)
		}
		if r.Solver.Status != question.Optimal || len(r.Plans) != 3 {
			t.Errorf("by %s: %s with %d plans", by, r.Solver.Status, len(r.Plans))
		}
		for i := range r.Plans {
			if !r.Plans[i].Proven || !r.Plans[i].Audit.Passed {
				t.Errorf("by %s: plan %d is proved: %t, audited: %t", by, i+1, r.Plans[i].Proven, r.Plans[i].Audit.Passed)
			}
		}
		t.Logf("by %s: %d cells, %d programs, %.1f s", by, r.Solver.Cells, r.Solver.Models, r.Solver.Seconds)
	}
}
