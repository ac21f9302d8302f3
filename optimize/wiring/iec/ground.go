package iec

import "cartwright/catalog/source"

// GroundSource is where GroundAreaMM2 comes from.
var GroundSource = source.Source{
	Kind: source.Table, Name: "protective conductor by area of the line conductors",
	Source: "IEC 60364-5-54 table 54.2", Confidence: source.TwoTexts,
}

// The steps of IEC 60364-5-54 table 54.2, in mm2.
const (
	fullUpToMM2  = 16 // S up to here: S
	fixedUpToMM2 = 35 // S up to here: 16 mm2; above: S / 2
)

// GroundAreaMM2 returns the least area in mm2 of a copper protective conductor beside copper line
// conductors of lineMM2, which is the area of all parallel sets of one line together.
//
//	S ≤ 16: S;  16 < S ≤ 35: 16;  S > 35: S / 2      IEC 60364-5-54 table 54.2
//
// Confirmed in two independent texts, a guide to electrical installation and a course on table 54.7 of BS
// 7671, its British form.
func GroundAreaMM2(lineMM2 float64) float64 {
	if lineMM2 <= fullUpToMM2 {
		return lineMM2
	}
	if lineMM2 <= fixedUpToMM2 {
		return fullUpToMM2
	}
	return lineMM2 / 2
}
