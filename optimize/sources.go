package optimize

import (
	"cartwright/catalog/source"
)

// Sources lists the formulas and practices of the questions around the ranking: order of plans, value, doubt,
// purchase sequences, staircases, cautions. Those that a single plan rests on are listed by the rooms that compute it.
func Sources() []source.Source {
	return []source.Source{
		source.Habit("batteries of one chemistry and one voltage are what a maker would let share a bus: only of those is a missing group mentioned"),
		source.Habit("plans that differ in batteries, strings, inverter or units are different plans; of equal cost the lighter comes first"),
		source.Habit("the usual cautions: stored energy, local code and a licensed electrician, makers' manuals, rolling and lifting"),
		{
			Kind: source.Rule, Name: "caution: ground-fault or residual-current protection of outlets, and the bond of neutral and frame",
			Source: "NEC 210.8, 250.30; IEC 60364-4-41, 411.3.3, 411.4", Confidence: source.FromMemory,
		},
		{
			Kind: source.Rule, Name: "caution: flooded lead batteries need fresh air",
			Source: "NEC 480.10(A); IEC 62485-2", Confidence: source.FromMemory,
		},
		source.Habit("caution: second-hand modules are tested before use"),
		source.Habit("caution: a door sill is 10 mm high"),
		source.Habit("bought is what is cheapest at quantity breaks, also where that is more than is installed"),
		{
			Kind: source.Practice, Name: "value of a battery: price of the least purchase / its usable, or its lifetime, energy",
			Source:     "North American Clean Energy, \"Measuring the true costs\", part 2, for the lifetime; else none",
			Confidence: "confirmed in one text for the lifetime; else common practice, no source",
		},
		source.Habit("landed price: one string with its modules, cable, crimped ends and device, shipping and tax"),
		{
			Kind: source.Formula, Name: "levelised cost of storage, named as the fuller measure and not computed",
			Source: "Schmidt, Melchior, Hawkes, Staffell, Joule 3 (2019) 81-100", Confidence: source.TwoTexts,
		},
		source.Habit("doubt: prices and loads from triangular distributions, independent of each other (Monte Carlo)"),
		source.Habit("doubt: prices off by 10 % where no range is stated, loads by 15 %, ten thousand draws"),
		{
			Kind: source.Formula, Name: "doubt: standard error of a share p of n draws, sqrt(p (1 - p) / n)",
			Source: "binomial distribution", Confidence: source.Definition,
		},
		{
			Kind: source.Formula, Name: "knee of a staircase: the step farthest from the straight line between its ends",
			Source:     "Satopaa, Albrecht, Irwin and Raghavan, \"Finding a 'Kneedle' in a Haystack\" (2011), without smoothing",
			Confidence: source.FromMemory,
		},
		source.Habit("next: the earliest month, then the least outlay, then the most energy on the way; what is bought is not sold again"),
	}
}
