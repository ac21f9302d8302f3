package raceway_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring/raceway"
)

// TestAreaMM2 holds each row of NFPA 70 chapter 9 table 5, THHN and THWN-2, in square inches: from memory; the sum of
// ExampleAreaMM2 is published. Diameters of the same table, in inches, from memory too, give the areas within 1 %.
func TestAreaMM2(t *testing.T) {
	for size, r := range map[catalog.Size]struct{ in2, diameter float64 }{
		"14 AWG": {0.0097, 0.111}, "12 AWG": {0.0133, 0.130}, "10 AWG": {0.0211, 0.164}, "8 AWG": {0.0366, 0.216},
		"6 AWG": {0.0507, 0.254}, "4 AWG": {0.0824, 0.324}, "3 AWG": {0.0973, 0.352}, "2 AWG": {0.1158, 0.384},
		"1 AWG": {0.1562, 0.446}, "1/0 AWG": {0.1855, 0.486}, "2/0 AWG": {0.2223, 0.532}, "3/0 AWG": {0.2679, 0.584},
		"4/0 AWG": {0.3237, 0.642}, "250 kcmil": {0.3970, 0.711}, "300 kcmil": {0.4608, 0.766},
		"350 kcmil": {0.5242, 0.817}, "400 kcmil": {0.5863, 0.864}, "500 kcmil": {0.7073, 0.949},
	} {
		got, ok := raceway.AreaMM2(&catalog.Cable{Size: size})
		if !ok || math.Abs(got-r.in2*645.16) > 1e-9 {
			t.Errorf("%s: %v mm2, %v; want %v in2", size, got, ok, r.in2)
		}
		if round := math.Pi / 4 * r.diameter * r.diameter; math.Abs(round/r.in2-1) > 0.01 {
			t.Errorf("%s: %v in2 by the table, %v by the diameter", size, r.in2, round)
		}
	}
	for _, size := range []catalog.Size{"35 mm2", "16 AWG"} {
		if got, ok := raceway.AreaMM2(&catalog.Cable{Size: size}); ok {
			t.Errorf("%s: %v mm2, want none", size, got)
		}
	}
	if got, ok := raceway.AreaMM2(&catalog.Cable{Size: "2 AWG", OuterM: 0.010}); !ok || math.Abs(got-78.5398) > 1e-4 {
		t.Errorf("10 mm across: %v mm2, %v; want 78.54", got, ok)
	}
}

// TestFill: NFPA 70 chapter 9 table 1, from memory; iec 40 %, common practice, no source.
func TestFill(t *testing.T) {
	for n, want := range map[int]float64{1: 0.53, 2: 0.31, 3: 0.40, 15: 0.40} {
		if got := raceway.Fill(n, false); got != want {
			t.Errorf("%d conductors: %v, want %v", n, got, want)
		}
		if got := raceway.Fill(n, true); got != 0.40 {
			t.Errorf("iec, %d conductors: %v, want 0.40", n, got)
		}
	}
}

// TestSourcesStated: each table says where it comes from and how far it is confirmed.
func TestSourcesStated(t *testing.T) {
	for _, s := range raceway.Sources() {
		if s.Kind == "" || s.Name == "" || s.Source == "" || s.Confidence == "" {
			t.Errorf("source %+v has an empty field", s)
		}
	}
	if len(raceway.Sources()) != 2 {
		t.Errorf("%d sources, want 2", len(raceway.Sources()))
	}
}
