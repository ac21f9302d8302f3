package audit

import "cartwright/catalog/source"

// Sources lists the rules and practices that are only here (money, shipping, what a cart must have, when a limit binds),
// and those for cables, rails and arrays that the audit states a second time. Tables and single formulas are listed by
// their own rooms.
func Sources() []source.Source {
	habit := source.Habit
	return []source.Source{
		{Kind: source.Formula, Name: "a line of a bill is quantity * unit price, rounded to the cent",
			Source: "arithmetic", Confidence: source.Definition},
		{Kind: source.Formula, Name: "cost = spend + shipping + tax - credit", Source: "arithmetic", Confidence: source.Definition},
		habit("shipping once for each vendor: the largest of the lines bought there"),
		habit("tax on purchases and shipping, rounded to the cent; none on what is sold"),
		habit("a part with offers costs one of them, a quantity break once so many are bought there"),
		habit("a part that is used is not sold; parts left over may stay unused"),
		habit("a sundry serves whatever asks for its role at its rating or below"),
		{Kind: source.Rule, Name: "receptacles of the circuit's own rating where the catalogue has one, else above it",
			Source: "NEC 210.21(B)", Confidence: source.FromMemory},
		habit("as many sundries of a role as are asked for, and no more"),
		habit("a load centre has a space for each pole of the branch breakers, and of feeder breakers of its mount"),
		{Kind: source.Rule, Name: "a load centre is rated for its feeders' devices together", Source: "NEC 408.36", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "a charger draws at most 80 % of its supply's device", Source: "NEC 210.23(A)", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "a load of three hours or more is continuous; circuits carry it at 125 %",
			Source: "NEC article 100, 210.19(A)(1), 210.20(A), 210.23", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "a device at both ends of a string's cable above 3 m, from three strings on",
			Source: "NEC 240.21, 240.21(B)(1); IEC 60364-4-43 clause 433.2.2", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "no fuse of partial range alone; gPV fuses operate at 1.45 of their rating",
			Source: "IEC 60269-1 and 60269-6", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "a polarised breaker breaks current one way only; devices are listed",
			Source: "IEC 60898-3, UL 489; NEC 110.2, 110.3(C)", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "terminals of equipment at 70 C unless it states 90 C",
			Source: "IEC 60364-5-52:2009 table 52.1 and clause 523.1, IEC 60947-1", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "fuses of strings of modules: 1.5625 of the short-circuit current, where the others exceed what the maker allows",
			Source: "NEC 690.8(B), 690.9(A), 690.13; IEC 62548", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "a ground grows with enlarged conductors, except on a solar run; it need not be larger than line conductors of its material",
			Source: "NEC 250.122(A), 250.122(B), 690.45", Confidence: source.FromMemory},
		{Kind: source.Rule, Name: "volts of modules in the cold: s * voc * (1 + b (coldest - 25))",
			Source: "NEC 690.7(A)", Confidence: source.ThreeTexts},
		habit("up to two strings of modules in parallel go without fuses where their maker states none"),
		{Kind: source.Table, Name: "areas of conductors in conduit, THHN and THWN-2", Source: "NEC chapter 9 table 5",
			Confidence: "from memory; one worked example agrees"},
		{Kind: source.Table, Name: "conduit filled to 53, 31 and 40 % by one, two and more conductors", Source: "NEC chapter 9 tables 1 and 4; under iec 40 %, common practice",
			Confidence: source.FromMemory},
		{Kind: source.Formula, Name: "a rail is a beam on two supports: M = w L^2 / 8, f = 5 w L^4 / (384 E I); E 210 GPa",
			Source: "statics; E by EN 1993-1-1", Confidence: source.Definition},
		habit("rails bear 0.6 of their yield and sag 1/240 of their span"),
		{Kind: source.Formula, Name: "days of the months, no leap day", Source: "calendar", Confidence: source.Definition},
		habit("braked wheels hold their share of the weight times the grip"),
		habit("two crimped ends for each conductor"),
		habit("one pair of bus bars, one set of casters, one kind of inverter"),
		habit("stated figures are true where they agree to six digits; no number is infinite or absurdly large"),
		habit("a limit binds where one in a hundred of it, or less, is left"),
		{Kind: source.Formula, Name: "strings in parallel share current by conductance",
			Source: "current division in parallel branches, circuit theory", Confidence: source.Definition},
	}
}
