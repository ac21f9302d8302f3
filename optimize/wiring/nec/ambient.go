package nec

import "cartwright/catalog/source"

// AmbientSource is where AmbientFactor comes from.
var AmbientSource = source.Source{
	Kind: source.Table, Name: "correction of ampacity for ambient temperature",
	Source: "NEC table 310.15(B)(1) (2020, 2023)", Confidence: source.TwoTexts,
}

type ambientRow struct {
	maxC          float64 // the band reaches up to this temperature
	f60, f75, f90 float64 // 0: not permitted
}

// ambientTable is NEC table 310.15(B)(1) (2020, 2023; 310.15(B)(2)(a) before), 30 °C base. Confirmed in
// two independent texts.
var ambientTable = []ambientRow{
	{10, 1.29, 1.20, 1.15},
	{15, 1.22, 1.15, 1.12},
	{20, 1.15, 1.11, 1.08},
	{25, 1.08, 1.05, 1.04},
	{30, 1.00, 1.00, 1.00},
	{35, 0.91, 0.94, 0.96},
	{40, 0.82, 0.88, 0.91},
	{45, 0.71, 0.82, 0.87},
	{50, 0.58, 0.75, 0.82},
	{55, 0.41, 0.67, 0.76},
	{60, 0, 0.58, 0.71},
	{65, 0, 0.47, 0.65},
	{70, 0, 0.33, 0.58},
	{75, 0, 0, 0.50},
	{80, 0, 0, 0.41},
	{85, 0, 0, 0.29},
}

// AmbientFactor returns the factor on the ampacity of a conductor of a temperature column at an ambient
// temperature in °C. The table's bands are of whole degrees; a temperature between two bands takes the hotter one.
// ok is false where the column is not permitted.
func AmbientFactor(ambientC float64, column Column) (factor float64, ok bool) {
	for _, r := range ambientTable {
		if ambientC <= r.maxC {
			f := r.factor(column)
			return f, f > 0
		}
	}
	return 0, false
}

func (r ambientRow) factor(column Column) float64 {
	switch column {
	case Col60:
		return r.f60
	case Col75:
		return r.f75
	case Col90:
		return r.f90
	}
	return 0
}
