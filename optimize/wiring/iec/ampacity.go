package iec

import (
	"cartwright/catalog"
	"cartwright/catalog/source"
)

// Method is a reference method of installation of IEC 60364-5-52.
type Method string

// The methods in use: B1, insulated conductors in conduit on a wall; C, cable clipped direct.
const (
	MethodB1 Method = "B1"
	MethodC  Method = "C"
)

// Insulation is a kind of insulation that has an ampacity table.
type Insulation string

// The insulations: PVC for 70 °C at the conductor, XLPE or EPR for 90 °C.
const (
	PVC  Insulation = "PVC"
	XLPE Insulation = "XLPE"
)

// AmpacitySource is where Ampacity comes from.
var AmpacitySource = source.Source{
	Kind: source.Table, Name: "current-carrying capacity of copper, two loaded conductors, methods B1 and C",
	Source: "IEC 60364-5-52:2009 tables B.52.2 and B.52.3", Confidence: source.FourTexts,
}

// InsulationSource is where InsulationOf comes from.
var InsulationSource = source.Source{
	Kind: source.Rule, Name: "insulation of 70 and 75 C by the PVC table, of 90 and 105 C by the XLPE table, of 60 C by none",
	Source: "IEC 60364-5-52:2009 table 52.1: the next lower temperature is taken", Confidence: source.FromMemory,
}

type ampacityRow struct {
	size                       catalog.Size
	pvcB1, pvcC, xlpeB1, xlpeC float64 // amperes
}

// ampacityTable is IEC 60364-5-52:2009, tables B.52.2 (PVC, 70 °C) and B.52.3 (XLPE or EPR, 90 °C):
// amperes of copper, two loaded conductors, 30 °C in air. Confirmed in more than four independent texts.
var ampacityTable = []ampacityRow{
	{"1.5 mm2", 17.5, 19.5, 23, 24},
	{"2.5 mm2", 24, 27, 31, 33},
	{"4 mm2", 32, 36, 42, 45},
	{"6 mm2", 41, 46, 54, 58},
	{"10 mm2", 57, 63, 75, 80},
	{"16 mm2", 76, 85, 100, 107},
	{"25 mm2", 101, 112, 133, 138},
	{"35 mm2", 125, 138, 164, 171},
	{"50 mm2", 151, 168, 198, 209},
	{"70 mm2", 192, 213, 253, 269},
	{"95 mm2", 232, 258, 306, 328},
	{"120 mm2", 269, 299, 354, 382},
}

// Ampacity returns the current-carrying capacity in amperes of a copper conductor.
func Ampacity(size catalog.Size, insulation Insulation, method Method) (amps float64, ok bool) {
	row, ok := ampacityRows[size]
	if !ok {
		return 0, false
	}
	switch (column{insulation, method}) {
	case column{PVC, MethodB1}:
		return row.pvcB1, true
	case column{PVC, MethodC}:
		return row.pvcC, true
	case column{XLPE, MethodB1}:
		return row.xlpeB1, true
	case column{XLPE, MethodC}:
		return row.xlpeC, true
	}
	return 0, false
}

// column is a column of ampacityTable.
type column struct {
	insulation Insulation
	method     Method
}

var ampacityRows = func() map[catalog.Size]ampacityRow {
	rows := map[catalog.Size]ampacityRow{}
	for _, r := range ampacityTable {
		rows[r.size] = r
	}
	return rows
}()

// Conductor temperatures the two tables are made for, in °C.
const (
	pvcC  = 70
	xlpeC = 90
)

// InsulationOf returns the kind whose table holds for an insulation rated for tempC; ok is false below 70 °C.
func InsulationOf(tempC float64) (insulation Insulation, ok bool) {
	if tempC >= xlpeC {
		return XLPE, true
	}
	if tempC >= pvcC {
		return PVC, true
	}
	return "", false
}
