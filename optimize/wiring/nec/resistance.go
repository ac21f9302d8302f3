package nec

import (
	"cartwright/catalog"
	"cartwright/catalog/source"
)

// ResistanceSource is where ResistancePerM comes from.
var ResistanceSource = source.Source{
	Kind: source.Table, Name: "resistance of stranded, uncoated conductors at 75 C",
	Source:     "NEC chapter 9 table 8 (2020, 2023)",
	Confidence: "confirmed in three independent texts; 14 AWG copper from memory; 12, 10 and 8 AWG aluminium in one text",
}

// DropSource is where the usual voltage drop limit comes from.
var DropSource = source.Source{
	Kind: source.Practice, Name: "voltage drop of 3 % on a feeder or branch (default limit)",
	Source:     "NEC 210.19 and 215.2, informational notes: a recommendation",
	Confidence: "3 % in one text; the clauses from memory",
}

// metrePerKft is the metres in a thousand feet, by definition of the foot.
const metrePerKft = 304.8

type resistanceRow struct {
	size catalog.Size
	cu   float64 // ohm per 1000 ft at 75 °C
	al   float64 // 0: not in the table
}

// resistanceTable is NEC chapter 9 table 8 (2020, 2023): direct-current resistance at 75 °C, stranded,
// uncoated. Confirmed in three independent texts, but 14 AWG copper from memory, and aluminium of 12, 10
// and 8 AWG in one text.
var resistanceTable = []resistanceRow{
	{"14 AWG", 3.14, 0},
	{"12 AWG", 1.98, 3.25},
	{"10 AWG", 1.24, 2.04},
	{"8 AWG", 0.778, 1.28},
	{"6 AWG", 0.491, 0.808},
	{"4 AWG", 0.308, 0.508},
	{"3 AWG", 0.245, 0.403},
	{"2 AWG", 0.194, 0.319},
	{"1 AWG", 0.154, 0.253},
	{"1/0 AWG", 0.122, 0.201},
	{"2/0 AWG", 0.0967, 0.159},
	{"3/0 AWG", 0.0766, 0.126},
	{"4/0 AWG", 0.0608, 0.100},
	{"250 kcmil", 0.0515, 0.0847},
	{"300 kcmil", 0.0429, 0.0707},
	{"350 kcmil", 0.0367, 0.0605},
	{"400 kcmil", 0.0321, 0.0529},
	{"500 kcmil", 0.0258, 0.0424},
}

// ResistancePerM returns the resistance in ohm per metre at 75 °C of a stranded, uncoated conductor.
func ResistancePerM(material string, size catalog.Size) (ohm float64, ok bool) {
	perKft, ok := resistancePerKft[conductorKey{material, size}]
	return perKft / metrePerKft, ok
}

var resistancePerKft = func() map[conductorKey]float64 {
	ohms := map[conductorKey]float64{}
	for _, r := range resistanceTable {
		ohms[conductorKey{copper, r.size}] = r.cu
		if r.al > 0 {
			ohms[conductorKey{aluminium, r.size}] = r.al
		}
	}
	return ohms
}()
