package year_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"cartwright/optimize/energy/year"
)

// program writes what is short as a linear program in the CPLEX LP format: what is charged, stored, given and short
// in each hour, the last hour's store being that before the first.
func program(net []float64, s year.Store) string {
	var objective, rows, bounds strings.Builder
	for t, n := range net {
		before := (t + len(net) - 1) % len(net)
		fmt.Fprintf(&objective, " + u%d", t)
		fmt.Fprintf(&rows, " b%d: s%d - s%d - %v c%d + g%d = 0\n", t, t, before, s.RoundTrip, t, t)
		fmt.Fprintf(&rows, " l%d: g%d + u%d = %v\n", t, t, t, max(0, -n))
		fmt.Fprintf(&bounds, " c%d <= %v\n s%d <= %v\n", t, max(0, min(n, s.ChargeW)), t, s.CapacityWh)
	}
	return "Minimize\n short:" + objective.String() + "\nSubject To\n" + rows.String() + "Bounds\n" + bounds.String() + "End\n"
}

var (
	glpsolSays = regexp.MustCompile(`(?m)^Status: +OPTIMAL\nObjective: +short = ([0-9.e+-]+) `)
	cbcSays    = regexp.MustCompile(`^Optimal - objective value +([0-9.e+-]+)`)
)

// ask has a solver make the program least.
func ask(t *testing.T, solver, dir string) float64 {
	t.Helper()
	args, says := []string{"--lp", "year.lp", "-o", "out.txt"}, glpsolSays
	if solver == "cbc" {
		args, says = []string{"year.lp", "-solve", "-solution", "out.txt"}, cbcSays
	}
	cmd := exec.Command(solver, args...)
	cmd.Dir = dir
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%s: %v (apt-get install glpk-utils coinor-cbc)\n%s", solver, err, out)
	}
	text, err := os.ReadFile(filepath.Join(dir, "out.txt"))
	if err != nil {
		t.Fatal(err)
	}
	found := says.FindStringSubmatch(string(text))
	if found == nil {
		t.Fatalf("%s gives no optimum:\n%.300s", solver, text)
	}
	v, err := strconv.ParseFloat(found[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// The simulation is the optimum of the linear program, by two solvers that know nothing of it: twenty random cases
// of 60 days to a year.
func TestShortAgainstLinearProgram(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 1))
	dir := t.TempDir()
	some := 0
	for i := range 20 {
		days := 60 + rng.IntN(60)
		if i == 0 {
			days = 365
		}
		net, s := weather(rng, days), store(rng)
		if err := os.WriteFile(filepath.Join(dir, "year.lp"), []byte(program(net, s)), 0o666); err != nil {
			t.Fatal(err)
		}
		got := year.Short(net, s).Wh
		if got > 0 && got < 0.9*asked(net) { // without a store all of it is short
			some++
		}
		for _, solver := range []string{"glpsol", "cbc"} {
			// 1e-6: what the solvers let a row be off by, and six digits of the objective that glpsol prints.
			if want := ask(t, solver, dir); math.Abs(got-want) > 1e-6*asked(net)+5e-6*want {
				t.Errorf("case %d, %d days, %+v: %g short, %s says %g", i, days, s, got, solver, want)
			}
		}
	}
	if some < 10 {
		t.Errorf("in only %d cases the store does some of the work", some)
	}
}
