package energy

import "cartwright/catalog/source"

// Sources lists where the formulas and habits of this room come from.
func Sources() []source.Source {
	return []source.Source{
		{
			Kind: source.Formula, Name: "bus power: load / inverter efficiency + idle draw + direct-current load",
			Source:     "Masters, Renewable and Efficient Electric Power Systems (2004), Example 9.15; idle draw by the maker",
			Confidence: source.OneText,
		},
		{
			Kind: source.Formula, Name: "energy of the worst stretch: the steepest rise of the mass curve, record repeated",
			Source:     "Rippl (1883); Thomas and Burden (1963); Loucks and van Beek, Water Resource Systems Planning and Management, ch. 11",
			Confidence: source.TwoTexts,
		},
		{
			Kind: source.Formula, Name: "usable energy: capacity · depth of discharge · discharge efficiency",
			Source:     "Maini and Agrawal, Satellite Technology, Example 4.6, p. 134",
			Confidence: source.OneText,
		},
		{
			Kind: source.Practice, Name: "one way of a round trip loses as the square root of the round trip",
			Source: "none", Confidence: source.CommonNotRead,
		},
		source.Habit("reserve kept back of the usable energy"),
		source.Habit("modules in series: bus nominal / module nominal, rounded; together not below the bus's lowest voltage"),
		source.Habit("batteries share a bus only within one parallel group, or with their own kind"),
		source.Habit("power: everything that can be on together is on, duty not counted"),
		source.Habit("loads left to the program are put on the legs so that the larger leg's peak is least"),
		source.Habit("surge: all loads on and the largest single start on top"),
		{
			Kind: source.Formula, Name: "bus current: continuous / (efficiency · lowest bus voltage)",
			Source: "P = V·I and the definition of efficiency", Confidence: source.Definition,
		},
		{
			Kind: source.Formula, Name: "strings in parallel share current by conductance",
			Source:     "Ohm's law and Kirchhoff's current law, equal open-circuit voltages",
			Confidence: source.Definition,
		},
		{
			Kind: source.Formula, Name: "recharge current: energy / (V · hours · sqrt(round trip))",
			Source: "E = V·I·t; the square root as above", Confidence: source.CommonNotRead,
		},
		source.Habit("strings' charging currents add up; tapering toward full charge is left out"),
		{
			Kind: source.Formula, Name: "feeder current: units * continuous / volts, between the hots of 120/240 V",
			Source: "P = V·I", Confidence: source.Definition,
		},
		source.Habit("an autonomy is told up to one year"),
		{
			Kind: source.Rule, Name: "nominal supply voltages 120, 240 and 230 V",
			Source: "ANSI C84.1; IEC 60038", Confidence: source.FromMemory,
		},
		{
			Kind: source.Formula, Name: "throughput cost: cost / (quantity · Ah · V · depth of discharge · cycle life)",
			Source: "North American Clean Energy, \"Measuring the true costs\", part 2", Confidence: source.OneText,
		},
		source.Habit("cost per usable kWh: cost / usable energy"),
		{
			Kind: source.Practice, Name: "watts measured without legs count wholly on leg A",
			Source: "none; the safe reading", Confidence: source.CommonNotRead,
		},
	}
}
