package optimize_test

import (
	"context"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
	"time"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// demo returns a demo with the catalogue that comes with the program.
func demo(t testing.TB, name string) question.Problem {
	t.Helper()
	s, err := scenarios.Demo(name)
	if err != nil {
		t.Fatal(err)
	}
	return question.Problem{Scenario: s, Catalog: catalog.Embedded()}
}

// aPeer is another solver: how it is asked, and what its answer looks like.
type aPeer struct {
	program string
	args    func(model, answer string) []string
	optimum *regexp.Regexp // of an answer that is proved to be best
}

// Both are asked for a proof, with no gap: cbc's own is 0 and glpsol has none unless it is asked for.
var peers = []aPeer{
	{"glpsol", func(model, answer string) []string { return []string{"--freemps", model, "--write", answer} },
		regexp.MustCompile(`(?m)^s mip \d+ \d+ o (\S+)`)},
	{"cbc", func(model, answer string) []string { return []string{model, "-solve", "-solution", answer} },
		regexp.MustCompile(`^Optimal - objective value (\S+)`)},
}

// solve returns the optimum that a peer finds for a model in free MPS.
func (p *aPeer) solve(t testing.TB, model string) float64 {
	t.Helper()
	optimum, _ := p.solveWithin(t, model, 0)
	return optimum
}

// solveWithin is solve for a time at most, if one is given; done is false where that was not enough.
func (p *aPeer) solveWithin(t testing.TB, model string, most time.Duration) (optimum float64, done bool) {
	t.Helper()
	path, err := exec.LookPath(p.program)
	if err != nil {
		t.Fatalf("%v: install glpk-utils and coinor-cbc; .ci/setup does", err)
	}
	ctx := context.Background()
	if most > 0 {
		var cancel context.CancelFunc
		ctx, cancel = context.WithTimeout(ctx, most)
		defer cancel()
	}
	answer := filepath.Join(t.TempDir(), "answer")
	said, err := exec.CommandContext(ctx, path, p.args(model, answer)...).CombinedOutput()
	if ctx.Err() != nil {
		return 0, false
	}
	if err != nil {
		t.Fatalf("%s: %v\n%s", p.program, err, said)
	}
	text, err := os.ReadFile(answer)
	if err != nil {
		t.Fatal(err)
	}
	found := p.optimum.FindSubmatch(text)
	if found == nil {
		t.Fatalf("%s has not found an optimum:\n%.200s", p.program, text)
	}
	if optimum, err = strconv.ParseFloat(string(found[1]), 64); err != nil {
		t.Fatal(err)
	}
	return optimum, true
}

// writeModel writes a problem as one program, and returns the file.
func writeModel(t testing.TB, p question.Problem, by question.By) string {
	t.Helper()
	m, err := optimize.FullModel(context.Background(), p, question.Options{By: by})
	if err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "model.mps")
	f, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	if err := m.WriteMPS(f); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	return name
}

// Two other solvers, given all of a demo in one piece, find what the engine finds in parts.
func TestDemosAgainstOtherSolvers(t *testing.T) {
	for _, name := range scenarios.DemoNames() {
		for _, by := range []question.By{question.ByCost, question.ByMass} {
			t.Run(name+" by "+string(by), func(t *testing.T) {
				p := demo(t, name)
				p.Scenario.Limits.Served = 0 // a year of hours is too much for them: see TestFourWeeksAgainstOtherSolvers
				got, err := optimize.Rank(context.Background(), p, question.Options{Plans: 1, By: by})
				if err != nil || len(got.Plans) != 1 || got.Solver.Status != question.Optimal {
					t.Fatalf("%v, %+v", err, got)
				}
				best := &got.Plans[0]
				// A bill is in whole cents; of masses within a gram the first found stands.
				have, tolerance, unit := best.Cost.Units(), roundingCents(best)/100, "of cost"
				if by == question.ByMass {
					have, tolerance, unit = best.MassKg, 0.001, "kg"
				}
				model := writeModel(t, p, by)
				for i := range peers {
					want := peers[i].solve(t, model)
					if math.Abs(have-want) > tolerance {
						t.Errorf("%s finds %.6f %s, the first plan has %.6f", peers[i].program, want, unit, have)
					}
				}
			})
		}
	}
}
