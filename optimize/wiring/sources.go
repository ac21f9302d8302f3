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
		{Kind: source.Rule, Name: "a string carries its battery's rated current without end", Source: "NEC 706.30(A)", Confidence: source.OneText},
		{Kind: source.Rule, Name: "a branch carries the rating of its own device; no device of the next size up",
			Source:     "NEC 240.4(B)(1), outlets for cord and plug",
			Confidence: "no next size up confirmed in two independent texts; all branches alike is common practice, no source"},
		source.Habit("conductors of a path: two, or two hots and a neutral; two crimped ends each"),
		source.Habit("at most two parallel sets"),
		{Kind: source.Formula, Name: "voltage drop in percent of the nominal volts, there and back, by the design current; between hots of 120/240 V",
			Source: necClauses.drop + "; " + iecClauses.drop, Confidence: "Ohm's law; the tables as below, clause 525 from memory"},
		source.Habit("iec: battery paths by reference method C, clipped direct; feeder and branches by B1, in conduit"),
		source.Habit("iec: a fuse of no stated class is reckoned as gG"),
		{Kind: source.Rule, Name: "one grounding conductor a run, however many sets share its raceway",
			Source: "NEC 250.122(F)(1); iec by the area of all sets together", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "every path has a cable and overcurrent protection",
			Source: necClauses.present + "; " + iecClauses.present, Confidence: source.FromMemory},
		{Kind: source.Formula, Name: "battery short-circuit current, highest voltage / resistance, whatever the series",
			Source: "electrical fundamentals, I = E / R", Confidence: source.TwoTexts},
		{Kind: source.Formula, Name: "fault current at a string's device: the larger of its own and all the others",
			Source: "circuit theory, sources in parallel", Confidence: source.CommonNotRead},
		{Kind: source.Rule, Name: "interrupting rating not below the fault current",
			Source: necClauses.interrupting + "; " + iecClauses.interrupting, Confidence: source.TwoTexts},
		{Kind: source.Rule, Name: "device voltage not below the bus's highest, or the ac volts",
			Source: necClauses.voltage + "; " + iecClauses.voltage, Confidence: source.TwoTexts},
		{Kind: source.Rule, Name: "two poles open both hots of 240 V",
			Source: necClauses.poles + "; iec: common practice, no source", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "green conductors serve as a ground only",
			Source:     necClauses.green + "; " + iecClauses.green,
			Confidence: "from memory; that green marks grounding conductors confirmed in one text"},
		{Kind: source.Practice, Name: "bus bars of 125 % of the current, a stud for each string, inverter and solar input",
			Source: "in likeness of NEC 215.3", Confidence: source.CommonNotRead},
		source.Habit("terminals of an inverter's own breaker: 75 C"),
	}, conductor.Sources()...)
	all = append(all, nec.Sources()...)
	return append(all, iec.Sources()...)
}
