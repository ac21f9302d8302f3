package catalog

// maxCount bounds how many of something a part can have or allow.
const maxCount = 10_000

func batteryPart(b *Battery) *Part { return &b.Part }

var batteryTable = table[Battery]{
	file: "batteries.csv",
	pos:  posOf(batteryPart),
	columns: common(batteryPart, each(batteryPart),
		text("chemistry", "a word, for example LFP", func(b *Battery) *string { return &b.Chemistry }).must(),
		text("parallel_group", "a word", func(b *Battery) *string { return &b.Group }),
		number("nominal_v", volts, positive, func(b *Battery) *float64 { return &b.NominalV }).must(),
		number("min_v", volts, positive, func(b *Battery) *float64 { return &b.MinV }).must(),
		number("max_v", volts, positive, func(b *Battery) *float64 { return &b.MaxV }).must(),
		number("capacity_kwh", kilowattHours, positive, func(b *Battery) *float64 { return &b.CapacityWh }).must(),
		number("usable_fraction", fraction, positive, func(b *Battery) *float64 { return &b.UsableFraction }).must(),
		number("round_trip", fraction, positive, func(b *Battery) *float64 { return &b.RoundTrip }).or("1"),
		number("max_discharge_a", amperes, positive, func(b *Battery) *float64 { return &b.MaxDischargeA }).must(),
		number("peak_discharge_a", amperes, positive, func(b *Battery) *float64 { return &b.PeakDischargeA }).
			orElse("max_discharge_a", func(b *Battery) { b.PeakDischargeA = b.MaxDischargeA }),
		number("max_charge_a", amperes, positive, func(b *Battery) *float64 { return &b.MaxChargeA }).must(),
		number("resistance_mohm", milliohms, positive, func(b *Battery) *float64 { return &b.ResistanceOhm }).must(),
		number("short_circuit_a", shortCircuit, positive, func(b *Battery) *float64 { return &b.ShortCircuitA }).
			orElse("max_v / resistance", func(b *Battery) { b.ShortCircuitA = b.MaxV / b.ResistanceOhm }),
		number("cycle_life", cycles, positive, func(b *Battery) *float64 { return &b.CycleLife }).blankZero(),
		number("calendar_years", years, positive, func(b *Battery) *float64 { return &b.CalendarYears }).blankZero(),
		count("max_parallel", 1, maxCount, func(b *Battery) *int { return &b.MaxParallel }).blankZero(),
		count("max_series", 1, maxCount, func(b *Battery) *int { return &b.MaxSeries }).or("1"),
		number("max_fuse_a", amperes, positive, func(b *Battery) *float64 { return &b.MaxFuseA }).blankZero(),
		number("own_device_a", amperes, positive, func(b *Battery) *float64 { return &b.OwnDeviceA }).blankZero(),
		number("own_interrupting_a", amperes, positive, func(b *Battery) *float64 { return &b.OwnInterruptingA }).blankZero(),
		list("protocols", protocolWords, func(b *Battery) *[]string { return &b.Protocols }),
		number("length_mm", millimetres, positive, func(b *Battery) *float64 { return &b.LengthM }).must(),
		number("width_mm", millimetres, positive, func(b *Battery) *float64 { return &b.WidthM }).must(),
		number("height_mm", millimetres, positive, func(b *Battery) *float64 { return &b.HeightM }).must(),
	),
	rules: append(eachRange(batteryPart),
		notBelow("nominal_v", "min_v", "the three voltages rise from min_v to max_v",
			func(b *Battery) (float64, float64) { return b.NominalV, b.MinV }),
		notBelow("max_v", "nominal_v", "the three voltages rise from min_v to max_v",
			func(b *Battery) (float64, float64) { return b.MaxV, b.NominalV }),
		notBelow("peak_discharge_a", "max_discharge_a", "leave it empty where only one current is known",
			func(b *Battery) (float64, float64) { return b.PeakDischargeA, b.MaxDischargeA }),
		notBelow("short_circuit_a", "max_discharge_a", "write amperes, or leave it empty for max_v / resistance",
			func(b *Battery) (float64, float64) { return b.ShortCircuitA, b.MaxDischargeA }),
		rule[Battery]{"own_interrupting_a", []string{"own_device_a"}, func(b *Battery, at func(string) entry) *flaw {
			if b.OwnInterruptingA == 0 || b.OwnDeviceA != 0 {
				return nil
			}
			return &flaw{"own_interrupting_a is stated and own_device_a is not", "write the rating of the module's own device, or neither"}
		}},
	),
	doubts: doubtBatteries,
}

// protocolWords says what to write of protocols.
const protocolWords = "words, for example can rs485"

func inverterPart(i *Inverter) *Part { return &i.Part }

var inverterTable = table[Inverter]{
	file: "inverters.csv",
	pos:  posOf(inverterPart),
	columns: common(inverterPart, each(inverterPart),
		number("dc_min_v", volts, positive, func(i *Inverter) *float64 { return &i.DCMinV }).must(),
		number("dc_max_v", volts, positive, func(i *Inverter) *float64 { return &i.DCMaxV }).must(),
		choice("ac_v", []string{"120", "230", "120/240"}, func(i *Inverter) *string { return &i.ACV }).must(),
		number("continuous_w", watts, positive, func(i *Inverter) *float64 { return &i.ContinuousW }).must(),
		number("surge_w", watts, positive, func(i *Inverter) *float64 { return &i.SurgeW }).must(),
		number("leg_w", watts, positive, func(i *Inverter) *float64 { return &i.LegW }).
			orElse("120/240: half of continuous_w, else continuous_w", defaultLeg),
		number("leg_surge_w", watts, positive, func(i *Inverter) *float64 { return &i.LegSurgeW }).
			orElse("120/240: half of surge_w, else surge_w", defaultLegSurge),
		number("efficiency", fraction, positive, func(i *Inverter) *float64 { return &i.Efficiency }).must(),
		number("idle_w", watts, zeroToo, func(i *Inverter) *float64 { return &i.IdleW }).must(),
		number("charger_a", amperes, zeroToo, func(i *Inverter) *float64 { return &i.ChargerA }).or("0"),
		choice("charger_ac_v", []string{"120", "230", "240", "120/240"}, func(i *Inverter) *string { return &i.ChargerACV }).
			orElse("ac_v", func(i *Inverter) { i.ChargerACV = i.ACV }),
		list("protocols", protocolWords, func(i *Inverter) *[]string { return &i.Protocols }),
		number("solar_max_w", watts, zeroToo, func(i *Inverter) *float64 { return &i.SolarMaxW }).or("0"),
		number("solar_max_voc_v", volts, zeroToo, func(i *Inverter) *float64 { return &i.SolarMaxVocV }).or("0"),
		number("mppt_min_v", volts, zeroToo, func(i *Inverter) *float64 { return &i.MPPTMinV }).or("0"),
		number("mppt_max_v", volts, zeroToo, func(i *Inverter) *float64 { return &i.MPPTMaxV }).or("0"),
		number("mppt_max_a", amperes, zeroToo, func(i *Inverter) *float64 { return &i.MPPTMaxA }).or("0"),
		count("mppt_inputs", 0, maxCount, func(i *Inverter) *int { return &i.MPPTInputs }).
			orElse("1 where solar_max_w is stated, else 0", defaultInputs),
		count("max_units", 1, maxCount, func(i *Inverter) *int { return &i.MaxUnits }).or("1"),
	),
	rules: append(eachRange(inverterPart),
		notBelow("dc_max_v", "dc_min_v", "the window runs from dc_min_v to dc_max_v",
			func(i *Inverter) (float64, float64) { return i.DCMaxV, i.DCMinV }),
		notBelow("surge_w", "continuous_w", "repeat continuous_w where no surge is known",
			func(i *Inverter) (float64, float64) { return i.SurgeW, i.ContinuousW }),
		notBelow("continuous_w", "leg_w", "leg_w is what one leg can carry, a part of continuous_w",
			func(i *Inverter) (float64, float64) { return i.ContinuousW, i.LegW }),
		notBelow("surge_w", "leg_surge_w", "leg_surge_w is what one leg can start, a part of surge_w",
			func(i *Inverter) (float64, float64) { return i.SurgeW, i.LegSurgeW }),
		notBelow("leg_surge_w", "leg_w", "repeat leg_w where no surge of a leg is known",
			func(i *Inverter) (float64, float64) { return i.LegSurgeW, i.LegW }),
		notBelow("mppt_max_v", "mppt_min_v", "the window runs from mppt_min_v to mppt_max_v",
			func(i *Inverter) (float64, float64) { return i.MPPTMaxV, i.MPPTMinV }),
	),
}

// defaultLeg fills LegW: half of a three-wire inverter's watts, else all of them.
func defaultLeg(i *Inverter) {
	i.LegW = i.ContinuousW
	if i.ACV == "120/240" {
		i.LegW = i.ContinuousW / 2
	}
}

// defaultLegSurge fills LegSurgeW likewise.
func defaultLegSurge(i *Inverter) {
	i.LegSurgeW = i.SurgeW
	if i.ACV == "120/240" {
		i.LegSurgeW = i.SurgeW / 2
	}
}

// defaultInputs fills MPPTInputs: an inverter that takes solar power has an input for it.
func defaultInputs(i *Inverter) {
	if i.SolarMaxW > 0 {
		i.MPPTInputs = 1
	}
}

func solarPart(s *Solar) *Part { return &s.Part }

var solarTable = table[Solar]{
	file: "solar.csv",
	pos:  posOf(solarPart),
	columns: common(solarPart, each(solarPart),
		number("watts", watts, positive, func(s *Solar) *float64 { return &s.Watts }).must(),
		number("voc_v", volts, positive, func(s *Solar) *float64 { return &s.VocV }).must(),
		number("vmp_v", volts, positive, func(s *Solar) *float64 { return &s.VmpV }).must(),
		number("isc_a", amperes, positive, func(s *Solar) *float64 { return &s.IscA }).must(),
		number("imp_a", amperes, positive, func(s *Solar) *float64 { return &s.ImpA }).must(),
		number("voc_temp_pct_per_c", percentPerC, eitherSign, func(s *Solar) *float64 { return &s.VocTempPctPerC }).must(),
		number("power_temp_pct_per_c", percentPerC, eitherSign, func(s *Solar) *float64 { return &s.PowerTempPctPerC }).or("-0.35"),
		number("noct_c", degreesC, positive, func(s *Solar) *float64 { return &s.NOCTC }).or("45"),
		number("max_fuse_a", amperes, positive, func(s *Solar) *float64 { return &s.MaxFuseA }).blankZero(),
		number("max_system_v", volts, positive, func(s *Solar) *float64 { return &s.MaxSystemV }).or("600"),
		number("length_mm", millimetres, positive, func(s *Solar) *float64 { return &s.LengthM }).blankZero(),
		number("width_mm", millimetres, positive, func(s *Solar) *float64 { return &s.WidthM }).blankZero(),
	),
	rules: append(eachRange(solarPart),
		notBelow("voc_v", "vmp_v", "the open-circuit voltage is the higher one",
			func(s *Solar) (float64, float64) { return s.VocV, s.VmpV }),
		notBelow("isc_a", "imp_a", "the short-circuit current is the higher one",
			func(s *Solar) (float64, float64) { return s.IscA, s.ImpA }),
		rule[Solar]{"width_mm", []string{"length_mm"}, func(s *Solar, at func(string) entry) *flaw {
			if (s.LengthM == 0) == (s.WidthM == 0) {
				return nil
			}
			return &flaw{"only one of length and width is stated", "state both or neither"}
		}},
	),
}
