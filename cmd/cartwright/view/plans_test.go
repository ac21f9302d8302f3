package view

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"time"

	"cartwright/catalog"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

func TestPlansInEveryFormat(t *testing.T) {
	full, sunFull := sample(), sunny()
	full.Full, sunFull.Full = true, true
	show2 := sample()
	show2.Show = 2
	life := sample()
	life.By = question.ByLife
	none := sample()
	none.Result.Plans = nil
	none.Result.Solver.Status = question.Infeasible
	none.Result.Changes = []question.Change{
		{Limits: []question.LimitChange{{Name: plan.LimitAutonomy, From: 24, To: 19.5, Unit: "h"}}},
		{Limits: []question.LimitChange{{Name: plan.LimitMass, From: 300, To: 337.91, Unit: "kg"}}},
		{Limits: []question.LimitChange{{Name: plan.LimitBudget, From: 900, To: 1000.001, Unit: "USD"},
			{Name: plan.LimitShelfMass + "lower", From: 40, To: 41, Unit: "kg"}}},
	}
	nothing := none
	result := *none.Result
	result.Changes = nil
	result.Reasons = []string{"no inverter for 240 V"}
	nothing.Result = &result
	unknown := none
	result5 := *none.Result
	result5.Changes, result5.ChangesUnknown = nil, true
	unknown.Result = &result5
	partlyKnown := none
	result6 := *none.Result
	result6.Changes, result6.ChangesUnknown = none.Result.Changes[:1], true
	partlyKnown.Result = &result6
	noted := sample()
	noted.AsOf = time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)
	noted.Catalog.Batteries[0].Notes = "three winters old"
	noted.Catalog.Batteries[1].Notes = "three winters old"
	noted.Catalog.Inverters[0].Notes, noted.Catalog.Inverters[0].AsOf = "heavy.", noted.AsOf.AddDate(0, -7, 0)
	noted.Catalog.Cables[1].Notes = "in no plan"
	pays := sample()
	pays.Result.Plans[0].Cost, pays.Result.Plans[0].Credit, pays.Result.Plans[0].CostPerUsableKWh = -7520, 250000, -7.673
	long := sample()
	long.Result.Plans[0].Bill[3].Buy, long.Result.Plans[0].Bill[3].Quantity = 3.6576, 7.2576
	stopped := sample()
	stopped.Result.Solver.Status = question.TimeLimit
	stopped.Result.Solver.Gap = 0.0321
	stopped.Result.Solver.Retries = []string{"cell 3: the solver lost its footing; solved again without presolve"}
	for i := range stopped.Result.Plans {
		stopped.Result.Plans[i].Proven = false
	}
	partly := stopped
	result3 := *stopped.Result
	result3.Plans = []plan.Plan{first(), second()}
	result3.Plans[1].Proven = false
	result3.Solver.Gap = 0
	partly.Result = &result3
	reached := partly
	result4 := result3
	result4.Plans = result3.Plans[:1]
	reached.Result = &result4
	empty := stopped
	result2 := *stopped.Result
	result2.Plans, result2.Solver.Gap = nil, 0
	empty.Result = &result2
	owned := sample()
	owned.Result.Plans = owned.Result.Plans[:1]
	owned.Result.Plans[0].Bill = nil
	owned.Distinct = question.DistinctBattery
	for _, c := range []struct {
		file   string
		answer Plans
		format Format
	}{
		{"plans.txt", sample(), Table},
		{"plans.md", sample(), Markdown},
		{"sun.txt", sunny(), Table},
		{"sun-full.txt", sunFull, Table},
		{"sun.md", sunFull, Markdown},
		{"sun.json", sunny(), JSON},
		{"plans-full.txt", full, Table},
		{"plans.csv", sample(), CSV},
		{"plans.json", sample(), JSON},
		{"second.txt", show2, Table},
		{"second.csv", show2, CSV},
		{"noted.txt", noted, Table},
		{"noted.md", noted, Markdown},
		{"long.txt", long, Table},
		{"pays.txt", pays, Table},
		{"life.txt", life, Table},
		{"impossible.txt", none, Table},
		{"impossible.json", none, JSON},
		{"hopeless.txt", nothing, Table},
		{"hopeless.json", nothing, JSON},
		{"changes-unknown.txt", unknown, Table},
		{"changes-unknown.md", unknown, Markdown},
		{"changes-unknown.json", unknown, JSON},
		{"changes-partly-known.txt", partlyKnown, Table},
		{"stopped.txt", stopped, Table},
		{"stopped-empty.txt", empty, Table},
		{"stopped-partly.txt", partly, Table},
		{"stopped-reached.txt", reached, Table},
		{"nothing-to-buy.txt", owned, Table},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}

// A quantity break may have more bought than is installed; the list once did not say what the rest is for.
func TestOverbought(t *testing.T) {
	got := units{}.overbought([]plan.Line{
		{Part: "slate", Quantity: 2, Unit: "each", Buy: 4},
		{Part: "pebble", Quantity: 2, Unit: "each", Have: 1, Buy: 1},
		{Part: "cu-10", Kind: "cable", Quantity: 0.1 + 0.2, Unit: "m", Buy: 0.3},
		{Part: "cu-4", Kind: "cable", Quantity: 3.5, Unit: "m", Have: 1, Buy: 10},
		{Part: "cu-4", Kind: plan.KindCableEnd, Quantity: 4, Unit: "each", Buy: 10},
		{Part: "hose", Kind: plan.KindConduitEnd, Quantity: 2, Unit: "each", Buy: 4},
	})
	want := []string{"2 x slate", "7.5 m of cu-4", "6 ends of cu-4", "2 ends of hose"}
	if !slices.Equal(got, want) {
		t.Errorf("overbought = %q, want %q", got, want)
	}
}

// The ends of a conduit are no conduit: they stood in the bill as so many more of it, were counted as another part, and
// added to how many metres of it are used.
func TestConduitEnds(t *testing.T) {
	hose := plan.Line{Part: "hose", Kind: string(catalog.KindConduit), Unit: "m", Buy: 3, Have: 2, Quantity: 5, UnitPrice: 2, Line: 600}
	ends := plan.Line{Part: "hose", Kind: plan.KindConduitEnd, Unit: "each", Buy: 2, Have: 2, Quantity: 4, UnitPrice: 1.5, Line: 300}
	p := sample()
	p.Scenario = &scenarios.Scenario{Name: "Hose", Currency: "EUR", Units: scenarios.Metric, Have: []scenarios.Holding{{PartID: "hose", Count: 2, ByLength: true, Ends: 2}}}
	p.Catalog = &catalog.Catalog{Conduits: []catalog.Conduit{{Part: catalog.Part{ID: "hose", Name: "Hose 20 mm"}}}}
	one := &plan.Plan{Rank: 1, Bill: []plan.Line{hose, ends}}
	short, err := sheet{p.bill(one)}.screen(Width)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(short, "Hose 20 mm, 2 ends") || !strings.Contains(short, "9.00") || strings.Contains(short, "1.50") {
		t.Errorf("the short bill is\n%s", short)
	}
	p.Full = true
	full, err := sheet{p.bill(one)}.screen(Width)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(full, "fittings for its ends") {
		t.Errorf("the full bill is\n%s", full)
	}
	if got := p.becomes(p.Scenario.Have[0], one).used; got != 2 {
		t.Errorf("%g m of 2 m are used", got)
	}
	bought := []next.Purchase{{Part: "slate", Kind: "battery", Unit: "each", Quantity: 1}, {Part: "hose", Kind: "conduit", Unit: "m", Quantity: 3},
		{Part: "hose", Kind: plan.KindConduitEnd, Unit: "each", Quantity: 2}}
	if got, want := (units{}).purchases(bought), "1 x slate and 1 other part"; got != want {
		t.Errorf("bought %q, want %q", got, want)
	}
}

// Names as long as a file allows must not push a screen past its width, nor a control character reach it.
func TestPlansWithLongNames(t *testing.T) {
	p := sample()
	long := strings.Repeat("very-long-name-", 8)
	p.Scenario.Name = long + "\x1b[2J"
	for i := range p.Result.Plans {
		one := &p.Result.Plans[i]
		for j := range one.Core.Batteries {
			one.Core.Batteries[j].Part = long
		}
		one.Core.Inverter.Part = long
		for j := range one.Bill {
			one.Bill[j].Part, one.Bill[j].Vendor = long, strings.Repeat("x", 100)
		}
		for j := range one.Runs {
			one.Runs[j].Cable, one.Runs[j].Device, one.Runs[j].Name = long, long, strings.ReplaceAll(long, "-", " ")
		}
		for j := range one.Limits {
			one.Limits[j].Name = long
		}
	}
	got, err := Render(p, Table, Width)
	if err != nil {
		t.Fatal(err)
	}
	fits(t, string(got))
	if strings.ContainsRune(string(got), '\x1b') {
		t.Error("a control character of a name reached the screen")
	}
}

// The JSON of a plan has no null: a list without entries is [].
func TestRecordHasNoNull(t *testing.T) {
	p := sample()
	p.Result = &question.Result{Plans: []plan.Plan{{Shelves: []plan.Shelf{{}}}}}
	got, err := Render(p, JSON, Width)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(got), "null") {
		t.Errorf("null in\n%s", got)
	}
	if !json.Valid(got) {
		t.Errorf("not JSON:\n%s", got)
	}
}

func TestAheadIn(t *testing.T) {
	made := func(cost plan.Money, kwh, kg float64) plan.Plan {
		return plan.Plan{Cost: cost, UsableKWh: kwh, AutonomyH: 2 * kwh, MassKg: kg, CostPerUsableKWh: cost.Units() / kwh}
	}
	for _, c := range []struct {
		name  string
		plans []plan.Plan
		want  []string
	}{
		{"no plan", nil, []string{}},
		{"a lone plan is ahead in nothing", []plan.Plan{made(100, 1, 1)}, []string{""}},
		{"the first has what is equal among the best", []plan.Plan{made(10000, 1, 5), made(20000, 1, 5), made(30000, 1, 6)},
			[]string{items("cost", "mass", "kWh cost"), "", ""}},
		{"equal as shown is equal", []plan.Plan{made(10000, 1, 5.001), made(10000, 1, 5)}, []string{"", ""}},
		{"each its own", []plan.Plan{made(10000, 1, 9), made(20000, 4, 10), made(30000, 2, 5)},
			[]string{"cost", items("energy", "autonomy", "kWh cost"), "mass"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := aheadIn(c.plans); !slices.Equal(got, c.want) {
				t.Errorf("aheadIn = %q, want %q", got, c.want)
			}
		})
	}
}
