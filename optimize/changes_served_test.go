package optimize_test

import (
	"context"
	"testing"

	"cartwright/optimize/bench"
	"cartwright/optimize/relax"
	"cartwright/optimize/search"
)

// Where the sun serves less than is asked for, the share that it can serve is named: there is a plan with it, and none
// with a hundredth of a percent more.
func TestChangeOfServed(t *testing.T) {
	p := demo(t, "goat-dairy")
	p.Scenario.Limits.Served = 0.9999
	changes, err := relax.Changes(context.Background(), p, &bench.Before{})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range changes {
		if l := c.Limits[0]; l.Name == "served" {
			for _, x := range []struct {
				more     float64
				possible bool
			}{{0, true}, {0.01, false}} {
				q := demo(t, "goat-dairy")
				q.Scenario.Limits.Served = (l.To + x.more) / 100
				found, err := search.Feasible(context.Background(), q)
				if err != nil || (found != nil) != x.possible {
					t.Errorf("%.2f %%: a plan: %t, %v", l.To+x.more, found != nil, err)
				}
			}
			return
		}
	}
	t.Errorf("no change of the share served: %+v", changes)
}
