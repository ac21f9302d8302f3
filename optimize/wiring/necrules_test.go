package wiring_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/optimize/wiring/iec"
	"cartwright/optimize/wiring/nec"
	"cartwright/scenarios"
)

var necRules = wiring.For(scenarios.NEC)

// The main of these tests: 80 A without end ask for 100 A; 2 AWG of 90 °C carries 115 A at 75 °C terminals
// and 95 A at 60 °C (NFPA 70 table 310.16), and 110 A is above the 100 A up to which terminals are 60 °C
// (110.14(C)(1)).
func necMain(change func(*wiring.Duty)) wiring.Duty {
	return changed(busDuty(scenarios.RunMain, 80), change)
}

func same(*wiring.Duty) {}

func necOption(size catalog.Size, deviceA float64) wiring.Option {
	return wiring.Option{Cable: copperCable(size, 90), Sets: 1, Device: device("fuse", deviceA)}
}

// TestNECDevice: NFPA 70 215.3 and 240.6(A).
func TestNECDevice(t *testing.T) {
	runVerdicts(t, necRules, []verdict{
		{"serves", necMain(same), necOption("2 AWG", 110), 20000, nil},
		{"125 % exactly", necMain(func(d *wiring.Duty) { d.DesignA = 88 }), necOption("2 AWG", 110), 0, nil},
		{"a hair above 125 %", necMain(func(d *wiring.Duty) { d.DesignA = 88.1 }), necOption("2 AWG", 110), 0,
			[]string{"device rating"}},
		{"no standard rating", necMain(same), necOption("2 AWG", 105), 0, []string{"standard rating"}},
		{"a fuse's own rating", busDuty(scenarios.RunMain, 4), necOption("14 AWG", 6), 0, nil},
		{"not a breaker's", busDuty(scenarios.RunMain, 4),
			wiring.Option{Cable: copperCable("14 AWG", 90), Sets: 1, Device: device("breaker", 6)}, 0,
			[]string{"standard rating"}},
		{"above the last rating", necMain(same), necOption("2 AWG", 6001), 0,
			[]string{"standard rating", "cable protected"}},
		{"fault current reached", necMain(same), necOption("2 AWG", 110), 20000, nil},
		{"fault current beyond", necMain(same), necOption("2 AWG", 110), 20001, []string{"interrupting rating"}},
		{"volts reached", necMain(func(d *wiring.Duty) { d.DeviceV = 80 }), necOption("2 AWG", 110), 0, nil},
		{"volts beyond", necMain(func(d *wiring.Duty) { d.DeviceV = 80.1 }), necOption("2 AWG", 110), 0,
			[]string{"device voltage"}},
		{"too few poles", necMain(func(d *wiring.Duty) { d.Poles = 2 }), necOption("2 AWG", 110), 0,
			[]string{"device poles"}},
		{"no device", necMain(same), wiring.Option{Cable: copperCable("2 AWG", 90), Sets: 1}, 0,
			[]string{"device present"}},
		{"no cable", necMain(same), wiring.Option{Sets: 1, Device: device("fuse", 110)}, 0, []string{"cable present"}},
		{"no set", necMain(same), wiring.Option{Cable: copperCable("2 AWG", 90), Device: device("fuse", 110)}, 0,
			[]string{"cable present"}},
	})
}

// TestNECAmpacity: NFPA 70 110.14(C), 215.2(A)(1), 240.4(B) and (D), 310.15, 310.10(G).
func TestNECAmpacity(t *testing.T) {
	at75 := necMain(func(d *wiring.Duty) { d.TerminalC = 75 })
	hot := func(d *wiring.Duty) { d.AmbientC, d.Bundled = 40, 4 } // 0.91 · 0.80
	one := necOption("1 AWG", 110)                                // 145 A in the 90 °C column: 105.56 A
	runVerdicts(t, necRules, []verdict{
		{"100 A: terminals of 60 C", necMain(same), necOption("2 AWG", 100), 0, []string{"terminal ampacity"}},
		{"100 A: terminals marked 75 C", at75, necOption("2 AWG", 100), 0, nil},
		{"terminal ampacity exactly", at75, necOption("3 AWG", 100), 0, nil},
		{"terminal ampacity below", at75, necOption("4 AWG", 100), 0, []string{"terminal ampacity", "cable protected"}},
		{"device for 60 C", necMain(same), changed(necOption("2 AWG", 110),
			func(o *wiring.Option) { o.Device.TerminalC = 60 }), 0, []string{"terminal ampacity", "cable protected"}},
		{"device below the table", necMain(same), changed(necOption("2 AWG", 110),
			func(o *wiring.Option) { o.Device.TerminalC = 40 }), 0,
			[]string{"terminal ampacity", "corrected ampacity", "cable protected"}},
		{"insulation for 60 C", necMain(same), changed(necOption("2 AWG", 110),
			func(o *wiring.Option) { o.Cable.InsulationC = 60 }), 0, []string{"terminal ampacity", "cable protected"}},
		{"next size up", necMain(same), necOption("2 AWG", 125), 0, nil},
		{"two sizes up", necMain(same), necOption("2 AWG", 150), 0, []string{"cable protected"}},
		{"derated, next size up", necMain(hot), one, 0, nil},
		{"derated, two sizes up", necMain(hot), necOption("1 AWG", 125), 0, []string{"cable protected"}},
		{"corrected ampacity exactly", necMain(func(d *wiring.Duty) { d.DesignA, d.Bundled = 65, 10 }),
			necOption("2 AWG", 90), 0, []string{"cable protected"}}, // 130 · 0.50
		{"corrected ampacity below", necMain(func(d *wiring.Duty) { d.DesignA, d.Bundled = 65.1, 10 }),
			necOption("2 AWG", 90), 0, []string{"corrected ampacity", "cable protected"}},
		{"hotter than the table", necMain(func(d *wiring.Duty) { d.AmbientC = 86 }), necOption("2 AWG", 110), 0,
			[]string{"corrected ampacity", "cable protected"}},
		{"14 AWG on 15 A", busDuty(scenarios.RunMain, 12), necOption("14 AWG", 15), 0, nil},
		{"14 AWG on 20 A", changed(busDuty(scenarios.RunMain, 12), func(d *wiring.Duty) { d.TerminalC = 75 }),
			necOption("14 AWG", 20), 0, []string{"small conductor"}},
		{"10 AWG on 35 A", changed(busDuty(scenarios.RunMain, 20), func(d *wiring.Duty) { d.TerminalC = 75 }),
			necOption("10 AWG", 35), 0, []string{"small conductor"}},
		{"1 AWG in parallel", necMain(same), changed(one, func(o *wiring.Option) { o.Sets = 2 }), 0,
			[]string{"parallel sets"}},
		{"1/0 AWG in parallel", necMain(same), changed(necOption("1/0 AWG", 110),
			func(o *wiring.Option) { o.Sets = 2 }), 0, nil},
		{"three sets", necMain(same), changed(necOption("1/0 AWG", 110), func(o *wiring.Option) { o.Sets = 3 }), 0,
			[]string{"parallel sets"}},
		// Four conductors of two sets are bundled: 2 · 430 · 0.80 = 688 A.
		{"two sets up to 700 A", busDuty(scenarios.RunMain, 550), changed(necOption("500 kcmil", 700),
			func(o *wiring.Option) { o.Sets = 2 }), 0, nil},
		{"two sets not up to 800 A", busDuty(scenarios.RunMain, 550), changed(necOption("500 kcmil", 800),
			func(o *wiring.Option) { o.Sets = 2 }), 0, []string{"cable protected"}},
	})
}

// TestNECUnlisted: what stands in no table serves nowhere, and nothing more is said of it.
func TestNECUnlisted(t *testing.T) {
	for name, cable := range map[string]*catalog.Cable{
		"metric":              copperCable("35 mm2", 90),
		"16 AWG":              copperCable("16 AWG", 90),
		"aluminium of 14 AWG": aluminiumCable("14 AWG", 90),
		"insulation of 50 C":  copperCable("2 AWG", 50),
	} {
		res := necRules.Check(feederDuty(40), wiring.Option{Cable: cable, Sets: 1, Device: acBreaker(50, 2)}, 0)
		if got := failed(res); len(got) != 1 || got[0] != "cable listed" || res.AllowedA != 0 || res.DropPct != 0 {
			t.Errorf("%s: failed %q, allowed %v A, drop %v %%; want only cable listed and zeros", name, got, res.AllowedA, res.DropPct)
		}
	}
}

// TestGreen: a green conductor is a ground and nothing else (NFPA 70 250.119, IEC 60445; from memory).
func TestGreen(t *testing.T) {
	green := func(size catalog.Size) *catalog.Cable {
		return changed(copperCable(size, 90), func(c **catalog.Cable) { (*c).GroundOnly = true })
	}
	short := changed(feederDuty(40), func(d *wiring.Duty) { d.Bundled = 2 })
	for r, sizes := range map[wiring.Rules][2]catalog.Size{necRules: {"6 AWG", "10 AWG"}, iecRules: {"16 mm2", "16 mm2"}} {
		runVerdicts(t, r, []verdict{
			{"as ground", short, wiring.Option{Cable: copperCable(sizes[0], 90), Sets: 1, Device: acBreaker(50, 2),
				Ground: green(sizes[1])}, 0, nil},
			{"as line", short, wiring.Option{Cable: green(sizes[0]), Sets: 1, Device: acBreaker(50, 2),
				Ground: green(sizes[1])}, 0, []string{"cable listed"}},
		})
	}
}

// TestNECGround: NFPA 70 table 250.122 and 250.122(A).
func TestNECGround(t *testing.T) {
	feeder := func(ground *catalog.Cable) wiring.Option {
		return wiring.Option{Cable: copperCable("4 AWG", 90), Sets: 1, Device: acBreaker(60, 2), Ground: ground}
	}
	outlet := func(ground *catalog.Cable) wiring.Option {
		return wiring.Option{Cable: copperCable("12 AWG", 90), Sets: 1, Device: acBreaker(20, 1), Ground: ground}
	}
	runVerdicts(t, necRules, []verdict{
		{"60 A takes 10 AWG", feederDuty(48), feeder(copperCable("10 AWG", 60)), 0, nil},
		{"60 A not 12 AWG", feederDuty(48), feeder(copperCable("12 AWG", 90)), 0, []string{"ground size"}},
		{"60 A takes aluminium of 8 AWG", feederDuty(48), feeder(aluminiumCable("8 AWG", 75)), 0, nil},
		{"60 A not aluminium of 10 AWG", feederDuty(48), feeder(aluminiumCable("10 AWG", 75)), 0, []string{"ground size"}},
		{"larger than the circuit", feederDuty(48), feeder(copperCable("4/0 AWG", 75)), 0, nil},
		{"none", feederDuty(48), feeder(nil), 0, []string{"ground present"}},
		{"metric", feederDuty(48), feeder(copperCable("16 mm2", 75)), 0, []string{"ground listed"}},
		{"silver", feederDuty(48), feeder(&catalog.Cable{Size: "2 AWG", Material: "silver"}), 0, []string{"ground listed"}},
		{"aluminium as the table has it", branchDuty(20, 120, 1), outlet(aluminiumCable("10 AWG", 75)), 0, nil},
		{"aluminium only as large as the copper", branchDuty(20, 120, 1), outlet(aluminiumCable("12 AWG", 75)), 0, []string{"ground size"}},
		{"no larger than a circuit of its own material", branchDuty(20, 120, 1), wiring.Option{Cable: aluminiumCable("10 AWG", 90), Sets: 1,
			Device: acBreaker(20, 1), Ground: aluminiumCable("10 AWG", 75)}, 0, nil},
		{"not asked", changed(branchDuty(20, 120, 1), func(d *wiring.Duty) { d.Ground = false }), outlet(nil), 0, nil},
	})
}

// TestNECBranch: the stated device, cable of at least its rating, no 125 % and no next size up (NFPA 70
// 240.4(B)(1): not for a branch of several receptacles).
func TestNECBranch(t *testing.T) {
	option := func(size catalog.Size, deviceA float64) wiring.Option {
		return wiring.Option{Cable: copperCable(size, 90), Sets: 1, Device: acBreaker(deviceA, 2), Ground: copperCable(size, 90)}
	}
	runVerdicts(t, necRules, []verdict{
		{"20 A on 12 AWG", branchDuty(20, 120, 1), option("12 AWG", 20), 0, nil},
		{"15 A breaker for 20 A", branchDuty(20, 120, 1), option("12 AWG", 15), 0, []string{"device rating"}},
		{"25 A breaker for 20 A", branchDuty(20, 120, 1), option("10 AWG", 25), 0, []string{"device rating"}},
		{"125 A not on 115 A", branchDuty(125, 240, 2), option("2 AWG", 125), 0,
			[]string{"terminal ampacity", "corrected ampacity", "cable protected"}},
		{"125 A on 130 A", branchDuty(125, 240, 2), option("1 AWG", 125), 0, nil},
		{"derated to the rating exactly", changed(branchDuty(60, 240, 2), func(d *wiring.Duty) { d.TerminalC, d.Bundled = 75, 4 }),
			option("6 AWG", 60), 0, nil}, // 75 · 0.80
		{"derated below the rating", changed(branchDuty(60, 240, 2), func(d *wiring.Duty) { d.TerminalC, d.Bundled = 75, 7 }),
			option("6 AWG", 60), 0, []string{"corrected ampacity", "cable protected"}}, // 75 · 0.70
	})
}

// TestNECOwnBreaker: the inverter's own breaker stands in for the device; its terminals are 75 °C (common
// practice, no source), so 60 °C up to 100 A (NFPA 70 110.14(C)(1)).
func TestNECOwnBreaker(t *testing.T) {
	own := func(designA, breakerA float64) wiring.Duty {
		return changed(busDuty(scenarios.RunMain, designA), func(d *wiring.Duty) { d.OwnBreakerA = breakerA })
	}
	cable := func(size catalog.Size) wiring.Option { return wiring.Option{Cable: copperCable(size, 90), Sets: 1} }
	runVerdicts(t, necRules, []verdict{
		{"125 % exactly", own(24, 30), cable("10 AWG"), 1e9, nil},
		{"a hair above 125 %", own(24.1, 30), cable("8 AWG"), 0, []string{"device rating"}},
		{"no standard rating", own(24, 33), cable("8 AWG"), 0, []string{"standard rating"}},
		{"a fuse's rating is none", own(400, 601), changed(cable("300 kcmil"), func(o *wiring.Option) { o.Sets = 2 }), 0,
			[]string{"standard rating", "cable protected"}},
		{"100 A by the 60 C column", own(80, 100), cable("2 AWG"), 0, []string{"terminal ampacity"}},
		{"125 A by the 75 C column", own(100, 125), cable("1 AWG"), 0, nil},
		{"marked for 90 C is still 75 C", changed(own(104, 150), func(d *wiring.Duty) { d.TerminalC = 90 }),
			cable("2 AWG"), 0, []string{"terminal ampacity", "cable protected"}},
	})
	res := necRules.Check(own(24, 30), wiring.Option{Cable: copperCable("10 AWG", 90), Sets: 1, Device: device("fuse", 400)}, 0)
	if res.DeviceA != 30 || res.InterruptingA != 0 || !res.OK() {
		t.Errorf("a device beside the own breaker: rating %v A, interrupting %v A, failed %q; want 30, 0, none",
			res.DeviceA, res.InterruptingA, failed(res))
	}
}

// TestNECFigures: 80 A over 2 AWG of 0.194 ohm per 1000 ft (NFPA 70 chapter 9 table 8), 1 m there and back.
func TestNECFigures(t *testing.T) {
	wantDrop := 100 * 80 * 2 * 0.194 / 304.8 / 51.2
	for _, sets := range []int{1, 2} {
		res := necRules.Check(necMain(same), changed(necOption("2 AWG", 110), func(o *wiring.Option) { o.Sets = sets }), 0)
		n := float64(sets)
		allowed := []float64{115, 2 * 130 * 0.80}[sets-1] // two sets are four conductors in the bundle
		if res.RequiredA != 100 || res.AllowedA != allowed || res.DeviceA != 110 || res.InterruptingA != 20000 ||
			math.Abs(res.DropPct-wantDrop/n) > 1e-9 {
			t.Errorf("%d sets: %+v; want 100 A required, %v A allowed, 110 A device, %v %% drop", sets, res, allowed, wantDrop/n)
		}
	}
}

// TestDropLimit: both rule sets accept a drop of just the limit and nothing more.
func TestDropLimit(t *testing.T) {
	for _, c := range []struct {
		r wiring.Rules
		o wiring.Option
	}{
		{necRules, necOption("2 AWG", 110)},
		{iecRules, wiring.Option{Cable: copperCable("35 mm2", 90), Sets: 1, Device: device("fuse", 125)}},
	} {
		d := necMain(func(d *wiring.Duty) { d.LengthM = 5 })
		d.Drop = c.r.Check(d, c.o, 0).DropPct / 100
		if got := failed(c.r.Check(d, c.o, 0)); len(got) != 0 {
			t.Errorf("%T at the limit: failed %q", c.r, got)
		}
		d.LengthM *= 1.001
		if got := failed(c.r.Check(d, c.o, 0)); len(got) != 1 || got[0] != "voltage drop" {
			t.Errorf("%T above the limit: failed %q, want voltage drop", c.r, got)
		}
	}
}

// TestRoundoff: figures that differ by less than a billionth are the same, by more are not.
func TestRoundoff(t *testing.T) {
	const within, beyond = 5e-10, 5e-9
	long := func(d *wiring.Duty) { d.LengthM = 50 } // about 20 %: a limit well away from 1
	drop := necRules.Check(necMain(long), necOption("2 AWG", 110), 0).DropPct
	limited := func(short float64) wiring.Duty {
		return necMain(func(d *wiring.Duty) { d.LengthM, d.Drop = 50, drop/100*(1-short) })
	}
	runVerdicts(t, necRules, []verdict{
		{"rating within", necMain(func(d *wiring.Duty) { d.DesignA = 88 * (1 + within) }), necOption("2 AWG", 110), 0, nil},
		{"rating beyond", necMain(func(d *wiring.Duty) { d.DesignA = 88 * (1 + beyond) }), necOption("2 AWG", 110), 0,
			[]string{"device rating"}},
		{"drop within", limited(within), necOption("2 AWG", 110), 0, nil},
		{"drop beyond", limited(beyond), necOption("2 AWG", 110), 0, []string{"voltage drop"}},
	})
}

// TestTablesTogether: every conductor with an ampacity has a resistance, as the rules take for granted.
func TestTablesTogether(t *testing.T) {
	for _, size := range necSizes {
		for _, material := range []string{"copper", "aluminium"} {
			_, ampacity := nec.Ampacity(material, size, nec.Col75)
			if _, resistance := nec.ResistancePerM(material, size); ampacity && !resistance {
				t.Errorf("%s %s has an ampacity and no resistance", material, size)
			}
		}
	}
	for _, size := range iecSizes {
		if _, ok := iec.ResistancePerM(size); !ok {
			t.Errorf("%s has an ampacity and no resistance", size)
		}
	}
}

// TestStandardLimit: for a rating that is not standard the limit is the next one up, or the last (NFPA 70 240.6(A)).
func TestStandardLimit(t *testing.T) {
	for ratingA, want := range map[float64]float64{105: 110, 110: 110, 7000: 6000} {
		for _, c := range necRules.Check(necMain(same), necOption("2 AWG", ratingA), 0).Checks {
			if c.Name == "standard rating" && c.Limit != want {
				t.Errorf("%v A: limit %v A, want %v", ratingA, c.Limit, want)
			}
		}
	}
}
