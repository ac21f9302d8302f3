package audit

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"cartwright/optimize/plan"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// golden compares a text with a file of testdata, or rewrites the file.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s\n got:\n%s\nwant:\n%s", file, got, want)
	}
}

// printChecks writes one check a line; the sources of the rule sets are their own room's to word.
func printChecks(b *bytes.Buffer, checks []plan.Check) {
	for _, c := range checks {
		result := "pass"
		if !c.Passed {
			result = "FAIL"
		}
		fmt.Fprintf(b, "%-28s %s %12.6g %12.6g %s; %s\n", c.Name, result, c.Value, c.Limit, c.Unit, c.Detail)
	}
}

// The whole report on a plan that passes, and on one with many faults.
func TestPlanGolden(t *testing.T) {
	spoilt := newBarn()
	spoilt.p.Shelves[1].Shelf = "roof"
	spoilt.line("panel-8", "sundry").Line++
	spoilt.line("brick", "battery").Vendor = "Elm"
	spoilt.line("g12", "cable").Buy--
	spoilt.line("old-inverter", "inverter").Sell = 3
	spoilt.line("b20-f", "device").Unit = "m"
	spoilt.run("main", "").Device = "fuse-9"
	spoilt.run("branch", "bench").Name = "bunch"
	spoilt.p.Core.Inverter.Units = 3
	spoilt.p.Limits[0].Value++
	spoilt.p.Limits[1].Unit = "kW"
	spoilt.p.Legs[0].Leg = "C"
	spoilt.p.Tax += 5
	spoilt.p.Cost += 7
	spoilt.p.Shipping += 11
	spoilt.p.Spend += 13
	for name, k := range map[string]*cart{"barn.golden": newBarn(), "fair.golden": newFair(), "spoilt.golden": spoilt} {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			printChecks(&b, k.auditor().Plan(k.p).Checks)
			golden(t, name, b.Bytes())
		})
	}
}

// The whole report on owned parts.
func TestInstalledGolden(t *testing.T) {
	some := newBarn().ownAll()
	some.own("g1-0", 3.1)
	some.own("fuse-80", 0)
	some.own("outlet-20", 5)
	some.own("old-inverter", 1)
	some.own("caster-120", 0)
	some.own("b20-2", 3)
	odd := newFair().ownAll()
	odd.own("block", 3)
	odd.own("c1.5", 11)
	odd.own("outlet-16", 0)
	two := newFair().ownAll() // one set of 50 mm2 carries 168 A
	two.battery("block").MaxDischargeA = 180
	two.device("gg-125").RatingA = 200
	two.own("c35", 0)
	two.own("c50", 5.2)
	for name, k := range map[string]*cart{"some.golden": some, "odd.golden": odd, "sets.golden": two} {
		t.Run(name, func(t *testing.T) {
			r := k.installed(t)
			var b bytes.Buffer
			fmt.Fprintf(&b, "passed %t\ncore %+v\nshelves %+v\nnotes %q\n", r.Passed, r.Core, r.Shelves, r.Notes)
			for _, m := range r.Missing {
				fmt.Fprintln(&b, "missing", m)
			}
			for _, o := range r.Parts {
				fmt.Fprintf(&b, "owned %s (%s): %g %s, used %g as %s\n", o.Part, o.Kind, o.Have, o.Unit, o.Used, o.As)
			}
			for _, run := range r.Runs {
				fmt.Fprintf(&b, "run %+v passed %t\n", run.Run, run.Passed)
				printChecks(&b, run.Failed)
			}
			printChecks(&b, r.Checks)
			golden(t, name, b.Bytes())
		})
	}
}
