package nec

import (
	"math"

	"cartwright/catalog/source"
)

// BundlingSource is where BundlingFactor comes from.
var BundlingSource = source.Source{
	Kind: source.Table, Name: "adjustment of ampacity for conductors bundled together",
	Source: "NEC table 310.15(C)(1) (2020, 2023)", Confidence: source.ThreeTexts,
}

type bundlingRow struct {
	max    int // conductors carrying current
	factor float64
}

// bundlingTable is NEC table 310.15(C)(1) (2020, 2023; 310.15(B)(3)(a) before), bundles longer than
// 600 mm. Up to three conductors are the base of table 310.16. Confirmed in three independent texts.
var bundlingTable = []bundlingRow{
	{3, 1.00},
	{6, 0.80},
	{9, 0.70},
	{20, 0.50},
	{30, 0.45},
	{40, 0.40},
	{math.MaxInt, 0.35},
}

// BundlingFactor returns the factor on the ampacity of each of so many current-carrying conductors in
// one raceway, cable or bundle.
func BundlingFactor(conductors int) float64 {
	i := 0
	for conductors > bundlingTable[i].max {
		i++
	}
	return bundlingTable[i].factor
}
