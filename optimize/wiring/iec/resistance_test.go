package iec_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring/iec"
)

// TestResistancePerM holds each row of IEC 60228:2004 table 3, class 5, plain copper, ohm per km at 20 °C:
// two independent texts. The room gives it at 70 °C: 1 + 0.00393 · 50 = 1.1965 times (IEC 60028).
func TestResistancePerM(t *testing.T) {
	for _, r := range []struct {
		size catalog.Size
		want float64
	}{
		{"1 mm2", 19.5},
		{"1.5 mm2", 13.3},
		{"2.5 mm2", 7.98},
		{"4 mm2", 4.95},
		{"6 mm2", 3.30},
		{"10 mm2", 1.91},
		{"16 mm2", 1.21},
		{"25 mm2", 0.780},
		{"35 mm2", 0.554},
		{"50 mm2", 0.386},
		{"70 mm2", 0.272},
		{"95 mm2", 0.206},
		{"120 mm2", 0.161},
		{"150 mm2", 0.129},
		{"185 mm2", 0.106},
		{"240 mm2", 0.0801},
		{"300 mm2", 0.0641},
	} {
		got, ok := iec.ResistancePerM(r.size)
		if at20 := got * 1000 / 1.1965; !ok || math.Abs(at20-r.want) > 1e-12 {
			t.Errorf("ResistancePerM(%s) = %v ohm/km at 20 C, %v; want %v", r.size, at20, ok, r.want)
		}
	}
	if ohm, ok := iec.ResistancePerM("4 AWG"); ok {
		t.Errorf("a gauge: ResistancePerM = %v, true; want not in table", ohm)
	}
}
