package optimize_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"cartwright/optimize"
	"cartwright/optimize/question"
)

// The random problems given to the other solvers in one piece, half of them by cost and half by mass.
const casesOfPeers = 24

// impossible is what a peer says of a program that no point meets.
var impossible = regexp.MustCompile(`(?i)infeasible|HAS NO (PRIMAL |INTEGER )?FEASIBLE SOLUTION`)

// Two other solvers, given all of a random problem in one piece, find what the engine finds in parts, and
// no more than it where it finds nothing.
func TestRandomProblemsAgainstOtherSolvers(t *testing.T) {
	agreed, none := 0, 0
	for k := range casesOfPeers * *times {
		seed, by := 8e6+uint64(k), []question.By{question.ByCost, question.ByMass}[k%2]
		p := randomProblem(seed)
		got, err := optimize.Rank(context.Background(), p, question.Options{Plans: 1, By: by})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if got.Solver.Status == question.Infeasible {
			none++
		}
		for i := range peers {
			want, possible, err := peers[i].ask(t, p, by)
			switch {
			case err != nil:
				t.Errorf("seed %d by %s: %v", seed, by, err)
			case possible != (len(got.Plans) > 0):
				t.Errorf("seed %d by %s: %s says possible: %t; the engine has %d plans", seed, by, peers[i].program, possible, len(got.Plans))
			case possible:
				best := &got.Plans[0]
				have, tolerance := best.Cost.Units(), roundingCents(best)/100
				if by == question.ByMass {
					have, tolerance = best.MassKg, 0.001
				}
				if math.Abs(have-want) > tolerance {
					t.Errorf("seed %d by %s: %s finds %.6f, the first plan has %.6f", seed, by, peers[i].program, want, have)
					continue
				}
				agreed++
			}
		}
	}
	t.Logf("%d optima agree; %d problems have no plan", agreed, none)
	if agreed == 0 || none == 0 {
		t.Error("not all kinds of answers occur")
	}
}

// ask returns what a peer makes of a problem written as one program. One that leaves nothing to choose from has none,
// and no plan.
func (p *aPeer) ask(t *testing.T, problem question.Problem, by question.By) (optimum float64, possible bool, err error) {
	t.Helper()
	m, err := optimize.FullModel(context.Background(), problem, question.Options{By: by})
	if err != nil {
		if strings.HasPrefix(err.Error(), "there is nothing to choose from") {
			err = nil
		}
		return 0, false, err
	}
	model, answer := filepath.Join(t.TempDir(), "model.mps"), filepath.Join(t.TempDir(), "answer")
	var text bytes.Buffer
	if err := m.WriteMPS(&text); err != nil {
		return 0, false, err
	}
	if err := os.WriteFile(model, text.Bytes(), 0o600); err != nil {
		return 0, false, err
	}
	said, err := exec.Command(p.program, p.args(model, answer)...).CombinedOutput()
	if err != nil {
		return 0, false, err
	}
	written, err := os.ReadFile(answer)
	if err != nil {
		return 0, false, err
	}
	if found := p.optimum.FindSubmatch(written); found != nil {
		optimum, err = strconv.ParseFloat(string(found[1]), 64)
		return optimum, true, err
	}
	if impossible.Match(said) || impossible.Match(written) {
		return 0, false, nil
	}
	return 0, false, fmt.Errorf("%s neither finds an optimum nor says that there is none:\n%s", p.program, said)
}
