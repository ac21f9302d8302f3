package optimize_test

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
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
	scaleOnly = flag.String("scaleonly", "", "a family and a number of batteries, as in \"clustered/300\": no others are planned")
)

// scaleChild names a case to the process that plans it: each is planned by one of its own, to know what memory it took.
const scaleChild = "CARTWRIGHT_SCALE_CASE"

// scaled is what planning a case took.
type scaled struct {
	Status  string
	Plans   int
	First   string
	Last    string
	Seconds float64
	CPU     float64
	Models  int
	Cells   int
	MB      float64
}

// TestScaleChild plans the case that the environment names; it is no test of its own.
func TestScaleChild(t *testing.T) {
	name, ok := os.LookupEnv(scaleChild)
	if !ok {
		return
	}
	var family string
	var n int
	at := strings.LastIndex(name, "/")
	family = name[:at]
	fmt.Sscan(name[at+1:], &n)
	for i := range families {
		if families[i].name != family {
			continue
		}
		p := Family(&families[i], n, 400*n/3000, max(4, n/30))
		ctx, cancel := context.WithTimeout(context.Background(), 30*time.Second)
		defer cancel()
		start, cpu := time.Now(), cpuSeconds()
		r, err := optimize.Rank(ctx, p, question.Options{Plans: 10})
		if err != nil {
			t.Fatal(err)
		}
		out := scaled{Status: string(r.Solver.Status), Plans: len(r.Plans), Seconds: time.Since(start).Seconds(), Models: r.Solver.Models, Cells: r.Solver.Cells}
		if len(r.Plans) > 0 {
			out.First, out.Last = r.Plans[0].Cost.String(), r.Plans[len(r.Plans)-1].Cost.String()
		}
		out.CPU, out.MB = cpuSeconds()-cpu, mostMB()
		text, _ := json.Marshal(out)
		fmt.Println("scaled", string(text))
	}
}

func planScaled(t *testing.T, name string) (out scaled) {
	t.Helper()
	c := exec.Command(os.Args[0], "-test.run", "^TestScaleChild$")
	c.Env = append(os.Environ(), scaleChild+"="+name)
	text, err := c.CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, text)
	}
	for _, line := range strings.Split(string(text), "\n") {
		if rest, ok := strings.CutPrefix(line, "scaled "); ok {
			if err := json.Unmarshal([]byte(rest), &out); err != nil {
				t.Fatal(err)
			}
		}
	}
	return out
}

func TestScale(t *testing.T) {
	sizes := []int{60}
	if *scale {
		sizes = []int{300, 1000, 3000}
	}
	for i := range families {
		for _, n := range sizes {
			name := fmt.Sprintf("%s/%d", families[i].name, n)
			if *scaleOnly != "" && *scaleOnly != name {
				continue
			}
			fmt.Printf("%s %+v\n", name, planScaled(t, name))
		}
	}
}
