package audit

import "cartwright/catalog/source"

// Sources lists the rules and practices that live here only: money, shipping, what a cart must have, and
// when a limit binds. Those of cables, energy and the chassis are listed by their own rooms.
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
		habit("a load centre has a space for each pole of the branch breakers"),
		habit("two crimped ends for each conductor"),
		habit("one pair of bus bars, one set of casters, one kind of inverter"),
		habit("stated figures are true where they agree to six digits; no number is infinite or absurdly large"),
		habit("a limit binds where one in a hundred of it, or less, is left"),
		{Kind: source.Formula, Name: "strings in parallel share current by conductance",
			Source: "current division in parallel branches, circuit theory", Confidence: source.Definition},
	}
}
