package catalog_test

import (
	"fmt"
	"io/fs"
	"math"
	"strings"
	"testing"
	"time"

	"cartwright/catalog"
)

// count returns how many rows have a quality.
func count[T any](rows []T, has func(T) bool) int {
	n := 0
	for _, r := range rows {
		if has(r) {
			n++
		}
	}
	return n
}

func chemistry(word string, low, high float64) func(catalog.Battery) bool {
	return func(b catalog.Battery) bool {
		return strings.Contains(b.Chemistry, word) && b.NominalV >= low && b.NominalV <= high
	}
}

func inverter(acV string, busV float64) func(catalog.Inverter) bool {
	return func(i catalog.Inverter) bool { return i.ACV == acV && i.DCMinV <= busV && busV <= i.DCMaxV }
}

// The embedded catalogue is rich enough to choose from.
func TestEmbeddedIsRich(t *testing.T) {
	c := catalog.Embedded()
	inGroup := func(name string) func(catalog.Battery) bool {
		return func(b catalog.Battery) bool { return b.Group == name }
	}
	device := func(kind string, has func(catalog.Device) bool) func(catalog.Device) bool {
		return func(d catalog.Device) bool { return d.Type == kind && has(d) }
	}
	for _, test := range []struct {
		name         string
		got, atLeast int
	}{
		{"batteries", len(c.Batteries), 16},
		{"LFP at 48 V", count(c.Batteries, chemistry("LFP", 48, 52)), 6},
		{"that may share a bus", count(c.Batteries, inGroup("lfp-16s")), 4},
		{"LFP at 24 V", count(c.Batteries, chemistry("LFP", 24, 26)), 2},
		{"LFP at 12 V", count(c.Batteries, chemistry("LFP", 12, 13)), 2},
		{"flooded lead", count(c.Batteries, chemistry("flooded", 2, 13)), 2},
		{"AGM lead", count(c.Batteries, chemistry("AGM", 2, 13)), 2},
		{"NMC", count(c.Batteries, chemistry("NMC", 20, 60)), 1},
		{"inverters", len(c.Inverters), 10},
		{"120 V from 24 V", count(c.Inverters, inverter("120", 24)), 2},
		{"120 V from 48 V", count(c.Inverters, inverter("120", 48)), 2},
		{"230 V from 24 V", count(c.Inverters, inverter("230", 24)), 2},
		{"230 V from 48 V", count(c.Inverters, inverter("230", 48)), 2},
		{"120/240 V from 48 V", count(c.Inverters, inverter("120/240", 48)), 2},
		{"without a charger", count(c.Inverters, func(i catalog.Inverter) bool { return i.ChargerA == 0 }), 2},
		{"devices", len(c.Devices), 35},
		{"fuses that break 20 kA", count(c.Devices, device("fuse", func(d catalog.Device) bool { return d.InterruptingDCA >= 20000 })), 10},
		{"fuses that break little", count(c.Devices, device("fuse", func(d catalog.Device) bool {
			return d.MaxDCV > 0 && d.InterruptingDCA <= 5000
		})), 6},
		{"dc breakers", count(c.Devices, device("breaker", func(d catalog.Device) bool { return d.MaxDCV > 0 })), 6},
		{"ac breakers of one pole", count(c.Devices, device("breaker", func(d catalog.Device) bool { return d.MaxACV > 0 && d.Poles == 1 })), 8},
		{"ac breakers of two poles", count(c.Devices, device("breaker", func(d catalog.Device) bool { return d.MaxACV > 0 && d.Poles == 2 })), 8},
		{"bus bars", len(c.Busbars), 4},
		{"casters", len(c.Casters), 8},
		{"solar modules", len(c.Solar), 3},
		{"offers", len(c.Offers), 5},
		{"conduits", len(c.Conduits), 12},
		{"sections", len(c.Sections), 8},
		{"modules that talk", count(c.Batteries, func(b catalog.Battery) bool { return len(b.Protocols) > 0 }), 6},
		{"modules with a device of their own", count(c.Batteries, func(b catalog.Battery) bool { return b.OwnInterruptingA > 0 }), 2},
		{"dc devices for small circuits", count(c.Devices, func(d catalog.Device) bool { return d.MaxDCV > 0 && d.RatingA <= 20 }), 8},
		{"fine strand", count(c.Cables, func(x catalog.Cable) bool { return x.Fine }), 10},
		{"modules with a size", count(c.Solar, func(s catalog.Solar) bool { return s.LengthM > 0 }), 5},
	} {
		t.Run(test.name, func(t *testing.T) {
			if test.got < test.atLeast {
				t.Errorf("%d, want at least %d", test.got, test.atLeast)
			}
		})
	}
	for _, role := range []string{"shunt", "disconnect", "load-centre", "receptacle", "enclosure"} {
		if count(c.Sundries, func(s catalog.Sundry) bool { return s.Role == role }) == 0 {
			t.Errorf("no sundry has the role %s", role)
		}
	}
}

func TestEmbeddedCableSizes(t *testing.T) {
	have := map[catalog.Size]int{}
	for _, cable := range catalog.Embedded().Cables {
		have[cable.Size]++
	}
	for _, size := range strings.Split("14 AWG,12 AWG,10 AWG,8 AWG,6 AWG,4 AWG,3 AWG,2 AWG,1 AWG,1/0 AWG,2/0 AWG,3/0 AWG,4/0 AWG,"+
		"1.5 mm2,2.5 mm2,4 mm2,6 mm2,10 mm2,16 mm2,25 mm2,35 mm2,50 mm2,70 mm2,95 mm2,120 mm2", ",") {
		if have[catalog.Size(size)] < 2 {
			t.Errorf("%d cables of %s, want two or more", have[catalog.Size(size)], size)
		}
	}
}

// Densities and prices that would make a part a slip of the pen, not a part.
func TestEmbeddedIsPlausible(t *testing.T) {
	c := catalog.Embedded()
	within := func(id, what string, got, low, high float64) {
		t.Helper()
		if !(got >= low && got <= high) {
			t.Errorf("%s: %s %.3g is not between %g and %g", id, what, got, low, high)
		}
	}
	for _, e := range c.All() {
		if !e.Kind.ByLength() {
			within(e.ID, "price", e.Price.Units(), 1, 5000)
			within(e.ID, "kg", e.MassKg, 0.05, 200)
		}
		if e.AsOf.Year() != 2026 {
			t.Errorf("%s: the price is of %v", e.ID, e.AsOf)
		}
	}
	for _, b := range c.Batteries {
		kWh := b.CapacityWh / 1000
		within(b.ID, "price of a kWh", b.Price.Units()/kWh, 90, 350)
		within(b.ID, "kWh of a litre", kWh/(b.LengthM*b.WidthM*b.HeightM*1000), 0.04, 0.40)
		if b.Chemistry == "LFP" { // a 5 kWh module of 48 V weighs about 45 kg; common practice, no source
			within(b.ID, "kg of a kWh", b.MassKg/kWh, 7.5, 11)
		}
		within(b.ID, "C rate", b.MaxDischargeA*b.NominalV/b.CapacityWh, 0.2, 1.1)
	}
	for _, s := range c.Sections {
		within(s.ID, "kg of a metre", s.KgPerM, 0.5, 6)
		within(s.ID, "price of a metre", s.CentsPerM/100, 2, 20)
	}
	if len(c.Warnings) > 0 || len(c.Own) > 0 {
		t.Errorf("warnings %v, own columns %v", c.Warnings, c.Own)
	}
	for _, cable := range c.Cables {
		if cable.OuterM > 0 { // the conductor inside, and a wall of insulation
			bare := math.Sqrt(cable.Size.AreaMM2()*4/math.Pi) / 1000
			within(cable.ID, "outer diameter over that of a solid conductor", cable.OuterM/bare, 1.2, 2.6)
		}
		const copper = 8.96e-3 // kg per metre of 1 mm2: density of copper 8.96 g/cm3
		a := cable.Size.AreaMM2()
		within(cable.ID, "mass over that of its copper", cable.KgPerM/(a*copper), 1, 3.2)
		within(cable.ID, "price of a metre and mm2", cable.CentsPerM/100/a, 0.1, 0.5)
	}
}

// A few prices are old on the day the demos are told from, most are not.
func TestEmbeddedAges(t *testing.T) {
	day := time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)
	all := catalog.Embedded().All()
	old := count(all, func(e catalog.Entry) bool { return e.Stale(day) })
	if old < 3 || old > len(all)/5 {
		t.Errorf("%d of %d prices are stale", old, len(all))
	}
}

// Each file says in its first lines that its parts are invented.
func TestEmbeddedSaysItIsInvented(t *testing.T) {
	for _, k := range append(catalog.Kinds(), "") {
		file := k.File()
		if k == "" {
			file = catalog.OffersFile
		}
		data, err := fs.ReadFile(catalog.EmbeddedFiles(), file)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.HasPrefix(string(data), "# Invented, unbranded parts") {
			t.Errorf("%s begins with %.40q", file, data)
		}
	}
}

// Each call returns a catalogue of the caller's own.
func TestEmbeddedIsNotShared(t *testing.T) {
	catalog.Embedded().Batteries[0].ID = "scratched"
	if catalog.Embedded().Batteries[0].ID == "scratched" {
		t.Error("two callers share a catalogue")
	}
}

func ExampleEmbedded() {
	c := catalog.Embedded()
	part, _ := c.Find("lfp-rack-5")
	fmt.Println(part.Kind, part.Name, part.Price.Units(), part.MassKg, "kg", part.Pos)
	// Output: battery Rack module 5.1 kWh LFP 1180 45 kg embedded catalogue/batteries.csv:5:1
}
