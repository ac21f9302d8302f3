package energy

import (
	"math"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// RechargeA returns the direct current in amperes at the bus's nominal voltage that puts energyWh, as
// taken out by the bus, back within some hours. RoundTrip (0..1) is energy out per energy in.
//
//	I = E / (round_trip * V * within)
//
// Source: E = V·I·t and the definition of the round trip. The tapering of the current toward full charge is left
// out: allow for it in the hours.
func RechargeA(energyWh, nominalV, withinH, roundTrip float64) float64 {
	return energyWh / roundTrip / (nominalV * withinH)
}

// GridRechargeA returns RechargeA for strings of several kinds, with the least round trip among those present, which
// needs the most current. 0 for no strings.
func GridRechargeA(strings []Strings, energyWh, nominalV, withinH float64) float64 {
	current := 0.0
	for _, s := range strings {
		if s.Count > 0 {
			current = max(current, RechargeA(energyWh, nominalV, withinH, s.Battery.RoundTrip))
		}
	}
	return current
}

// ChargeA returns the largest charging current in amperes the strings accept together. They share it by conductance,
// as they share the load's, so the first string to reach its max_charge limits them all. 0 for no strings.
//
//	min over the kinds b' present of  max_charge_b' * (sum over b of G_b * strings_b) / G_b'
//
// Source: current division in parallel branches.
func ChargeA(strings []Strings) float64 {
	return most(strings, func(b *catalog.Battery) float64 { return b.MaxChargeA })
}

// supplyShare is how much of its device a supply is loaded with for hours: NEC 210.20(A), from memory; under iec
// common practice, no source.
const supplyShare = 0.8

// ChargersA returns what the chargers of some inverters in parallel give together, in amperes at the bus's nominal
// voltage: the sum of their own, and no more than a stated supply allows.
//
//	min(units * charger_a, 0.8 * device * volts * efficiency / bus.nominal)
//
// That a charger loses as much as the inverter does is common practice, no source.
func ChargersA(s *scenarios.Scenario, inv *catalog.Inverter, units int) float64 {
	amps := float64(units) * inv.ChargerA
	if s.Recharge != nil && s.Recharge.Supply != nil {
		x := s.Recharge.Supply
		amps = math.Min(amps, supplyShare*x.DeviceA*x.Volts*inv.Efficiency/s.Bus.NominalV)
	}
	return amps
}
