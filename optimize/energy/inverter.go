package energy

import (
	"cartwright/catalog"
	"cartwright/scenarios"
)

// The alternating-current outputs an inverter may have, as the catalogue spells them.
const (
	ACV120   = "120"     // one leg of 120 V
	ACV230   = "230"     // one leg of 230 V
	ACVThree = "120/240" // three wires: two legs of 120 V, 240 V between them
)

// Nominal volts of the supplies: ANSI C84.1 for 120 and 240, IEC 60038 for 230.
const (
	volts120 = 120.0
	volts230 = 230.0
	volts240 = 240.0
)

// InverterFits reports whether an inverter may be used on the scenario's bus: its direct-current window covers the
// bus window, and its output serves every circuit and load. A three-wire output serves 120 V and 240 V, and a load
// between the legs needs one. Loads on leg A or B, or whose leg the program chooses, run on any output: one with a
// single leg carries them all.
func InverterFits(s *scenarios.Scenario, d *Demand, inv *catalog.Inverter) bool {
	return inv.DCMinV <= s.Bus.LowV && inv.DCMaxV >= s.Bus.HighV && InverterServes(s, d, inv)
}

// InverterServes reports whether an inverter's output serves every circuit and load.
func InverterServes(s *scenarios.Scenario, d *Demand, inv *catalog.Inverter) bool {
	if d.NeedsBothLegs && inv.ACV != ACVThree {
		return false
	}
	for i := range s.Circuits {
		if !s.Circuits[i].DC && !Serves(inv.ACV, s.Circuits[i].Volts) {
			return false
		}
	}
	return true
}

// Serves reports whether an inverter's output gives a circuit its volts.
func Serves(acv string, volts float64) bool {
	switch acv {
	case ACV120:
		return volts == volts120
	case ACV230:
		return volts == volts230
	case ACVThree:
		return volts == volts120 || volts == volts240
	}
	return false
}

// BusA returns the current in amperes one inverter draws from the bus at its continuous power, at the
// lowest voltage of the bus, where it is largest.
//
//	I = continuous / (efficiency * bus.low)      P = V·I and the definition of efficiency
func BusA(inv *catalog.Inverter, bus scenarios.Bus) float64 {
	return inv.ContinuousW / (inv.Efficiency * bus.LowV)
}

// FeederV returns the volts between the hots of an inverter's output: 240 for a three-wire output. 0 for
// an output it does not know.
func FeederV(inv *catalog.Inverter) float64 {
	switch inv.ACV {
	case ACV120:
		return volts120
	case ACV230:
		return volts230
	case ACVThree:
		return volts240
	}
	return 0
}

// FeederA returns the current in amperes of the feeder of one inverter at its continuous power: for a three-wire
// output the larger of what flows between the hots and what one leg may give. +Inf for an output it does not know.
//
//	continuous / V, for 120/240 the larger of continuous / 240 and leg / 120      P = V·I
func FeederA(inv *catalog.Inverter) float64 {
	if inv.ACV == ACVThree {
		return max(inv.ContinuousW/volts240, inv.LegW/volts120)
	}
	return inv.ContinuousW / FeederV(inv)
}

// SurgeA returns the current in amperes the bus gives for a moment while the inverters together supply surgeVA, at
// the lowest voltage of the bus.
//
//	surge / (efficiency * bus.low)      P = V·I and the definition of efficiency; volt-amperes taken as watts
func SurgeA(inv *catalog.Inverter, bus scenarios.Bus, surgeVA float64) float64 {
	return surgeVA / (inv.Efficiency * bus.LowV)
}
