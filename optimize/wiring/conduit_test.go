package wiring_test

import (
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// TestHolds: all conductors, sets and ground, in 53, 31 or 40 % of the inside (NFPA 70 chapter 9 tables 1 and 5); by iec
// in 40 % throughout, common practice. Areas of 12 mm cable: 113.10 mm2.
func TestHolds(t *testing.T) {
	cable := &catalog.Cable{Size: "2 AWG", Material: "copper", InsulationC: 90, OuterM: 0.012}
	small := &catalog.Cable{Size: "6 AWG", Material: "copper", InsulationC: 90, OuterM: 0.006} // 28.27 mm2
	bare := copperCable("35 mm2", 90)
	two := busDuty(scenarios.RunMain, 80)
	three := changed(two, func(d *wiring.Duty) { d.Conductors, d.Ground = 2, true })
	for _, c := range []struct {
		name   string
		r      wiring.Rules
		d      wiring.Duty
		o      wiring.Option
		areaIn float64
		want   bool
	}{
		{"two at 31 %", necRules, two, wiring.Option{Cable: cable, Sets: 1}, 729.7, true},   // 226.19 mm2
		{"two above", necRules, two, wiring.Option{Cable: cable, Sets: 1}, 729.6, false},    //
		{"four at 40 %", necRules, two, wiring.Option{Cable: cable, Sets: 2}, 1131.0, true}, // 452.39 mm2
		{"four above", necRules, two, wiring.Option{Cable: cable, Sets: 2}, 1130.9, false},
		{"ground included", necRules, three, wiring.Option{Cable: cable, Sets: 1, Ground: small}, 636.2, true}, // 254.47 mm2 at 40 %
		{"ground above", necRules, three, wiring.Option{Cable: cable, Sets: 1, Ground: small}, 636.1, false},
		{"one at 53 %", necRules, wiring.Duty{}, wiring.Option{Sets: 1, Ground: cable}, 213.4, true},
		{"one above", necRules, wiring.Duty{}, wiring.Option{Sets: 1, Ground: cable}, 213.3, false},
		{"iec: two at 40 %", iecRules, two, wiring.Option{Cable: cable, Sets: 1}, 565.5, true},
		{"iec: two above", iecRules, two, wiring.Option{Cable: cable, Sets: 1}, 565.4, false},
		{"no area known", iecRules, two, wiring.Option{Cable: bare, Sets: 1}, 1e9, false},
		{"ground of no area known", iecRules, three, wiring.Option{Cable: cable, Sets: 1, Ground: bare}, 1e9, false},
	} {
		if got := wiring.Holds(c.r, &c.d, &c.o, &catalog.Conduit{InsideMM2: c.areaIn}); got != c.want {
			t.Errorf("%s: %v mm2 inside: %v, want %v", c.name, c.areaIn, got, c.want)
		}
	}
}

// TestConduitsOfTheType: only those of the type a run names, and only those that hold it.
func TestConduitsOfTheType(t *testing.T) {
	c := narrowCatalog()
	c.Conduits = []catalog.Conduit{{Type: "emt", InsideMM2: 100}, {Type: "emt", InsideMM2: 2000}, {Type: "pvc-40", InsideMM2: 2000}}
	d := changed(busDuty(scenarios.RunString, 60), func(d *wiring.Duty) { d.Conduit = "emt" })
	got := wiring.Options(necRules, d, c)
	if len(got) == 0 {
		t.Fatal("no options")
	}
	for _, o := range got {
		if o.Conduit != &c.Conduits[1] {
			t.Errorf("%+v in %+v, want the large one of the type", o, o.Conduit)
		}
	}
	if none := wiring.Options(necRules, changed(d, func(d *wiring.Duty) { d.Conduit = "flexible" }), c); none != nil {
		t.Errorf("no conduit of the type: %d options", len(none))
	}
}

// TestRoles: what the whole bus current flows through has 125 % of it (common practice, no source); the breakers of a
// branch are of the centre's mount.
func TestRoles(t *testing.T) {
	if got := wiring.ThroughA(220); got != 275 {
		t.Errorf("a disconnect of 220 A: %v A, want 275", got)
	}
	plug := &catalog.Device{Type: "breaker", Mount: "plug-in"}
	for _, c := range []struct {
		name  string
		dev   *catalog.Device
		mount string
		want  bool
	}{
		{"its mount", plug, "plug-in", true},
		{"another", plug, "rail", false},
		{"none stated of the centre", plug, "", true},
		{"none stated of the breaker", &catalog.Device{Type: "breaker"}, "plug-in", false},
		{"neither", &catalog.Device{Type: "breaker"}, "", true},
		{"a fuse has a holder of its own", &catalog.Device{Type: "fuse"}, "plug-in", true},
		{"nothing", nil, "plug-in", true},
	} {
		if got := wiring.FitsCentre(c.dev, c.mount); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// TestBothEnds: from three strings on, and above 3 m.
func TestBothEnds(t *testing.T) {
	for _, c := range []struct {
		lengthM float64
		strings int
		want    bool
	}{{3, 3, false}, {3.001, 2, false}, {3.001, 3, true}, {3 * (1 + 1e-12), 3, false}, {10, 4, true}, {10, 1, false}} {
		s := scenario()
		s.Runs[0].LengthM = c.lengthM
		if got := wiring.BothEnds(s, c.strings); got != c.want {
			t.Errorf("%v m, %d strings: %v", c.lengthM, c.strings, got)
		}
	}
}
