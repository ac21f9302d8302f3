package iec_test

import (
	"testing"

	"cartwright/optimize/wiring/iec"
)

// TestAmbientFactor holds each row of IEC 60364-5-52:2009 table B.52.14: more than three independent
// texts. 0 is an empty cell.
func TestAmbientFactor(t *testing.T) {
	rows := []struct{ ambientC, pvc, xlpe float64 }{
		{10, 1.22, 1.15},
		{15, 1.17, 1.12},
		{20, 1.12, 1.08},
		{25, 1.06, 1.04},
		{30, 1.00, 1.00},
		{35, 0.94, 0.96},
		{40, 0.87, 0.91},
		{45, 0.79, 0.87},
		{50, 0.71, 0.82},
		{55, 0.61, 0.76},
		{60, 0.50, 0.71},
		{65, 0, 0.65},
		{70, 0, 0.58},
		{75, 0, 0.50},
		{80, 0, 0.41},
	}
	for _, r := range rows {
		// What is not listed takes the next hotter row.
		for _, ambientC := range []float64{r.ambientC, r.ambientC - 4.5} {
			if got, ok := iec.AmbientFactor(ambientC, iec.PVC); got != r.pvc || ok != (r.pvc > 0) {
				t.Errorf("AmbientFactor(%v, PVC) = %v, %v; want %v", ambientC, got, ok, r.pvc)
			}
			if got, ok := iec.AmbientFactor(ambientC, iec.XLPE); got != r.xlpe || !ok {
				t.Errorf("AmbientFactor(%v, XLPE) = %v, %v; want %v", ambientC, got, ok, r.xlpe)
			}
		}
	}
	if got, ok := iec.AmbientFactor(80.5, iec.XLPE); ok || got != 0 {
		t.Errorf("above the table: AmbientFactor = %v, %v; want 0, false", got, ok)
	}
	if got, ok := iec.AmbientFactor(30, "paper"); ok || got != 0 {
		t.Errorf("no such insulation: AmbientFactor = %v, %v; want 0, false", got, ok)
	}
}
