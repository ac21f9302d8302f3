package nec

import (
	"cartwright/catalog"
	"cartwright/catalog/source"
)

// Column is a temperature column of the ampacity table, in °C.
type Column int

// The columns. 90 °C serves only as the start of a correction: no terminal allows it (110.14(C)).
const (
	Col60 Column = 60
	Col75 Column = 75
	Col90 Column = 90
)

// AmpacitySource is where Ampacity comes from.
var AmpacitySource = source.Source{
	Kind: source.Table, Name: "ampacity of insulated conductors",
	Source: "NEC table 310.16 (2020, 2023)", Confidence: source.TwoTexts,
}

// InsulationSource is where InsulationColumn comes from.
var InsulationSource = source.Source{
	Kind: source.Rule, Name: "column of an insulation: 60 and 70 C the 60 C, 75 C its own, 90 and 105 C the 90 C",
	Source: "NEC table 310.16 (2020, 2023) has no other columns, the next lower one is taken", Confidence: source.FromMemory,
}

type ampacityRow struct {
	size          catalog.Size
	a60, a75, a90 float64 // amperes
}

// copperAmpacity is NEC table 310.16 (2020, 2023; 310.15(B)(16) in 2011 to 2017), copper: amperes of
// insulated conductors up to 2000 V, at most three carrying current in a raceway, cable or earth, 30 °C
// ambient. Confirmed in two independent texts, all rows.
var copperAmpacity = []ampacityRow{
	{"14 AWG", 15, 20, 25},
	{"12 AWG", 20, 25, 30},
	{"10 AWG", 30, 35, 40},
	{"8 AWG", 40, 50, 55},
	{"6 AWG", 55, 65, 75},
	{"4 AWG", 70, 85, 95},
	{"3 AWG", 85, 100, 115},
	{"2 AWG", 95, 115, 130},
	{"1 AWG", 110, 130, 145},
	{"1/0 AWG", 125, 150, 170},
	{"2/0 AWG", 145, 175, 195},
	{"3/0 AWG", 165, 200, 225},
	{"4/0 AWG", 195, 230, 260},
	{"250 kcmil", 215, 255, 290},
	{"300 kcmil", 240, 285, 320},
	{"350 kcmil", 260, 310, 350},
	{"400 kcmil", 280, 335, 380},
	{"500 kcmil", 320, 380, 430},
}

// aluminiumAmpacity is the same table, aluminium and copper-clad aluminium. Confirmed in two independent
// texts, all rows.
var aluminiumAmpacity = []ampacityRow{
	{"12 AWG", 15, 20, 25},
	{"10 AWG", 25, 30, 35},
	{"8 AWG", 35, 40, 45},
	{"6 AWG", 40, 50, 55},
	{"4 AWG", 55, 65, 75},
	{"3 AWG", 65, 75, 85},
	{"2 AWG", 75, 90, 100},
	{"1 AWG", 85, 100, 115},
	{"1/0 AWG", 100, 120, 135},
	{"2/0 AWG", 115, 135, 150},
	{"3/0 AWG", 130, 155, 175},
	{"4/0 AWG", 150, 180, 205},
	{"250 kcmil", 170, 205, 230},
	{"300 kcmil", 195, 230, 260},
	{"350 kcmil", 210, 250, 280},
	{"400 kcmil", 225, 270, 305},
	{"500 kcmil", 260, 310, 350},
}

// Sizes returns the sizes of table 310.16, rising.
func Sizes() []catalog.Size {
	sizes := make([]catalog.Size, len(copperAmpacity))
	for i := range copperAmpacity {
		sizes[i] = copperAmpacity[i].size
	}
	return sizes
}

// Ampacity returns the amperes of NEC table 310.16 for a conductor of a material ("copper" or
// "aluminium") in a temperature column.
func Ampacity(material string, size catalog.Size, column Column) (amps float64, ok bool) {
	row, ok := ampacityRows[conductorKey{material, size}]
	switch column {
	case Col60:
		return row.a60, ok
	case Col75:
		return row.a75, ok
	case Col90:
		return row.a90, ok
	}
	return 0, false
}

// conductorKey finds a conductor in a table.
type conductorKey struct {
	material string
	size     catalog.Size
}

var ampacityRows = func() map[conductorKey]ampacityRow {
	rows := map[conductorKey]ampacityRow{}
	for _, r := range copperAmpacity {
		rows[conductorKey{copper, r.size}] = r
	}
	for _, r := range aluminiumAmpacity {
		rows[conductorKey{aluminium, r.size}] = r
	}
	return rows
}()

// The materials of a conductor as the catalogue spells them.
const (
	copper    = "copper"
	aluminium = "aluminium"
)

// InsulationColumn returns the column of an insulation rated for tempC: the highest that is not hotter.
// ok is false below 60 °C.
func InsulationColumn(tempC float64) (column Column, ok bool) { return columnUpTo(tempC) }

// columnUpTo returns the highest column not above tempC.
func columnUpTo(tempC float64) (column Column, ok bool) {
	for _, c := range []Column{Col90, Col75, Col60} {
		if tempC >= float64(c) {
			return c, true
		}
	}
	return 0, false
}
