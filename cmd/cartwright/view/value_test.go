package view

import (
	"slices"
	"strings"
	"testing"
	"time"

	"cartwright/optimize/plan"
	"cartwright/optimize/value"
	"cartwright/scenarios"
)

// someValues is a hand-made table: one battery in full, one that lacks whatever can be lacking, one in
// between, and one that does not fit. Its figures are chosen to be told apart, not computed.
func someValues() Value {
	sale := plan.Money(42050)
	return Value{
		Scenario: &scenarios.Scenario{Name: "Barn lights", Currency: "USD", Rules: scenarios.NEC, Units: scenarios.US},
		AsOf:     time.Date(2026, 8, 1, 0, 0, 0, 0, time.UTC),
		By:       "landed",
		Cautions: []string{"Arcs can kill."},
		Table: &value.Table{Complete: true,
			Batteries: []value.BatteryValue{
				{Part: "mid", Name: "Middle module", Chemistry: "AGM lead", Series: 4, Price: 20000, Vendor: "yard", CostPerExtraKWh: 912.44,
					AsOf: time.Date(2026, 7, 1, 0, 0, 0, 0, time.UTC), UsableKWh: 0.5, CostPerUsableKWh: 400,
					CostPerLifetimeKWh: 0.66, KgPerUsableKWh: 58.25, LitresPerUsableKWh: 25.2,
					Landed: &value.Landed{Modules: 80000, Wiring: 4860, Shipping: 500, Tax: 5884, Cost: 91244,
						CostPerUsableKWh: 456.22, Vendor: "yard", Cable: "wire-6", Device: "breaker-50"},
					Count: value.Count{Known: true, Limits: []string{value.StopsMass}, Least: 3}},
				{Part: "slate-48-100", Name: "Slate", Chemistry: "LFP", Series: 1, Price: 90000, CostPerExtraKWh: 251.4857,
					AsOf: time.Date(2025, 7, 1, 0, 0, 0, 0, time.UTC), UsableKWh: 4.2, CostPerUsableKWh: 214.2857,
					CostPerLifetimeKWh: 0.0357, KgPerUsableKWh: 10.7, LitresPerUsableKWh: 6.5,
					Landed: &value.Landed{Modules: 90000, Wiring: 7800, Tax: 7824, Cost: 105624, CostPerUsableKWh: 251.4857,
						Cable: "cu-4-0", Device: "fuse-t-175"},
					Count: value.Count{Known: true, Strings: 5, Modules: 5, Limits: []string{value.StopsMass, value.StopsCasters}, Jointly: true},
					Owned: 2, ForSale: &sale},
				{Part: "odd", Name: "Odd one", Chemistry: "LFP", Series: 2, Price: 10000, UsableKWh: 1, CostPerUsableKWh: 100,
					KgPerUsableKWh: 12, LitresPerUsableKWh: 9, Count: value.Count{Known: true, Limits: []string{value.StopsWiring}}, Owned: 1},
			},
			Misfits: []value.Misfit{{Part: "block-120", Reason: "one of 120 V is more than the bus of 48 V"}},
		},
	}
}

func TestValueInEveryFormat(t *testing.T) {
	none := someValues()
	none.Table = &value.Table{Complete: true, Misfits: none.Table.Misfits, Reasons: []string{"the catalogue has no bus bars"}}
	stopped := someValues()
	stopped.Table.Complete, stopped.Table.Batteries[1].Count = false, value.Count{}
	for _, c := range []struct {
		file   string
		answer Value
		format Format
	}{
		{"value.txt", someValues(), Table},
		{"value.md", someValues(), Markdown},
		{"value.csv", someValues(), CSV},
		{"value.json", someValues(), JSON},
		{"value-stopped.txt", stopped, Table},
		{"value-stopped.csv", stopped, CSV},
		{"value-stopped.json", stopped, JSON},
		{"value-none.txt", none, Table},
		{"value-none.json", none, JSON},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}

// Every column sorts: the best first, what has no figure last, equal ones as in the catalogue.
func TestValueSorted(t *testing.T) {
	want := map[string]string{
		"landed": "slate-48-100 mid odd", "extra": "slate-48-100 mid odd", "usable": "odd slate-48-100 mid", "life": "slate-48-100 mid odd",
		"price": "odd mid slate-48-100", "kwh": "slate-48-100 odd mid", "kg": "slate-48-100 odd mid",
		"litres": "slate-48-100 odd mid", "strings": "slate-48-100 mid odd", "modules": "slate-48-100 mid odd",
		"energy": "slate-48-100 mid odd", "owned": "slate-48-100 odd mid", "part": "mid odd slate-48-100",
	}
	for _, by := range ValueColumns() {
		v := someValues()
		v.By = by
		var parts []string
		for _, b := range v.sorted() {
			parts = append(parts, b.Part)
		}
		if got := strings.Join(parts, " "); got != want[by] {
			t.Errorf("by %s: %s, want %s", by, got, want[by])
		}
	}
	v := someValues()
	v.By = "price"
	if v.sorted(); v.Table.Batteries[0].Part != "mid" {
		t.Error("the table itself was sorted")
	}
	if !slices.Equal(ValueColumns(), slices.Compact(ValueColumns())) || ValueColumns()[0] != "landed" {
		t.Errorf("columns are %q", ValueColumns())
	}
}
