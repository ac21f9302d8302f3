package iec_test

import (
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring/iec"
)

// TestAmpacity holds each row of IEC 60364-5-52:2009 tables B.52.2 (PVC) and B.52.3 (XLPE), copper, two
// loaded conductors: more than four independent texts (national adoptions).
func TestAmpacity(t *testing.T) {
	rows := []struct {
		size                       catalog.Size
		pvcB1, pvcC, xlpeB1, xlpeC float64
	}{
		{"1.5 mm2", 17.5, 19.5, 23, 24},
		{"2.5 mm2", 24, 27, 31, 33},
		{"4 mm2", 32, 36, 42, 45},
		{"6 mm2", 41, 46, 54, 58},
		{"10 mm2", 57, 63, 75, 80},
		{"16 mm2", 76, 85, 100, 107},
		{"25 mm2", 101, 112, 133, 138},
		{"35 mm2", 125, 138, 164, 171},
		{"50 mm2", 151, 168, 198, 209},
		{"70 mm2", 192, 213, 253, 269},
		{"95 mm2", 232, 258, 306, 328},
		{"120 mm2", 269, 299, 354, 382},
	}
	for _, r := range rows {
		for _, cell := range []struct {
			insulation iec.Insulation
			method     iec.Method
			want       float64
		}{
			{iec.PVC, iec.MethodB1, r.pvcB1},
			{iec.PVC, iec.MethodC, r.pvcC},
			{iec.XLPE, iec.MethodB1, r.xlpeB1},
			{iec.XLPE, iec.MethodC, r.xlpeC},
		} {
			got, ok := iec.Ampacity(r.size, cell.insulation, cell.method)
			if !ok || got != cell.want {
				t.Errorf("Ampacity(%s, %s, %s) = %v, %v; want %v", r.size, cell.insulation, cell.method, got, ok, cell.want)
			}
		}
	}
}

func TestAmpacityNotInTable(t *testing.T) {
	for _, c := range []struct {
		name       string
		size       catalog.Size
		insulation iec.Insulation
		method     iec.Method
	}{
		{"larger than the table", "150 mm2", iec.PVC, iec.MethodC},
		{"a gauge", "4 AWG", iec.PVC, iec.MethodC},
		{"no such insulation", "16 mm2", "paper", iec.MethodC},
		{"no such method, PVC", "16 mm2", iec.PVC, "Z"},
		{"no such method, XLPE", "16 mm2", iec.XLPE, "Z"},
	} {
		if a, ok := iec.Ampacity(c.size, c.insulation, c.method); ok {
			t.Errorf("%s: Ampacity = %v, true; want not in table", c.name, a)
		}
	}
}

// TestInsulationOf: the next lower of the two tables (from memory).
func TestInsulationOf(t *testing.T) {
	for _, c := range []struct {
		tempC float64
		want  iec.Insulation
		ok    bool
	}{
		{60, "", false},
		{69.9, "", false},
		{70, iec.PVC, true},
		{75, iec.PVC, true},
		{89.9, iec.PVC, true},
		{90, iec.XLPE, true},
		{105, iec.XLPE, true},
	} {
		if got, ok := iec.InsulationOf(c.tempC); got != c.want || ok != c.ok {
			t.Errorf("InsulationOf(%v) = %q, %v; want %q, %v", c.tempC, got, ok, c.want, c.ok)
		}
	}
}
