package audit

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// A path for which nothing passes gets what comes nearest, and the report says by how much it fails.
func TestInstalledNearest(t *testing.T) {
	k := newBarn().ownAll()
	k.own("g1-0", 0) // the mains have to do with thinner cable
	thin := *k.cable("g8")
	thin.ID = "g4"
	thin.Size = "4 AWG" // 70 A at 60 °C, where 92.6 A are asked for
	thinner := thin
	thinner.ID, thinner.Size = "g6", "6 AWG"
	k.c.Cables = append(k.c.Cables, thinner, thin)
	k.own("g6", 20)
	k.own("g4", 20)
	r := k.installed(t)
	if len(r.Missing) > 0 || r.Passed {
		t.Errorf("passed is %t, missing %q", r.Passed, r.Missing)
	}
	for _, run := range r.Runs {
		if run.Run.Run != "main" {
			if !run.Passed {
				t.Errorf("%s %s%s fails %v", run.Run.Run, run.Name, run.Battery, run.Failed)
			}
			continue
		}
		if run.Cable != "g4" || run.Count != 2 || run.Device != "fuse-100" || run.Passed {
			t.Errorf("mains are %+v, want two of g4", run.Run)
		}
		var told []string
		for _, c := range run.Failed {
			told = append(told, fmt.Sprintf("%s: %.4g of %.4g %s", c.Name, c.Value, c.Limit, c.Unit))
		}
		want := "main terminal ampacity: 70 of 92.64 A, main corrected ampacity: 70 of 74.11 A, main cable protected: 100 of 70 A"
		if got := strings.Join(told, ", "); got != want {
			t.Errorf("the mains fail by\n got %s\nwant %s", got, want)
		}
	}
}

// As many paths as possible pass: a cable that serves two kinds of path goes where nothing else does.
func TestInstalledMatchesExactly(t *testing.T) {
	k := newBarn().ownAll()
	// The brick's string could take the thick cable too, and stands last in the plan; one slab's path is
	// short of it then.
	k.own("g3", 1.25)
	k.own("g1", 4.5)
	if r := k.installed(t); !r.Passed {
		t.Errorf("missing %q, failed %q", r.Missing, failed(plan.Audit{Checks: r.Checks}))
	}
	// With one length less and the mains' cable to spare, that goes to the strings.
	k.own("g1", 3)
	k.own("g1-0", 5.5)
	if r := k.installed(t); !r.Passed {
		t.Errorf("missing %q, failed %q", r.Missing, failed(plan.Audit{Checks: r.Checks}))
	}
}

// Of several owned sets and bars the best is taken.
func TestInstalledTakesTheBest(t *testing.T) {
	k := newBarn().ownAll()
	weak, three, bars, few, most := k.c.Casters[0], k.c.Casters[0], k.c.Busbars[0], k.c.Busbars[0], k.c.Busbars[0]
	weak.ID, weak.RatingKg = "caster-90", 90
	three.ID, three.RatingKg, three.SetOf = "caster-3", 500, 3
	bars.ID, bars.RatingA = "bars-100", 100
	few.ID, few.Studs = "bars-4", 4
	most.ID, most.RatingA, most.Studs = "bars-900", 900, 3 // far too strong, two studs short
	k.c.Casters = append([]catalog.Casters{weak, three}, k.c.Casters...)
	k.c.Busbars = append([]catalog.Busbar{bars, few, most}, k.c.Busbars...)
	for _, id := range []string{"caster-90", "caster-3", "bars-100", "bars-4", "bars-900"} {
		k.own(id, 1)
	}
	r := k.installed(t)
	if !r.Passed {
		t.Errorf("failed %q", failed(plan.Audit{Checks: r.Checks}))
	}
	k.own("bars-250", 0)
	k.own("caster-120", 0)
	r = k.installed(t)
	if got := failed(plan.Audit{Checks: r.Checks}); !slices.Equal(got, []string{ruleBusbarStuds, ruleCasterLoad}) {
		t.Errorf("failed %q: want the bars that are a stud short, not those short of current; the set of four, not of three", got)
	}
}

func TestInstalledSundriesServeBest(t *testing.T) {
	k := newBarn().ownAll()
	small, open, weak := k.c.Sundries[2], k.c.Sundries[2], k.c.Sundries[2]
	small.ID, small.Spaces, small.RatingA = "panel-2", 2, 80
	open.ID, open.Spaces = "panel-open", 0
	weak.ID, weak.RatingA = "panel-50", 50
	k.c.Sundries = append([]catalog.Sundry{weak, small, open}, k.c.Sundries...)
	for _, id := range []string{"panel-2", "panel-50"} {
		k.own(id, 1)
	}
	if r := k.installed(t); !r.Passed {
		t.Errorf("failed %q: want the panel of 8 spaces", failed(plan.Audit{Checks: r.Checks}))
	}
	k.own("panel-open", 1)
	for _, o := range k.installed(t).Parts {
		if o.Kind == "sundry" && strings.HasPrefix(o.Part, "panel") && (o.Used == 1) != (o.Part == "panel-open") {
			t.Errorf("%g of %s used; want the one that states no spaces", o.Used, o.Part)
		}
	}
}

// What asks for most is served first, and what must have just its rating before all.
func TestInstalledSundriesByRating(t *testing.T) {
	k := newBarn().ownAll()
	weak := k.c.Sundries[3]
	weak.ID, weak.RatingA = "outlet-15", 15
	k.c.Sundries = append(k.c.Sundries, weak)
	k.s.Needs = append(k.s.Needs, scenarios.Need{Role: "receptacle", Count: 1}, scenarios.Need{Role: "receptacle", Count: 1, RatingA: 18})
	k.own("outlet-20", 3)
	k.own("outlet-15", 1)
	if r := k.installed(t); !r.Passed {
		t.Errorf("missing %q, failed %q", r.Missing, failed(plan.Audit{Checks: r.Checks}))
	}
	k.own("outlet-20", 2)
	k.own("outlet-15", 2)
	r := k.installed(t)
	if want := []string{"1 x receptacle of 18 A"}; !slices.Equal(r.Missing, want) {
		t.Errorf("missing %q, want %q", r.Missing, want)
	}
	if got := failed(plan.Audit{Checks: r.Checks}); !slices.Equal(got, []string{ruleNeeds}) {
		t.Errorf("failed %q", got)
	}
}

func TestInstalledErrors(t *testing.T) {
	for name, do := range map[string]func(k *cart){
		"not in the catalogue": func(k *cart) { k.own("slap", 1) },
		"cannot be owned":      func(k *cart) { k.s.Have[0].Count = math.NaN() },
		"-1 of part":           func(k *cart) { k.s.Have[0].Count = -1 },
		"watts":                func(k *cart) { k.s.Loads[0].Watts = -1 },
	} {
		t.Run(name, func(t *testing.T) {
			k := newBarn()
			do(k)
			if _, err := Installed(k.s, k.c); err == nil || !strings.Contains(err.Error(), name) {
				t.Errorf("error is %v, want one that says %q", err, name)
			}
		})
	}
}

// Of several shunts and disconnects the least that stand what flows through them are taken.
func TestInstalledStandsWhatFlows(t *testing.T) {
	k := newBarn().ownAll()
	for _, role := range []int{0, 1} { // shunt, disconnect
		k.s.Needs[role].RatingA = 0
		for _, ratingA := range []float64{100, 200, 900} {
			x := k.c.Sundries[role]
			x.ID, x.RatingA = fmt.Sprint(x.ID, " of ", ratingA), ratingA
			k.c.Sundries = append(k.c.Sundries, x)
			k.own(x.ID, 1)
		}
	}
	r := k.installed(t)
	if !r.Passed {
		t.Errorf("failed %q", failed(plan.Audit{Checks: r.Checks}))
	}
	for _, o := range r.Parts {
		if o.Kind == "sundry" && strings.Contains(o.Part, "300") && (o.Used == 1) != strings.HasSuffix(o.Part, " of 200") {
			t.Errorf("%g of %s used; want those of 200 A", o.Used, o.Part)
		}
	}
}

// As many modules as the inputs take, all alike.
func TestInstalledArray(t *testing.T) {
	for _, tt := range []struct {
		name string
		do   func(k *cart)
		want plan.CoreSolar
	}{
		{"all", func(*cart) {}, plan.CoreSolar{Part: "leaf", Series: 3, Parallel: 3, Inputs: 1}},
		{"one string an input", func(k *cart) { k.inverter("sine-2").MPPTMaxA = 8 }, plan.CoreSolar{Part: "leaf", Series: 3, Parallel: 1, Inputs: 2}},
		{"eight owned", func(k *cart) { k.own("leaf", 8) }, plan.CoreSolar{Part: "leaf", Series: 2, Parallel: 4, Inputs: 1}},
		{"room for four", func(k *cart) { k.sun(func(s *scenarios.Sun) { s.Most = 4 }) }, plan.CoreSolar{Part: "leaf", Series: 2, Parallel: 2, Inputs: 1}},
	} {
		k := newFair().ownAll()
		tt.do(k)
		r := k.installed(t)
		if len(r.Core.Solar) != 1 || r.Core.Solar[0] != tt.want {
			t.Errorf("%s: %+v, want %+v", tt.name, r.Core.Solar, tt.want)
		}
	}
	k := newBarn().ownAll()
	if r := k.installed(t); len(r.Core.Solar) != 0 {
		t.Errorf("an array without sun: %+v", r.Core.Solar)
	}
}
