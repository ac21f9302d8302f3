package wiring_test

import (
	"fmt"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/optimize/wiring/nec"
	"cartwright/scenarios"
)

// panel is an invented module.
var panel = catalog.Solar{Watts: 400, VocV: 37, VmpV: 31, IscA: 13, ImpA: 12.9, MaxFuseA: 25, MaxSystemV: 600}

// sunny returns a scenario with a solar run in the sun.
func sunny() *scenarios.Scenario {
	s := scenario()
	s.Runs = append(s.Runs, changed(run(scenarios.RunSolar), func(r *scenarios.Run) { r.TerminalC = 0 }))
	s.Sun = &scenarios.Sun{HottestC: 45}
	return s
}

// TestSolarDuty: two poles and a ground that does not grow; 125 % of the short-circuit current of the strings, drop by
// the current and volts at full power, as hot as the air may be.
func TestSolarDuty(t *testing.T) {
	got, ok := wiring.SolarDuty(sunny(), wiring.Strung{Module: &panel, Series: 3, Parallel: 2, ColdV: 120})
	want := changed(wholeDuty(scenarios.RunSolar), func(d *wiring.Duty) {
		d.DesignA, d.DropA, d.NominalV, d.DeviceV, d.AmbientC = 32.5, 25.8, 93, 120, 45
		d.Poles, d.Conductors, d.Ground, d.Array, d.TerminalC, d.OwnBreakerA = 2, 2, true, true, 0, 0
	})
	if !ok || got != want {
		t.Errorf("SolarDuty = %+v, %v; want %+v", got, ok, want)
	}
	s := sunny()
	s.Sun.HottestC = 30
	if d, _ := wiring.SolarDuty(s, wiring.Strung{Module: &panel, Series: 3, Parallel: 2, ColdV: 120}); d.AmbientC != 35 {
		t.Errorf("ambient %v C where the run has 35 and the air 30", d.AmbientC)
	}
	s.Sun = nil
	if d, ok := wiring.SolarDuty(s, wiring.Strung{Module: &panel, Series: 3, Parallel: 2}); ok {
		t.Errorf("no sun: %+v", d)
	}
}

// A training text on PV calculations (2023 NEC edition), worked example 2: one string of 11.2 A is reckoned with 14.0 A
// and takes 17.5 A of conductor and fuse, so 20 A; 10 AWG of 90 °C at 45 °C still carries 34.8 A. Confirmed in 1 text.
func ExampleSolarDuty() {
	s := sunny()
	d, _ := wiring.SolarDuty(s, wiring.Strung{Module: &catalog.Solar{IscA: 11.2, ImpA: 10.5, VmpV: 41}, Series: 10, Parallel: 1, ColdV: 541.8})
	d.Bundled, d.LengthM = 2, 3
	fuse := &catalog.Device{Type: "fuse", RatingA: 20, Poles: 2, MaxDCV: 600, InterruptingDCA: 20000, TerminalC: 75}
	o := wiring.Option{Cable: copperCable("10 AWG", 90), Sets: 1, Device: fuse, Ground: copperCable("12 AWG", 90)}
	res := wiring.For(scenarios.NEC).Check(d, o, d.DesignA)
	column, _ := nec.AmbientFactor(d.AmbientC, nec.Col90)
	amps, _ := nec.Ampacity("copper", "10 AWG", nec.Col90)
	fmt.Printf("%.1f A, %.1f A, %.0f A: %v; %.1f A left at %.0f C\n", d.DesignA, res.RequiredA, fuse.RatingA, res.OK(), amps*column, d.AmbientC)
	// Output: 14.0 A, 17.5 A, 20 A: true; 34.8 A left at 45 C
}

// TestSolarRun: NFPA 70 690.8, 690.13, table 250.122 and 690.45; iec: I_B is 1.25 of the short-circuit current, method C.
func TestSolarRun(t *testing.T) {
	one, _ := wiring.SolarDuty(sunny(), wiring.Strung{Module: &catalog.Solar{IscA: 16, ImpA: 15, VmpV: 31}, Series: 3, Parallel: 1, ColdV: 120})
	one.Bundled = 2 // 20 A; 25 A of device and cable
	fuse := func(ratingA float64) *catalog.Device {
		return &catalog.Device{Type: "fuse", Class: "gPV", RatingA: ratingA, Poles: 2, MaxDCV: 120, InterruptingDCA: 20, TerminalC: 75}
	}
	on := func(size, ground catalog.Size, dev *catalog.Device) wiring.Option {
		return wiring.Option{Cable: copperCable(size, 90), Sets: 1, Device: dev, Ground: copperCable(ground, 90)}
	}
	runVerdicts(t, necRules, []verdict{
		{"serves", one, on("10 AWG", "10 AWG", fuse(25)), 20, nil},
		{"125 % of 125 %", one, on("10 AWG", "10 AWG", fuse(20)), 20, []string{"device rating"}},
		{"12 AWG: terminals, and no more than 20 A", one, on("12 AWG", "12 AWG", fuse(25)), 20, []string{"terminal ampacity", "cable protected", "small conductor"}},
		{"one pole", one, on("10 AWG", "10 AWG", changed(fuse(25), func(d **catalog.Device) { (*d).Poles = 1 })), 20, []string{"device poles"}},
		{"volts in the cold", changed(one, func(d *wiring.Duty) { d.DeviceV = 121 }), on("10 AWG", "10 AWG", fuse(25)), 20, []string{"device voltage"}},
		{"what the strings give", one, on("10 AWG", "10 AWG", fuse(25)), 21, []string{"interrupting rating"}},
		{"ground by the table", one, on("10 AWG", "12 AWG", fuse(25)), 20, []string{"ground size"}},
		{"ground not enlarged", one, on("6 AWG", "10 AWG", fuse(25)), 20, nil},
		{"a polarised breaker is one way", one, on("10 AWG", "10 AWG", &catalog.Device{Type: "breaker", RatingA: 25, Poles: 2, MaxDCV: 120,
			InterruptingDCA: 20, TerminalC: 75, Polarised: catalog.Yes}), 20, nil},
		{"14 AWG is the least ground", changed(one, func(d *wiring.Duty) { d.DesignA = 1 }), on("14 AWG", "16 AWG", fuse(3)), 20, []string{"ground listed"}},
	})
	runVerdicts(t, iecRules, []verdict{
		{"iec: 20 A on a device of 20 A", one, on("2.5 mm2", "2.5 mm2", fuse(20)), 20, nil}, // C, 45 °C: 33 · 0.87 A
		{"iec: 16 A", one, on("2.5 mm2", "2.5 mm2", fuse(16)), 20, []string{"device rating"}},
		{"iec: ground by table 54.2", one, on("4 mm2", "2.5 mm2", fuse(20)), 20, []string{"ground size"}},
	})
	if got, want := iecRules.Check(one, on("2.5 mm2", "2.5 mm2", fuse(20)), 20).AllowedA, 33*0.87; math.Abs(got-want) > 1e-9 {
		t.Errorf("iec: %v A, want %v by method C", got, want)
	}
}

// TestStringFused: a fuse a string where the others can feed it more than its maker allows (NFPA 70 690.9(A)); where he
// says nothing, from three on (common practice, no source).
func TestStringFused(t *testing.T) {
	for _, c := range []struct {
		iscA, maxFuseA float64
		parallel       int
		want           bool
	}{
		{13, 25, 1, false}, {13, 25, 2, false}, {13, 25, 3, true}, // 16.25 and 32.5 A
		{10, 25, 3, false}, {10.001, 25, 3, true}, {10 * (1 + 1e-12), 25, 3, false}, // 25 A exactly
		{13, 0, 1, false}, {13, 0, 2, false}, {13, 0, 3, true}, {0.1, 0, 3, true},
	} {
		x := wiring.Strung{Module: &catalog.Solar{IscA: c.iscA, MaxFuseA: c.maxFuseA}, Series: 1, Parallel: c.parallel}
		if got := wiring.StringFused(x); got != c.want {
			t.Errorf("%d of %v A, at most %v A: %v", c.parallel, c.iscA, c.maxFuseA, got)
		}
	}
}

// TestStringFuses: fuses of whole range and standard rating from 1.5625 times the short-circuit current (an equipment
// manual, p. 39: 9.2 A asks for 14.4 A; confirmed in 1 text) to what the maker allows, for the volts in the cold.
func TestStringFuses(t *testing.T) {
	x := wiring.Strung{Module: &catalog.Solar{IscA: 9.2, ImpA: 9, VmpV: 31, MaxFuseA: 20}, Series: 3, Parallel: 4, ColdV: 120}
	d, _ := wiring.SolarDuty(sunny(), x) // 46 A
	fuse := func(ratingA float64, change func(*catalog.Device)) catalog.Device {
		f := catalog.Device{Type: "fuse", Class: "gPV", RatingA: ratingA, Poles: 1, MaxDCV: 120, InterruptingDCA: 46}
		f.ID = fmt.Sprint(ratingA)
		if change != nil {
			change(&f)
		}
		return f
	}
	no := func(f *catalog.Device) { f.ID = "no" }
	c := &catalog.Catalog{Devices: []catalog.Device{
		fuse(10, nil), fuse(15, nil), fuse(16, nil), fuse(20, nil), fuse(25, nil), fuse(14.5, nil),
		fuse(15, func(f *catalog.Device) { no(f); f.Type = "breaker" }),
		fuse(15, func(f *catalog.Device) { no(f); f.Class = "aR" }),
		fuse(15, func(f *catalog.Device) { no(f); f.MaxDCV = 119 }),
		fuse(15, func(f *catalog.Device) { no(f); f.InterruptingDCA = 45.9 }),
		fuse(15, func(f *catalog.Device) { f.ID, f.Listed = "15 not listed", catalog.No }),
		fuse(16, func(f *catalog.Device) { f.ID, f.Listed = "16 not listed", catalog.No }),
	}}
	ids := func(r wiring.Rules, x wiring.Strung) string {
		s := ""
		for _, f := range wiring.StringFuses(r, d, x, c) {
			s += f.ID + ";"
		}
		return s
	}
	if got, want := ids(necRules, x), "15;20;"; got != want {
		t.Errorf("nec: %s, want %s", got, want)
	}
	if got, want := ids(iecRules, x), "16;20;16 not listed;"; got != want {
		t.Errorf("iec: %s, want %s", got, want)
	}
	unsaid := x
	unsaid.Module = &catalog.Solar{IscA: 9.2, ImpA: 9, VmpV: 31}
	if got, want := ids(necRules, unsaid), "15;20;25;"; got != want {
		t.Errorf("no largest fuse stated: %s, want %s", got, want)
	}
	unsaid.Module = &catalog.Solar{IscA: 9.6, ImpA: 9, VmpV: 31} // 15 A exactly
	if got, want := ids(necRules, unsaid), "15;20;25;"; got != want {
		t.Errorf("1.5625 of 9.6 A: %s, want %s", got, want)
	}
	unsaid.Module = &catalog.Solar{IscA: 9.7, ImpA: 9, VmpV: 31} // 15.16 A: 15 A would do for 1.25 times
	if got, want := ids(necRules, unsaid), "20;25;"; got != want {
		t.Errorf("1.5625 of 9.7 A: %s, want %s", got, want)
	}
	if got := ids(necRules, wiring.Strung{Module: x.Module, Series: 3, Parallel: 2, ColdV: 120}); got != "" {
		t.Errorf("two in parallel need none: %s", got)
	}
}
