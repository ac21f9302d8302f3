package catalog_test

import (
	"math"
	"testing"
)

// Square tube against EN 10219-2, whose tubes have rounded corners: sharp ones are heavier, never lighter. 40 x 40 x 3:
// 3.30 kg/m, 50 x 50 x 3: 4.25 kg/m.
func TestSectionMassAgainstEN10219(t *testing.T) {
	for _, test := range []struct {
		row             string
		table, moreThan float64 // kg/m of the table; at most this share above it
	}{
		{"a,A,square-tube,40,,3", 3.30, 0.057},
		{"a,A,square-tube,50,,3", 4.25, 0.042},
	} {
		c := mustRead(t, with(map[string]string{"sections.csv": "id,name,shape,width_mm,height_mm,wall_mm\n" + test.row + "\n"}))
		over := c.Sections[0].KgPerM/test.table - 1
		if over < 0 || over > test.moreThan {
			t.Errorf("%s: %.4g kg/m is %.2f %% above %g", test.row, c.Sections[0].KgPerM, 100*over, test.table)
		}
	}
}

// Sides come in the order a person thinks of them; masses are area times 7850 kg/m3.
func TestSectionSides(t *testing.T) {
	for _, test := range []struct {
		row                 string
		width, height, wall float64 // mm
		kgPerM              float64
	}{
		{"a,A,square-tube,40,,3,", 40, 40, 3, 3.4854},   // (1600 - 34^2) mm2
		{"a,A,Square-Tube,40,40,3,", 40, 40, 3, 3.4854}, //
		{"a,A,square-tube,40,,3,1.2", 40, 40, 3, 1.2},   // stated: not of steel
		{"a,A,flat,40,5,,", 5, 40, 0, 1.57},             // on its edge, whichever side stands first
		{"a,A,flat,5,40,,", 5, 40, 0, 1.57},             //
		{"a,A,flat,40,,5,", 5, 40, 0, 1.57},             //
		{"a,A,angle,30,,3,", 30, 30, 3, 1.34235},        // (30 + 30 - 3) * 3 mm2
		{"a,A,angle,40,20,4,", 40, 20, 4, 1.7584},       // (40 + 20 - 4) * 4 mm2
		{"a,A,ply,400,18,,4.9", 400, 18, 0, 4.9},        //
	} {
		c := mustRead(t, with(map[string]string{"sections.csv": "id,name,shape,width_mm,height_mm,wall_mm,mass_kg_per_m\n" + test.row + "\n"}))
		s := c.Sections[0]
		got := [4]float64{s.WidthM * 1000, s.HeightM * 1000, s.WallM * 1000, s.KgPerM}
		for i, want := range [4]float64{test.width, test.height, test.wall, test.kgPerM} {
			if math.Abs(got[i]-want) > 1e-9 {
				t.Errorf("%s: got %v, want %v", test.row, got, [4]float64{test.width, test.height, test.wall, test.kgPerM})
				break
			}
		}
	}
}

func TestWrongSections(t *testing.T) {
	const row = "shape,width_mm,wall_mm\ntube,Tube,square-tube,40,3"
	at := func(what string) []string { return []string{"cart/sections.csv:2:11: " + what} }
	const tube = "the sides of this square-tube are not clear; write width_mm, its outer side, and wall_mm, less than half of it; " +
		"height_mm is the same as width_mm or empty"
	const flat = "the sides of this flat are not clear; write two of width_mm, height_mm and wall_mm: its two sides"
	const angle = "the sides of this angle are not clear; write width_mm, its level leg, wall_mm, less than a leg, and height_mm " +
		"where the upright leg is another"
	try(t, []mistake{
		{"no wall", "sections.csv", row, "shape,width_mm,wall_mm\ntube,Tube,square-tube,40,", at(tube)},
		{"all wall", "sections.csv", row, "shape,width_mm,wall_mm\ntube,Tube,square-tube,40,20", at(tube)},
		{"not square", "sections.csv", row, "shape,width_mm,height_mm,wall_mm\ntube,Tube,square-tube,40,50,3", at(tube)},
		{"a flat of one side", "sections.csv", row, "shape,width_mm\ntube,Tube,flat,40", at(flat)},
		{"a flat of three", "sections.csv", row, "shape,width_mm,height_mm,wall_mm\ntube,Tube,flat,40,5,5", at(flat)},
		{"a thick angle", "sections.csv", row, "shape,width_mm,wall_mm\ntube,Tube,angle,30,30", at(angle)},
		{"ply of no mass", "sections.csv", row, "shape,width_mm\ntube,Tube,ply,400",
			at("ply states no mass; write kilograms per metre under mass_kg_per_m; only that of steel is computed")},
		{"metres for millimetres", "sections.csv", row, "shape,width_mm,wall_mm\ntube,Tube,square-tube,40000,3000",
			at("steel of these sides weighs 3485400 kg a metre; write the sides in the units of their headers")},
		{"a shape of no kind", "sections.csv", row, "shape,width_mm,wall_mm\ntube,Tube,round-tube,40,3",
			at(`shape "round-tube" is none of the choices; write square-tube, flat, angle or ply`)},
	})
}
