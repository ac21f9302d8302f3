package nec_test

import (
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

// TestEnlargedGroundMM2: NFPA 70 250.122(B). Two worked examples of texts on the code: a circuit of 300 A in 350
// where 250 kcmil would do takes 2 AWG of copper where the table has 4 AWG; one of 20 A in 6 where 12 AWG would do
// takes 6 AWG, as large as the circuit. Each confirmed in 1 text.
func TestEnlargedGroundMM2(t *testing.T) {
	for _, c := range []struct {
		deviceA      float64
		laid, needed catalog.Size
		want, below  catalog.Size // the least that serves, and the one that does not
	}{
		{300, "350 kcmil", "250 kcmil", "2 AWG", "3 AWG"},
		{20, "6 AWG", "12 AWG", "6 AWG", "8 AWG"},
		{60, "6 AWG", "6 AWG", "10 AWG", "12 AWG"},
		{60, "6 AWG", "4 AWG", "10 AWG", "12 AWG"}, // never smaller than the table's
	} {
		table, _ := nec.GroundSize(c.deviceA, "copper")
		got := nec.EnlargedGroundMM2(table.AreaMM2(), c.laid.AreaMM2(), c.needed.AreaMM2())
		if got > c.want.AreaMM2()*(1+1e-9) || got <= c.below.AreaMM2() {
			t.Errorf("%v A, %s for %s: %v mm2, want %s", c.deviceA, c.laid, c.needed, got, c.want)
		}
	}
}

// TestSizes: those of table 310.16 rise, and each has an ampacity.
func TestSizes(t *testing.T) {
	sizes := nec.Sizes()
	for i, size := range sizes {
		if _, ok := nec.Ampacity("copper", size, nec.Col60); !ok || i > 0 && size.AreaMM2() <= sizes[i-1].AreaMM2() {
			t.Errorf("%s is not listed, or does not follow", size)
		}
	}
	if len(sizes) != 18 {
		t.Errorf("%d sizes, want 18", len(sizes))
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
	if want := 14; len(names) != want {
		t.Errorf("%d sources, want %d: one for each table and rule", len(names), want)
	}
}
