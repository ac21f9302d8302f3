package wiring_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

func run(kind scenarios.RunKind) scenarios.Run {
	return scenarios.Run{Kind: kind, LengthM: 1.5, LinkM: 0.3, AmbientC: 35, Bundled: 4, TerminalC: 75, Drop: 0.02, OwnBreakerA: 60, Conduit: "emt"}
}

// wholeDuty is what every duty takes over from run.
func wholeDuty(kind scenarios.RunKind) wiring.Duty {
	return wiring.Duty{Kind: kind, LengthM: 1.5, BoughtM: 1.5, AmbientC: 35, Bundled: 4, TerminalC: 75, Drop: 0.02, OwnBreakerA: 60, Conduit: "emt"}
}

func scenario() *scenarios.Scenario {
	return &scenarios.Scenario{
		Bus:  scenarios.Bus{NominalV: 51.2, LowV: 44, HighV: 58.4},
		Runs: []scenarios.Run{run(scenarios.RunString), run(scenarios.RunMain), run(scenarios.RunFeeder)},
	}
}

// wholeString is the duty of a string of 51.2 V modules that carries amps.
func wholeString(amps float64) wiring.Duty {
	return changed(wholeDuty(scenarios.RunString), func(d *wiring.Duty) {
		d.DesignA, d.DropA, d.NominalV, d.DeviceV, d.Poles, d.Conductors = amps, amps, 51.2, 58.4, 1, 2
		d.TwoWay, d.OwnBreakerA = true, 0
	})
}

func TestStringDuty(t *testing.T) {
	b := catalog.Battery{NominalV: 51.2, MaxDischargeA: 100, MaxFuseA: 150}
	maker := func(d *wiring.Duty) { d.MostDeviceA = 150 }
	for _, c := range []struct {
		name    string
		battery catalog.Battery
		busA    float64
		strings int
		change  func(*scenarios.Scenario)
		want    wiring.Duty
	}{
		{"by the battery", b, 250, 2, nil, changed(wholeString(100), maker)},
		{"by the whole bus", b, 74, 2, nil, changed(wholeString(74), maker)},
		{"no bus yet", b, math.Inf(1), 1, nil, changed(wholeString(100), maker)},
		{"fine strand", b, 250, 1, func(s *scenarios.Scenario) { s.Cable.Fine = true }, changed(changed(wholeString(100), maker), func(d *wiring.Duty) { d.Fine = true })},
		{"its own device", changed(b, func(b *catalog.Battery) { b.OwnDeviceA, b.OwnInterruptingA = 125, 10000 }), 250, 1, nil,
			changed(changed(wholeString(100), maker), func(d *wiring.Duty) { d.BuiltInA, d.BuiltInBreaksA = 125, 10000 })},
		{"its own device, not known what it breaks", changed(b, func(b *catalog.Battery) { b.OwnDeviceA = 125 }), 250, 1, nil, changed(wholeString(100), maker)},
		{"breaks something, of no rating", changed(b, func(b *catalog.Battery) { b.OwnInterruptingA = 125 }), 250, 1, nil, changed(wholeString(100), maker)},
		{"two in series: one link", changed(b, func(b *catalog.Battery) { b.NominalV = 25.6 }), 250, 1, nil,
			changed(changed(wholeString(100), maker), func(d *wiring.Duty) { d.Links, d.LinkM, d.LinkBuyM = 1, 0.3, 0.3 })},
		// Four of 12.8 V: three links of 0.3 m, bought with 10 % of slack in whole tenths.
		{"links", changed(b, func(b *catalog.Battery) { b.NominalV, b.OwnDeviceA, b.OwnInterruptingA = 12.8, 125, 10000 }), 250, 1,
			func(s *scenarios.Scenario) { s.Cable.Slack, s.Cable.StepM = 0.1, 0.1 },
			changed(changed(wholeString(100), maker), func(d *wiring.Duty) { d.Links, d.LinkM, d.LinkBuyM, d.BoughtM = 3, 0.3, 0.4, 1.7 })},
		{"three strings, short", b, 250, 3, func(s *scenarios.Scenario) { s.Runs[0].LengthM = 3 },
			changed(changed(wholeString(100), maker), func(d *wiring.Duty) { d.LengthM, d.BoughtM = 3, 3 })},
		{"three strings, above 3 m", b, 250, 3, func(s *scenarios.Scenario) { s.Runs[0].LengthM = 3.01 },
			changed(changed(wholeString(100), maker), func(d *wiring.Duty) { d.LengthM, d.BoughtM, d.Devices = 3.01, 3.01, 2 })},
		{"two strings, above 3 m", b, 250, 2, func(s *scenarios.Scenario) { s.Runs[0].LengthM = 4 },
			changed(changed(wholeString(100), maker), func(d *wiring.Duty) { d.LengthM, d.BoughtM = 4, 4 })},
	} {
		s := scenario()
		if c.change != nil {
			c.change(s)
		}
		got, ok := wiring.StringDuty(s, &c.battery, c.busA, c.strings)
		if got.BoughtM, got.LinkBuyM = rounded(got.BoughtM), rounded(got.LinkBuyM); !ok || got != c.want {
			t.Errorf("%s: %+v, %v; want %+v", c.name, got, ok, c.want)
		}
	}
}

// rounded takes off what binary fractions leave.
func rounded(x float64) float64 { return math.Round(1e9*x) / 1e9 }

func TestMainDuty(t *testing.T) {
	for _, fine := range []bool{false, true} {
		s := scenario()
		s.Cable.Fine = fine
		got, ok := wiring.MainDuty(s, 100)
		want := changed(wholeString(100), func(d *wiring.Duty) { d.Kind, d.Fine, d.OwnBreakerA = scenarios.RunMain, fine, 60 })
		if !ok || got != want {
			t.Errorf("MainDuty = %+v, %v; want %+v", got, ok, want)
		}
	}
}

// TestUnitA: a main carries the largest of load, charger and sun: 3960 W at 90 % from 44 V are 100 A, 4840 W of
// modules at 44 V are 110 A.
func TestUnitA(t *testing.T) {
	for _, c := range []struct{ chargerA, arrayW, want float64 }{
		{0, 0, 100}, {100, 0, 100}, {120, 0, 120}, {0, 4400, 100}, {0, 4840, 110}, {120, 4840, 120}, {105, 4840, 110},
	} {
		got := wiring.UnitA(scenario(), &catalog.Inverter{ContinuousW: 3960, Efficiency: 0.9, ChargerA: c.chargerA}, c.arrayW)
		if math.Abs(got-c.want) > 1e-9 {
			t.Errorf("charger %v A, array %v W: %v A, want %v", c.chargerA, c.arrayW, got, c.want)
		}
	}
}

// TestBoughtM: length * (1 + slack), up to whole steps; what is a whole step but for rounding stays.
func TestBoughtM(t *testing.T) {
	for _, c := range []struct{ slack, stepM, lengthM, want float64 }{
		{0, 0, 1.5, 1.5}, {0.2, 0, 1.5, 1.8}, {0, 0.5, 1.5, 1.5}, {0, 0.5, 1.51, 2}, {0.1, 0.5, 1.5, 2},
		{0.1, 0.3048, 3 * 0.3048 / 1.1, 3 * 0.3048}, // 3 ft but for rounding
		{0, 0.3048, 3.0001 * 0.3048, 4 * 0.3048},
	} {
		s := &scenarios.Scenario{Cable: scenarios.CableWish{Slack: c.slack, StepM: c.stepM}}
		if got := wiring.BoughtM(s, c.lengthM); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%v m with %v slack in steps of %v: %v m, want %v", c.lengthM, c.slack, c.stepM, got, c.want)
		}
	}
}

// TestFeederDuty: one unit's continuous power; of 120/240 V the larger of that between the hots and of one leg.
func TestFeederDuty(t *testing.T) {
	for _, c := range []struct {
		acV                       string
		legW, wantA, wantV        float64
		wantPoles, wantConductors int
	}{
		{"120", 3600, 30, 120, 1, 2},
		{"230", 3600, 3600.0 / 230, 230, 1, 2},
		{"120/240", 1800, 15, 240, 2, 3},
		{"120/240", 2400, 20, 240, 2, 3},
		{"120/240", 1200, 15, 240, 2, 3},
	} {
		got, ok := wiring.FeederDuty(scenario(), &catalog.Inverter{ACV: c.acV, ContinuousW: 3600, LegW: c.legW})
		want := changed(wholeDuty(scenarios.RunFeeder), func(d *wiring.Duty) {
			d.AC, d.Ground, d.DesignA, d.DropA, d.NominalV, d.DeviceV = true, true, c.wantA, c.wantA, c.wantV, c.wantV
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
			TerminalC: 60, AmbientC: 40, Bundled: 3, Drop: 0.01, Conduit: "emt"}
		got, ok := wiring.BranchDuty(scenario(), circuit)
		want := wiring.Duty{Kind: scenarios.RunBranch, Name: "kettle", AC: true, DesignA: 20, DropA: 20, NominalV: c.volts,
			DeviceV: c.volts, Poles: c.wantPoles, Conductors: c.wantConductors, Ground: true, LengthM: 3, BoughtM: 3, AmbientC: 40,
			Bundled: 3, TerminalC: 60, Drop: 0.01, DeviceA: 20, Conduit: "emt"}
		if !ok || got != want {
			t.Errorf("%v V, neutral %v: BranchDuty = %+v, %v; want %+v", c.volts, c.neutral, got, ok, want)
		}
	}
}

// TestDCDuty: a circuit on the bus has two conductors from the bus bars, one pole and no ground.
func TestDCDuty(t *testing.T) {
	circuit := &scenarios.Circuit{Name: "lamps", DC: true, DeviceA: 20, LengthM: 3, AmbientC: 40, Bundled: 3, Drop: 0.01, Neutral: true}
	got, ok := wiring.BranchDuty(scenario(), circuit)
	want := wiring.Duty{Kind: scenarios.RunDC, Name: "lamps", DesignA: 20, DropA: 20, NominalV: 51.2, DeviceV: 58.4, Poles: 1,
		Conductors: 2, LengthM: 3, BoughtM: 3, AmbientC: 40, Bundled: 3, Drop: 0.01, DeviceA: 20}
	if !ok || got != want {
		t.Errorf("BranchDuty = %+v, %v; want %+v", got, ok, want)
	}
}

// TestInletDuty: like a branch of the supply's volts, of 240 V with three conductors.
func TestInletDuty(t *testing.T) {
	s := scenario()
	s.Runs = append(s.Runs, changed(run(scenarios.RunInlet), func(r *scenarios.Run) { r.OwnBreakerA = 0 }))
	if d, ok := wiring.InletDuty(s); ok {
		t.Errorf("no supply: %+v", d)
	}
	for volts, want := range map[float64]struct{ poles, conductors int }{120: {1, 2}, 230: {1, 2}, 240: {2, 3}} {
		s.Recharge = &scenarios.Recharge{Supply: &scenarios.Supply{Volts: volts, DeviceA: 20}}
		got, ok := wiring.InletDuty(s)
		duty := changed(wholeDuty(scenarios.RunInlet), func(d *wiring.Duty) {
			d.AC, d.Ground, d.DesignA, d.DropA, d.DeviceA, d.NominalV, d.DeviceV = true, true, 20, 20, 20, volts, volts
			d.Poles, d.Conductors, d.OwnBreakerA = want.poles, want.conductors, 0
		})
		if !ok || got != duty {
			t.Errorf("%v V: %+v, %v; want %+v", volts, got, ok, duty)
		}
	}
}

// TestBondDuty: one grounding conductor and nothing else.
func TestBondDuty(t *testing.T) {
	s := scenario()
	s.Runs = append(s.Runs, changed(run(scenarios.RunBond), func(r *scenarios.Run) { r.OwnBreakerA = 0 }))
	d, ok := wiring.BondDuty(s)
	if !ok || !d.Ground || d.LineM(1) != 0 || d.LineEnds(1) != 0 || d.GroundM() != 1.5 || d.GroundEnds() != 2 || d.Conduit != "emt" {
		t.Errorf("BondDuty = %+v, %v", d, ok)
	}
}

// TestNoDuty: a run the scenario does not name is no duty.
func TestNoDuty(t *testing.T) {
	s := &scenarios.Scenario{Bus: scenarios.Bus{NominalV: 51.2, LowV: 44, HighV: 58.4}, Sun: &scenarios.Sun{},
		Recharge: &scenarios.Recharge{Supply: &scenarios.Supply{Volts: 120, DeviceA: 20}}}
	duty := func(name string) func(d wiring.Duty, ok bool) {
		return func(d wiring.Duty, ok bool) {
			if ok {
				t.Errorf("%s = %+v; want none", name, d)
			}
		}
	}
	duty("StringDuty")(wiring.StringDuty(s, &catalog.Battery{NominalV: 51.2, MaxDischargeA: 100}, 100, 1))
	duty("MainDuty")(wiring.MainDuty(s, 100))
	duty("FeederDuty")(wiring.FeederDuty(s, &catalog.Inverter{ACV: "120", ContinuousW: 1200}))
	duty("BranchDuty")(wiring.BranchDuty(s, nil))
	duty("InletDuty")(wiring.InletDuty(s))
	duty("BondDuty")(wiring.BondDuty(s))
	duty("SolarDuty")(wiring.SolarDuty(s, wiring.Strung{Module: &catalog.Solar{}, Series: 1, Parallel: 1}))
	if wiring.BothEnds(s, 9) {
		t.Error("BothEnds of no run")
	}
}

// TestLengths: each line conductor once for each set, each link too, the ground once, two ends for each.
func TestLengths(t *testing.T) {
	for _, c := range []struct {
		name                   string
		d                      wiring.Duty
		sets                   int
		wantLineM, wantGroundM float64
		wantLine, wantGround   int
	}{
		{"string", wiring.Duty{Conductors: 2, BoughtM: 1.5}, 1, 3, 0, 4, 0},
		{"string in two sets", wiring.Duty{Conductors: 2, BoughtM: 1.5}, 2, 6, 0, 8, 0},
		{"string of four", wiring.Duty{Conductors: 2, BoughtM: 1.5, Links: 3, LinkBuyM: 0.5}, 1, 4.5, 0, 10, 0},
		{"the same in two sets", wiring.Duty{Conductors: 2, BoughtM: 1.5, Links: 3, LinkBuyM: 0.5}, 2, 9, 0, 20, 0},
		{"feeder", wiring.Duty{Conductors: 3, BoughtM: 4, Ground: true}, 1, 12, 4, 6, 2},
		{"feeder in two sets", wiring.Duty{Conductors: 3, BoughtM: 4, Ground: true}, 2, 24, 4, 12, 2},
	} {
		if c.d.LineM(c.sets) != c.wantLineM || c.d.GroundM() != c.wantGroundM ||
			c.d.LineEnds(c.sets) != c.wantLine || c.d.GroundEnds() != c.wantGround {
			t.Errorf("%s: %v m and %v m, %d and %d ends; want %v, %v, %d, %d", c.name, c.d.LineM(c.sets), c.d.GroundM(),
				c.d.LineEnds(c.sets), c.d.GroundEnds(), c.wantLineM, c.wantGroundM, c.wantLine, c.wantGround)
		}
	}
	d := wiring.Duty{LengthM: 1.5, Links: 3, LinkM: 0.25, BoughtM: 9, LinkBuyM: 9}
	if got := d.WayM(); got != 3.75 {
		t.Errorf("there and back with three links: %v m, want 3.75", got)
	}
}
