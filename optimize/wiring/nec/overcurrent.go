package nec

import (
	"sort"

	"cartwright/catalog"
	"cartwright/catalog/source"
	"cartwright/optimize/plan"
)

// ContinuousSource is where ContinuousA comes from.
var ContinuousSource = source.Source{
	Kind: source.Rule, Name: "125 % of a continuous current for the device and for the conductor before correction",
	Source:     "NEC 210.19(A)(1), 210.20(A), 215.2(A)(1), 215.3, 690.8 (2020)",
	Confidence: "confirmed in three independent texts; 210.19 and 215.2 from memory",
}

// StandardSource is where the standard ratings come from.
var StandardSource = source.Source{
	Kind: source.Table, Name: "standard ratings of fuses and breakers",
	Source: "NEC 240.6(A) (2017 to 2023)", Confidence: source.ThreeTexts,
}

// NextSizeSource is where LargestDeviceA comes from.
var NextSizeSource = source.Source{
	Kind: source.Rule, Name: "next standard device size above the ampacity, of fuses and breakers alike, up to 800 A",
	Source: "NEC 240.4(B) and (C) (2020, 2023)", Confidence: source.TwoTexts,
}

// SmallSource is where SmallConductorA comes from.
var SmallSource = source.Source{
	Kind: source.Table, Name: "largest device on small conductors",
	Source: "NEC 240.4(D) (2020, 2023)", Confidence: source.ThreeTexts,
}

// ParallelSource is where ParallelAllowed comes from.
var ParallelSource = source.Source{
	Kind: source.Rule, Name: "parallel sets only from 1/0 AWG up",
	Source:     "NEC 310.10(G)(1) (2020, 2023)",
	Confidence: "confirmed in two independent texts under the older numbers 310.4 and 310.10(H); (G) from memory",
}

// continuousFactor is the 125 % of NEC 210.20(A) and 215.3.
const continuousFactor = 1.25

// ContinuousA returns the rating in amperes of device and conductor, before correction, for a continuous current; also
// the current to reckon with from a solar source whose rated short-circuit current is amps.
//
//	1.25 · I      NEC 210.19(A)(1), 210.20(A), 215.2(A)(1), 215.3, 690.8(A)(1), 690.8(B)
func ContinuousA(amps float64) float64 { return continuousFactor * amps }

// nextSizeMaxA is the largest device rating that NEC 240.4(B) allows above the ampacity.
const nextSizeMaxA = 800

// NextStandard returns the smallest of the rising ratings that is not below amps; ok is false above the
// last.
func NextStandard(ratings []float64, amps float64) (rating float64, ok bool) {
	i := sort.SearchFloat64s(ratings, amps-plan.Tolerance*amps)
	if i == len(ratings) {
		return 0, false
	}
	return ratings[i], true
}

// LargestDeviceA returns the rating of the largest device that protects conductors of a corrected ampacity. Ratings are
// the standard ones, rising. It is the next standard rating at or above the ampacity if that is at most 800 A, else the
// ampacity.
func LargestDeviceA(ratings []float64, ampacityA float64) float64 {
	if next, ok := NextStandard(ratings, ampacityA); ok && next <= nextSizeMaxA {
		return next
	}
	return ampacityA
}

type smallRow struct {
	material string
	size     catalog.Size
	maxA     float64
}

// smallTable is NEC 240.4(D) (2020, 2023): amperes of the largest device after any correction. Copper
// confirmed in three independent texts, aluminium too.
var smallTable = []smallRow{
	{copper, "14 AWG", 15},
	{copper, "12 AWG", 20},
	{copper, "10 AWG", 30},
	{aluminium, "12 AWG", 15},
	{aluminium, "10 AWG", 25},
}

// SmallConductorA returns the rating of the largest device on a small conductor; ok is false for a conductor that is
// not small.
func SmallConductorA(material string, size catalog.Size) (maxA float64, ok bool) {
	for _, r := range smallTable {
		if r.material == material && r.size == size {
			return r.maxA, true
		}
	}
	return 0, false
}

// parallelMinGauge is 1/0 AWG, counted as in catalog.Size.Gauge; larger wires have lower numbers.
const parallelMinGauge = 0

// ParallelAllowed reports whether conductors of a size may share one circuit as parallel sets: 1/0 AWG
// and larger.
func ParallelAllowed(size catalog.Size) bool {
	if size.Metric() {
		return false
	}
	gauge, isGauge := size.Gauge()
	return !isGauge || gauge <= parallelMinGauge
}
