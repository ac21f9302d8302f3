package optimize_test

import (
	"context"
	"testing"

	beside "cartwright/optimize/compare"
	"cartwright/optimize/frontier"
	"cartwright/optimize/plan"
)

// modulesOf returns how many solar modules a plan has.
func modulesOf(p *plan.Plan) int {
	n := 0
	for _, x := range p.Core.Solar {
		n += x.Series * x.Parallel * x.Inputs
	}
	return n
}

// The goat dairy's question: two more modules or two more batteries, which first? The modules: they serve more and cost
// less. A choice has exactly the modules that are owned and named, whatever share was asked for.
func TestModulesOrBatteriesFirst(t *testing.T) {
	p := demo(t, "goat-dairy")
	const owned = 4
	choices := [][]beside.Line{{{Part: "sun-300-used", Count: 2}}, {{Part: "lfp-rack-5-old", Count: 2}}, {{Part: "sun-440", Count: 4}}}
	got, err := beside.Find(context.Background(), p, choices)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []int{owned, owned + 2, owned, 4} {
		if x := got.Outcomes[i].Plan; x == nil || modulesOf(x) != want {
			t.Fatalf("choice %d: %+v, want %d modules", i, x, want)
		}
	}
	if x := got.Outcomes[3].Plan.Core.Solar[0].Part; x != "sun-440" {
		t.Errorf("four sun-440 are named, and %s hang there", x)
	}
	none, modules, batteries := got.Outcomes[0].Plan, got.Outcomes[1].Plan, got.Outcomes[2].Plan
	if !(modules.Year.Served > batteries.Year.Served+0.05 && modules.Cost < batteries.Cost) {
		t.Errorf("modules serve %g for %s, batteries %g for %s", modules.Year.Served, modules.Cost, batteries.Year.Served, batteries.Cost)
	}
	if !(batteries.Year.Served > none.Year.Served && batteries.UsableKWh > none.UsableKWh) {
		t.Errorf("with two more batteries the sun serves %g, with none %g", batteries.Year.Served, none.Year.Served)
	}
}

// The same from the staircase: up to the eight modules there is room for each step buys one more module, and the first
// battery comes after them.
func TestModulesComeFirst(t *testing.T) {
	p := demo(t, "goat-dairy")
	got, err := frontier.Find(context.Background(), p, frontier.AxisServed, nil)
	if err != nil || !got.Complete {
		t.Fatal(err, got)
	}
	full := false
	for i := 2; i < len(got.Steps); i++ {
		before, now := &got.Steps[i-1].Plan, &got.Steps[i].Plan
		if full {
			break
		}
		if modulesOf(now) == modulesOf(before) {
			t.Errorf("step %d: %s after %s", i+1, core(now), core(before))
		}
		if now.UsableKWh != before.UsableKWh {
			t.Errorf("step %d buys a battery before the slope is full: %s", i+1, core(now))
		}
		full = modulesOf(now) == p.Scenario.Sun.Most
	}
	if !full {
		t.Error("the slope is never full")
	}
}
