//go:build linux && (amd64 || arm64) && !nolpsolve

package optimize_test

import (
	"context"
	"flag"
	"fmt"
	"reflect"
	"testing"

	"cartwright/optimize"
	"cartwright/optimize/milp"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

var engineRuns = flag.Int("engines", 20, "random problems that TestEngines ranks with each engine")

// TestEngines: the plans are the same to the last digit, whichever engine looks for points.
func TestEngines(t *testing.T) {
	problems := map[string]question.Problem{"30 batteries": Generated(30, 6, 4)}
	for _, name := range scenarios.DemoNames() {
		problems[name] = demo(t, name)
	}
	for seed := range uint64(*engineRuns) {
		problems[fmt.Sprint("random ", seed)] = randomProblem(seed)
	}
	for name, p := range problems {
		for _, by := range []question.By{question.ByCost, question.ByMass} {
			rank := func(engine string) *question.Result {
				t.Setenv(milp.EngineVariable, engine)
				if err := milp.Choose(); err != nil {
					t.Fatal(err) // apt-get install lp-solve
				}
				r, err := optimize.Rank(context.Background(), p, question.Options{Plans: 5, By: by})
				if err != nil || r.Solver.Status != question.Optimal && r.Solver.Status != question.Infeasible {
					t.Fatalf("%s by %s, %s: %v, %v", name, by, engine, r, err)
				}
				return r
			}
			own, other := rank("go"), rank("lp_solve")
			if own.Solver.Name == other.Solver.Name {
				t.Fatalf("both by %s", own.Solver.Name)
			}
			if len(own.Plans) != len(other.Plans) {
				t.Fatalf("%s by %s: %d and %d plans", name, by, len(own.Plans), len(other.Plans))
			}
			for i := range own.Plans {
				if !reflect.DeepEqual(own.Plans[i], other.Plans[i]) {
					t.Errorf("%s by %s: plan %d differs: %+v and %+v", name, by, i+1, own.Plans[i], other.Plans[i])
				}
			}
		}
	}
}
