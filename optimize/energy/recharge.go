package energy

import "math"

// RechargeA returns the direct current in amperes at the bus's nominal voltage that puts energyWh, as
// taken out by the bus, back within some hours. RoundTrip (0..1) is energy out per energy in; the half
// of its loss that falls on the way in is made good here, the other half is in UsableWh.
//
//	I = E / (V * within * sqrt(round_trip))
//
// Source: E = V·I·t; that the round trip loses equally both ways is common practice, no source. The
// tapering of the current toward full charge is left out: allow for it in the hours.
func RechargeA(energyWh, nominalV, withinH, roundTrip float64) float64 {
	return energyWh / (nominalV * withinH * math.Sqrt(roundTrip))
}

// GridRechargeA returns RechargeA for strings of several kinds: the least round trip among those
// present, which asks for the most current, holds for all. No strings need no current.
func GridRechargeA(strings []Strings, energyWh, nominalV, withinH float64) float64 {
	current := 0.0
	for _, s := range strings {
		if s.Count > 0 {
			current = max(current, RechargeA(energyWh, nominalV, withinH, s.Battery.RoundTrip))
		}
	}
	return current
}

// ChargeA returns the largest charging current in amperes the strings accept together.
//
//	sum over b of strings_b * max_charge_b
//
// How the current divides between kinds is left to their own chargers' limits: no sharing by
// conductance here, as in a charger's constant-current phase the strings differ little in voltage.
func ChargeA(strings []Strings) float64 {
	current := 0.0
	for _, s := range strings {
		current += float64(s.Count) * s.Battery.MaxChargeA
	}
	return current
}
