package wiring

import "cartwright/optimize/wiring/nec"

// BusbarA returns the least rating in amperes of the bus bars under either rule set: 125 % of what the
// inverters draw together at the lowest bus voltage and of the direct-current loads' peak.
//
//	rating ≥ 1.25 · (u·I_i + I_dc)      NEC 215.3 in likeness; common practice, no source
func BusbarA(inverterA, dcLoadA float64) float64 { return nec.ContinuousA(inverterA + dcLoadA) }

// BusbarStuds returns the least number of studs of each bus bar: one for each string, inverter unit and
// solar input. Common practice, no source.
func BusbarStuds(strings, units, solarInputs int) int { return strings + units + solarInputs }
