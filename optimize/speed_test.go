package optimize_test

import (
	"context"
	"runtime"
	"testing"

	"cartwright/optimize"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// benchmarkRank ranks ten plans of a problem, all proved.
func benchmarkRank(b *testing.B, p question.Problem) {
	b.ReportAllocs()
	for b.Loop() {
		r, err := optimize.Rank(context.Background(), p, question.Options{Plans: 10})
		if err != nil {
			b.Fatal(err)
		}
		if r.Solver.Status != question.Optimal || len(r.Plans) != 10 {
			b.Fatalf("%s with %d plans", r.Solver.Status, len(r.Plans))
		}
		b.ReportMetric(float64(r.Solver.Models), "models")
	}
}

// Ten plans of each demo, proved.
func BenchmarkDemo(b *testing.B) {
	for _, name := range scenarios.DemoNames() {
		b.Run(name, func(b *testing.B) { benchmarkRank(b, demo(b, name)) })
	}
}

// Ten plans from large catalogues, proved, and what two other solvers take for the first plan alone.
func BenchmarkGenerated(b *testing.B) {
	for _, size := range []struct {
		name                          string
		batteries, inverters, casters int
	}{
		{"30", 30, 6, 4},
		{"300", 300, 60, 40},
		{"1000", 1000, 200, 133},
	} {
		p := Generated(size.batteries, size.inverters, size.casters)
		b.Run(size.name, func(b *testing.B) { benchmarkRank(b, p) })
		for i := range peers {
			b.Run(size.name+" "+peers[i].program, func(b *testing.B) {
				model := writeModel(b, p, question.ByCost)
				for b.Loop() {
					peers[i].solve(b, model)
				}
			})
		}
	}
}

// A generated catalogue of 300 batteries is planned within the memory that is promised for it.
func TestGeneratedMemory(t *testing.T) {
	const mostBytes = 200e6
	p := Generated(300, 60, 40)
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	r, err := optimize.Rank(context.Background(), p, question.Options{Plans: 10})
	if err != nil {
		t.Fatal(err)
	}
	runtime.ReadMemStats(&after)
	if r.Solver.Status != question.Optimal || len(r.Plans) != 10 {
		t.Fatalf("%s with %d plans", r.Solver.Status, len(r.Plans))
	}
	if grown := float64(after.Sys - before.Sys); grown > mostBytes {
		t.Errorf("ranking took %.0f MB from the system, at most %.0f are promised", grown/1e6, mostBytes/1e6)
	}
	t.Logf("%.2f s, %d models, %d cells, %.0f MB allocated, %.0f MB from the system",
		r.Solver.Seconds, r.Solver.Models, r.Solver.Cells, float64(after.TotalAlloc-before.TotalAlloc)/1e6, float64(after.Sys-before.Sys)/1e6)
}
