package wiring

import (
	"cartwright/catalog/source"
	"cartwright/optimize/wiring/conductor"
	"cartwright/optimize/wiring/iec"
	"cartwright/optimize/wiring/nec"
)

// Sources lists every table, formula, rule and practice of this room and of the rooms in it: what both
// rule sets share, then nec, then iec.
func Sources() []source.Source {
	all := append([]source.Source{
		{Kind: source.Rule, Name: "a main carries its inverter's input at full load and the lowest bus voltage",
			Source: "NEC 690.8(A), stand-alone inverter input", Confidence: source.FromMemory},
		{Kind: source.Formula, Name: "battery short-circuit current, highest voltage / resistance, whatever the series",
			Source: "electrical fundamentals, I = E / R", Confidence: source.TwoTexts},
		{Kind: source.Formula, Name: "fault current at a string's device: the larger of its own and all the others",
			Source: "circuit theory, sources in parallel", Confidence: source.CommonNotRead},
		{Kind: source.Rule, Name: "interrupting rating not below the fault current",
			Source: necClauses.interrupting + "; " + iecClauses.interrupting, Confidence: source.TwoTexts},
		{Kind: source.Rule, Name: "device voltage not below the bus's highest, or the ac volts",
			Source: necClauses.voltage + "; " + iecClauses.voltage, Confidence: source.TwoTexts},
		{Kind: source.Rule, Name: "two poles open both hots of 240 V",
			Source: necClauses.poles, Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "green conductors serve as a ground only",
			Source: necClauses.green + "; " + iecClauses.green, Confidence: source.FromMemory},
		{Kind: source.Practice, Name: "bus bars of 125 % of the current, a stud for each string, inverter and solar input",
			Source: "in likeness of NEC 215.3", Confidence: source.CommonNotRead},
		{Kind: source.Practice, Name: "terminals of an inverter's own breaker: 75 C",
			Source: "none", Confidence: source.CommonNotRead},
	}, conductor.Sources()...)
	all = append(all, nec.Sources()...)
	return append(all, iec.Sources()...)
}
