package nec_test

import (
	"math"
	"testing"

	"cartwright/optimize/wiring/nec"
)

// ambientRows is NFPA 70 table 310.15(B)(1) (2020, 2023), printed again as table E3705.2 of the 2018 IRC:
// two independent texts. minC and maxC bound the band of whole degrees; 0 is an empty cell.
var ambientRows = []struct {
	minC, maxC    float64
	f60, f75, f90 float64
}{
	{-40, 10, 1.29, 1.20, 1.15},
	{11, 15, 1.22, 1.15, 1.12},
	{16, 20, 1.15, 1.11, 1.08},
	{21, 25, 1.08, 1.05, 1.04},
	{26, 30, 1.00, 1.00, 1.00},
	{31, 35, 0.91, 0.94, 0.96},
	{36, 40, 0.82, 0.88, 0.91},
	{41, 45, 0.71, 0.82, 0.87},
	{46, 50, 0.58, 0.75, 0.82},
	{51, 55, 0.41, 0.67, 0.76},
	{56, 60, 0, 0.58, 0.71},
	{61, 65, 0, 0.47, 0.65},
	{66, 70, 0, 0.33, 0.58},
	{71, 75, 0, 0, 0.50},
	{76, 80, 0, 0, 0.41},
	{81, 85, 0, 0, 0.29},
}

func TestAmbientFactor(t *testing.T) {
	for _, r := range ambientRows {
		// Half a degree below the band's first whole degree is above the band before: it counts here.
		for _, ambientC := range []float64{r.minC, r.minC - 0.5, r.maxC} {
			for column, want := range map[nec.Column]float64{nec.Col60: r.f60, nec.Col75: r.f75, nec.Col90: r.f90} {
				got, ok := nec.AmbientFactor(ambientC, column)
				if got != want || ok != (want > 0) {
					t.Errorf("AmbientFactor(%v, %d) = %v, %v; want %v", ambientC, column, got, ok, want)
				}
			}
		}
	}
}

func TestAmbientFactorNotInTable(t *testing.T) {
	if f, ok := nec.AmbientFactor(85.5, nec.Col90); ok || f != 0 {
		t.Errorf("above the table: AmbientFactor = %v, %v; want 0, false", f, ok)
	}
	if f, ok := nec.AmbientFactor(30, 80); ok || f != 0 {
		t.Errorf("no such column: AmbientFactor = %v, %v; want 0, false", f, ok)
	}
}

// TestAmbientFactorFormula: the table is the square root of the heat that may still flow, taken at the top
// of the band (NFPA 70 310.15(B)(1), equation; recomputed).
func TestAmbientFactorFormula(t *testing.T) {
	for _, r := range ambientRows {
		for column, tableValue := range map[nec.Column]float64{nec.Col60: r.f60, nec.Col75: r.f75, nec.Col90: r.f90} {
			if tableValue == 0 {
				continue
			}
			c := float64(column)
			want := math.Sqrt((c - r.maxC) / (c - 30))
			// The table prints two decimals.
			if got, _ := nec.AmbientFactor(r.maxC, column); math.Abs(got-want) > 0.005+1e-12 {
				t.Errorf("AmbientFactor(%v, %d) = %v; the formula gives %.4f", r.maxC, column, got, want)
			}
		}
	}
}
