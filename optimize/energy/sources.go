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
			Kind: source.Practice, Name: "one way of a round trip has the square root of its efficiency",
			Source: "none", Confidence: source.CommonNotRead,
		},
		source.Habit("reserve kept back of the usable energy"),
		source.Habit("modules in series: bus nominal / module nominal, rounded; their nominal voltage not below the bus's lowest"),
		source.Habit("batteries share a bus only within one parallel group, or with their own kind"),
		source.Habit("power: everything that can be on together is on, duty not counted; of loads never on together the largest"),
		{
			Kind: source.Formula, Name: "volt-amperes: watts / power factor", Source: "IEC 60050-131-11-46, the power factor", Confidence: source.FromMemory,
		},
		source.Habit("loads go on circuits and legs so that the larger leg's peak is least, then its surge, then in the scenario's order"),
		{
			Kind: source.Rule, Name: "a load that runs three hours or more at a stretch counts 125 % on its circuit under nec",
			Source: "NEC article 100, 210.19(A), 210.20(A)", Confidence: source.ThreeTexts,
		},
		source.Habit("surge: all that can be on, and one start on top; two motors do not start in the same moment"),
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
			Kind: source.Formula, Name: "recharge current: energy / (V · hours · round trip)",
			Source: "E = V·I·t and the definition of the round trip", Confidence: source.Definition,
		},
		source.Habit("strings share the charging current by conductance; tapering toward full charge is left out"),
		{
			Kind: source.Rule, Name: "a supply gives at most 80 % of its device for hours",
			Source: "NEC 210.20(A); iec: common practice, no source", Confidence: source.FromMemory,
		},
		source.Habit("a charger loses as much as its inverter does"),
		{
			Kind: source.Formula, Name: "feeder current: continuous / volts, of 120/240 V the larger of continuous / 240 and a leg / 120",
			Source: "P = V·I", Confidence: source.Definition,
		},
		source.Habit("an autonomy is given up to one year"),
		{
			Kind: source.Rule, Name: "nominal supply voltages 120, 240 and 230 V",
			Source: "ANSI C84.1; IEC 60038", Confidence: source.FromMemory,
		},
		{
			Kind: source.Formula, Name: "throughput cost: cost / (quantity · Ah · V · depth of discharge · cycle life)",
			Source: "North American Clean Energy, \"Measuring the true costs\", part 2", Confidence: source.OneText,
		},
		source.Habit("a battery's life ends with its cycles or with its calendar years, whichever is earlier"),
		source.Habit("cost per usable kWh: cost / usable energy"),
		{
			Kind: source.Practice, Name: "watts measured without legs count wholly on leg A",
			Source: "none; the safe reading", Confidence: source.CommonNotRead,
		},
	}
}
