package iec

import "cartwright/catalog/source"

// GroupingSource is where GroupingFactor comes from.
var GroupingSource = source.Source{
	Kind: source.Table, Name: "reduction for circuits grouped together",
	Source: "IEC 60364-5-52:2009 table B.52.17 item 1 (bunched in air, on a surface, embedded or enclosed)", Confidence: source.FourTexts,
}

// CircuitsSource is where Circuits comes from.
var CircuitsSource = source.Source{
	Kind: source.Practice, Name: "two bundled conductors count as one circuit, an odd one as a circuit of its own",
	Source: "by the two loaded conductors of tables B.52.2 and B.52.3", Confidence: source.CommonNotRead,
}

type groupingRow struct {
	circuits int
	factor   float64
}

// groupingTable is IEC 60364-5-52:2009 table B.52.17, item 1: bunched in air, on a surface, embedded or
// enclosed. Confirmed in more than four independent texts.
var groupingTable = []groupingRow{
	{1, 1.00},
	{2, 0.80},
	{3, 0.70},
	{4, 0.65},
	{5, 0.60},
	{6, 0.57},
	{7, 0.54},
	{8, 0.52},
	{9, 0.50},
	{12, 0.45},
	{16, 0.41},
	{20, 0.38},
}

// conductorsEach is the number of loaded conductors of one circuit.
const conductorsEach = 2

// Circuits returns how many circuits so many bundled current-carrying conductors are.
func Circuits(conductors int) int { return (conductors + conductorsEach - 1) / conductorsEach }

// GroupingFactor returns the factor on the ampacity of each of so many circuits in one bundle; between two rows of the
// table that of the larger group. ok is false above 20.
func GroupingFactor(circuits int) (factor float64, ok bool) {
	for _, r := range groupingTable {
		if circuits <= r.circuits {
			return r.factor, true
		}
	}
	return 0, false
}
