package audit

import (
	"math"
	"testing"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

func TestTolerances(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, tt := range []struct {
		name      string
		got, want bool
	}{
		{"reaches the same", plan.AtLeast(5, 5), true},
		{"reaches but for roundoff", plan.AtLeast(5-4e-9, 5), true},
		{"does not reach by more than roundoff", plan.AtLeast(5-6e-9, 5), false},
		{"reaches below zero but for roundoff", plan.AtLeast(-5-4e-9, -5), true},
		{"does not reach below zero", plan.AtLeast(-5-6e-9, -5), false},
		{"no number reaches nothing", plan.AtLeast(nan, 5), false},
		{"nothing reaches no number", plan.AtLeast(5, nan), false},
		{"infinity reaches", plan.AtLeast(inf, 5), true},
		{"nothing reaches infinity", plan.AtLeast(5, inf), false},
		{"tells the same", tells(5, 5), true},
		{"tells six digits", tells(1.00000, 1.000005), true},
		{"tells six digits from above", tells(1.00001, 1.000005), true},
		{"tells no five digits", tells(1.0000, 1.000006), false},
		{"tells zero", tells(0, 0), true},
		{"zero tells nothing small", tells(0, 1e-12), false},
		{"tells no sign", tells(-5, 5), false},
		{"tells no infinity", tells(inf, inf), false},
		{"tells no number", tells(nan, nan), false},
		{"rounds down", rounds(12, 12.4), true},
		{"rounds half up", rounds(13, 12.5), true},
		{"rounds half down", rounds(12, 12.5), true},
		{"rounds no cent too far", rounds(12, 12.6), false},
		{"rounds no cent too far up", rounds(13, 12.4), false},
		{"rounds no number", rounds(12, nan), false},
	} {
		if tt.got != tt.want {
			t.Errorf("%s: got %t", tt.name, tt.got)
		}
	}
}

// A limit that binds, or nearly, may be told either way; one farther off may not.
func TestDiffersNearTheEdge(t *testing.T) {
	for _, tt := range []struct {
		slack float64
		same  bool
	}{{1, true}, {1.00005, true}, {0.99995, true}, {1.001, false}, {0.999, false}, {50, false}} {
		truth := plan.Limit{Name: plan.LimitMass, Value: 100 - tt.slack, Limit: 100, Unit: "kg", Slack: tt.slack, Binding: plan.Binds(tt.slack, 100)}
		stated := truth
		stated.Binding = !truth.Binding
		if got := differs(&stated, &truth); (got == "") != tt.same {
			t.Errorf("%g of 100 left: %q", tt.slack, got)
		}
	}
}

// Of counts that are wrong, the one farthest off is reported.
func TestKeepsTheFarthest(t *testing.T) {
	for name, tell := range map[string]func(f *findings, value, limit float64, detail string){
		"counted": func(f *findings, value, limit float64, detail string) { f.exactly(ruleCore, value, limit, detail) },
		"rule set": func(f *findings, value, limit float64, detail string) {
			f.passOn(scenarios.RunMain, check{name: "device rating", value: value, limit: limit}, detail)
		},
	} {
		t.Run(name, func(t *testing.T) {
			f := &findings{}
			tell(f, 9, 10, "near")
			tell(f, 2, 10, "far")
			tell(f, 8, 10, "less near")
			for _, w := range f.worst {
				if w.check.Detail != "far" {
					t.Errorf("tells %q", w.check.Detail)
				}
			}
		})
	}
}

func TestKeepsTheWorst(t *testing.T) {
	tell := func(value, limit float64, detail string) func(f *findings) {
		return func(f *findings) { f.atLeast(ruleMass, value, limit, detail) }
	}
	for _, tt := range []struct {
		name string
		told []func(f *findings)
		want string
	}{
		{"the one with less margin", []func(f *findings){tell(9, 5, "a"), tell(6, 5, "b"), tell(8, 5, "c")}, "b"},
		{"by margin for its size", []func(f *findings){tell(9, 8, "a"), tell(100, 98, "b")}, "b"},
		{"the first of equals", []func(f *findings){tell(6, 5, "a"), tell(6, 5, "b")}, "a"},
		{"a failed one", []func(f *findings){tell(6, 5, "a"), tell(4, 5, "b"), tell(5, 5, "c")}, "b"},
		{"the failed one that fails by most", []func(f *findings){tell(4, 5, "a"), tell(1, 5, "b"), tell(3, 5, "c")}, "b"},
		{"no number", []func(f *findings){tell(1, 5, "a"), tell(math.NaN(), 5, "b"), tell(0.5, 5, "c")}, "b"},
		{"zeros", []func(f *findings){tell(0, 0, "a"), tell(1, 0, "b")}, "a"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var f findings
			for _, told := range tt.told {
				told(&f)
			}
			if got := f.audit().Checks; len(got) != 1 || got[0].Detail != tt.want {
				t.Errorf("got %+v, want %s", got, tt.want)
			}
		})
	}
}

func TestTellsWhatItCompared(t *testing.T) {
	var f findings
	f.atMost(rulePush, 12, 9, "uphill")
	f.atLeast(ruleTiltLength, math.Inf(1), 10, "")
	f.none(ruleLimits, []string{"a", "b", "c", "d"})
	f.none(ruleGroup, []string{"a", "b", "c", "d", "e"})
	f.exactly(ruleCasterCount, 4, 4, "")
	f.truly(ruleHours, math.NaN(), 4, "")
	for _, name := range []string{"c", "a", "b"} { // of a later rule set
		f.keep(plan.Check{Name: name, Passed: true}, 0)
	}
	want := []plan.Check{
		{Name: ruleGroup, Value: 5, Source: fromMaker, Detail: "a; b; c; d; and more"},
		{Name: ruleHours, Limit: 4, Unit: "h", Source: fromParts},
		{Name: ruleCasterCount, Passed: true, Value: 4, Limit: 4, Source: fromScenario},
		{Name: ruleTiltLength, Passed: true, Value: math.MaxFloat64, Limit: 10, Unit: "deg", Source: "statics; 10 deg: IEC 62368-1"},
		{Name: rulePush, Value: 12, Limit: 9, Unit: "N", Source: "UK HSE guidance L23 and INDG143", Detail: "uphill"},
		{Name: ruleLimits, Value: 4, Source: fromParts, Detail: "a; b; c; d"},
		{Name: "a", Passed: true}, {Name: "b", Passed: true}, {Name: "c", Passed: true},
	}
	a := f.audit()
	if a.Passed || len(a.Checks) != len(want) {
		t.Fatalf("passed is %t, checks %+v", a.Passed, a.Checks)
	}
	for i := range want {
		if a.Checks[i] != want[i] {
			t.Errorf("check %d\n got %+v\nwant %+v", i, a.Checks[i], want[i])
		}
	}
}

func TestPrintable(t *testing.T) {
	for _, tt := range []struct{ x, want float64 }{
		{3, 3}, {math.NaN(), 0}, {math.Inf(1), math.MaxFloat64}, {math.Inf(-1), -math.MaxFloat64},
	} {
		if got := printable(tt.x); got != tt.want {
			t.Errorf("printable(%g) = %g, want %g", tt.x, got, tt.want)
		}
	}
}

func TestSources(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range Sources() {
		if s.Kind == "" || s.Name == "" || s.Source == "" || s.Confidence == "" || seen[s.Name] {
			t.Errorf("%+v is not complete, or told twice", s)
		}
		seen[s.Name] = true
	}
	if len(seen) == 0 {
		t.Error("no sources")
	}
}

// A triangle of 3, 4 and 5: half a track of 0.3 m and a wheelbase of 0.4 m. Halfway along, its side is 0.15 m
// out, and 4/5 of that away.
func TestDistanceToTheSide(t *testing.T) {
	for _, tt := range []struct {
		wheels     int
		out, wants float64
	}{
		{4, 0, 0.3}, {4, 0.1, 0.2}, {4, 0.5, -0.2}, {6, 0.1, 0.2},
		{3, 0, 0.12}, {3, 0.05, 0.08}, {3, 0.15, 0}, {3, 0.25, -0.08},
	} {
		cart := scenarios.Cart{Casters: tt.wheels, TrackM: 0.6, WheelbaseM: 0.4}
		if got := toSideM(&cart, tt.out); math.Abs(got-tt.wants) > 1e-12 {
			t.Errorf("%d wheels, %g m out: %g m from the side, want %g m", tt.wheels, tt.out, got, tt.wants)
		}
	}
}

func TestNothingTips(t *testing.T) {
	var nothing load
	if got := nothing.tipsDeg(0); got != 90 {
		t.Errorf("a cart of no mass tips at %g deg, want never: 90", got)
	}
	var flat load
	flat.put(10, 0, 0, &scenarios.Cart{Casters: 4, TrackM: 1, WheelbaseM: 1})
	if got := flat.tipsDeg(flat.side); got != 90 {
		t.Errorf("what lies flat on the floor tips at %g deg, want never: 90", got)
	}
	var edge load
	edge.put(10, 0.5, -0.5, &scenarios.Cart{Casters: 4, TrackM: 1, WheelbaseM: 1})
	if got := edge.tipsDeg(edge.side); got != 0 {
		t.Errorf("what stands on the edge tips at %g deg, want 0", got)
	}
}
