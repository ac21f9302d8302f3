package sky

import "cartwright/catalog/source"

// Sources lists where the formulas and the table of this room come from.
func Sources() []source.Source {
	const book = "Duffie and Beckman, Solar Engineering of Thermal Processes"
	return []source.Source{
		{
			Kind: source.Formula, Name: "the sun's declination",
			Source: "Cooper, Solar Energy 12 (1969) 333; " + book + ", eq. 1.6.1a", Confidence: source.ThreeTexts,
		},
		{
			Kind: source.Formula, Name: "equation of time, solar time of a clock",
			Source: "Spencer, Search 2 (1971) 172; " + book + ", eq. 1.5.2, 1.5.3", Confidence: source.FourTexts,
		},
		{
			Kind: source.Formula, Name: "zenith angle and hour angle of sunset",
			Source: book + ", eq. 1.6.5, 1.6.10", Confidence: source.FourTexts,
		},
		{
			Kind: source.Formula, Name: "sunshine outside the air: H0 of a day and I0 of an hour, 1367 W/m2",
			Source: book + ", eq. 1.4.1a, 1.10.3, 1.10.4", Confidence: source.TwoTexts,
		},
		{
			Kind: source.Table, Name: "the day that stands for its month",
			Source: "Klein, Solar Energy 19 (1977) 325; " + book + ", table 1.6.1", Confidence: "confirmed in ten independent texts",
		},
	}
}
