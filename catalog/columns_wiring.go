package catalog

import "fmt"

func cablePart(c *Cable) *Part { return &c.Part }

var cableTable = table[Cable]{
	file: "cables.csv",
	pos:  posOf(cablePart),
	columns: common(cablePart, []column[Cable]{
		number("price_per_m", currencyPerMetre, zeroToo, func(c *Cable) *float64 { return &c.CentsPerM }).must(),
		number("price_low_per_m", currencyPerMetre, zeroToo, func(c *Cable) *float64 { return &c.LowCentsPerM }).onlyIf(guessedPerM),
		number("price_high_per_m", currencyPerMetre, zeroToo, func(c *Cable) *float64 { return &c.HighCentsPerM }).onlyIf(guessedPerM),
		number("mass_kg_per_m", kilogramsPerMetre, zeroToo, func(c *Cable) *float64 { return &c.KgPerM }).must(),
	},
		conductor("size").must(),
		choice("material", []string{"copper", "aluminium"}, func(c *Cable) *string { return &c.Material }).must(),
		grade("insulation_c", []float64{60, 70, 75, 90, 105}, func(c *Cable) *float64 { return &c.InsulationC }).must(),
		money("end_price", func(c *Cable) *Cents { return &c.EndPrice }).or("0"),
		// A green conductor may be a ground and nothing else.
		marked("use", [2]string{"any", "ground"}, func(c *Cable) *bool { return &c.GroundOnly }).or("any"),
	),
	rules: priceRange("_per_m", func(c *Cable) (low, price, high float64) {
		return c.LowCentsPerM, c.CentsPerM, c.HighCentsPerM
	}),
}

// guessedPerM reports whether a cable states a range of prices.
func guessedPerM(c *Cable) bool { return c.LowCentsPerM != 0 || c.HighCentsPerM != 0 }

// The thinnest and thickest conductor that is read, in mm2: beyond any table of ampacities, which run
// from 18 AWG (0.8 mm2) to 2000 kcmil (1013 mm2) in NEC 310.16 and chapter 9, and to 630 mm2 in
// IEC 60364-5-52.
const (
	thinnestMM2 = 0.05
	thickestMM2 = 1100
)

// conductor is the column of a cable's size.
func conductor(name string) column[Cable] {
	const sizes = "a size, for example 4/0 AWG, 250 kcmil or 35 mm2"
	return column[Cable]{
		name:     name,
		expected: sizes,
		read: func(c *Cable, in entry) *flaw {
			size, err := ParseSize(in.text)
			if err != nil {
				return &flaw{fmt.Sprintf("%s %s is not a conductor size", in.header, quote(in.text)), "write " + sizes}
			}
			if a := size.AreaMM2(); !(a >= thinnestMM2 && a <= thickestMM2) {
				return &flaw{fmt.Sprintf("%s %s is out of range", in.header, quote(in.text)),
					fmt.Sprintf("write a size from %g to %g mm2", thinnestMM2, float64(thickestMM2))}
			}
			c.Size = size
			return nil
		},
		write: func(c *Cable) string { return string(c.Size) },
	}
}

func devicePart(d *Device) *Part { return &d.Part }

var deviceTable = table[Device]{
	file: "devices.csv",
	pos:  posOf(devicePart),
	columns: common(devicePart, each(devicePart),
		choice("type", []string{"fuse", "breaker"}, func(d *Device) *string { return &d.Type }).must(),
		text("class", "a word", func(d *Device) *string { return &d.Class }),
		number("rating_a", amperes, positive, func(d *Device) *float64 { return &d.RatingA }).must(),
		count("poles", 1, 4, func(d *Device) *int { return &d.Poles }).or("1"),
		number("max_dc_v", volts, zeroToo, func(d *Device) *float64 { return &d.MaxDCV }).or("0"),
		number("interrupting_dc_a", amperes, zeroToo, func(d *Device) *float64 { return &d.InterruptingDCA }).or("0"),
		number("max_ac_v", volts, zeroToo, func(d *Device) *float64 { return &d.MaxACV }).or("0"),
		number("interrupting_ac_a", amperes, zeroToo, func(d *Device) *float64 { return &d.InterruptingACA }).or("0"),
		grade("terminal_c", []float64{60, 75, 90}, func(d *Device) *float64 { return &d.TerminalC }).or("75"),
	),
	rules: eachRange(devicePart),
}

func busbarPart(b *Busbar) *Part { return &b.Part }

var busbarTable = table[Busbar]{
	file: "busbars.csv",
	pos:  posOf(busbarPart),
	columns: common(busbarPart, each(busbarPart),
		number("rating_a", amperes, positive, func(b *Busbar) *float64 { return &b.RatingA }).must(),
		count("studs", 1, maxCount, func(b *Busbar) *int { return &b.Studs }).must(),
	),
	rules: eachRange(busbarPart),
}
