package wiring

import (
	"cartwright/catalog/source"
	"cartwright/optimize/wiring/conductor"
	"cartwright/optimize/wiring/iec"
	"cartwright/optimize/wiring/nec"
	"cartwright/optimize/wiring/raceway"
)

// Sources lists every table, formula, rule and practice of this room and of the rooms in it: what both
// rule sets share, then nec, then iec.
func Sources() []source.Source {
	all := append(pathSources(), faultSources()...)
	all = append(all, deviceSources()...)
	all = append(all, solarSources()...)
	all = append(all, conductor.Sources()...)
	all = append(all, raceway.Sources()...)
	all = append(all, nec.Sources()...)
	return append(all, iec.Sources()...)
}

// pathSources are the sources for what a path carries and what is bought for it.
func pathSources() []source.Source {
	return []source.Source{
		{Kind: source.Rule, Name: "a main carries the largest of its inverter's input at full load and the lowest bus voltage, its charger and its share of the sun",
			Source: "NEC 690.8(A), stand-alone inverter input; charger and sun: P = V·I", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "a string carries its battery's rated current continuously, and no more than the whole bus",
			Source: "NEC 706.30(A); no more than the bus: circuit theory", Confidence: source.OneText},
		{Kind: source.Rule, Name: "a branch, a circuit on the bus and an inlet carry the rating of their own device; no device of the next size up",
			Source:     "NEC 240.4(B)(1), outlets for cord and plug",
			Confidence: "no next size up confirmed in two independent texts; all of them alike is common practice, no source"},
		source.Habit("conductors of a path: two, or two hots and a neutral; one between modules in series; two crimped ends each"),
		source.Habit("a conductor is bought with slack and in whole steps, where the scenario states them"),
		source.Habit("at most two parallel sets"),
		{Kind: source.Formula, Name: "voltage drop in percent of the nominal volts, there and back, links of a string included, by the design current; between hots of 120/240 V",
			Source: necClauses.drop + "; " + iecClauses.drop, Confidence: "Ohm's law; the tables as below, clause 525 from memory"},
		source.Habit("iec: battery paths, circuits on the bus and solar runs by reference method C, clipped direct; feeder, branches and inlet by B1, in conduit"),
		{Kind: source.Rule, Name: "iec: terminals are for 70 C unless they state 90 C: the table for PVC holds at the ends, uncorrected",
			Source: "IEC 60364-5-52:2009 table 52.1 and clause 523.1", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "one grounding conductor a run, however many sets share its raceway",
			Source: "NEC 250.122(F)(1); iec by the area of all sets together", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "a ground need not be larger than line conductors of its own material; aluminium beside copper goes by the table",
			Source: "NEC 250.122(A), read to the safe side", Confidence: source.ThreeTexts},
		{Kind: source.Practice, Name: "bond of frame and bus by the device of the largest main, under iec by its line area",
			Source: "by analogy with NEC table 250.122 and IEC 60364-5-54 table 54.2", Confidence: source.CommonNotRead},
		{Kind: source.Rule, Name: "every path has a cable and overcurrent protection",
			Source: necClauses.present + "; " + iecClauses.present, Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "green conductors serve as a ground only",
			Source:     necClauses.green + "; " + iecClauses.green,
			Confidence: "from memory; that green marks grounding conductors confirmed in one text"},
		{Kind: source.Practice, Name: "bus bars of 125 % of the current, a stud for each string, inverter and circuit on the bus; shunt and disconnect of 125 % of it too",
			Source: "by analogy with NEC 215.3", Confidence: source.CommonNotRead},
	}
}

// faultSources are the sources for fault currents and what breaks them.
func faultSources() []source.Source {
	return []source.Source{
		{Kind: source.Formula, Name: "battery short-circuit current, highest voltage / resistance, whatever the series",
			Source: "electrical fundamentals, I = E / R", Confidence: source.TwoTexts},
		{Kind: source.Formula, Name: "fault current at a string's device: the larger of its own and all the others",
			Source: "circuit theory, sources in parallel", Confidence: source.CommonNotRead},
		{Kind: source.Rule, Name: "interrupting rating not below the fault current",
			Source: necClauses.interrupting + "; " + iecClauses.interrupting, Confidence: source.TwoTexts},
		{Kind: source.Rule, Name: "device voltage not below the bus's highest, or the ac volts",
			Source: necClauses.voltage + "; " + iecClauses.voltage, Confidence: source.TwoTexts},
		{Kind: source.Rule, Name: "two poles open both hots of 240 V, and both conductors of modules",
			Source: necClauses.poles + ", 690.13; iec: common practice, no source", Confidence: source.FromMemory},
	}
}

// deviceSources are the sources for which device may protect a path, and where.
func deviceSources() []source.Source {
	return []source.Source{
		{Kind: source.Rule, Name: "no fuse of partial range protects alone: classes that begin with a small a",
			Source: necClauses.class + "; IEC 60269-1, utilisation categories", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "no polarised breaker where current runs both ways",
			Source: polarisedSource, Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "nec: devices are listed", Source: necClauses.listed, Confidence: source.FromMemory},
		source.Habit("no device on a string above the largest that its battery's maker allows"),
		{Kind: source.Rule, Name: "from three strings on a string's cable above 3 m has its device at both ends",
			Source: necClauses.bothEnds + "; " + iecClauses.bothEnds, Confidence: source.FromMemory},
		source.Habit("a device built into a battery, or an inverter's own breaker, serves like a breaker with terminals for 75 C"),
		source.Habit("a breaker fits a load centre of its own mount; fuses have holders of their own"),
	}
}

// solarSources are the sources for runs from solar modules.
func solarSources() []source.Source {
	return []source.Source{
		{Kind: source.Rule, Name: "a solar run carries 1.25 of the short-circuit current of its strings; device and conductor 1.25 of that",
			Source: "NEC 690.8(A)(1), 690.8(B)", Confidence: source.TwoTexts},
		{Kind: source.Rule, Name: "a fuse a string of modules, of 1.5625 of its short-circuit current, where the others can feed it more than its maker allows",
			Source: "NEC 690.9(A), 690.8(B)", Confidence: source.FromMemory},
		source.Habit("up to two strings of modules in parallel go without fuses where their maker states no largest one"),
		{Kind: source.Rule, Name: "the ground of a solar run does not grow with conductors enlarged for drop",
			Source: "NEC 690.45", Confidence: source.FromMemory},
	}
}
