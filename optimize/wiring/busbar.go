package wiring

import "cartwright/optimize/wiring/nec"

// BusbarA returns the least rating in amperes of the bus bars under either rule set: 125 % of busA, which is what the
// mains of all inverters and the direct-current loads' peak carry together.
//
//	rating ≥ 1.25 · (u·I_m + I_dc)      by analogy with NEC 215.3; common practice, no source
func BusbarA(busA float64) float64 { return nec.ContinuousA(busA) }

// BusbarStuds returns the least number of studs of each bus bar: one for each string, inverter unit and
// circuit on the bus. Common practice, no source.
func BusbarStuds(strings, units, dcCircuits int) int { return strings + units + dcCircuits }
