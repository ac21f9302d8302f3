package iec

import "cartwright/catalog/source"

// AmbientSource is where AmbientFactor comes from.
var AmbientSource = source.Source{
	Kind: source.Table, Name: "correction for ambient air temperature",
	Source: "IEC 60364-5-52:2009 table B.52.14", Confidence: source.ThreeTexts,
}

type ambientRow struct {
	ambientC  float64
	pvc, xlpe float64 // 0: not permitted
}

// ambientTable is IEC 60364-5-52:2009 table B.52.14, air other than 30 °C. Confirmed in more than three
// independent texts.
var ambientTable = []ambientRow{
	{10, 1.22, 1.15},
	{15, 1.17, 1.12},
	{20, 1.12, 1.08},
	{25, 1.06, 1.04},
	{30, 1.00, 1.00},
	{35, 0.94, 0.96},
	{40, 0.87, 0.91},
	{45, 0.79, 0.87},
	{50, 0.71, 0.82},
	{55, 0.61, 0.76},
	{60, 0.50, 0.71},
	{65, 0, 0.65},
	{70, 0, 0.58},
	{75, 0, 0.50},
	{80, 0, 0.41},
}

// AmbientFactor returns the factor on the ampacity at an ambient temperature in °C; between two rows of the table that
// of the hotter. ok is false where it is too hot for the insulation.
func AmbientFactor(ambientC float64, insulation Insulation) (factor float64, ok bool) {
	for _, r := range ambientTable {
		if ambientC > r.ambientC {
			continue
		}
		switch insulation {
		case PVC:
			return r.pvc, r.pvc > 0
		case XLPE:
			return r.xlpe, true
		}
	}
	return 0, false
}
