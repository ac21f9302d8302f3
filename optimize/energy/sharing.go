package energy

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
)

// Strings is a number of equal strings in parallel.
type Strings struct {
	Battery *catalog.Battery
	Series  int // modules in each string
	Count   int // strings
}

// ConductanceS returns the conductance of one string in siemens; the module's resistance is above 0.
//
//	G = 1 / (series * resistance)      Ohm's law, resistances in series add
func ConductanceS(b *catalog.Battery, series int) float64 {
	return 1 / (float64(series) * b.ResistanceOhm)
}

// ShareA returns the current in amperes of one string of each kind when the strings together give busA.
// Strings in parallel have the same voltage and are taken to have the same open-circuit voltage: they
// share by conductance. A kind without strings has 0.
//
//	I_b = busA * G_b / sum over b of G_b * strings_b      current division in parallel branches
func ShareA(strings []Strings, busA float64) []float64 {
	total := totalS(strings)
	share := make([]float64, len(strings))
	for i, s := range strings {
		if s.Count > 0 {
			share[i] = busA * ConductanceS(s.Battery, s.Series) / total
		}
	}
	return share
}

// CarryA returns the largest current in amperes the strings together can give without one of them
// giving more than its maximum; 0 for no strings. The string whose share is the largest part of its maximum limits
// them all, so one more string of another kind may lower what they carry.
//
//	min over the kinds b' present of  max_discharge_b' * (sum over b of G_b * strings_b) / G_b'
func CarryA(strings []Strings) float64 {
	return most(strings, func(b *catalog.Battery) float64 { return b.MaxDischargeA })
}

// PeakA is CarryA for a moment: by peak_discharge.
func PeakA(strings []Strings) float64 { return most(strings, PeakDischargeA) }

// PeakDischargeA returns the amperes one string gives for a moment: its maximum where no peak is stated.
func PeakDischargeA(b *catalog.Battery) float64 {
	if b.PeakDischargeA > 0 {
		return b.PeakDischargeA
	}
	return b.MaxDischargeA
}

// most returns the largest current that strings share by conductance without one of them carrying more than its own
// limit; 0 for no strings.
func most(strings []Strings, own func(*catalog.Battery) float64) float64 {
	total := totalS(strings)
	if total == 0 {
		return 0
	}
	amps := math.Inf(1)
	for _, s := range strings {
		if s.Count > 0 {
			amps = min(amps, own(s.Battery)*total/ConductanceS(s.Battery, s.Series))
		}
	}
	return amps
}

// Carries reports whether the strings together can give busA, for every battery b' present:
//
//	sum over b of G_b * strings_b * max_discharge_b' >= G_b' * busA
func Carries(strings []Strings, busA float64) bool {
	return plan.AtLeast(CarryA(strings), busA)
}

// totalS returns the conductance in siemens of all the strings in parallel.
func totalS(strings []Strings) float64 {
	total := 0.0
	for _, s := range strings {
		total += float64(s.Count) * ConductanceS(s.Battery, s.Series)
	}
	return total
}
