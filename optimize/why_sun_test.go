package optimize_test

import (
	"context"
	"slices"
	"testing"

	"cartwright/optimize/relax"
	"cartwright/optimize/why"
)

// A module can be asked for like any other part: the plan has it, at a price it enters, and the plan then costs what
// the best did. Such a plan was once never found.
func TestExplainModule(t *testing.T) {
	a, err := why.ExplainPart(context.Background(), demo(t, "goat-dairy"), "sun-440")
	if err != nil {
		t.Fatal(err)
	}
	if a.InBest || a.With == nil || a.With.Core.Solar[0].Part != "sun-440" || a.Costs <= 0 {
		t.Fatalf("in the best: %t, with it %+v", a.InBest, a.With)
	}
	if !a.Priced || a.At.Core.Solar[0].Part != "sun-440" || a.At.Cost > a.Best.Cost {
		t.Errorf("enters at %g: %t, for %s; the best costs %s", a.EntersAt, a.Priced, a.At.Cost, a.Best.Cost)
	}
}

// The share served and the number of modules are limits like any other: with more room a plan costs no more, with a
// larger share no less, and where neither the best plan's share nor its modules are allowed it is another.
func TestSunLevers(t *testing.T) {
	p := demo(t, "goat-dairy")
	p.Scenario.Limits.Served, p.Scenario.Sun.Most = 0.87, 7
	x, err := why.Explain(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"served", "solar modules"} {
		if !slices.ContainsFunc(relax.Levers(p.Scenario), func(l relax.Lever) bool { return l.Name == name }) {
			t.Errorf("%s is no lever", name)
		}
		dearer := false
		for _, e := range x.Effects {
			if e.Limit != name {
				continue
			}
			if e.Plan != nil && (e.Looser && e.Saves < 0 || !e.Looser && e.Saves > 0) {
				t.Errorf("%s from %g to %g saves %g", name, e.From, e.To, e.Saves)
			}
			dearer = dearer || !e.Looser && (e.Plan == nil || e.Saves < 0)
		}
		if !dearer {
			t.Errorf("%s a step tighter costs nothing, though it binds", name)
		}
	}
}
