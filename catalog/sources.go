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
		source.Habit("an inverter with no leg_surge_w: half of surge_w on a leg of 120/240, else all of it; with no charger_ac_v its " +
			"charger takes the volts of ac_v"),
		source.Habit("a cable with no strand is of building wire"),
		source.Habit("a module with no power_temp_pct_per_c loses 0.35 % a degree, with no noct_c its cells are at 45 C in the test of " +
			"that name, with no max_system_v it takes 600 V"),
		{
			Kind: source.Formula, Name: "mass of a section of steel where no mass_kg_per_m is stated: area with sharp corners * 7850 kg/m3",
			Source:     "EN 1991-1-1 annex A; EN 10219-2, whose tubes of 40 and 50 mm with rounded corners are 5.6 and 4.2 % lighter",
			Confidence: "the density in two texts, the tubes in one",
		},
		{
			Kind: source.Rule, Name: "a section with no yield_mpa yields at 235 MPa",
			Source: "EN 10025-2, grade S235, up to 16 mm", Confidence: source.CommonNotRead,
		},
		source.Habit("batteries have 20 to 400 Wh/kg, 20 to 900 Wh/l and 1 to 5,000 Ah, and no kWh costs a tenth of the others' or ten times it"),
		{
			Kind: source.Table, Name: "inside areas of conduits of the embedded catalogue",
			Source:     "NFPA 70 chapter 9 table 4: emt and pvc-40; flexible, liquid-tight; metric tubes are common practice",
			Confidence: "emt and pvc-40 in several texts, flexible from memory",
		},
		source.Habit("bounds of cells that catch a wrong unit or a typing mistake"),
	}
}
