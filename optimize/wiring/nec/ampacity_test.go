package nec_test

import (
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring/nec"
)

// TestAmpacity holds each row of NFPA 70 table 310.16 (2020, 2023), as the 2018 IRC prints it again in
// table E3705.1: two independent texts agree on every row.
func TestAmpacity(t *testing.T) {
	rows := []struct {
		material      string
		size          catalog.Size
		a60, a75, a90 float64
	}{
		{"copper", "14 AWG", 15, 20, 25},
		{"copper", "12 AWG", 20, 25, 30},
		{"copper", "10 AWG", 30, 35, 40},
		{"copper", "8 AWG", 40, 50, 55},
		{"copper", "6 AWG", 55, 65, 75},
		{"copper", "4 AWG", 70, 85, 95},
		{"copper", "3 AWG", 85, 100, 115},
		{"copper", "2 AWG", 95, 115, 130},
		{"copper", "1 AWG", 110, 130, 145},
		{"copper", "1/0 AWG", 125, 150, 170},
		{"copper", "2/0 AWG", 145, 175, 195},
		{"copper", "3/0 AWG", 165, 200, 225},
		{"copper", "4/0 AWG", 195, 230, 260},
		{"copper", "250 kcmil", 215, 255, 290},
		{"copper", "300 kcmil", 240, 285, 320},
		{"copper", "350 kcmil", 260, 310, 350},
		{"copper", "400 kcmil", 280, 335, 380},
		{"copper", "500 kcmil", 320, 380, 430},
		{"aluminium", "12 AWG", 15, 20, 25},
		{"aluminium", "10 AWG", 25, 30, 35},
		{"aluminium", "8 AWG", 35, 40, 45},
		{"aluminium", "6 AWG", 40, 50, 55},
		{"aluminium", "4 AWG", 55, 65, 75},
		{"aluminium", "3 AWG", 65, 75, 85},
		{"aluminium", "2 AWG", 75, 90, 100},
		{"aluminium", "1 AWG", 85, 100, 115},
		{"aluminium", "1/0 AWG", 100, 120, 135},
		{"aluminium", "2/0 AWG", 115, 135, 150},
		{"aluminium", "3/0 AWG", 130, 155, 175},
		{"aluminium", "4/0 AWG", 150, 180, 205},
		{"aluminium", "250 kcmil", 170, 205, 230},
		{"aluminium", "300 kcmil", 195, 230, 260},
		{"aluminium", "350 kcmil", 210, 250, 280},
		{"aluminium", "400 kcmil", 225, 270, 305},
		{"aluminium", "500 kcmil", 260, 310, 350},
	}
	for _, r := range rows {
		for _, cell := range []struct {
			column nec.Column
			want   float64
		}{{nec.Col60, r.a60}, {nec.Col75, r.a75}, {nec.Col90, r.a90}} {
			got, ok := nec.Ampacity(r.material, r.size, cell.column)
			if !ok || got != cell.want {
				t.Errorf("Ampacity(%s, %s, %d) = %v, %v; want %v", r.material, r.size, cell.column, got, ok, cell.want)
			}
		}
	}
}

func TestAmpacityNotInTable(t *testing.T) {
	for _, c := range []struct {
		name, material string
		size           catalog.Size
		column         nec.Column
	}{
		{"smaller than the table", "copper", "16 AWG", nec.Col60},
		{"aluminium starts at 12 AWG", "aluminium", "14 AWG", nec.Col60},
		{"metric", "copper", "35 mm2", nec.Col75},
		{"no such material", "silver", "4 AWG", nec.Col75},
		{"no such column", "copper", "4 AWG", 80},
		{"no such size in a column that is there", "copper", "600 kcmil", nec.Col90},
	} {
		if a, ok := nec.Ampacity(c.material, c.size, c.column); ok {
			t.Errorf("%s: Ampacity = %v, true; want not in table", c.name, a)
		}
	}
}

// TestInsulationColumn: the next lower column where the table has none of the insulation's temperature
// (from memory: NFPA 70 table 310.16 has columns for 60, 75 and 90 °C only).
func TestInsulationColumn(t *testing.T) {
	for _, c := range []struct {
		tempC float64
		want  nec.Column
		ok    bool
	}{
		{59, 0, false},
		{60, nec.Col60, true},
		{70, nec.Col60, true},
		{74.9, nec.Col60, true},
		{75, nec.Col75, true},
		{89.9, nec.Col75, true},
		{90, nec.Col90, true},
		{105, nec.Col90, true},
	} {
		if got, ok := nec.InsulationColumn(c.tempC); got != c.want || ok != c.ok {
			t.Errorf("InsulationColumn(%v) = %v, %v; want %v, %v", c.tempC, got, ok, c.want, c.ok)
		}
	}
}
