// Package ratings holds the standard ampere ratings of fuses and breakers under the two rule sets.
//
// It is a package of its own because both the reader of scenarios, which refuses a rating nobody makes, and
// the wiring rules, which step to the next standard size, need the same lists.
//
// Sources: NFPA 70 (NEC) 240.6(A), editions 2017 to 2023; IEC 60898-1 for breakers; IEC 60269-1/-2 for
// fuses. 8 A and 13 A of the IEC 60898 list are from memory; the IEC 60269 list was seen in one text.
// Adjustable-trip breakers, 240.6(B) and (C), are left out.
package ratings

import "sort"

// nec is NFPA 70 240.6(A): standard ratings of fuses and of inverse-time breakers, in amperes. Confirmed in
// three independent texts.
var nec = []float64{
	15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400,
	450, 500, 600, 700, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000, 5000, 6000,
}

// necFuseOnly is NFPA 70 240.6(A), last sentence: additional standard ratings of fuses, in amperes. Confirmed
// in three independent texts.
var necFuseOnly = []float64{1, 3, 6, 10, 601}

// iecBreaker is IEC 60898-1: preferred ratings of breakers, in amperes. Confirmed in two independent texts,
// but 8 and 13 are from memory.
var iecBreaker = []float64{6, 8, 10, 13, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125}

// iecFuse is IEC 60269-1/-2: preferred ratings of fuse-links, in amperes. Confirmed in one text.
var iecFuse = []float64{
	2, 4, 6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 355, 400, 500, 630, 800, 1000,
}

// Standard returns the standard ratings in amperes, rising, of a device type ("fuse" or "breaker") under
// a rule set ("nec" or "iec"), or nil where either is not one of these. The slice is the caller's own.
//
// Breakers under iec are the union of the IEC 60898 and the IEC 60269 lists: IEC 60898 ends at 125 A, and
// larger breakers are sold in the steps of the fuses (common practice, no source).
func Standard(rules, deviceType string) []float64 {
	switch {
	case rules == "nec" && deviceType == "fuse":
		return union(nec, necFuseOnly)
	case rules == "nec" && deviceType == "breaker":
		return union(nec)
	case rules == "iec" && deviceType == "fuse":
		return union(iecFuse)
	case rules == "iec" && deviceType == "breaker":
		return union(iecBreaker, iecFuse)
	}
	return nil
}

// Is reports whether amps is a rating of a list that Standard returned.
func Is(list []float64, amps float64) bool {
	i := sort.SearchFloat64s(list, amps)
	return i < len(list) && list[i] == amps
}

// Around returns the nearest ratings of a list at or below and at or above amps; 0 where there is none on
// that side.
func Around(list []float64, amps float64) (below, above float64) {
	i := sort.SearchFloat64s(list, amps)
	if i < len(list) {
		above = list[i]
		if above == amps {
			return amps, amps
		}
	}
	if i > 0 {
		below = list[i-1]
	}
	return below, above
}

// union merges lists into one that rises and holds each rating once.
func union(lists ...[]float64) []float64 {
	var all []float64
	for _, l := range lists {
		all = append(all, l...)
	}
	sort.Float64s(all)
	n := 0
	for i, a := range all {
		if i == 0 || a != all[n-1] {
			all[n] = a
			n++
		}
	}
	return all[:n]
}
