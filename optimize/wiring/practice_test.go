package wiring_test

import (
	"fmt"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/wiring"
	"cartwright/optimize/wiring/nec"
	"cartwright/scenarios"
)

// buildingWire returns copper of the usual sizes from 14 AWG to 2 AWG for 90 °C, and the breakers of a load
// centre, invented.
func buildingWire() *catalog.Catalog {
	c := &catalog.Catalog{}
	for _, size := range []catalog.Size{"14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG", "4 AWG", "2 AWG"} {
		c.Cables = append(c.Cables, *copperCable(size, 90))
	}
	for _, a := range []float64{15, 20, 30, 40, 50, 60} {
		c.Devices = append(c.Devices, *acBreaker(a, 1), *acBreaker(a, 2))
	}
	return c
}

// smallest returns the option with the least copper in line and ground: the catalogue rises.
func smallest(r wiring.Rules, d wiring.Duty, c *catalog.Catalog) string {
	options := wiring.Options(r, d, c)
	if len(options) == 0 {
		return "none"
	}
	o := options[0]
	return fmt.Sprintf("%s on %.0f A, %d pole, ground %s", o.Cable.Size, o.Device.RatingA, o.Device.Poles, o.Ground.Size)
}

// TestTradeSizes: what an electrician takes without reckoning. Common practice, no source.
func TestTradeSizes(t *testing.T) {
	range50 := changed(branchDuty(50, 240, 2), func(d *wiring.Duty) { d.Conductors = 3 })
	for _, c := range []struct {
		name string
		duty wiring.Duty
		want string
	}{
		{"a 15 A outlet circuit in 14 AWG", branchDuty(15, 120, 1), "14 AWG on 15 A, 1 pole, ground 14 AWG"},
		{"a 20 A outlet circuit in 12 AWG", branchDuty(20, 120, 1), "12 AWG on 20 A, 1 pole, ground 12 AWG"},
		{"a 20 A outlet circuit in 12 AWG at 75 C too", changed(branchDuty(20, 120, 1),
			func(d *wiring.Duty) { d.TerminalC = 75 }), "12 AWG on 20 A, 1 pole, ground 12 AWG"},
		{"a 30 A outlet circuit in 10 AWG", branchDuty(30, 120, 1), "10 AWG on 30 A, 1 pole, ground 10 AWG"},
		{"a 50 A 240 V outlet at 75 C in 8 AWG", changed(range50, func(d *wiring.Duty) { d.TerminalC = 75 }),
			"8 AWG on 50 A, 2 pole, ground 10 AWG"},
		{"a 50 A 240 V outlet at 60 C in 6 AWG", changed(range50, func(d *wiring.Duty) { d.TerminalC = 60 }),
			"6 AWG on 50 A, 2 pole, ground 10 AWG"},
		{"a 50 A 240 V outlet, nothing marked, in 6 AWG", range50, "6 AWG on 50 A, 2 pole, ground 10 AWG"},
	} {
		if got := smallest(necRules, c.duty, buildingWire()); got != c.want {
			t.Errorf("%s: smallest option %s, want %s", c.name, got, c.want)
		}
	}
}

// Syllabus for PV solar installers (2010), "Wire sizing between inverter, battery": 2500 W at 85 % from
// 22 V draw 134 A, 125 % are 167 A; at 41 to 45 °C and the 60 °C column, 0.71, that is 235 A, so 300 kcmil.
// One text; it divides 125 % of the current by the factor, an older and stricter way than 215.2(A)(1).
func Example_inverterCable() {
	inverter := &catalog.Inverter{ContinuousW: 2500, Efficiency: 0.85}
	amps := energy.BusA(inverter, scenarios.Bus{LowV: 22})
	factor, _ := nec.AmbientFactor(45, nec.Col60)
	fmt.Printf("%.0f A, %.0f A, %.0f A\n", amps, nec.ContinuousA(amps), nec.ContinuousA(amps)/factor)
	for _, size := range []catalog.Size{"250 kcmil", "300 kcmil"} {
		table, _ := nec.Ampacity("copper", size, nec.Col60)
		fmt.Printf("%s: %.0f A, %v\n", size, table, table >= nec.ContinuousA(amps)/factor)
	}
	// Output:
	// 134 A, 167 A, 235 A
	// 250 kcmil: 215 A, false
	// 300 kcmil: 240 A, true
}

// Hughes Associates, Conductor Selection and Application (2012), "Three sizes: an example": 95 A without
// end take a 125 A device and 1 AWG at 75 °C. One text.
func Example_threeSizes() {
	c := &catalog.Catalog{}
	for _, size := range []catalog.Size{"3 AWG", "2 AWG", "1 AWG", "1/0 AWG"} {
		c.Cables = append(c.Cables, *copperCable(size, 75))
	}
	for _, a := range []float64{100, 110, 125} {
		c.Devices = append(c.Devices, *acBreaker(a, 2))
	}
	d := feederDuty(95)
	d.Ground = false
	o := wiring.Options(wiring.For(scenarios.NEC), d, c)[0]
	fmt.Printf("%s on %.0f A\n", o.Cable.Size, o.Device.RatingA)
	// Output: 1 AWG on 125 A
}

// TestWiringResidential holds Electrical Wiring Residential, 19th edition, chapter 4, problem 35 (one
// text), against the whole rule: 10 A at 120 V over 140 ft within 3 % take 10 AWG. The book's constant,
// 12.9 ohm·cmil/ft, and chapter 9 table 8 differ by less than 1 % at 10 AWG.
func TestWiringResidential(t *testing.T) {
	c := buildingWire()
	d := changed(feederDuty(10), func(d *wiring.Duty) {
		d.NominalV, d.DeviceV, d.Poles, d.Conductors, d.LengthM = 120, 120, 1, 2, 140*0.3048
	})
	o := wiring.Options(necRules, d, c)[0]
	drop := necRules.Check(d, o, 0).DropPct / 100 * 120
	if o.Cable.Size != "10 AWG" || math.Abs(drop/3.48-1) > 0.01 {
		t.Errorf("%s dropping %.2f V, want 10 AWG dropping 3.48 V within 1 %%", o.Cable.Size, drop)
	}
}

// Every check of one option, as an audit tells it: a 90 A feeder of 120/240 V in 2 AWG copper of 90 °C
// behind 125 A, 10 m long, with 6 AWG as ground.
func ExampleRules() {
	d := wiring.Duty{Kind: scenarios.RunFeeder, AC: true, DesignA: 90, DropA: 90, NominalV: 240, DeviceV: 240, Poles: 2,
		Conductors: 3, Ground: true, LengthM: 10, AmbientC: 35, Bundled: 3, Drop: 0.03}
	o := wiring.Option{Cable: copperCable("2 AWG", 90), Sets: 1, Device: acBreaker(125, 2), Ground: copperCable("6 AWG", 90)}
	for _, c := range wiring.For(scenarios.NEC).Check(d, o, 5000).Checks {
		fmt.Printf("%v %s: %.6g of %.6g %s (%s)\n", c.Passed, c.Name, c.Value, c.Limit, c.Unit, c.Source)
	}
	// Output:
	// true parallel sets: 1 of 1  (NEC 310.10(G)(1) (2020, 2023))
	// true voltage drop: 0.477362 of 3 % (NEC 210.19(A) informational note, chapter 9 table 8)
	// true device rating: 125 of 112.5 A (NEC 210.20(A), 215.3)
	// true standard rating: 125 of 125 A (NEC 240.6(A) (2017 to 2023))
	// true terminal ampacity: 115 of 112.5 A (NEC 110.14(C)(1) (2020, 2023))
	// true corrected ampacity: 115 of 90 A (NEC 310.15, tables 310.16, 310.15(B)(1) and 310.15(C)(1))
	// true cable protected: 125 of 125 A (NEC 240.4(B) and (C) (2020, 2023))
	// true device voltage: 240 of 240 V (NEC 240.60(A), 240.85, 706.31(C))
	// true device poles: 2 of 2  (NEC 210.4(B), 240.15(B))
	// true interrupting rating: 10000 of 5000 A (NEC 110.9, 706.31(C))
	// true device of partial range: 0 of 0  (NEC 240.4: a fuse for short circuits only is not overcurrent protection; IEC 60269-1)
	// true device not listed: 0 of 0  (NEC 110.2, 110.3(C))
	// true ground size: 13.3018 of 13.3018 mm2 (NEC table 250.122 and 250.122(A) (2020, 2023), 250.122(B))
}

// The same feeder by IEC 60364: 35 mm2 of XLPE copper behind 100 A.
func ExampleRules_iec() {
	d := wiring.Duty{Kind: scenarios.RunFeeder, AC: true, DesignA: 90, DropA: 90, NominalV: 230, DeviceV: 230, Poles: 1,
		Conductors: 2, Ground: true, LengthM: 10, AmbientC: 35, Bundled: 2, Drop: 0.03}
	fuse := &catalog.Device{Type: "fuse", Class: "gG", RatingA: 100, Poles: 1, MaxACV: 400, InterruptingACA: 50000}
	o := wiring.Option{Cable: copperCable("35 mm2", 90), Sets: 1, Device: fuse, Ground: copperCable("16 mm2", 90)}
	for _, c := range wiring.For(scenarios.IEC).Check(d, o, 5000).Checks {
		fmt.Printf("%v %s: %.6g of %.6g %s (%s)\n", c.Passed, c.Name, c.Value, c.Limit, c.Unit, c.Source)
	}
	// Output:
	// true parallel sets: 1 of 1  (by analogy with 1/0 AWG of NEC 310.10(G)(1))
	// true voltage drop: 0.518761 of 3 % (IEC 60364-5-52 clause 525, IEC 60228:2004 table 3 at 70 C)
	// true device rating: 100 of 90 A (IEC 60364-4-43 clause 433.1)
	// true standard rating: 100 of 100 A (IEC 60269-1 and -2)
	// true terminal ampacity: 125 of 90 A (IEC 60364-5-52:2009 table 52.1 and clause 523.1, from memory)
	// true corrected ampacity: 157.44 of 90 A (IEC 60364-5-52:2009 tables B.52.2, B.52.3, B.52.14 and B.52.17)
	// true cable protected: 100 of 157.44 A (IEC 60364-4-43 clause 433.1)
	// true fuse overload: 160 of 228.288 A (IEC 60364-4-43 clause 433.1)
	// true device voltage: 400 of 230 V (IEC 60364-5-53 clause 530)
	// true device poles: 1 of 1  (both hots of 240 V must open; common practice, no source)
	// true interrupting rating: 50000 of 5000 A (IEC 60364-4-43 clause 434.5.1)
	// true device of partial range: 0 of 0  (IEC 60269-1: a fuse of partial range protects against short circuits only)
	// true ground size: 16 of 16 mm2 (IEC 60364-5-54 table 54.2)
}
