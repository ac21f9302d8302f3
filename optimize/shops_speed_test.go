package optimize_test

import (
	"context"
	"flag"
	"testing"
	"time"

	"cartwright/optimize"
	"cartwright/optimize/question"
)

var shopSpeed = flag.String("shopspeed", "", "")

func TestShopProbe(t *testing.T) {
	var n, each int
	var seed uint64
	var name string
	if *shopSpeed == "" {
		return
	}
	fmtSscan(t, *shopSpeed, &name, &n, &each, &seed)
	p := Shopped(t, name, n, each, seed)
	ctx, cancel := context.WithTimeout(context.Background(), 60*time.Second)
	defer cancel()
	cpu := cpuNow()
	r, err := optimize.Rank(ctx, p, question.Options{Plans: 10})
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%s: %s %d plans, %.2f s clock, %.2f s cpu, %d models %d cells", p.Scenario.Name, r.Solver.Status, len(r.Plans), r.Solver.Seconds, cpuNow()-cpu, r.Solver.Models, r.Solver.Cells)
	for i := range r.Plans {
		t.Logf("%d %s ship %s %s proven %v", i+1, r.Plans[i].Cost, r.Plans[i].Shipping, core(&r.Plans[i]), r.Plans[i].Proven)
	}
}
