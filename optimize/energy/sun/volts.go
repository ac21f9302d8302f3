package sun

import "cartwright/catalog"

// perDegree turns percent per degree into a share per degree.
const perDegree = 0.01

// fullLight is the light in W/m2 at which cells are taken to be hottest: common practice, no source.
const fullLight = 1000

// ColdV returns the open-circuit volts of some modules in series in the coldest air, of coldestC; cells are then as cold
// as the air.
//
//	n voc (1 + voc_temp / 100 (coldest - 25))
//
// Source: NEC 690.7(A)(1), the maker's coefficient; worked in four texts.
func ColdV(m *catalog.Solar, series int, coldestC float64) float64 {
	return float64(series) * m.VocV * (1 + perDegree*m.VocTempPctPerC*(coldestC-labelCellC))
}

// HotV returns the volts at full power of some modules in series whose cells are as hot as they get in air of hottestC.
// Makers state no coefficient for the volts at full power, so the steeper of those of open-circuit volts and of power
// is taken.
//
//	n vmp (1 + c (Tc - 25))
//
// Source: as ColdV; that the steeper coefficient holds is common practice, no source.
func HotV(m *catalog.Solar, series int, hottestC float64) float64 {
	steeper := perDegree * min(m.VocTempPctPerC, m.PowerTempPctPerC)
	return float64(series) * m.VmpV * (1 + steeper*(CellC(hottestC, m.NOCTC, fullLight)-labelCellC))
}
