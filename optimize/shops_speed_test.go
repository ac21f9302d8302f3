package optimize_test

import (
	"context"
	"flag"
	"fmt"
	"math"
	"testing"
	"time"

	"cartwright/optimize"
	choices "cartwright/optimize/compare"
	"cartwright/optimize/doubt"
	"cartwright/optimize/frontier"
	"cartwright/optimize/next"
	"cartwright/optimize/question"
	"cartwright/optimize/why"
)

var shopSpeed = flag.Bool("shopspeed", false, "time ten proved plans and every question over the offers of up to eight shops, with the other solvers beside")

// shopSizes are the shops, and how many offers each makes; by default the first is looked at alone.
var shopSizes = [][2]int{{2, 20}, {4, 50}, {8, 200}}

// shopTime is how long a question may take here.
const shopTime = 2 * time.Minute

// shopRivals is how long another solver may take for one model here.
const shopRivals = 40 * time.Second

// Ten plans are proved over the offers of several shops, beside what two other solvers take for the first alone. Times
// are by the clock and, in brackets, of the processor:
//
//	go test ./optimize -run TestShopSpeed -shopspeed -v -timeout 60m
func TestShopSpeed(t *testing.T) {
	sizes := shopSizes[:1]
	if *shopSpeed {
		sizes = shopSizes
	}
	fmt.Println("| demo, shops x offers | ten plans proved, s | models | cells | cbc first plan, s | glpsol first plan, s |")
	fmt.Println("|---|---:|---:|---:|---:|---:|")
	for _, name := range []string{"cider-shed", "lantern-market", "star-party"} {
		for _, n := range sizes {
			p := Shopped(t, name, n[0], n[1], 1)
			ctx, stop := context.WithTimeout(context.Background(), shopTime)
			start := now()
			r, err := optimize.Rank(ctx, p, question.Options{Plans: 10})
			took := now().since(start)
			stop()
			if err != nil {
				t.Fatal(err)
			}
			if r.Solver.Status != question.Optimal {
				t.Errorf("%s: %s with %d plans", p.Scenario.Name, r.Solver.Status, len(r.Plans))
			}
			fmt.Printf("| %s, %d x %d | %s | %d | %d |%s\n", name, n[0], n[1], took, r.Solver.Models, r.Solver.Cells, rivals(t, p, r))
		}
	}
}

// rivals tells what the other solvers take for the first plan, and holds their optimum to ours.
func rivals(t *testing.T, p question.Problem, r *question.Result) string {
	t.Helper()
	if !*shopSpeed {
		return " | |"
	}
	return timed(t, p, shopRivals, func(program string, cost float64) {
		if first := &r.Plans[0]; math.Abs(cost-first.Cost.Units()) > roundingCents(first)/100+0.005 {
			t.Errorf("%s: the first plan costs %s, %s says %.4f", p.Scenario.Name, first.Cost, program, cost)
		}
	})
}

// Every question is answered over the offers of several shops.
func TestShopQuestions(t *testing.T) {
	sizes := shopSizes[:1]
	if *shopSpeed {
		sizes = shopSizes
	}
	watch := question.Watch(nil)
	for _, n := range sizes {
		p := Shopped(t, "cider-shed", n[0], n[1], 1)
		for _, ask := range []struct {
			name string
			ask  func(ctx context.Context) error
		}{
			{"why", func(ctx context.Context) error { _, err := why.Explain(ctx, p); return err }},
			{"why part", func(ctx context.Context) error { _, err := why.ExplainPart(ctx, p, "lfp-rack-10"); return err }},
			{"next", func(ctx context.Context) error { _, err := next.Find(ctx, p, next.Options{}); return err }},
			{"frontier", func(ctx context.Context) error {
				_, err := frontier.Find(ctx, p, frontier.AxisAutonomy, watch)
				return err
			}},
			{"doubt", func(ctx context.Context) error { _, err := doubt.Run(ctx, p, doubt.Default(), watch); return err }},
			{"compare", func(ctx context.Context) error {
				_, err := choices.Find(ctx, p, [][]choices.Line{{{Part: "lfp-rack-5", Count: 2}}, {{Part: "lfp-floor-14", Count: 1}}})
				return err
			}},
		} {
			ctx, stop := context.WithTimeout(context.Background(), shopTime)
			start := now()
			err := ask.ask(ctx)
			fmt.Printf("| %s, %d x %d | %s | %v\n", ask.name, n[0], n[1], now().since(start), err)
			stop()
			if err != nil {
				t.Errorf("%s: %s: %v", p.Scenario.Name, ask.name, err)
			}
		}
	}
}

// instant is a moment by the clock and the processor time used until then.
type instant struct {
	clock     time.Time
	processor float64
}

func now() instant { return instant{time.Now(), cpuSeconds()} }

// since tells the time from another moment on.
func (i instant) since(start instant) string {
	return fmt.Sprintf("%.2f (%.2f)", i.clock.Sub(start.clock).Seconds(), i.processor-start.processor)
}
