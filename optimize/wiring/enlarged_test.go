package wiring_test

import (
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// TestEnlargedGround: NFPA 70 250.122(B), two worked examples of texts on the code (each confirmed in 1 text): 300 A in
// 350 where 250 kcmil would do takes 2 AWG instead of 4 AWG; 20 A in 6 where 12 AWG would do takes 6 AWG.
func TestEnlargedGround(t *testing.T) {
	feeder := changed(feederDuty(200), func(d *wiring.Duty) { d.Drop = 1 })
	outlet := changed(branchDuty(20, 120, 1), func(d *wiring.Duty) { d.Drop = 1 })
	on := func(size catalog.Size, insulationC, deviceA float64, poles int, ground *catalog.Cable) wiring.Option {
		return wiring.Option{Cable: copperCable(size, insulationC), Sets: 1, Device: acBreaker(deviceA, poles), Ground: ground}
	}
	runVerdicts(t, necRules, []verdict{
		{"300 A, 250 kcmil: 4 AWG", feeder, on("250 kcmil", 75, 300, 2, copperCable("4 AWG", 75)), 0, nil},
		{"300 A, 350 kcmil: 2 AWG", feeder, on("350 kcmil", 75, 300, 2, copperCable("2 AWG", 75)), 0, nil},
		{"300 A, 350 kcmil: not 3 AWG", feeder, on("350 kcmil", 75, 300, 2, copperCable("3 AWG", 75)), 0, []string{"ground size"}},
		{"20 A, 12 AWG: 12 AWG", outlet, on("12 AWG", 75, 20, 1, copperCable("12 AWG", 75)), 0, nil},
		{"20 A, 6 AWG: 6 AWG", outlet, on("6 AWG", 75, 20, 1, copperCable("6 AWG", 75)), 0, nil},
		{"20 A, 6 AWG: not 8 AWG", outlet, on("6 AWG", 75, 20, 1, copperCable("8 AWG", 75)), 0, []string{"ground size"}},
		// The ground is enlarged beside conductors that the heat asks for no more than beside those of a drop: at 50 °C
		// 12 AWG of 75 °C has 25 · 0.75 A, 10 AWG 26.25 A, which do.
		{"hot: needed, not enlarged", changed(outlet, func(d *wiring.Duty) { d.AmbientC = 50 }), on("10 AWG", 75, 20, 1, copperCable("12 AWG", 75)), 0, nil},
		// Aluminium grows as copper does: 6 AWG from 12 AWG, four times the 10 AWG of the table.
		{"20 A, 6 AWG: aluminium of 4 AWG", outlet, on("6 AWG", 75, 20, 1, aluminiumCable("4 AWG", 75)), 0, nil},
		{"20 A, 6 AWG: not aluminium of 6 AWG", outlet, on("6 AWG", 75, 20, 1, aluminiumCable("6 AWG", 75)), 0, []string{"ground size"}},
		{"20 A on 20 A and larger cable of one size up", outlet, on("10 AWG", 75, 20, 1, copperCable("10 AWG", 75)), 0, nil},
		{"not below what it grew to", outlet, on("10 AWG", 75, 20, 1, copperCable("12 AWG", 75)), 0, []string{"ground size"}},
	})
	array := changed(feeder, func(d *wiring.Duty) { d.Array = true })
	runVerdicts(t, necRules, []verdict{
		{"of the sun: not enlarged (690.45)", array, on("350 kcmil", 75, 300, 2, copperCable("4 AWG", 75)), 0, nil},
	})
}

// TestBond: sized by the largest main's device (NFPA 70 table 250.122), by iec by its line area (60364-5-54 table 54.2).
func TestBond(t *testing.T) {
	main := busDuty(scenarios.RunMain, 80)
	for _, c := range []struct {
		name     string
		r        wiring.Rules
		main     wiring.Duty
		o        wiring.Option
		material string
		want     catalog.Size
		ok       bool
	}{
		{"200 A", necRules, main, necOption("3/0 AWG", 200), "copper", "6 AWG", true},
		{"200 A in aluminium", necRules, main, necOption("3/0 AWG", 200), "aluminium", "4 AWG", true},
		{"its own breaker", necRules, changed(main, func(d *wiring.Duty) { d.OwnBreakerA = 125 }), wiring.Option{Cable: copperCable("1 AWG", 90), Sets: 1}, "copper", "6 AWG", true},
		{"above the table", necRules, main, necOption("500 kcmil", 2000), "copper", "", false},
		{"iec, 70 mm2", iecRules, main, iecOption("70 mm2", 90, device("fuse", 100)), "copper", "35 mm2", true},
		{"iec, two of 70 mm2", iecRules, main, changed(iecOption("70 mm2", 90, device("fuse", 100)), func(o *wiring.Option) { o.Sets = 2 }), "copper", "70 mm2", true},
		{"iec, aluminium", iecRules, main, iecOption("70 mm2", 90, device("fuse", 100)), "aluminium", "35 mm2", false},
	} {
		mm2, ok := wiring.BondMM2(c.r, c.main, c.o, c.material)
		if ok != c.ok || ok && mm2 != c.want.AreaMM2() {
			t.Errorf("%s: %v mm2, %v; want %s, %v", c.name, mm2, ok, c.want, c.ok)
		}
	}
	catalogue := &catalog.Catalog{
		Cables:   []catalog.Cable{*copperCable("6 AWG", 90), *copperCable("35 mm2", 90), *aluminiumCable("4 AWG", 75), *copperCable("14 AWG", 90)},
		Conduits: []catalog.Conduit{{Type: "emt", InsideMM2: 20}, {Type: "emt", InsideMM2: 100}, {Type: "pvc-40", InsideMM2: 100}},
	}
	d := wiring.Duty{Kind: scenarios.RunBond, Ground: true, LengthM: 1}
	if got := wiring.Bond(necRules, d, catalogue); len(got) != 3 || got[0].Cable != nil || got[0].Sets != 1 || got[2].Ground.Size != "14 AWG" {
		t.Errorf("nec: %+v, want the three of table 310.16, no line conductor", got)
	}
	if got := wiring.Bond(iecRules, d, catalogue); len(got) != 1 || got[0].Ground.Size != "35 mm2" {
		t.Errorf("iec: %+v, want 35 mm2 alone", got)
	}
	// 6 AWG takes 32.7 mm2 of table 5, one conductor 53 % of the conduit: 100 mm2 hold it, 20 hold 14 AWG (6.3 mm2).
	d.Conduit = "emt"
	held := map[catalog.Size]int{}
	for _, o := range wiring.Bond(necRules, d, catalogue) {
		held[o.Ground.Size]++
	}
	if held["6 AWG"] != 1 || held["14 AWG"] != 2 {
		t.Errorf("conduits for each: %v, want one for 6 AWG, two for 14 AWG", held)
	}
}
