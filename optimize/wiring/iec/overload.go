package iec

import (
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/source"
)

// OverloadSource is where the two conditions of overload protection come from.
var OverloadSource = source.Source{
	Kind: source.Rule, Name: "overload protection: I_B <= I_n <= I_z and I_2 <= 1.45 I_z",
	Source: "IEC 60364-4-43 clause 433.1", Confidence: source.ThreeTexts,
}

// FuseSource is where FuseFactor comes from.
var FuseSource = source.Source{
	Kind: source.Table, Name: "conventional fusing current of gG fuses",
	Source:     "IEC 60269-1 and -2",
	Confidence: "1.6 I_n from 16 A confirmed in two independent texts; 1.9 I_n above 4 A in one text; 2.1 I_n up to 4 A from memory",
}

// SolarFuseSource is where FuseFactorOf comes from.
var SolarFuseSource = source.Source{
	Kind: source.Table, Name: "conventional fusing current of gPV fuses, 1.45 of the rating; fuses of any other class, or of none, as gG",
	Source: "IEC 60269-6; others: common practice, no source", Confidence: source.FromMemory,
}

// BreakerRatingsSource and FuseRatingsSource are where the standard ratings come from.
var (
	BreakerRatingsSource = source.Source{
		Kind: source.Table, Name: "preferred ratings of breakers; above 125 A those of fuses",
		Source:     "IEC 60898-1",
		Confidence: "confirmed in two independent texts; 8 A, 13 A and the step to the list of fuses from memory",
	}
	FuseRatingsSource = source.Source{
		Kind: source.Table, Name: "preferred ratings of fuses",
		Source: "IEC 60269-1 and -2", Confidence: source.OneText,
	}
)

// ParallelSource is where ParallelAllowed comes from.
var ParallelSource = source.Source{
	Kind: source.Practice, Name: "parallel sets only from 50 mm2 up",
	Source: "by analogy with 1/0 AWG of NEC 310.10(G)(1)", Confidence: source.CommonNotRead,
}

// overloadFactor is the 1.45 of IEC 60364-4-43 clause 433.1, condition 2.
const overloadFactor = 1.45

// OverloadA returns the largest conventional operating current I_2 that conductors of capacity I_z allow.
//
//	I_2 ≤ 1.45 · I_z      IEC 60364-4-43 clause 433.1, condition 2
func OverloadA(capacityA float64) float64 { return overloadFactor * capacityA }

// The conventional fusing current of gG fuses, I_2 as a multiple of I_n, by rating: IEC 60269-1 and -2.
// From 16 A confirmed in two independent texts, above 4 A in one, up to 4 A from memory.
const (
	largeFuseA      = 16 // A, from here up
	largeFuseFactor = 1.6
	smallFuseA      = 4 // A, above it
	smallFuseFactor = 1.9
	tinyFuseFactor  = 2.1 // up to smallFuseA
)

// FuseFactor returns how many times its rating a gG fuse may carry before it must operate, I_2 / I_n.
func FuseFactor(ratingA float64) float64 {
	if ratingA >= largeFuseA {
		return largeFuseFactor
	}
	if ratingA > smallFuseA {
		return smallFuseFactor
	}
	return tinyFuseFactor
}

// FuseFactorOf is FuseFactor for a fuse of a class: 1.45 for gPV (IEC 60269-6), all others as gG.
func FuseFactorOf(class string, ratingA float64) float64 {
	if strings.EqualFold(class, "gPV") {
		return solarFuseFactor
	}
	return FuseFactor(ratingA)
}

// solarFuseFactor is the conventional fusing current of gPV fuses: IEC 60269-6, from memory.
const solarFuseFactor = 1.45

// parallelMinMM2 is the least area of parallel conductors.
const parallelMinMM2 = 50

// ParallelAllowed reports whether conductors of a size may share one circuit as parallel sets: 50 mm2
// and larger.
func ParallelAllowed(size catalog.Size) bool { return size.AreaMM2() >= parallelMinMM2 }
