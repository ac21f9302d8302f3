package wiring_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// TestNextSizeUpPassesNoStandardSize: NFPA 70 240.6(A) has 1, 3, 6 and 10 A for fuses, so that a breaker of 15 A is not
// the next size above 9 A, nor above 10 A. 14 AWG of 75 °C is 20 A, times 0.50 beside nine others, 0.45 beside twenty.
func TestNextSizeUpPassesNoStandardSize(t *testing.T) {
	bundled := func(n int) wiring.Duty {
		return changed(busDuty(scenarios.RunMain, 8), func(d *wiring.Duty) { d.Bundled = n })
	}
	on := func(kind string, ratingA float64) wiring.Option {
		return wiring.Option{Cable: copperCable("14 AWG", 75), Sets: 1, Device: device(kind, ratingA)}
	}
	runVerdicts(t, necRules, []verdict{
		{"Z of 10 A, a breaker of 15 A", bundled(10), on("breaker", 15), 0, []string{"cable protected"}},
		{"Z of 9 A, a breaker of 15 A", bundled(21), on("breaker", 15), 0, []string{"cable protected"}},
		{"Z of 10 A, a fuse of 15 A", bundled(10), on("fuse", 15), 0, []string{"cable protected"}},
		{"Z of 10 A, a fuse of 10 A", bundled(10), on("fuse", 10), 0, nil},
		{"Z of 9 A, a fuse of 10 A", bundled(21), on("fuse", 10), 0, nil},
		{"10 A is no breaker's rating", bundled(10), on("breaker", 10), 0, []string{"standard rating"}},
	})
}

// TestStringDevice: what the battery's maker allows, unpolarised, whole range, listed under nec.
func TestStringDevice(t *testing.T) {
	limited := changed(busDuty(scenarios.RunString, 80), func(d *wiring.Duty) { d.MostDeviceA, d.TwoWay = 125, true })
	on := func(kind string, ratingA float64, change func(*catalog.Device)) wiring.Option {
		d := device(kind, ratingA)
		if change != nil {
			change(d)
		}
		return wiring.Option{Cable: copperCable("1/0 AWG", 90), Sets: 1, Device: d}
	}
	class := func(c string) func(*catalog.Device) { return func(d *catalog.Device) { d.Class = c } }
	polarised := func(a catalog.Answer) func(*catalog.Device) { return func(d *catalog.Device) { d.Polarised = a } }
	listed := func(a catalog.Answer) func(*catalog.Device) { return func(d *catalog.Device) { d.Listed = a } }
	oneWay := changed(limited, func(d *wiring.Duty) { d.TwoWay = false })
	runVerdicts(t, necRules, []verdict{
		{"the maker's limit reached", limited, on("fuse", 125, nil), 0, nil},
		{"beyond the maker's limit", limited, on("fuse", 150, nil), 0, []string{"device limit"}},
		{"no limit stated", changed(limited, func(d *wiring.Duty) { d.MostDeviceA = 0 }), on("fuse", 150, nil), 0, nil},
		{"aR", limited, on("fuse", 125, class("aR")), 0, []string{"device of partial range"}},
		{"aM", limited, on("fuse", 125, class("aM")), 0, []string{"device of partial range"}},
		{"ANL", limited, on("fuse", 125, class("ANL")), 0, nil},
		{"a breaker's class is none of a fuse's", limited, on("breaker", 125, class("a")), 0, nil},
		{"polarised", limited, on("breaker", 125, polarised(catalog.Yes)), 0, []string{"device polarised"}},
		{"not known whether", limited, on("breaker", 125, polarised(catalog.Unknown)), 0, nil},
		{"unpolarised", limited, on("breaker", 125, polarised(catalog.No)), 0, nil},
		{"fuses have no poles of a sign", limited, on("fuse", 125, polarised(catalog.Yes)), 0, nil},
		{"polarised where current runs one way", oneWay, on("breaker", 125, polarised(catalog.Yes)), 0, nil},
		{"not listed", limited, on("fuse", 125, listed(catalog.No)), 0, []string{"device not listed"}},
		{"not known whether listed", limited, on("fuse", 125, listed(catalog.Unknown)), 0, nil},
	})
	metric := func(o wiring.Option) wiring.Option { o.Cable = copperCable("50 mm2", 90); return o }
	runVerdicts(t, iecRules, []verdict{
		{"iec: the maker's limit reached", limited, metric(on("fuse", 125, nil)), 0, nil},
		{"iec: beyond it", limited, metric(on("fuse", 160, nil)), 0, []string{"device limit"}},
		{"iec: aR", limited, metric(on("fuse", 125, class("aR"))), 0, []string{"device of partial range"}},
		{"iec: polarised", limited, metric(on("breaker", 125, polarised(catalog.Yes))), 0, []string{"device polarised"}},
		{"iec: not listed", limited, metric(on("fuse", 125, listed(catalog.No))), 0, nil},
	})
}

// TestBuiltIn: the battery's own device serves like a breaker of its rating with terminals for 75 °C, where it breaks
// the fault current.
func TestBuiltIn(t *testing.T) {
	own := func(ratingA float64) wiring.Duty {
		return changed(busDuty(scenarios.RunString, 80), func(d *wiring.Duty) {
			d.MostDeviceA, d.BuiltInA, d.BuiltInBreaksA = 150, ratingA, 10000
		})
	}
	by := func(size catalog.Size) wiring.Option {
		return wiring.Option{Cable: copperCable(size, 90), Sets: 1, BuiltIn: true}
	}
	both := changed(own(125), func(d *wiring.Duty) { d.Devices = 2 })
	with := func(n int, builtIn bool) wiring.Option {
		return wiring.Option{Cable: copperCable("1 AWG", 90), Sets: 1, Device: device("fuse", 125), Devices: n, BuiltIn: builtIn}
	}
	runVerdicts(t, necRules, []verdict{
		{"125 % exactly", changed(own(100), func(d *wiring.Duty) { d.TerminalC = 75 }), by("3 AWG"), 10000, nil},
		{"by the 60 C column up to 100 A", own(100), by("2 AWG"), 0, []string{"terminal ampacity"}},
		{"below 125 %", own(90), by("1 AWG"), 0, []string{"device rating"}},
		{"no standard rating", own(120), by("1 AWG"), 0, []string{"standard rating"}},
		{"above what the maker allows", own(175), by("2/0 AWG"), 0, []string{"device limit"}},
		{"too large for the cable", own(150), by("2 AWG"), 0, []string{"cable protected"}},
		{"fault current beyond", own(125), by("1 AWG"), 10001, []string{"interrupting rating"}},
		{"none there", busDuty(scenarios.RunString, 80), by("1 AWG"), 0, []string{"device rating", "standard rating"}},
		{"both ends: its own and one bought", both, with(1, true), 10000, nil},
		{"both ends: two bought", both, with(2, false), 20000, nil},
		{"both ends: one bought", both, with(1, false), 0, []string{"devices at both ends"}},
		{"both ends: its own alone", both, by("1 AWG"), 0, []string{"devices at both ends"}},
	})
	runVerdicts(t, iecRules, []verdict{ // 25 mm2 of XLPE has 138 A, PVC's 112 A at terminals that are not for 90 °C
		{"iec: its terminals are not for 90 C", changed(own(125), func(d *wiring.Duty) { d.DesignA = 113 }),
			wiring.Option{Cable: copperCable("25 mm2", 90), Sets: 1, BuiltIn: true}, 0, []string{"terminal ampacity"}},
	})
	strong := changed(both, func(d *wiring.Duty) { d.BuiltInBreaksA = 30000 })
	if o := with(1, true); o.InterruptingA(&strong) != 20000 {
		t.Errorf("the weaker of two: %v A, want 20000", o.InterruptingA(&strong))
	}
	for _, c := range []struct {
		o    wiring.Option
		want float64
	}{{by("1 AWG"), 10000}, {with(1, true), 10000}, {with(2, false), 20000}, {wiring.Option{Cable: copperCable("1 AWG", 90), Sets: 1}, math.Inf(1)}} {
		if got := c.o.InterruptingA(&both); got != c.want {
			t.Errorf("%+v breaks %v A, want %v", c.o, got, c.want)
		}
	}
}

// TestFineStrand: where fine strand is asked for, no other serves.
func TestFineStrand(t *testing.T) {
	fine := necMain(func(d *wiring.Duty) { d.Fine = true })
	runVerdicts(t, necRules, []verdict{
		{"building wire", fine, necOption("2 AWG", 110), 0, []string{"cable strand"}},
		{"fine", fine, changed(necOption("2 AWG", 110), func(o *wiring.Option) { o.Cable.Fine = true }), 0, nil},
		{"not asked", necMain(same), changed(necOption("2 AWG", 110), func(o *wiring.Option) { o.Cable.Fine = true }), 0, nil},
	})
}

// TestLinksDrop: 80 A over 2 AWG, 1 m there and back, with three links of 0.3 m: 2.9 m instead of 2.
func TestLinksDrop(t *testing.T) {
	linked := necMain(func(d *wiring.Duty) { d.Links, d.LinkM = 3, 0.3 })
	got := necRules.Check(linked, necOption("2 AWG", 110), 0).DropPct
	if want := 100 * 80 * 2.9 * 0.194 / 304.8 / 51.2; math.Abs(got-want) > 1e-9 {
		t.Errorf("%v %%, want %v", got, want)
	}
	// The drop is that of DropA, which of modules is not the design current.
	half := necRules.Check(changed(linked, func(d *wiring.Duty) { d.DropA = 40 }), necOption("2 AWG", 110), 0).DropPct
	if math.Abs(half-got/2) > 1e-12 {
		t.Errorf("half the current: %v %%, want %v", half, got/2)
	}
}

// TestDCCircuit: its device is the stated one, without 125 % and without the next size up; 15 A on 14 AWG.
func TestDCCircuit(t *testing.T) {
	circuit := func(deviceA float64) wiring.Duty {
		return changed(busDuty(scenarios.RunDC, deviceA), func(d *wiring.Duty) { d.DeviceA = deviceA })
	}
	on := func(ratingA float64, size catalog.Size) wiring.Option {
		return wiring.Option{Cable: copperCable(size, 75), Sets: 1, Device: device("fuse", ratingA)}
	}
	runVerdicts(t, necRules, []verdict{
		{"15 A on 14 AWG", circuit(15), on(15, "14 AWG"), 0, nil},
		{"20 A for 15 A", circuit(15), on(20, "12 AWG"), 0, []string{"device rating"}},
		{"no next size up: 45 A on 40 A", circuit(45), on(45, "8 AWG"), 0, []string{"terminal ampacity", "corrected ampacity", "cable protected"}},
		{"an ac rating does not count", circuit(15), wiring.Option{Cable: copperCable("14 AWG", 75), Sets: 1, Device: acBreaker(15, 1)}, 0,
			[]string{"device voltage"}},
	})
}
