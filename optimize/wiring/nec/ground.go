package nec

import (
	"cartwright/catalog"
	"cartwright/catalog/source"
)

// GroundSource is where GroundSize comes from.
var GroundSource = source.Source{
	Kind: source.Table, Name: "equipment grounding conductor by rating of the device ahead; no larger than the circuit conductors",
	Source: "NEC table 250.122 and 250.122(A) (2020, 2023)", Confidence: source.ThreeTexts,
}

// EnlargedSource is where EnlargedGroundMM2 comes from.
var EnlargedSource = source.Source{
	Kind: source.Formula, Name: "a ground grows in the ratio in which line conductors are larger than needed",
	Source: "NEC 250.122(B) (2020, 2023)", Confidence: "two worked examples, each confirmed in one text",
}

type groundRow struct {
	maxA   float64 // rating of the device ahead
	cu, al catalog.Size
}

// groundTable is NEC table 250.122 (2020, 2023) up to 1600 A. Confirmed in three independent texts.
var groundTable = []groundRow{
	{15, "14 AWG", "12 AWG"},
	{20, "12 AWG", "10 AWG"},
	{60, "10 AWG", "8 AWG"},
	{100, "8 AWG", "6 AWG"},
	{200, "6 AWG", "4 AWG"},
	{300, "4 AWG", "2 AWG"},
	{400, "3 AWG", "1 AWG"},
	{500, "2 AWG", "1/0 AWG"},
	{600, "1 AWG", "2/0 AWG"},
	{800, "1/0 AWG", "3/0 AWG"},
	{1000, "2/0 AWG", "4/0 AWG"},
	{1200, "3/0 AWG", "250 kcmil"},
	{1600, "4/0 AWG", "350 kcmil"},
}

// GroundSize returns the least equipment grounding conductor of a material behind a device; ok is false
// for materials other than copper and aluminium, and above 1600 A.
func GroundSize(deviceA float64, material string) (size catalog.Size, ok bool) {
	for _, r := range groundTable {
		if deviceA > r.maxA {
			continue
		}
		switch material {
		case copper:
			return r.cu, true
		case aluminium:
			return r.al, true
		}
	}
	return "", false
}

// EnlargedGroundMM2 returns the area in mm2 of a ground whose line conductors are larger than needed: it grows in the
// same ratio.
//
//	ground * laid / needed      NEC 250.122(B)
func EnlargedGroundMM2(groundMM2, laidMM2, neededMM2 float64) float64 {
	return groundMM2 * max(1, laidMM2/neededMM2)
}
