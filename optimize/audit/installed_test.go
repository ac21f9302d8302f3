package audit

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// ownAll makes the holdings of a cart all that its plan installs.
func (k *cart) ownAll() *cart {
	k.s.Have = nil
	for _, l := range k.p.Bill {
		if !isEnd(l.Kind) && l.Quantity > 0 {
			k.s.Have = append(k.s.Have, scenarios.Holding{PartID: l.Part, Count: l.Quantity})
		}
	}
	return k
}

// own sets how much of a part is owned.
func (k *cart) own(part string, count float64) {
	k.s.Have = slices.DeleteFunc(k.s.Have, func(h scenarios.Holding) bool { return h.PartID == part })
	if count > 0 {
		k.s.Have = append(k.s.Have, scenarios.Holding{PartID: part, Count: count})
	}
}

func (k *cart) installed(t *testing.T) Report {
	t.Helper()
	r, err := Installed(k.s, k.c)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Owning all that a good plan installs, the cart passes, and is found as the plan has it; but the iec
// cart's cables would do in thriftier ways too.
func TestInstalledAll(t *testing.T) {
	for name, k := range map[string]*cart{"nec": newBarn().ownAll(), "iec": newFair().ownAll()} {
		t.Run(name, func(t *testing.T) {
			r := k.installed(t)
			if !r.Passed || len(r.Missing) > 0 || len(r.Notes) > 0 {
				t.Errorf("passed is %t, missing %q, notes %q, failed %q", r.Passed, r.Missing, r.Notes, failed(plan.Audit{Checks: r.Checks}))
			}
			if got, want := fmt.Sprint(r.Core.Batteries, r.Core.Inverter), fmt.Sprint(k.p.Core.Batteries, k.p.Core.Inverter); got != want {
				t.Errorf("core is %s, want %s", got, want)
			}
			if got, want := fmt.Sprint(r.Shelves), fmt.Sprint(k.p.Shelves); got != want {
				t.Errorf("shelves are %s, want %s", got, want)
			}
			for i, run := range r.Runs {
				if !run.Passed || len(run.Failed) > 0 {
					t.Errorf("run %s %s%s fails %v", run.Run.Run, run.Name, run.Battery, run.Failed)
				}
				if name == "nec" && i < 3 { // the other paths can be wired from one another's parts
					want := k.p.Runs[i]
					if !tells(run.AllowedA, want.AllowedA) || !tells(run.DropPct, want.DropPct) || run.Count != want.Count ||
						run.Cable != want.Cable || run.Device != want.Device || run.Ground != want.Ground || run.Sets != want.Sets {
						t.Errorf("run is %+v, want %+v", run.Run, want)
					}
				}
			}
			for _, o := range r.Parts {
				if name == "nec" && o.Kind != "cable" && (!tells(o.Used, o.Have) || o.As == "spare") {
					t.Errorf("of %g %s of %s only %g are used, as %q", o.Have, o.Unit, o.Part, o.Used, o.As)
				}
			}
		})
	}
}

func TestInstalledNothing(t *testing.T) {
	k := newBarn()
	k.s.Have = nil
	r := k.installed(t)
	want := []string{
		"a battery", "an inverter", "cables and protection of main and feeder, which depend on the inverter", "a set of 4 casters", "bus bars",
		"2 x receptacle of 20 A", "1 x pump socket of 20 A", "1 x shunt of 200 A", "1 x load-centre of 60 A", "1 x disconnect",
		"1 x cable and device for branch bench, 7 m of conductor each", "1 x cable and device for branch porch, 5.5 m of conductor each",
		"1 x cable and device for branch pump, 4.5 m of conductor each", "1 x cable and device for dc radio, 3.5 m of conductor each",
		"1 x cable and device for inlet, 4.5 m of conductor each", "1.25 m of grounding conductor for the bond",
	}
	if !slices.Equal(r.Missing, want) {
		t.Errorf("missing\n got %q\nwant %q", r.Missing, want)
	}
	if r.Passed || r.Parts == nil || len(r.Parts) > 0 || r.Runs == nil || len(r.Runs) > 0 || r.Core.Batteries == nil || r.Core.Solar == nil {
		t.Errorf("report of nothing is %+v", r)
	}
	if got := failed(plan.Audit{Checks: r.Checks}); !slices.Equal(got, []string{ruleCore, "branch count", "dc count", "inlet count", "bond count", ruleBusbars, ruleNeeds}) {
		t.Errorf("failed checks %q", got)
	}
	mustJSON(r)
}

func TestInstalled(t *testing.T) {
	for _, tt := range []struct {
		name    string
		fresh   func() *cart
		do      func(k *cart)
		missing []string
		failed  []string
		as      map[string]string // part -> what it is taken for
	}{
		{"a module too few for a string", newFair, func(k *cart) { k.own("block", 3) },
			nil, []string{ruleBusCurrent, ruleAutonomy, ruleServed},
			map[string]string{"block": "1 string of 2 in series, 2 on shelf a", "c35": "string of block", "c50": "main, ground of bond",
				"leaf": "array of 3 in series, 3 in parallel on 1 inputs"}},
		{"half a string", newFair, func(k *cart) { k.own("block", 1) },
			[]string{"1 x block to make a string of 2", "a battery"}, []string{ruleCore, ruleBusCurrent, rulePeak, ruleAutonomy, ruleCharge},
			map[string]string{"block": "spare", "c50": "ground of bond"}},
		{"half a string of one kind, whole ones of another", newFair, func(k *cart) {
			pack := k.c.Batteries[0]
			pack.ID, pack.NominalV, pack.MaxV, pack.CapacityWh, pack.ResistanceOhm = "pack", 25.6, 29.2, 2560, 0.012
			k.c.Batteries = append(k.c.Batteries, pack)
			k.own("block", 1)
			k.own("pack", 2)
		}, []string{"1 x block to make a string of 2"}, []string{}, map[string]string{"block": "spare", "pack": "2 strings, 2 on shelf a"}},
		{"a second kind of inverter", newBarn, func(k *cart) { k.own("old-inverter", 2) },
			nil, []string{ruleCore}, map[string]string{"old-inverter": "spare"}},
		{"the inverters with more power win", newBarn, func(k *cart) {
			k.own("old-inverter", 7)
			k.inverter("old-inverter").MaxUnits = 7
		}, []string{"5 x cable and device for main, 2 m of conductor each", "5 x cable and device for feeder, 2.5 m of conductor each"}, []string{
			ruleCore, ruleInputHigh, ruleOutput, ruleProtocols, ruleAutonomy, ruleCharger, ruleSupplyVolts, "main count", "feeder count",
			ruleBusbarStuds, ruleCasterLoad}, map[string]string{"split-3": "spare", "old-inverter": "inverter"}},
		{"no inverter", newBarn, func(k *cart) { k.own("split-3", 0) }, []string{"an inverter", "cables and protection of main and feeder, which depend on the inverter"}, []string{ruleCore},
			map[string]string{"g1-0": "spare", "bars-250": "bus bars"}},
		{"a ground of another size", newBarn, func(k *cart) {}, nil, nil,
			map[string]string{"slab": "2 strings, 2 on shelf low", "brick": "1 string, 1 on shelf high", "g10": "feeder, ground of branch pump", "g8": "ground of feeder, ground of branch porch, inlet", "b20-f": "2 x feeder"}},
		{"no casters", newBarn, func(k *cart) { k.own("caster-120", 0) }, []string{"a set of 4 casters"}, nil, nil},
		{"no bus bars", newBarn, func(k *cart) { k.own("bars-250", 0) }, []string{"bus bars"}, []string{ruleBusbars}, nil},
		{"a shunt less", newBarn, func(k *cart) { k.own("shunt-300", 0) }, []string{"1 x shunt of 200 A"}, []string{ruleNeeds}, nil},
		{"a receptacle less", newBarn, func(k *cart) { k.own("outlet-20", 1) }, []string{"1 x receptacle of 20 A"}, []string{ruleNeeds}, nil},
		{"a receptacle more", newBarn, func(k *cart) { k.own("outlet-20", 3) }, nil, nil, map[string]string{"outlet-20": "receptacle"}},
		{"no fuse for a main", newFair, func(k *cart) { k.s.Runs[1].OwnBreakerA = 0 }, []string{"a fuse or breaker for main"},
			[]string{"main devices", "main device present"}, nil},
		{"no fuse, and no cable for it either", newFair, func(k *cart) {
			k.own("gg-125", 0)
			k.own("c35", 0)
			k.own("c50", 0)
		}, []string{"2 x cable and device for string of block, 1.25 m of conductor each", "1 x cable and device for main, 1.2 m of conductor each", "0.9 m of grounding conductor for the bond"},
			[]string{"string count", "main count", "bond count"}, map[string]string{"c1.5": "feeder, branch stall, dc cooler, inlet"}},
		{"receptacles of two circuits", newFair, func(k *cart) {
			more := k.s.Circuits[0]
			more.Name = "stage"
			k.s.Circuits = append(k.s.Circuits, more)
			k.own("outlet-16", 0)
		}, []string{"2 x receptacle of 16 A", "1 x cable and device for branch stage, 8 m of conductor each"},
			[]string{"branch count", ruleNeeds}, nil},
		{"no ground", newFair, func(k *cart) { k.own("c1.5", 16.4) }, []string{"a ground for solar"}, []string{"solar ground present"}, nil},
		{"no conduit", newFair, func(k *cart) { k.own("pvc-20", 3.9) }, []string{"4 m of conduit pvc-40 for branch stall"}, []string{"branch conduit present"}, nil},
		{"a fuse of a string of modules less", newFair, func(k *cart) { k.own("pv-10", 2) }, []string{"3 x fuse for the strings of modules"}, []string{"solar string fuses", "solar string fuse present"}, nil},
		{"modules that can't all hang on the inputs", newFair, func(k *cart) { k.inverter("sine-2").MPPTMaxA = 4 }, nil, []string{ruleServed}, map[string]string{"leaf": "spare"}},
		{"an own device too weak", newBarn, func(k *cart) { k.battery("brick").OwnInterruptingA = 100 },
			[]string{"1 x cable and device for main, 2 m of conductor each"}, []string{"main count"}, map[string]string{"fuse-100": "string of brick, main"}},
		{"a cable a hand short", newBarn, func(k *cart) { k.own("g1-0", 3.1) },
			[]string{"1 x cable and device for main, 2 m of conductor each"}, []string{"main count"}, map[string]string{"fuse-100": "main"}},
		{"a breaker too weak for the fault", newBarn, func(k *cart) { k.device("b20-f").InterruptingACA = 4000 },
			[]string{"1 x cable and device for inlet, 4.5 m of conductor each"}, []string{"branch interrupting rating", "inlet count"}, nil},
		{"a shelf less", newFair, func(k *cart) { k.s.Cart.Shelves = k.s.Cart.Shelves[:1] }, nil, []string{ruleStands}, nil},
		{"too heavy by a part that is used", newBarn, func(k *cart) { k.s.Limits.MassKg = 220 }, nil, []string{ruleMass}, nil},
		{"none of a part", newBarn, func(k *cart) {
			k.s.Have = append(k.s.Have, scenarios.Holding{PartID: "old-inverter"})
		}, nil, nil, map[string]string{"old-inverter": "spare"}},
		{"not too heavy by a part that is spare", newBarn, func(k *cart) {
			k.s.Limits.MassKg = 227
			k.own("outlet-20", 30)
			k.own("g12", 1000)
		}, nil, nil, nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			k := tt.fresh().ownAll()
			tt.do(k)
			r := k.installed(t)
			if !slices.Equal(r.Missing, tt.missing) && len(r.Missing)+len(tt.missing) > 0 {
				t.Errorf("missing\n got %q\nwant %q", r.Missing, tt.missing)
			}
			if got := failed(plan.Audit{Checks: r.Checks}); tt.failed != nil && !slices.Equal(got, tt.failed) {
				t.Errorf("failed checks\n got %q\nwant %q", got, tt.failed)
			}
			for _, o := range r.Parts {
				if want, ok := tt.as[o.Part]; ok && o.As != want {
					t.Errorf("%s is taken for %q, want %q", o.Part, o.As, want)
				}
				if (o.As == "spare") != (o.Used == 0) || o.Used > o.Have*(1+sixDigits) {
					t.Errorf("%+v is not so", o)
				}
			}
			if want := len(tt.missing) == 0 && tt.failed == nil; r.Passed != want {
				t.Errorf("passed is %t, want %t", r.Passed, want)
			}
		})
	}
}

// The same holdings give the same bytes.
func TestInstalledIsSteady(t *testing.T) {
	k := newBarn().ownAll()
	k.own("fuse-80", 0)
	first := string(mustJSON(k.installed(t)))
	for range 5 {
		if again := string(mustJSON(k.installed(t))); again != first {
			t.Fatalf("got\n%s\nand then\n%s", first, again)
		}
	}
}

func ExampleInstalled() { // a made-up cart whose owner has all but the shunt and one fuse
	s, c, p := fair()
	for _, l := range p.Bill {
		if !strings.HasSuffix(l.Kind, "-end") && l.Part != "gg-10" {
			s.Have = append(s.Have, scenarios.Holding{PartID: l.Part, Count: l.Quantity})
		}
	}
	s.Needs = []scenarios.Need{{Role: "shunt", Count: 1}}
	r, err := Installed(s, c)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("passed:", r.Passed)
	for _, m := range r.Missing {
		fmt.Println("missing:", m)
	}
	for _, k := range r.Checks {
		if !k.Passed {
			fmt.Printf("fails: %s, %g of %g %s\n", k.Name, k.Value, k.Limit, k.Detail)
		}
	}
	// Output:
	// passed: false
	// missing: 1 x shunt
	// missing: a fuse or breaker for inlet
	// fails: inlet devices, 0 of 1 inlet: c1.5
	// fails: inlet device present, 0 of 1 inlet: c1.5
	// fails: needs, 0 of 1 shunt
}
