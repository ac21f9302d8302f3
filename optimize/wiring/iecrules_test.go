package wiring_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

var iecRules = wiring.For(scenarios.IEC)

// The string of these tests: 90 A over 25 mm2 of PVC clipped direct, 112 A (IEC 60364-5-52 table B.52.2,
// method C).
func iecString(change func(*wiring.Duty)) wiring.Duty {
	return changed(busDuty(scenarios.RunString, 90), change)
}

func iecOption(size catalog.Size, insulationC float64, dev *catalog.Device) wiring.Option {
	return wiring.Option{Cable: copperCable(size, insulationC), Sets: 1, Device: dev}
}

func fuseOfClass(class string, ratingA float64) *catalog.Device {
	d := device("fuse", ratingA)
	d.Class = class
	return d
}

// TestIECOverload: IEC 60364-4-43 clause 433.1.
func TestIECOverload(t *testing.T) {
	warm := func(d *wiring.Duty) { d.AmbientC = 35 } // 0.94: 105.28 A
	runVerdicts(t, iecRules, []verdict{
		{"serves", iecString(same), iecOption("25 mm2", 70, device("breaker", 100)), 20000, nil},
		{"I_B equals I_n", iecString(func(d *wiring.Duty) { d.DesignA = 100 }),
			iecOption("25 mm2", 70, device("breaker", 100)), 0, nil},
		{"I_B above I_n", iecString(func(d *wiring.Duty) { d.DesignA = 100.1 }),
			iecOption("25 mm2", 70, device("breaker", 100)), 0, []string{"device rating"}},
		{"I_B equals I_z", iecString(func(d *wiring.Duty) { d.DesignA = 112 }),
			iecOption("25 mm2", 70, device("breaker", 125)), 0, []string{"cable protected"}},
		{"I_B above I_z", iecString(func(d *wiring.Duty) { d.DesignA = 112.1 }),
			iecOption("25 mm2", 70, device("breaker", 125)), 0, []string{"terminal ampacity", "corrected ampacity", "cable protected"}},
		{"I_n equals I_z", busDuty(scenarios.RunString, 60), iecOption("10 mm2", 70, device("breaker", 63)), 0, nil},
		{"no next size up", busDuty(scenarios.RunString, 60), iecOption("10 mm2", 70, device("breaker", 80)), 0,
			[]string{"cable protected"}},
		{"a rating of the other list", iecString(same), iecOption("35 mm2", 70, device("breaker", 110)), 0,
			[]string{"standard rating"}},
		{"13 A is a breaker's", busDuty(scenarios.RunString, 10), iecOption("2.5 mm2", 70, device("breaker", 13)), 0, nil},
		{"13 A is no fuse's", busDuty(scenarios.RunString, 10), iecOption("2.5 mm2", 70, device("fuse", 13)), 0,
			[]string{"standard rating"}},
		{"breaker above the breakers' list", busDuty(scenarios.RunString, 150),
			iecOption("70 mm2", 70, device("breaker", 200)), 0, nil},
		{"gG fuse", iecString(same), iecOption("25 mm2", 70, fuseOfClass("gG", 100)), 0, nil}, // 160 to 162.4 A
		{"gG fuse, warm", iecString(warm), iecOption("25 mm2", 70, fuseOfClass("gG", 100)), 0, []string{"fuse overload"}},
		{"gg fuse, warm", iecString(warm), iecOption("25 mm2", 70, fuseOfClass("gg", 100)), 0, []string{"fuse overload"}},
		{"fuse of no class, warm", iecString(warm), iecOption("25 mm2", 70, fuseOfClass("", 100)), 0,
			[]string{"fuse overload"}},
		// No other class has an I_2 that was read: reckoned as gG. IEC 60269-6 has 1.45 I_n for gPV.
		{"fuse of another class, warm", iecString(warm), iecOption("25 mm2", 70, fuseOfClass("T", 100)), 0, []string{"fuse overload"}},
		{"gPV fuse, warm", iecString(warm), iecOption("25 mm2", 70, fuseOfClass("gPV", 100)), 0, nil},
		{"gpv fuse, warm", iecString(warm), iecOption("25 mm2", 70, fuseOfClass("gpv", 100)), 0, nil},
		{"breaker, warm", iecString(warm), iecOption("25 mm2", 70, changed(device("breaker", 100),
			func(d **catalog.Device) { (*d).Class = "" })), 0, nil},
		{"fault current reached", iecString(same), iecOption("25 mm2", 70, device("breaker", 100)), 20000, nil},
		{"fault current beyond", iecString(same), iecOption("25 mm2", 70, device("breaker", 100)), 20001,
			[]string{"interrupting rating"}},
	})
}

// TestIECAmpacity: IEC 60364-5-52 tables B.52.2, B.52.3, B.52.14 and B.52.17.
func TestIECAmpacity(t *testing.T) {
	for _, c := range []struct {
		name   string
		duty   wiring.Duty
		option wiring.Option
		wantA  float64
	}{
		{"PVC clipped direct", iecString(same), iecOption("25 mm2", 70, device("fuse", 100)), 112},
		{"75 C counts as PVC", iecString(same), iecOption("25 mm2", 75, device("fuse", 100)), 112},
		{"XLPE clipped direct", iecString(same), iecOption("25 mm2", 90, device("fuse", 100)), 138},
		{"105 C counts as XLPE", iecString(same), iecOption("25 mm2", 105, device("fuse", 100)), 138},
		{"PVC in conduit", feederDuty(90), iecOption("25 mm2", 70, acBreaker(100, 2)), 101 * 0.80}, // 3 conductors: 2 circuits
		{"XLPE in conduit", feederDuty(90), iecOption("25 mm2", 90, acBreaker(100, 2)), 133 * 0.80},
		{"terminals have no say", iecString(func(d *wiring.Duty) { d.TerminalC = 60 }),
			iecOption("25 mm2", 90, device("fuse", 100)), 138},
		{"warm and grouped", iecString(func(d *wiring.Duty) { d.AmbientC, d.Bundled = 40, 6 }),
			iecOption("25 mm2", 90, device("fuse", 100)), 138 * 0.91 * 0.70},
		{"too hot for PVC", iecString(func(d *wiring.Duty) { d.AmbientC = 61 }),
			iecOption("25 mm2", 70, device("fuse", 100)), 0},
		{"too many circuits", iecString(func(d *wiring.Duty) { d.Bundled = 41 }),
			iecOption("25 mm2", 70, device("fuse", 100)), 0},
		{"two sets", iecString(same), changed(iecOption("50 mm2", 70, device("fuse", 100)),
			func(o *wiring.Option) { o.Sets = 2 }), 2 * 168 * 0.80}, // two circuits side by side
		{"two sets in a bundle of more", iecString(func(d *wiring.Duty) { d.Bundled = 6 }), changed(iecOption("50 mm2", 70, device("fuse", 100)),
			func(o *wiring.Option) { o.Sets = 2 }), 2 * 168 * 0.70},
	} {
		if got := iecRules.Check(c.duty, c.option, 0).AllowedA; math.Abs(got-c.wantA) > 1e-9 {
			t.Errorf("%s: allowed %v A, want %v", c.name, got, c.wantA)
		}
	}
}

// TestIECTerminal: terminals are for 70 C unless the device says 90: the cable's own end carries no more than PVC would
// (IEC 60364-5-52 table 52.1 and clause 523.1, from memory). XLPE of 25 mm2 clipped direct: 138 A, PVC 112 A.
func TestIECTerminal(t *testing.T) {
	at := func(terminalC, ratingA float64) *catalog.Device {
		return changed(device("breaker", ratingA), func(d **catalog.Device) { (*d).TerminalC = terminalC })
	}
	option := func(dev *catalog.Device) wiring.Option { return iecOption("25 mm2", 90, dev) }
	over := iecString(func(d *wiring.Duty) { d.DesignA = 113 })
	runVerdicts(t, iecRules, []verdict{
		{"112 A at 70 C", iecString(func(d *wiring.Duty) { d.DesignA = 112 }), option(at(70, 125)), 0, nil},
		{"113 A at 70 C", over, option(at(70, 125)), 0, []string{"terminal ampacity"}},
		{"113 A at 89 C", over, option(at(89, 125)), 0, []string{"terminal ampacity"}},
		{"113 A at 90 C", over, option(at(90, 125)), 0, nil},
		{"the run's terminal has no part", changed(over, func(d *wiring.Duty) { d.TerminalC = 60 }), option(at(90, 125)), 0, nil},
		{"uncorrected: hot beside others", iecString(func(d *wiring.Duty) { d.DesignA, d.AmbientC, d.Bundled = 60, 40, 6 }),
			option(at(70, 80)), 0, nil}, // 138 · 0.91 · 0.70 = 87.9 A
		{"two sets carry twice", iecString(func(d *wiring.Duty) { d.DesignA = 310 }),
			changed(iecOption("50 mm2", 90, at(70, 315)), func(o *wiring.Option) { o.Sets = 2 }), 0, nil},
	})
}

func TestIECCable(t *testing.T) {
	dev := device("breaker", 100)
	runVerdicts(t, iecRules, []verdict{
		{"a gauge", iecString(same), iecOption("1 AWG", 90, dev), 0, []string{"cable listed"}},
		{"insulation of 60 C", iecString(same), iecOption("50 mm2", 60, dev), 0, []string{"cable listed"}},
		{"aluminium", iecString(same), wiring.Option{Cable: aluminiumCable("50 mm2", 90), Sets: 1, Device: dev}, 0,
			[]string{"cable listed"}},
		{"larger than the ampacity table", iecString(same), iecOption("150 mm2", 90, dev), 0, []string{"cable listed"}},
		{"35 mm2 in parallel", iecString(same), changed(iecOption("35 mm2", 90, dev),
			func(o *wiring.Option) { o.Sets = 2 }), 0, []string{"parallel sets"}},
		{"50 mm2 in parallel", iecString(same), changed(iecOption("50 mm2", 90, dev),
			func(o *wiring.Option) { o.Sets = 2 }), 0, nil},
		{"too hot", iecString(func(d *wiring.Duty) { d.AmbientC = 61 }), iecOption("25 mm2", 70, dev), 0,
			[]string{"corrected ampacity", "cable protected"}},
	})
}

// TestIECGround: IEC 60364-5-54 table 54.2, two independent texts: 16 mm2 beside 25, half of all sets above 35.
func TestIECGround(t *testing.T) {
	feeder := func(size catalog.Size, sets int, ground *catalog.Cable) wiring.Option {
		return wiring.Option{Cable: copperCable(size, 90), Sets: sets, Device: acBreaker(50, 2), Ground: ground}
	}
	d := changed(feederDuty(40), func(d *wiring.Duty) { d.Bundled = 2 })
	runVerdicts(t, iecRules, []verdict{
		{"16 beside 25 mm2", d, feeder("25 mm2", 1, copperCable("16 mm2", 70)), 0, nil},
		{"10 beside 25 mm2", d, feeder("25 mm2", 1, copperCable("10 mm2", 70)), 0, []string{"ground size"}},
		{"10 beside 10 mm2", d, feeder("10 mm2", 1, copperCable("10 mm2", 60)), 0, nil},
		{"25 beside 50 mm2", d, feeder("50 mm2", 1, copperCable("25 mm2", 70)), 0, nil},
		{"25 beside two sets of 50 mm2", d, feeder("50 mm2", 2, copperCable("25 mm2", 70)), 0, []string{"ground size"}},
		{"50 beside two sets of 50 mm2", d, feeder("50 mm2", 2, copperCable("50 mm2", 70)), 0, nil},
		{"none", d, feeder("25 mm2", 1, nil), 0, []string{"ground present"}},
		{"a gauge", d, feeder("25 mm2", 1, copperCable("4 AWG", 70)), 0, []string{"ground listed"}},
		{"aluminium", d, feeder("25 mm2", 1, aluminiumCable("50 mm2", 70)), 0, []string{"ground listed"}},
	})
}

// TestIECBranch: the stated device, I_n ≤ I_z, no more.
func TestIECBranch(t *testing.T) {
	option := func(size catalog.Size, deviceA float64) wiring.Option {
		return wiring.Option{Cable: copperCable(size, 70), Sets: 1, Device: acBreaker(deviceA, 1), Ground: copperCable(size, 70)}
	}
	runVerdicts(t, iecRules, []verdict{
		{"32 A on 4 mm2", branchDuty(32, 230, 1), option("4 mm2", 32), 0, nil}, // B1: 32 A exactly
		{"40 A on 4 mm2", branchDuty(40, 230, 1), option("4 mm2", 40), 0, []string{"terminal ampacity", "corrected ampacity", "cable protected"}},
		{"25 A breaker for 32 A", branchDuty(32, 230, 1), option("4 mm2", 25), 0, []string{"device rating"}},
	})
}

// TestIECOwnBreaker: the inverter's own breaker is a breaker: no fusing current.
func TestIECOwnBreaker(t *testing.T) {
	own := func(breakerA float64) wiring.Duty {
		return iecString(func(d *wiring.Duty) { d.OwnBreakerA = breakerA })
	}
	cable := iecOption("25 mm2", 70, nil)
	runVerdicts(t, iecRules, []verdict{
		{"serves", changed(own(100), func(d *wiring.Duty) { d.AmbientC = 35 }), cable, 1e9, nil},
		{"too small", own(80), cable, 0, []string{"device rating"}},
		{"no standard rating", own(110), cable, 0, []string{"standard rating"}},
		{"too large", own(125), cable, 0, []string{"cable protected"}},
	})
}

// TestIECFigures: 90 A over 25 mm2 of class 5, 0.780 ohm/km at 20 °C (IEC 60228), 1.1965 times that at
// 70 °C (IEC 60028), 1 m there and back.
func TestIECFigures(t *testing.T) {
	res := iecRules.Check(iecString(same), iecOption("25 mm2", 70, device("breaker", 100)), 0)
	wantDrop := 100 * 90 * 2 * 0.780e-3 * 1.1965 / 51.2
	if res.RequiredA != 90 || res.DeviceA != 100 || res.InterruptingA != 20000 || math.Abs(res.DropPct-wantDrop) > 1e-9 {
		t.Errorf("%+v; want 90 A required, 100 A device, %v %% drop", res, wantDrop)
	}
}
