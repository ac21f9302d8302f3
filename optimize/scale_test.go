package optimize_test

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"cartwright/optimize"
	"cartwright/optimize/question"
)

var (
	scale     = flag.Bool("scale", false, "plan from 300 to 3,000 batteries of every family, with the time and memory that are promised for it")
	scaleOnly = flag.String("scaleonly", "", "part of the name of a case, as in \"clustered, 300\": no others are planned")
	rivalTime = flag.Duration("rivaltime", 0, "with -scale, let other solvers look for the first plan of 300 batteries for so long")
)

// What is promised for ten proved plans of 3,000 batteries, 400 inverters and 100 caster sets: of the processor, since
// tests share the machine, and of memory; and how many times as much that is as what 300 take.
const (
	promisedSeconds = 3.0
	promisedMB      = 300.0
	promisedGrowth  = 15.0
)

// Ten plans are proved from catalogues of every family, each by a process of its own, so that what it took is known. By
// default the catalogues are small and no time is asked for. The table of DEVELOPERS.md comes from
//
//	go test ./optimize -run TestScale -scale -rivaltime 1m -timeout 1h
func TestScale(t *testing.T) {
	sizes := []int{60}
	if *scale {
		sizes = []int{300, 1000, 3000}
	}
	fmt.Println("| family, batteries | s | of the processor, s | MB | programs | children | cbc, s | glpsol, s |")
	fmt.Println("|---|---:|---:|---:|---:|---:|---:|---:|")
	for i := range families {
		least := math.Inf(1)
		for _, n := range sizes {
			name := fmt.Sprintf("%s, %d", families[i].name, n)
			if !strings.Contains(name, *scaleOnly) {
				continue
			}
			x := apart(t, i, n)
			if x.Status != question.Optimal || x.Plans != 10 {
				t.Errorf("%s: %s with %d plans", name, x.Status, x.Plans)
			}
			if x.MB > promisedMB {
				t.Errorf("%s: %.0f MB, at most %.0f are promised", name, x.MB, promisedMB)
			}
			least = math.Min(least, x.CPU)
			if n == 3000 && (x.CPU > promisedSeconds || x.CPU > promisedGrowth*least) {
				t.Errorf("%s: %.2f s of the processor; at most %.0f s, and %.0f times the %.2f s of fewer, are promised", name, x.CPU, promisedSeconds, promisedGrowth, least)
			}
			rivals := "| | |"
			if n <= 300 && *rivalTime > 0 {
				rivals = rivalsOf(t, name, Sized(i, n), x.First)
			}
			fmt.Printf("| %s | %.2f | %.2f | %.0f | %d | %d %s\n", name, x.Seconds, x.CPU, x.MB, x.Models, x.Cells, rivals)
		}
	}
}

// Sized returns a problem of a family with so many batteries, and inverters and casters to go with them.
func Sized(family, batteries int) question.Problem {
	return Family(&families[family], batteries, max(6, 400*batteries/3000), max(4, batteries/30))
}

// rivalsOf times other solvers on the exported program, and asks those that are done in time for the same cost.
func rivalsOf(t *testing.T, name string, p question.Problem, first float64) string {
	t.Helper()
	return "|" + timed(t, p, *rivalTime, func(program string, cost float64) {
		if math.Abs(cost-first) > 0.1 { // the program is of unrounded money
			t.Errorf("%s: the first plan costs %.2f, %s says %.4f", name, first, program, cost)
		}
	})
}

// taken is what planning a case took.
type taken struct {
	Status            question.Status
	Plans             int
	First             float64 // cost
	Seconds, CPU, MB  float64
	Models, Cells     int
	Family, Batteries int
}

// apartEnv tells a process of this test's which case it is to plan.
const apartEnv = "CARTWRIGHT_SCALE_CASE"

// apart plans a case by a process of its own.
func apart(t *testing.T, family, batteries int) (x taken) {
	t.Helper()
	c := exec.Command(os.Args[0], "-test.run", "^TestScaleApart$")
	c.Env = append(os.Environ(), fmt.Sprintf("%s=%d %d", apartEnv, family, batteries))
	text, err := c.CombinedOutput()
	if err != nil {
		t.Fatalf("%s, %d: %v\n%s", families[family].name, batteries, err, text)
	}
	line, _, _ := strings.Cut(string(text), "\n")
	if err := json.Unmarshal([]byte(line), &x); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return x
}

// TestScaleApart plans the case that the environment names, and else nothing.
func TestScaleApart(t *testing.T) {
	asked, ok := os.LookupEnv(apartEnv)
	if !ok {
		return
	}
	var x taken
	if _, err := fmt.Sscan(asked, &x.Family, &x.Batteries); err != nil {
		t.Fatal(err)
	}
	p := Sized(x.Family, x.Batteries)
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	start, cpu := time.Now(), cpuSeconds()
	r, err := optimize.Rank(ctx, p, question.Options{Plans: 10})
	if err != nil {
		t.Fatal(err)
	}
	x.Status, x.Plans, x.Models, x.Cells = r.Solver.Status, len(r.Plans), r.Solver.Models, r.Solver.Cells
	x.Seconds, x.CPU, x.MB = time.Since(start).Seconds(), cpuSeconds()-cpu, mostMB()
	if len(r.Plans) > 0 {
		x.First = r.Plans[0].Cost.Units()
	}
	text, err := json.Marshal(x)
	if err != nil {
		t.Fatal(err)
	}
	fmt.Println(string(text))
}
