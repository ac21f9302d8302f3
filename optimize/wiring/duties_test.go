package wiring_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

func run(kind scenarios.RunKind) scenarios.Run {
	return scenarios.Run{Kind: kind, LengthM: 1.5, AmbientC: 35, Bundled: 4, TerminalC: 75, Drop: 0.02, OwnBreakerA: 60}
}

// wholeDuty is what every duty takes over from run.
func wholeDuty(kind scenarios.RunKind) wiring.Duty {
	return wiring.Duty{Kind: kind, LengthM: 1.5, AmbientC: 35, Bundled: 4, TerminalC: 75, Drop: 0.02, OwnBreakerA: 60}
}

func scenario() *scenarios.Scenario {
	return &scenarios.Scenario{
		Bus:  scenarios.Bus{NominalV: 51.2, LowV: 44, HighV: 58.4},
		Runs: []scenarios.Run{run(scenarios.RunString), run(scenarios.RunMain), run(scenarios.RunFeeder)},
	}
}

func TestBusDuties(t *testing.T) {
	s := scenario()
	got, ok := wiring.StringDuty(s, &catalog.Battery{MaxDischargeA: 100})
	want := changed(wholeDuty(scenarios.RunString), func(d *wiring.Duty) {
		d.DesignA, d.NominalV, d.DeviceV, d.Poles, d.Conductors = 100, 51.2, 58.4, 1, 2
	})
	if !ok || got != want {
		t.Errorf("StringDuty = %+v, %v; want %+v", got, ok, want)
	}
	// 3960 W at 90 % from 44 V are 100 A.
	got, ok = wiring.MainDuty(s, &catalog.Inverter{ContinuousW: 3960, Efficiency: 0.9})
	want.Kind = scenarios.RunMain
	if want.DesignA = got.DesignA; !ok || got != want || math.Abs(got.DesignA-100) > 1e-9 {
		t.Errorf("MainDuty = %+v, %v; want %+v with 100 A", got, ok, want)
	}
}

func TestFeederDuty(t *testing.T) {
	for _, c := range []struct {
		acV                       string
		wantA, wantV              float64
		wantPoles, wantConductors int
	}{
		{"120", 60, 120, 1, 2},
		{"230", 7200.0 / 230, 230, 1, 2},
		{"120/240", 30, 240, 2, 3},
	} {
		got, ok := wiring.FeederDuty(scenario(), &catalog.Inverter{ACV: c.acV, ContinuousW: 3600}, 2)
		want := changed(wholeDuty(scenarios.RunFeeder), func(d *wiring.Duty) {
			d.AC, d.Ground, d.DesignA, d.NominalV, d.DeviceV = true, true, c.wantA, c.wantV, c.wantV
			d.Poles, d.Conductors = c.wantPoles, c.wantConductors
		})
		if !ok || got != want {
			t.Errorf("%s: FeederDuty = %+v, %v; want %+v", c.acV, got, ok, want)
		}
	}
}

func TestBranchDuty(t *testing.T) {
	for _, c := range []struct {
		volts                     float64
		neutral                   bool
		wantPoles, wantConductors int
	}{
		{120, true, 1, 2},
		{120, false, 1, 2},
		{230, true, 1, 2},
		{240, true, 2, 3},
		{240, false, 2, 2},
	} {
		circuit := &scenarios.Circuit{Name: "kettle", Volts: c.volts, DeviceA: 20, LengthM: 3, Neutral: c.neutral,
			TerminalC: 60, AmbientC: 40, Bundled: 3, Drop: 0.01}
		got, ok := wiring.BranchDuty(scenario(), circuit)
		want := wiring.Duty{Kind: scenarios.RunBranch, Name: "kettle", AC: true, DesignA: 20, NominalV: c.volts,
			DeviceV: c.volts, Poles: c.wantPoles, Conductors: c.wantConductors, Ground: true, LengthM: 3, AmbientC: 40,
			Bundled: 3, TerminalC: 60, Drop: 0.01, DeviceA: 20}
		if !ok || got != want {
			t.Errorf("%v V, neutral %v: BranchDuty = %+v, %v; want %+v", c.volts, c.neutral, got, ok, want)
		}
	}
}

// TestNoDuty: a run the scenario does not name is no duty.
func TestNoDuty(t *testing.T) {
	s := &scenarios.Scenario{Bus: scenarios.Bus{NominalV: 51.2, LowV: 44, HighV: 58.4}}
	inv := &catalog.Inverter{ACV: "120", ContinuousW: 1200, Efficiency: 0.9}
	if d, ok := wiring.StringDuty(s, &catalog.Battery{MaxDischargeA: 100}); ok || d != (wiring.Duty{}) {
		t.Errorf("StringDuty = %+v, %v; want none", d, ok)
	}
	if d, ok := wiring.MainDuty(s, inv); ok || d != (wiring.Duty{}) {
		t.Errorf("MainDuty = %+v, %v; want none", d, ok)
	}
	if d, ok := wiring.FeederDuty(s, inv, 1); ok || d != (wiring.Duty{}) {
		t.Errorf("FeederDuty = %+v, %v; want none", d, ok)
	}
	if d, ok := wiring.BranchDuty(s, nil); ok || d != (wiring.Duty{}) {
		t.Errorf("BranchDuty = %+v, %v; want none", d, ok)
	}
}

// TestLengths: each line conductor once for each set, the ground once, two ends for each.
func TestLengths(t *testing.T) {
	for _, c := range []struct {
		name                   string
		d                      wiring.Duty
		sets                   int
		wantLineM, wantGroundM float64
		wantLine, wantGround   int
	}{
		{"string", wiring.Duty{Conductors: 2, LengthM: 1.5}, 1, 3, 0, 4, 0},
		{"string in two sets", wiring.Duty{Conductors: 2, LengthM: 1.5}, 2, 6, 0, 8, 0},
		{"feeder", wiring.Duty{Conductors: 3, LengthM: 4, Ground: true}, 1, 12, 4, 6, 2},
		{"feeder in two sets", wiring.Duty{Conductors: 3, LengthM: 4, Ground: true}, 2, 24, 4, 12, 2},
	} {
		if c.d.LineM(c.sets) != c.wantLineM || c.d.GroundM() != c.wantGroundM ||
			c.d.LineEnds(c.sets) != c.wantLine || c.d.GroundEnds() != c.wantGround {
			t.Errorf("%s: %v m and %v m, %d and %d ends; want %v, %v, %d, %d", c.name, c.d.LineM(c.sets), c.d.GroundM(),
				c.d.LineEnds(c.sets), c.d.GroundEnds(), c.wantLineM, c.wantGroundM, c.wantLine, c.wantGround)
		}
	}
}
