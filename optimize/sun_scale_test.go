package optimize_test

import (
	"context"
	"testing"
	"time"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// sunny puts a generated catalogue in the sun: some modules, inverters that take them, and a whole year of hours.
func sunny(t testing.TB, batteries, inverters, modules int) question.Problem {
	t.Helper()
	p := Generated(batteries, inverters, max(4, batteries/30))
	g := generatorOf(uint64(modules))
	for i := range p.Catalog.Inverters {
		v := &p.Catalog.Inverters[i]
		v.SolarMaxW, v.SolarMaxVocV = v.ContinuousW*1.2, 250
		v.MPPTMinV, v.MPPTMaxV, v.MPPTMaxA, v.MPPTInputs = 60, 220, 30, 1+g.IntN(2)
	}
	for i := range modules {
		p.Catalog.Solar = append(p.Catalog.Solar, g.module(i))
	}
	s := demo(t, "goat-dairy").Scenario
	sun := *s.Sun
	sun.Most, sun.Room = 24, nil
	p.Scenario.Sun = &sun
	p.Scenario.Limits.Served = 0.8
	p.Scenario.Limits.Budget = catalog.CentsFrom(12000)
	p.Scenario.Runs = append(p.Scenario.Runs, scenarios.Run{Kind: scenarios.RunSolar, LengthM: 12, AmbientC: 40, Bundled: 2, Drop: 0.03})
	return p
}

func TestSunScale(t *testing.T) {
	n := [3]int{30, 6, 3}
	if *scale {
		n = [3]int{300, 60, 20}
	}
	p := sunny(t, n[0], n[1], n[2])
	start, cpu := time.Now(), cpuSeconds()
	r, err := optimize.Rank(context.Background(), p, question.Options{Plans: 10})
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d batteries, %d inverters, %d modules: %s, %d plans, %d programs, %d children of cells, %.1f s, of the processor %.1f s, %.0f MB", n[0], n[1], n[2],
		r.Solver.Status, len(r.Plans), r.Solver.Models, r.Solver.Cells, time.Since(start).Seconds(), cpuSeconds()-cpu, mostMB())
	for i := range r.Plans {
		t.Log(r.Plans[i].Cost, r.Plans[i].Core, r.Plans[i].Year.Served)
	}
}
