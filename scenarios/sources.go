package scenarios

import "cartwright/catalog/source"

// Sources lists where the values come from that a scenario may leave out, and the bounds of what is read.
func Sources() []source.Source {
	return []source.Source{
		{
			Kind: source.Practice, Name: "caster factor of 1.25 where none is stated",
			Source: "trade texts: 1.0 to 1.5 indoors, 1.5 to 2.2 outdoors, pushed by hand", Confidence: source.OneText,
		},
		{
			Kind: source.Rule, Name: "a cart must stand on 10 degrees where no tilt is stated",
			Source: "IEC 62368-1 (ed. 3), static stability", Confidence: source.TwoTexts,
		},
		source.Habit("no battery or inverter stands or hangs higher than 2.5 m on a cart"),
		source.Habit("four casters, their mass 80 mm above the floor, where nothing else is stated"),
		source.Habit("prospective fault current of 5 kA on the ac side where no ac_fault is stated"),
		{
			Kind: source.Rule, Name: "air of 30 C where no ambient is stated",
			Source: "base of NEC table 310.16 and IEC 60364-5-52:2009 table B.52.2", Confidence: source.TwoTexts,
		},
		source.Habit("two bundled conductors carry current where nothing else is stated"),
		{
			Kind: source.Practice, Name: "voltage drop of 3 % where no drop is stated",
			Source:     "NEC 210.19 and 215.2, informational notes; IEC 60364-5-52 annex G, for lighting",
			Confidence: "the 3 % of each in one text; the clauses from memory",
		},
		source.Habit("a load with no power_factor draws no more volt-amperes than watts"),
		source.Habit("a cart is used on 365 days, rolls at 2 % of its weight and its brakes grip with half of theirs, where nothing else is stated"),
		source.Habit("a link of modules in series has 0.3 m, a shelf of rails two of them, where nothing else is stated"),
		source.Habit("a warning for a wheelbase below 200 mm"),
		source.Habit("a load with no duty, start, count or hours is on all day at full watts, once, with no inrush"),
		source.Habit("bounds of lengths, masses, powers, currents and hours that catch a wrong unit"),
		source.Habit("of sun: the ground throws back 20 %, 10 % are lost, the hottest air has 40 C and each month 20 C, where nothing else is stated"),
		{
			Kind: source.Rule, Name: "TMY3 files: columns, hours that end at their time, missing figures",
			Source: "Wilcox and Marion, NREL/TP-581-43156 (2008)", Confidence: "read in one text, confirmed in two files",
		},
		{
			Kind: source.Rule, Name: "EPW files: fields, hours that end at their number, missing figures",
			Source: "EnergyPlus weather data dictionary", Confidence: "fields confirmed in three independent texts, missing figures in two",
		},
		source.Habit("a file of hours: up to 48 figures of a kind, 3 at a stretch, are bridged; light at night is refused, parts of light that do not close within 10 % are warned of"),
		{Kind: source.Rule, Name: "a currency is three capital letters", Source: "ISO 4217", Confidence: source.FromMemory},
		{
			Kind: source.Rule, Name: "a bus of at most 1500 V: where low voltage ends for direct current",
			Source: "IEC 60364-1", Confidence: source.FromMemory,
		},
	}
}
