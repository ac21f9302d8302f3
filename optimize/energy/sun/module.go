package sun

import "cartwright/catalog"

// Conditions of a module's label and of its nominal operating cell temperature.
//
// Source: IEC 60904 and IEC 61215; in four texts.
const (
	labelLight = 1000.0 // W/m2
	labelCellC = 25.0
	noctLight  = 800.0 // W/m2
	noctAirC   = 20.0
)

// CellC returns the temperature of a module's cells, in C, in air of airC and light of g W/m2.
//
//	Tc = Ta + (NOCT - 20) / 800 g
//
// Source: Ross (1976), with NOCT as in IEC 61215; in two texts.
func CellC(airC, noctC, g float64) float64 { return airC + (noctC-noctAirC)/noctLight*g }

// ModuleW returns the watts of a module in air of airC and light of g W/m2 on its plane, less a share lost on
// the way (0..1). Never below 0.
//
//	watts g / 1000 (1 + power_temp / 100 (Tc - 25)) (1 - losses)
//
// Source: the linear model, Evans (1981) from memory; read in three texts. The losses are the scenario's.
func ModuleW(m *catalog.Solar, airC, g, losses float64) float64 {
	heat := 1 + m.PowerTempPctPerC/100*(CellC(airC, m.NOCTC, g)-labelCellC)
	return max(0, m.Watts*g/labelLight*heat*(1-losses))
}
