package iec

import (
	"cartwright/catalog"
	"cartwright/catalog/source"
	"cartwright/optimize/wiring/conductor"
)

// ResistanceSource is where ResistancePerM comes from.
var ResistanceSource = source.Source{
	Kind: source.Table, Name: "resistance of flexible copper conductors (class 5) at 20 C, taken to 70 C",
	Source: "IEC 60228:2004 table 3", Confidence: source.TwoTexts,
}

// Temperatures of the resistance in °C: of the table, and of a loaded conductor for the voltage drop.
const (
	tableC   = 20
	workingC = 70
)

type resistanceRow struct {
	size catalog.Size
	ohm  float64 // per km
}

// resistanceTable is IEC 60228:2004 table 3, class 5, plain copper: largest direct-current resistance at
// 20 °C in ohm per km. Confirmed in two independent texts.
var resistanceTable = []resistanceRow{
	{"1 mm2", 19.5},
	{"1.5 mm2", 13.3},
	{"2.5 mm2", 7.98},
	{"4 mm2", 4.95},
	{"6 mm2", 3.30},
	{"10 mm2", 1.91},
	{"16 mm2", 1.21},
	{"25 mm2", 0.780},
	{"35 mm2", 0.554},
	{"50 mm2", 0.386},
	{"70 mm2", 0.272},
	{"95 mm2", 0.206},
	{"120 mm2", 0.161},
	{"150 mm2", 0.129},
	{"185 mm2", 0.106},
	{"240 mm2", 0.0801},
	{"300 mm2", 0.0641},
}

// metrePerKm is the metres in a kilometre.
const metrePerKm = 1000

// ResistancePerM returns the resistance in ohm per metre at 70 °C of a flexible copper conductor.
func ResistancePerM(size catalog.Size) (ohm float64, ok bool) {
	ohm, ok = workingOhm[size]
	return ohm, ok
}

// workingOhm is the table at 70 °C, per metre.
var workingOhm = func() map[catalog.Size]float64 {
	ohms := map[catalog.Size]float64{}
	for _, r := range resistanceTable {
		ohms[r.size] = conductor.ResistanceAt(r.ohm/metrePerKm, conductor.CopperPerK, tableC, workingC)
	}
	return ohms
}()
