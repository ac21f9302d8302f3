package sun

import "cartwright/catalog/source"

// Sources lists where the formulas of this room come from.
func Sources() []source.Source {
	const book = "Duffie and Beckman, Solar Engineering of Thermal Processes"
	return []source.Source{
		{
			Kind: source.Formula, Name: "share of a month's days below a clearness",
			Source:     "Bendt, Collares-Pereira and Rabl, Solar Energy 27 (1981) 1; Hollands and Huget, Solar Energy 30 (1983) 195; Herzog (1985); " + book + ", section 2.9",
			Confidence: "confirmed in five independent texts",
		},
		{
			Kind: source.Table, Name: "order of a month's days",
			Source: "Knight, Klein and Duffie, Solar Energy 46 (1991) 109", Confidence: source.OneText,
		},
		source.Habit("a month's clearness is held between 0.10 and 0.80; its days are scaled to its figure"),
		{
			Kind: source.Formula, Name: "diffuse share of a day",
			Source: "Erbs, Klein and Duffie, Solar Energy 28 (1982) 293; " + book + ", eq. 2.11.1", Confidence: source.ThreeTexts,
		},
		{
			Kind: source.Formula, Name: "a day's light in its hours",
			Source:     "Collares-Pereira and Rabl, Solar Energy 22 (1979) 155; Liu and Jordan, Solar Energy 4 (1960) 1; " + book + ", section 2.13",
			Confidence: source.FourTexts,
		},
		{
			Kind: source.Formula, Name: "angle between the sun and a plane, R_b",
			Source: book + ", eq. 1.6.2, 1.8.1, 2.14.6", Confidence: source.ThreeTexts,
		},
		{
			Kind: source.Formula, Name: "light on a tilted plane",
			Source: "Hay and Davies (1980); " + book + ", section 2.16", Confidence: source.TwoTexts,
		},
		{
			Kind: source.Formula, Name: "temperature of a module's cells",
			Source: "Ross (1976), NOCT as in IEC 61215", Confidence: source.TwoTexts,
		},
		{
			Kind: source.Formula, Name: "watts of a module, linear in light and cell temperature",
			Source: "label conditions of IEC 60904; Evans (1981) from memory", Confidence: source.ThreeTexts,
		},
		{
			Kind: source.Formula, Name: "volts of modules in the cold: n voc (1 + voc_temp (coldest - 25))",
			Source: "NEC 690.7(A)(1), the maker's coefficient", Confidence: source.FourTexts,
		},
		source.Habit("volts of modules in the heat: n vmp (1 + c (cell - 25)), c the steeper coefficient, cells in full light"),
	}
}
