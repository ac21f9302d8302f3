package optimize_test

import (
	"context"
	"testing"

	"cartwright/optimize"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// A cart whose wheels stand so close together that every core tips is found to be impossible by sums of
// moments, without any program: there can be thousands of such cores.
func TestCoresThatTipNeedNoProgram(t *testing.T) {
	for i, name := range scenarios.DemoNames() {
		wheels := 3 + i%2
		p := demo(t, name)
		p.Scenario.Cart.TrackM, p.Scenario.Cart.Casters = 0.02, wheels
		for i := range p.Catalog.Casters {
			p.Catalog.Casters[i].SetOf = wheels
		}
		r, err := optimize.Rank(context.Background(), p, question.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if r.Solver.Status != question.Infeasible || r.Solver.Models != 0 {
			t.Errorf("%s on %d wheels: %s after %d programs", name, wheels, r.Solver.Status, r.Solver.Models)
		}
	}
}
