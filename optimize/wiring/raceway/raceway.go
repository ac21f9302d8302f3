// Package raceway knows how many conductors a conduit holds: NEC chapter 9, tables 1, 4 and 5. Under iec it takes 40 %
// throughout (common practice, no source).
//
// Left out: nipples of 24 in and less, which may be filled to 60 %, and bends.
package raceway

import (
	"math"

	"cartwright/catalog"
	"cartwright/catalog/source"
)

// FillSource is the source of the shares, AreaSource that of the conductors' areas.
var (
	FillSource = source.Source{
		Kind: source.Table, Name: "conduit fill of 53, 31 and 40 % for one, two and more conductors",
		Source: "NEC chapter 9 table 1; iec 40 %: common practice, no source", Confidence: source.FromMemory,
	}
	AreaSource = source.Source{
		Kind: source.Table, Name: "area of conductors THHN and THWN-2",
		Source: "NEC chapter 9 table 5", Confidence: "from memory; one worked example agrees",
	}
)

// areaIn2 is NEC chapter 9 table 5, types THHN, THWN and THWN-2, in square inches. From memory; the worked example of
// the Steel Tube Institute agrees.
var areaIn2 = map[catalog.Size]float64{
	"14 AWG": 0.0097, "12 AWG": 0.0133, "10 AWG": 0.0211, "8 AWG": 0.0366, "6 AWG": 0.0507, "4 AWG": 0.0824,
	"3 AWG": 0.0973, "2 AWG": 0.1158, "1 AWG": 0.1562, "1/0 AWG": 0.1855, "2/0 AWG": 0.2223, "3/0 AWG": 0.2679,
	"4/0 AWG": 0.3237, "250 kcmil": 0.3970, "300 kcmil": 0.4608, "350 kcmil": 0.5242, "400 kcmil": 0.5863,
	"500 kcmil": 0.7073,
}

// mm2PerIn2 is exact by definition of the inch.
const mm2PerIn2 = 25.4 * 25.4

// AreaMM2 returns the area a cable takes in a conduit: by its outer diameter where that is stated, else by table 5;
// ok is false for a size that is not in it.
func AreaMM2(c *catalog.Cable) (mm2 float64, ok bool) {
	if c.OuterM > 0 {
		mm := 1000 * c.OuterM
		return math.Pi / 4 * mm * mm, true
	}
	in2, ok := areaIn2[c.Size]
	return in2 * mm2PerIn2, ok
}

// The shares of a conduit that may be filled: NEC chapter 9 table 1.
const (
	fillOne  = 0.53
	fillTwo  = 0.31
	fillMore = 0.40
)

// Fill returns the share of a conduit's inside area that so many conductors may take; metric says that the rules are
// iec.
func Fill(conductors int, metric bool) float64 {
	switch {
	case metric || conductors > 2:
		return fillMore
	case conductors == 2:
		return fillTwo
	}
	return fillOne
}

// Sources lists the tables of this room.
func Sources() []source.Source { return []source.Source{FillSource, AreaSource} }
