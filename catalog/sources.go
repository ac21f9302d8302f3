package catalog

import "cartwright/catalog/source"

// Sources lists where the units, the areas of conductors and the values of empty cells come from.
func Sources() []source.Source {
	return []source.Source{
		{
			Kind: source.Table, Name: "units of mass, length, time, power, energy, force and temperature",
			Source: "BIPM, The International System of Units (9th edition, 2019), tables 7 and 8; international yard and " +
				"pound agreement of 1959; 3rd CGPM, 1901",
			Confidence: source.Definition,
		},
		{
			Kind: source.Formula, Name: "area of a conductor: of a gauge by its diameter, 1 kcmil = 0.5067075 mm2",
			Source: "ASTM B258; definition of the circular mil", Confidence: "the gauge in one text, the circular mil by definition",
		},
		source.Habit("a price more than 180 days old is flagged"),
		source.Habit("a battery with no peak_discharge_a stands no more than max_discharge_a"),
		{
			Kind: source.Formula, Name: "a battery with no short_circuit_a: max_v / resistance",
			Source: "electrical fundamentals, I = E / R", Confidence: source.TwoTexts,
		},
		source.Habit("a part with no round_trip loses nothing; with no max_series, max_units or poles it has 1"),
		source.Habit("an inverter with no leg_w: half of continuous_w on a leg of 120/240, else all of it"),
		source.Habit("an inverter with no charger_a has no charger, with no solar_max_w no solar input (mppt_inputs)"),
		{
			Kind: source.Rule, Name: "a device with no terminal_c has terminals of 75 C",
			Source: "NEC 110.14(C)(1): marked 75 C where it may be used so", Confidence: source.CommonNotRead,
		},
		source.Habit("casters with no set_of come in sets of 4"),
		source.Habit("bounds of cells that catch a slip of the unit or of the finger"),
	}
}
