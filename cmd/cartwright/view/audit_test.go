package view

import (
	"strings"
	"testing"

	"cartwright/optimize/audit"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// someAudit is a hand-made report with something of everything.
func someAudit() Audit {
	barn := &scenarios.Scenario{Name: "Barn lights", Currency: "USD", Rules: scenarios.NEC, Units: scenarios.US}
	wired := first().Runs[1]
	bare := first().Runs[0]
	bare.Device, bare.DeviceA, bare.AllowedA, bare.InterruptingA = "", 0, 0, 0
	return Audit{
		Scenario: barn,
		Report: audit.Report{
			Parts: []audit.Owned{
				{Part: "slate-48-100", Kind: "battery", Have: 2, Used: 2, Unit: "each", As: "2 strings of 1"},
				{Part: "cu-4-0", Kind: "cable", Have: 7.5, Used: 3.6, Unit: "m", As: "2 x main"},
			},
			Core: first().Core,
			Runs: []audit.OwnedRun{{Run: wired, Failed: []plan.Check{
				{Name: "main ampacity", Value: 110, Limit: 121.5, Unit: "A", Detail: "main: cu-4-0"}}}, {Run: bare}},
			Missing: []string{"a set of 4 casters"},
			Checks: []plan.Check{
				{Name: "core", Value: 2, Detail: "no inverter; no battery", Source: "common practice, no source"},
				{Name: "known parts", Passed: true},
				{Name: "power", Value: 3000, Limit: 4680, Unit: "W", Source: "the maker's limit", Detail: "gust-5k-split"},
				{Name: "mass", Passed: true, Value: 118.1, Limit: 300, Unit: "kg", Source: "the scenario's own limit"},
				{Name: "strings in parallel", Passed: true, Value: 2, Limit: 1.7976931348623157e308},
			},
			Notes: []string{"The search for a better use of the cables was cut short."},
		},
		Cautions: []string{"Arcs can kill."},
	}
}

func TestAuditInEveryFormat(t *testing.T) {
	barn, fails := someAudit().Scenario, someAudit()
	passes := Audit{Scenario: barn, Report: audit.Report{
		Passed: true,
		Checks: []plan.Check{{Name: "mass", Passed: true, Value: 118.1, Limit: 300, Unit: "kg"}},
	}}
	for _, c := range []struct {
		file   string
		answer Audit
		format Format
	}{
		{"audit.txt", fails, Table},
		{"audit.md", fails, Markdown},
		{"audit.csv", fails, CSV},
		{"audit.json", fails, JSON},
		{"audit-passes.txt", passes, Table},
		{"audit-passes.json", passes, JSON},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}

// What is owned may leave a cable path without any fuse or breaker; the screen once called that the
// inverter's own breaker.
func TestWiringOfBarePathNamesNoBreaker(t *testing.T) {
	bare := first().Runs[0]
	bare.Device, bare.DeviceA, bare.InterruptingA = "", 0, 0
	screen, err := units{}.wiringTable([]plan.Run{bare}).screen(Width)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(screen, "own breaker") || !strings.Contains(screen, "NO FUSE OR BREAKER") {
		t.Errorf("a path without a device is shown as\n%s", screen)
	}
}
