package nec

import "cartwright/catalog/source"

// TerminalSource is where TerminalColumn comes from.
var TerminalSource = source.Source{
	Kind: source.Rule, Name: "terminal temperature: 60 C up to 100 A, 75 C above, unless marked; never above the device's or the insulation's",
	Source: "NEC 110.14(C)(1) (2020, 2023)", Confidence: source.ThreeTexts,
}

// Terminal temperatures of NEC 110.14(C)(1) where the equipment states none.
const (
	smallTerminalC    = 60  // °C, up to smallTerminalMaxA
	largeTerminalC    = 75  // °C, above it
	smallTerminalMaxA = 100 // A, rating of the circuit
)

// TerminalColumn returns the ampacity column that the terminals of a conductor allow. statedC is what the
// equipment is marked for (0: not marked, so the device's rating decides), deviceC is for the device's own
// terminals, insulationC for the conductor's insulation. ok is false where one of them is below 60 °C.
//
// The rule's other half, by conductor size (14 to 1 AWG, and above), is left out: it never asks more of a
// conductor that serves a device of that rating.
func TerminalColumn(statedC, deviceA, deviceC, insulationC float64) (column Column, ok bool) {
	ruleC := statedC
	if ruleC == 0 {
		ruleC = smallTerminalC
		if deviceA > smallTerminalMaxA {
			ruleC = largeTerminalC
		}
	}
	return columnUpTo(min(ruleC, deviceC, insulationC))
}
