package optimize_test

import (
	"testing"

	"cartwright/optimize/bench"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
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
		b, err := bench.Lay(t.Context(), p, "", &bench.Before{})
		if err != nil {
			t.Fatal(err)
		}
		r, err := search.Run(t.Context(), b, question.Options{}.WithDefaults(p))
		if err != nil {
			t.Fatal(err)
		}
		if r.Solver.Status != question.Infeasible || r.Solver.Models != 0 {
			t.Errorf("%s on %d wheels: %s after %d programs", name, wheels, r.Solver.Status, r.Solver.Models)
		}
	}
}
