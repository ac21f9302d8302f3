package catalog_test

import (
	"math"
	"reflect"
	"strconv"
	"testing"
	"time"

	"cartwright/catalog"

	"pgregory.net/rapid"
)

// What is written reads back the same, to the last bit, whatever the numbers.
func TestWrittenReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := someCatalog(t)
		back, err := catalog.Read(written(t, c), "cart", "cart")
		if err != nil {
			t.Fatalf("what was written is refused:\n%v", err)
		}
		if got := unplaced(back); !reflect.DeepEqual(got, c) {
			t.Fatalf("read back:\n%+v\nwritten:\n%+v", got, c)
		}
	})
}

// drawn draws the fields of parts.
type drawn struct {
	*rapid.T
	parts int
}

// number draws a float64 of a magnitude, or now and then a bound.
func (d *drawn) number(name string, least, most float64) float64 {
	switch rapid.IntRange(0, 9).Draw(d.T, name+" sort") {
	case 0:
		return least
	case 1:
		return most
	case 2, 3, 4:
		return math.Min(most, math.Max(least, math.Round(rapid.Float64Range(least, most).Draw(d.T, name)*100)/100))
	}
	exponent := rapid.Float64Range(math.Log(least), math.Log(most)).Draw(d.T, name)
	return math.Min(most, math.Max(least, math.Exp(exponent)))
}

// orZero draws such a number or zero.
func (d *drawn) orZero(name string, least, most float64) float64 {
	if rapid.Bool().Draw(d.T, name+" zero") {
		return 0
	}
	return d.number(name, least, most)
}

func (d *drawn) count(name string, least, most int) int {
	return rapid.IntRange(least, most).Draw(d.T, name)
}

func (d *drawn) cents(name string) catalog.Cents {
	return catalog.Cents(rapid.Int64Range(0, 1e11).Draw(d.T, name))
}

// words draws text with everything in it that CSV must quote.
func (d *drawn) words(name string) string {
	return rapid.StringMatching(`([a-z#"=',;äß日\\.-]{1,6}( [a-z#"',;]{1,6}){0,2})?`).Draw(d.T, name)
}

func (d *drawn) day(name string) time.Time {
	n := rapid.IntRange(-1, 20000).Draw(d.T, name)
	if n < 0 {
		return time.Time{}
	}
	return time.Date(1999, 12, 31+n, 0, 0, 0, 0, time.UTC)
}

// part draws what every part has, with an id of its own.
func (d *drawn) part() catalog.Part {
	d.parts++
	p := catalog.Part{
		ID:     "p" + strconv.Itoa(d.parts) + d.words("id"),
		Name:   "n" + d.words("name"),
		Price:  d.cents("price"),
		MassKg: d.orZero("mass", 1e-6, 1e5),
		Vendor: d.words("vendor"),
		AsOf:   d.day("as of"),
		Notes:  d.words("notes"),
	}
	if rapid.Bool().Draw(d.T, "guess") {
		p.PriceLow = p.Price - min(p.Price, d.cents("low"))
		p.PriceHigh = min(1e11, p.Price+d.cents("high"))
	}
	return p
}

// someCatalog draws a catalogue of one to three parts of each kind that needs one.
func someCatalog(t *rapid.T) *catalog.Catalog {
	d := &drawn{T: t}
	c := &catalog.Catalog{}
	for range d.count("batteries", 1, 3) {
		c.Batteries = append(c.Batteries, d.battery())
	}
	for range d.count("inverters", 1, 3) {
		c.Inverters = append(c.Inverters, d.inverter())
	}
	for range d.count("cables", 0, 3) {
		c.Cables = append(c.Cables, d.cable())
	}
	for range d.count("devices", 0, 3) {
		c.Devices = append(c.Devices, catalog.Device{
			Part: d.part(), Type: rapid.SampledFrom([]string{"fuse", "breaker"}).Draw(t, "type"), Class: d.words("class"),
			RatingA: d.number("rating", 1e-3, 1e6), Poles: d.count("poles", 1, 4),
			MaxDCV: d.orZero("dc", 1e-3, 1e4), InterruptingDCA: d.orZero("dc fault", 1e-3, 1e6),
			MaxACV: d.orZero("ac", 1e-3, 1e4), InterruptingACA: d.orZero("ac fault", 1e-3, 1e6),
			TerminalC: rapid.SampledFrom([]float64{60, 75, 90}).Draw(t, "terminal"),
			Polarised: d.answer("polarised"), Mount: d.words("mount"), Listed: d.answer("listed"),
		})
	}
	for range d.count("bars", 1, 2) {
		c.Busbars = append(c.Busbars, catalog.Busbar{Part: d.part(), RatingA: d.number("rating", 1e-3, 1e6), Studs: d.count("studs", 1, 10000)})
	}
	for range d.count("casters", 1, 2) {
		set := d.count("set", 1, 100)
		c.Casters = append(c.Casters, catalog.Casters{
			Part: d.part(), SetOf: set, RatingKg: d.number("rating", 1e-6, 1e5), Brakes: d.count("brakes", 0, set),
			Swivel: d.count("swivel", 0, set), WheelM: d.orZero("wheel", 1e-6, 100),
		})
	}
	for range d.count("modules", 0, 2) {
		vmp, imp := d.number("vmp", 1e-3, 1e4), d.number("imp", 1e-3, 1e6)
		c.Solar = append(c.Solar, catalog.Solar{
			Part: d.part(), Watts: d.number("watts", 1e-3, 1e7), VmpV: vmp, VocV: d.number("voc", vmp, 1e4),
			ImpA: imp, IscA: d.number("isc", imp, 1e6), VocTempPctPerC: rapid.Float64Range(-5, 5).Draw(t, "coefficient"),
			PowerTempPctPerC: rapid.Float64Range(-5, 5).Draw(t, "power coefficient"), NOCTC: d.number("noct", 20, 100),
			MaxFuseA: d.orZero("fuse", 1e-3, 1e6), MaxSystemV: d.number("system", 1e-3, 1e4),
		})
		if m := &c.Solar[len(c.Solar)-1]; rapid.Bool().Draw(t, "size stated") {
			m.LengthM, m.WidthM = d.number("length", 1e-6, 100), d.number("width", 1e-6, 100)
		}
	}
	for range d.count("sundries", 0, 2) {
		c.Sundries = append(c.Sundries, catalog.Sundry{Part: d.part(), Role: "r" + d.words("role"),
			RatingA: d.orZero("rating", 1e-3, 1e6), Spaces: d.count("spaces", 0, 10000), Mount: d.words("mount"),
			VolumeM3: d.orZero("volume", 1e-9, 10)})
	}
	for range d.count("conduits", 0, 2) {
		k := catalog.Conduit{Part: d.part(), KgPerM: d.orZero("mass", 1e-6, 1e3), TradeSize: "s" + d.words("size"), Type: "t" + d.words("type"),
			InsideMM2: d.number("inside", 1, 1e6), EndPrice: d.cents("end")}
		k.CentsPerM, k.LowCentsPerM, k.HighCentsPerM = d.perMetre(&k.Part)
		c.Conduits = append(c.Conduits, k)
	}
	for range d.count("sections", 0, 3) {
		c.Sections = append(c.Sections, d.section())
	}
	for i, e := range c.All() {
		if i%2 == 0 {
			c.Offers = append(c.Offers, d.offer(e))
		}
	}
	return c
}

func (d *drawn) battery() catalog.Battery {
	low, discharge := d.number("min v", 1e-3, 1e4), d.number("discharge", 1e-3, 1e6)
	nominal := d.number("nominal v", low, 1e4)
	return catalog.Battery{
		Part: d.part(), Chemistry: "c" + d.words("chemistry"), Group: d.words("group"),
		MinV: low, NominalV: nominal, MaxV: d.number("max v", nominal, 1e4),
		CapacityWh: d.number("capacity", 1e-3, 1e7), UsableFraction: d.number("usable", 1e-3, 1),
		RoundTrip: d.number("round trip", 1e-3, 1), MaxDischargeA: discharge,
		PeakDischargeA: d.number("peak", discharge, 1e6), MaxChargeA: d.number("charge", 1e-3, 1e6),
		ResistanceOhm: d.number("resistance", 1e-6, 1e3), ShortCircuitA: d.number("short circuit", discharge, 1e10),
		CycleLife: d.orZero("cycles", 1, 1e6), CalendarYears: d.orZero("years", 0.1, 100),
		MaxParallel: d.count("parallel", 0, 10000), MaxSeries: d.count("series", 1, 10000), MaxFuseA: d.orZero("fuse", 1e-3, 1e6),
		OwnDeviceA: d.number("own", 1e-3, 1e6), OwnInterruptingA: d.orZero("own fault", 1e-3, 1e6), Protocols: d.protocols(),
		LengthM: d.number("length", 1e-6, 100), WidthM: d.number("width", 1e-6, 100), HeightM: d.number("height", 1e-6, 100),
	}
}

func (d *drawn) inverter() catalog.Inverter {
	low, tracker, watts := d.number("min v", 1e-3, 1e4), d.orZero("mppt min", 1e-3, 1e4), d.number("watts", 1e-3, 1e7)
	surge, leg := d.number("surge", watts, 1e7), d.number("leg", 1e-3, watts)
	return catalog.Inverter{
		Part: d.part(), DCMinV: low, DCMaxV: d.number("max v", low, 1e4),
		ACV:         rapid.SampledFrom([]string{"120", "230", "120/240"}).Draw(d.T, "ac"),
		ContinuousW: watts, SurgeW: surge, LegW: leg, LegSurgeW: d.number("leg surge", leg, surge),
		ChargerACV: rapid.SampledFrom([]string{"120", "230", "240", "120/240"}).Draw(d.T, "supply"), Protocols: d.protocols(),
		Efficiency: d.number("efficiency", 1e-3, 1), IdleW: d.orZero("idle", 1e-3, 1e7), ChargerA: d.orZero("charger", 1e-3, 1e6),
		SolarMaxW: d.orZero("solar", 1e-3, 1e7), SolarMaxVocV: d.orZero("voc", 1e-3, 1e4),
		MPPTMinV: tracker, MPPTMaxV: d.number("mppt max", math.Max(tracker, 1e-3), 1e4), MPPTMaxA: d.orZero("mppt a", 1e-3, 1e6),
		MPPTInputs: d.count("inputs", 0, 10000), MaxUnits: d.count("units", 1, 10000),
	}
}

func (d *drawn) cable() catalog.Cable {
	c := catalog.Cable{
		Part: d.part(), Fine: rapid.Bool().Draw(d.T, "fine"), OuterM: d.orZero("outer", 1e-6, 100), KgPerM: d.orZero("mass", 1e-6, 1e3),
		Size:        rapid.SampledFrom([]catalog.Size{"14 AWG", "4/0 AWG", "250 kcmil", "1.5 mm2", "35 mm2"}).Draw(d.T, "size"),
		Material:    rapid.SampledFrom([]string{"copper", "aluminium"}).Draw(d.T, "material"),
		InsulationC: rapid.SampledFrom([]float64{60, 70, 75, 90, 105}).Draw(d.T, "insulation"), EndPrice: d.cents("end"),
	}
	c.CentsPerM, c.LowCentsPerM, c.HighCentsPerM = d.perMetre(&c.Part)
	return c
}

// perMetre draws the price of a metre and its range, and takes those of a piece off the part.
func (d *drawn) perMetre(p *catalog.Part) (price, low, high float64) {
	p.Price, p.MassKg, p.PriceLow, p.PriceHigh = 0, 0, 0, 0
	price = d.orZero("price", 1e-4, 1e12)
	if rapid.Bool().Draw(d.T, "guess") {
		low, high = price/2, math.Min(1e12, price*1.5+1)
		if low < 1e-4 {
			low = 0
		}
	}
	return price, low, high
}

// section draws a section of any shape, its sides as they are read.
func (d *drawn) section() catalog.Section {
	s := catalog.Section{Part: d.part(), YieldPa: d.number("yield", 1e6, 1e10), KgPerM: d.number("mass", 1e-3, 1e3),
		Shape: rapid.SampledFrom([]catalog.Shape{catalog.SquareTube, catalog.Flat, catalog.Angle, catalog.Ply}).Draw(d.T, "shape")}
	s.CentsPerM, s.LowCentsPerM, s.HighCentsPerM = d.perMetre(&s.Part)
	a, b := d.number("side", 1e-3, 0.1), d.number("other side", 1e-3, 0.1)
	switch s.Shape {
	case catalog.SquareTube:
		s.WidthM, s.HeightM, s.WallM = a, a, a/3
	case catalog.Flat:
		s.WidthM, s.HeightM = math.Min(a, b), math.Max(a, b)
	case catalog.Angle:
		s.WidthM, s.HeightM, s.WallM = a, b, math.Min(a, b)/3
	case catalog.Ply:
		s.WidthM = a
	}
	return s
}

// answer draws yes, no or neither.
func (d *drawn) answer(name string) catalog.Answer {
	return rapid.SampledFrom([]catalog.Answer{catalog.Unknown, catalog.Yes, catalog.No}).Draw(d.T, name)
}

// protocols draws words in their order.
func (d *drawn) protocols() []string {
	return rapid.SampledFrom([][]string{nil, {"can"}, {"can", "rs485"}, {"plain-words"}}).Draw(d.T, "protocols")
}

func (d *drawn) offer(e catalog.Entry) catalog.Offer {
	o := catalog.Offer{
		PartID: e.ID, Vendor: "v" + d.words("vendor"), Shipping: d.cents("shipping"), AsOf: d.day("as of"), Notes: d.words("notes"),
	}
	if e.Kind.ByLength() {
		o.CentsPerM, o.MinQty = d.orZero("price", 1e-4, 1e12), d.number("from", 1e-3, 1e6)
	} else {
		o.Price, o.MinQty = d.cents("price"), float64(d.count("from", 1, 1e6))
	}
	return o
}
