package frame

import "cartwright/catalog/source"

// Sources lists where the formulas and values of this room come from.
func Sources() []source.Source {
	return []source.Source{
		{
			Kind: source.Formula, Name: "mass of square steel tube: 0.00785 (b² - (b - 2t)²) kg/m, corners sharp",
			Source: "EN 1991-1-1 table A.4, 7850 kg/m³; EN 10219-2 annex B rounds the corners and has 4 to 6 % less", Confidence: source.FromMemory,
		},
		{
			Kind: source.Formula, Name: "second moment of area and modulus of tubes, flats and angles",
			Source: "plane geometry; Roark's Formulas for Stress and Strain, table A.1", Confidence: source.Definition,
		},
		{
			Kind: source.Formula, Name: "beam on two supports under an even load: M = w L² / 8, f = 5 w L⁴ / (384 E I)",
			Source: "Roark's Formulas for Stress and Strain, table 8.1 case 2e", Confidence: source.CommonNotRead,
		},
		{
			Kind: source.Practice, Name: "a rail is bent to 0.6 of its yield and sags a 240th of its span at most",
			Source: "0.6: AISC 360-89 F1.1; 1/240: none", Confidence: source.FromMemory,
		},
		{
			Kind: source.Table, Name: "Young's modulus of steel, 210 GPa",
			Source: "EN 1993-1-1, 3.2.6", Confidence: source.FromMemory,
		},
	}
}
