package rank

import (
	"context"
	"slices"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// benchOf lays out a demo with changes.
func benchOf(t *testing.T, demo string, change func(*scenarios.Scenario)) *bench.Bench {
	t.Helper()
	s, err := scenarios.Demo(demo)
	if err != nil {
		t.Fatal(err)
	}
	change(s)
	b, err := bench.Lay(context.Background(), question.Problem{Scenario: s, Catalog: catalog.Embedded()}, "", &bench.Before{})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Every plan comes with the usual cautions, each on a line of its own and none twice; the protection of
// people is named by the clauses of the rule set.
func TestCautionsOfEveryPlan(t *testing.T) {
	for demo, clause := range map[string]string{"star-party": "NEC 210.8", "lantern-market": "IEC 60364-4-41, 411.3.3"} {
		got := cautions(benchOf(t, demo, func(*scenarios.Scenario) {}), nil)
		if !slices.Equal(got[:len(Cautions())], Cautions()) || !strings.Contains(got[len(Cautions())], clause) {
			t.Errorf("%s: got %q, want the usual ones, then one with %s", demo, got, clause)
		}
		for i, c := range got {
			if strings.Contains(c, "\n") || slices.Contains(got[:i], c) {
				t.Errorf("%s: caution %q is broken, or told twice", demo, c)
			}
		}
	}
}

// A breaker of the inverter's own at the end of a main protects no cable from the batteries; one of the feeder
// is where it belongs.
func TestCautionsOfOwnBreakers(t *testing.T) {
	got := cautions(benchOf(t, "star-party", func(s *scenarios.Scenario) { s.Runs[1].OwnBreakerA = 70 }), nil)
	for _, begin := range []string{
		"The main relies on a 70 A breaker of the inverter's own: nothing at the bus bars protects the cable",
		"The feeder relies on a 15 A breaker of the inverter's own: check that it has one",
	} {
		if !slices.ContainsFunc(got, func(c string) bool { return strings.HasPrefix(c, begin) }) {
			t.Errorf("got %q, want one that begins with %q", got, begin)
		}
	}
}

// Parts have cautions of their own where a plan has them installed and the catalogue tells what they are.
func TestCautionsOfParts(t *testing.T) {
	batteries := []catalog.Battery{
		{Part: catalog.Part{ID: "wet"}, Chemistry: "Flooded lead"},
		{Part: catalog.Part{ID: "open"}, Chemistry: "lead-acid"},
		{Part: catalog.Part{ID: "mat"}, Chemistry: "AGM lead"},
		{Part: catalog.Part{ID: "valve"}, Chemistry: "lead, valve regulated"},
		{Part: catalog.Part{ID: "new", Name: "Module", Notes: "often used in sheds"}, Chemistry: "LFP"},
		{Part: catalog.Part{ID: "unused", Name: "Unused module"}, Chemistry: "LFP"},
		{Part: catalog.Part{ID: "worn", Name: "Module 3 kWh used"}, Chemistry: "NMC"},
		{Part: catalog.Part{ID: "noted", Notes: "a set, second-hand"}, Chemistry: "NMC"},
		{Part: catalog.Part{ID: "begun", Notes: "Used three winters"}, Chemistry: "NMC"},
		{Part: catalog.Part{ID: "elsewhere", Name: "used", Notes: "second hand"}, Chemistry: "flooded"},
	}
	var one plan.Plan
	for i := range batteries[:len(batteries)-1] {
		one.Core.Batteries = append(one.Core.Batteries, plan.CoreBattery{Part: batteries[i].ID, Strings: 1, Series: 1})
	}
	got := partCautions(&catalog.Catalog{Batteries: batteries}, []plan.Plan{{}, one})
	want := []string{"wet, open: flooded lead batteries", "worn, noted, begun: second-hand"}
	if len(got) != len(want) || !strings.HasPrefix(got[0], want[0]) || !strings.HasPrefix(got[1], want[1]) {
		t.Errorf("got %q, want such as begin with %q", got, want)
	}
	if got := partCautions(&catalog.Catalog{Batteries: batteries}, nil); len(got) != 0 {
		t.Errorf("without a plan: %q", got)
	}
}

// Modules on the cart come with a caution of wind, in plans that have some; on the ground they do not.
func TestCautionOfWind(t *testing.T) {
	with := []plan.Plan{{Core: plan.Core{Solar: []plan.CoreSolar{{Part: "sun-400", Series: 1, Parallel: 1, Inputs: 1}}}}}
	for _, x := range []struct {
		name   string
		onCart bool
		plans  []plan.Plan
		want   bool
	}{
		{"on the cart", true, with, true},
		{"on the ground", false, with, false},
		{"no modules", true, []plan.Plan{{}}, false},
	} {
		b := benchOf(t, "goat-dairy", func(s *scenarios.Scenario) {
			place := *s.Sun
			place.OnCart = x.onCart
			s.Sun = &place
		})
		got := slices.ContainsFunc(cautions(b, x.plans), func(c string) bool { return strings.HasPrefix(c, "Wind on the solar modules") })
		if got != x.want {
			t.Errorf("%s: caution of wind %t, want %t", x.name, got, x.want)
		}
	}
}

// Over a sill of 10 mm a wheel of 125 mm asks for sqrt(2 * 62.5 * 10 - 10^2) / (62.5 - 10) = 0.646 of the weight on it,
// half of the cart's; one of 20 mm does not roll over it (torques about the edge, as in Halliday and Resnick,
// Fundamentals of Physics, chapter 12).
func TestCautionOfSills(t *testing.T) {
	b := benchOf(t, "cider-shed", func(s *scenarios.Scenario) { s.Cart.Rolling = 0.03 })
	c := *b.Catalog
	c.Casters = []catalog.Casters{{Part: catalog.Part{ID: "large"}, WheelM: 0.125}, {Part: catalog.Part{ID: "small"}, WheelM: 0.02}, {Part: catalog.Part{ID: "unsaid"}}}
	b.Catalog = &c
	on := func(id string) plan.Plan { return plan.Plan{Casters: plan.Casters{Part: id}} }
	for _, test := range []struct {
		plans []plan.Plan
		want  string
	}{
		{[]plan.Plan{on("unsaid"), on("large")}, "Over a sill of 10 mm the 125 mm wheels of large need a push of 32 % of the cart's weight, rolling needs 3.0 %: lay a ramp."},
		{[]plan.Plan{on("large"), on("small")}, "The 20 mm wheels of small do not roll over a sill of 10 mm: lay a ramp."},
		{[]plan.Plan{on("unsaid")}, ""},
	} {
		if got := overSill(b, test.plans); got != test.want {
			t.Errorf("got %q, want %q", got, test.want)
		}
	}
}
