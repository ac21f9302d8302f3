package catalog

import "fmt"

func cablePart(c *Cable) *Part { return &c.Part }

var cableTable = table[Cable]{
	file: "cables.csv",
	pos:  posOf(cablePart),
	columns: common(cablePart, perMetre(
		func(c *Cable) *float64 { return &c.CentsPerM },
		func(c *Cable) *float64 { return &c.LowCentsPerM },
		func(c *Cable) *float64 { return &c.HighCentsPerM },
		func(c *Cable) *float64 { return &c.KgPerM }),
		conductor("size").must(),
		choice("material", []string{"copper", "aluminium"}, func(c *Cable) *string { return &c.Material }).must(),
		grade("insulation_c", []float64{60, 70, 75, 90, 105}, func(c *Cable) *float64 { return &c.InsulationC }).must(),
		money("end_price", func(c *Cable) *Cents { return &c.EndPrice }).or("0"),
		// A green conductor may serve as a ground and as nothing else.
		marked("use", [2]string{"any", "ground"}, func(c *Cable) *bool { return &c.GroundOnly }).or("any"),
		marked("strand", [2]string{"building", "fine"}, func(c *Cable) *bool { return &c.Fine }).or("building"),
		number("outer_mm", millimetres, positive, func(c *Cable) *float64 { return &c.OuterM }).blankZero(),
	),
	rules: priceRange("_per_m", func(c *Cable) (low, price, high float64) {
		return c.LowCentsPerM, c.CentsPerM, c.HighCentsPerM
	}),
}

// The thinnest and thickest conductor that is read, in mm2: wider than the tables of ampacities, which run
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
		answer("polarised", func(d *Device) *Answer { return &d.Polarised }),
		word("mount", mountWords, func(d *Device) *string { return &d.Mount }),
		answer("listed", func(d *Device) *Answer { return &d.Listed }),
	),
	rules: eachRange(devicePart),
}

// mountWords says what to write of a mount.
const mountWords = "a word, for example plug-in, rail or bolted"

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

func conduitPart(c *Conduit) *Part { return &c.Part }

var conduitTable = table[Conduit]{
	file: "conduits.csv",
	pos:  posOf(conduitPart),
	columns: common(conduitPart, perMetre(
		func(c *Conduit) *float64 { return &c.CentsPerM },
		func(c *Conduit) *float64 { return &c.LowCentsPerM },
		func(c *Conduit) *float64 { return &c.HighCentsPerM },
		func(c *Conduit) *float64 { return &c.KgPerM }),
		text("trade_size", "a size, for example 3/4 or 20 mm", func(c *Conduit) *string { return &c.TradeSize }).must(),
		word("type", "a word, for example emt, pvc-40 or flexible", func(c *Conduit) *string { return &c.Type }).must(),
		number("inside_mm2", squareMillimetres, positive, func(c *Conduit) *float64 { return &c.InsideMM2 }).must(),
		money("end_price", func(c *Conduit) *Cents { return &c.EndPrice }).or("0"),
	),
	rules: priceRange("_per_m", func(c *Conduit) (low, price, high float64) {
		return c.LowCentsPerM, c.CentsPerM, c.HighCentsPerM
	}),
}
