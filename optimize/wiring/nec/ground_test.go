package nec_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring/nec"
)

// groundRows is NFPA 70 table 250.122 (2020, 2023) up to 1600 A: three independent texts.
var groundRows = []struct {
	maxA   float64
	cu, al catalog.Size
}{
	{15, "14 AWG", "12 AWG"},
	{20, "12 AWG", "10 AWG"},
	{60, "10 AWG", "8 AWG"},
	{100, "8 AWG", "6 AWG"},
	{200, "6 AWG", "4 AWG"},
	{300, "4 AWG", "2 AWG"},
	{400, "3 AWG", "1 AWG"},
	{500, "2 AWG", "1/0 AWG"},
	{600, "1 AWG", "2/0 AWG"},
	{800, "1/0 AWG", "3/0 AWG"},
	{1000, "2/0 AWG", "4/0 AWG"},
	{1200, "3/0 AWG", "250 kcmil"},
	{1600, "4/0 AWG", "350 kcmil"},
}

func TestGroundSize(t *testing.T) {
	above := 1.0 // the first row starts below any device
	for _, r := range groundRows {
		for _, deviceA := range []float64{above, r.maxA} {
			for material, want := range map[string]catalog.Size{"copper": r.cu, "aluminium": r.al} {
				if got, ok := nec.GroundSize(deviceA, material); !ok || got != want {
					t.Errorf("GroundSize(%v, %s) = %q, %v; want %q", deviceA, material, got, ok, want)
				}
			}
		}
		above = r.maxA + 1
	}
	if got, ok := nec.GroundSize(1601, "copper"); ok {
		t.Errorf("above the table: GroundSize = %q, true; want none", got)
	}
	if got, ok := nec.GroundSize(20, "silver"); ok {
		t.Errorf("no such material: GroundSize = %q, true; want none", got)
	}
}

// TestGroundAreaMM2: NFPA 70 250.122(A), three independent texts: not larger than the circuit conductors.
func TestGroundAreaMM2(t *testing.T) {
	for _, c := range []struct {
		name     string
		deviceA  float64
		material string
		circuit  catalog.Size
		want     catalog.Size
	}{
		{"by the table", 60, "copper", "6 AWG", "10 AWG"},
		{"as large as the circuit", 20, "copper", "12 AWG", "12 AWG"},
		{"capped by the circuit", 20, "aluminium", "12 AWG", "12 AWG"},
	} {
		got, ok := nec.GroundAreaMM2(c.deviceA, c.material, c.circuit)
		if want := c.want.AreaMM2(); !ok || math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: GroundAreaMM2 = %v, %v; want %v of %s", c.name, got, ok, want, c.want)
		}
	}
	if got, ok := nec.GroundAreaMM2(2000, "copper", "500 kcmil"); ok || got != 0 {
		t.Errorf("above the table: GroundAreaMM2 = %v, %v; want 0, false", got, ok)
	}
}

// TestSourcesStated: each table and rule says where it comes from and how far it is confirmed.
func TestSourcesStated(t *testing.T) {
	names := map[string]bool{}
	for _, s := range nec.Sources() {
		if s.Kind == "" || s.Name == "" || s.Source == "" || s.Confidence == "" || names[s.Name] {
			t.Errorf("source %+v has an empty field or a name that was there before", s)
		}
		names[s.Name] = true
	}
	if want := 13; len(names) != want {
		t.Errorf("%d sources, want %d: one for each table and rule", len(names), want)
	}
}
