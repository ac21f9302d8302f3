package optimize_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/value"
	"cartwright/scenarios"
)

// small returns a problem of which every figure can be worked out by hand: one battery of 5 kWh, one
// inverter, one cable, two devices, one pair of bus bars, one set of casters. Two shelves take two modules
// each.
func small() question.Problem {
	part := func(id string, price catalog.Cents, kg float64) catalog.Part {
		return catalog.Part{ID: id, Name: "name of " + id, Price: price, MassKg: kg}
	}
	c := &catalog.Catalog{
		Batteries: []catalog.Battery{{Part: part("slab", 100000, 40), Chemistry: "LFP", NominalV: 51.2, MinV: 45, MaxV: 58,
			CapacityWh: 5000, UsableFraction: 0.9, RoundTrip: 1, MaxDischargeA: 40, PeakDischargeA: 40, MaxChargeA: 40, ResistanceOhm: 0.029,
			ShortCircuitA: 2000, CycleLife: 4000, MaxSeries: 1, LengthM: 0.5, WidthM: 0.4, HeightM: 0.1}},
		Inverters: []catalog.Inverter{{Part: part("hum", 50000, 10), DCMinV: 40, DCMaxV: 62, ACV: "120", ChargerACV: "120", ContinuousW: 1000,
			SurgeW: 2000, LegW: 1000, LegSurgeW: 2000, Efficiency: 0.9, IdleW: 10, ChargerA: 20, MaxUnits: 1}},
		Cables: []catalog.Cable{{Part: part("rope", 0, 0), CentsPerM: 1000, KgPerM: 0.5, Size: "6 AWG", Material: "copper",
			InsulationC: 75, EndPrice: 200}},
		Devices: []catalog.Device{
			{Part: part("link", 5000, 1), Type: "fuse", RatingA: 50, Poles: 1, MaxDCV: 80, InterruptingDCA: 5000, TerminalC: 75},
			{Part: part("link-strong", 9000, 1), Type: "fuse", RatingA: 50, Poles: 1, MaxDCV: 80, InterruptingDCA: 20000, TerminalC: 75},
		},
		Busbars: []catalog.Busbar{{Part: part("bars", 2000, 1), RatingA: 200, Studs: 9}},
		Casters: []catalog.Casters{{Part: part("wheels", 4000, 4), SetOf: 4, RatingKg: 200}},
	}
	s := &scenarios.Scenario{Name: "small", Currency: "USD", Rules: scenarios.NEC,
		Bus:       scenarios.Bus{NominalV: 48, LowV: 46, HighV: 60},
		Loads:     []scenarios.Load{{Name: "lamp", Watts: 100, Count: 1, Leg: scenarios.LegAuto, AllDay: true, Duty: 1, PowerFactor: 1, Start: 1}},
		AutonomyH: 4, UseDays: 365, CasterFactor: 1.25, ACFaultA: 5000, Tax: 0.1,
		Cart: scenarios.Cart{Casters: 4, WheelbaseM: 1, TrackM: 0.6, CasterMassHeightM: 0.1, Rolling: 0.02, Grip: 0.5,
			Frame: scenarios.Mass{MassKg: 20, HeightM: 0.3}, Backboard: scenarios.Backboard{ElevationM: 0.5},
			Shelves: []scenarios.Shelf{
				{Name: "low", ElevationM: 0.2, LengthM: 1, DepthM: 0.4, Stack: 1, ClearHeightM: 0.2, MaxMassKg: math.Inf(1)},
				{Name: "high", ElevationM: 0.5, LengthM: 1, DepthM: 0.4, Stack: 1, ClearHeightM: 0.2, MaxMassKg: math.Inf(1)},
			}},
		Limits: scenarios.Limits{MassKg: math.Inf(1), Budget: math.MaxInt64, TiltDeg: 10, Reserve: 0.1},
		Runs:   []scenarios.Run{{Kind: scenarios.RunString, LengthM: 1, AmbientC: 30, Bundled: 2, Drop: 0.03}},
		Solver: scenarios.Solver{TimeLimitS: 60, Plans: 10},
	}
	return question.Problem{Scenario: s, Catalog: c}
}

// valued returns the table of a problem.
func valued(t *testing.T, p question.Problem) *value.Table {
	t.Helper()
	v, err := value.Find(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// exactly reports whether two figures are the same but for rounding in the last digits of a float64.
func exactly(got, want float64) bool { return math.Abs(got-want) <= 1e-12*math.Abs(want) }

// By hand: 5 kWh * 0.9 * 0.9 = 4.05 kWh usable; 1000 / 4.05; 1000 / (4000 * 4.05); 40 kg / 4.05;
// 0.5 * 0.4 * 0.1 m3 = 20 l / 4.05. The string run is 2 m of rope, 4 ends, a link: 20 + 8 + 50 = 78; with
// the module 1078, tax 107.80.
func TestValueByHand(t *testing.T) {
	b := valued(t, small()).Batteries[0]
	for _, f := range []struct {
		name      string
		got, want float64
	}{
		{"price", b.Price.Units(), 1000},
		{"usable kWh", b.UsableKWh, 4.05},
		{"price of a usable kWh", b.CostPerUsableKWh, 1000 / 4.05},
		{"price of a lifetime kWh", b.CostPerLifetimeKWh, 1000 / (4000 * 4.05)},
		{"kg", b.KgPerUsableKWh, 40 / 4.05},
		{"litres", b.LitresPerUsableKWh, 20 / 4.05},
		{"landed kWh", b.Landed.CostPerUsableKWh, 1185.80 / 4.05},
	} {
		if !exactly(f.got, f.want) {
			t.Errorf("%s: got %v, want %v", f.name, f.got, f.want)
		}
	}
	want := value.Landed{Modules: 100000, Wiring: 7800, Tax: 10780, Cost: 118580, CostPerUsableKWh: b.Landed.CostPerUsableKWh,
		Cable: "rope", Device: "link"}
	if *b.Landed != want {
		t.Errorf("landed: got %+v, want %+v", *b.Landed, want)
	}
}

// The landed price weighs price, quantity breaks and shipping against each other.
func TestLanded(t *testing.T) {
	offer := func(part, vendor string, price, shipping catalog.Cents, from float64) catalog.Offer {
		return catalog.Offer{PartID: part, Vendor: vendor, Price: price, Shipping: shipping, MinQty: from}
	}
	for _, c := range []struct {
		name   string
		change func(p question.Problem)
		price  plan.Money
		want   value.Landed // but for the price of a kWh
	}{
		{"a cheap offer with shipping beats none", func(p question.Problem) {
			p.Catalog.Offers = []catalog.Offer{offer("slab", "a", 90000, 5000, 1), offer("slab", "b", 99000, 0, 1)}
		}, 90000, value.Landed{Modules: 90000, Wiring: 7800, Shipping: 5000, Tax: 10280, Cost: 113080, Vendor: "a", Cable: "rope", Device: "link"}},
		{"a dear shipping does not", func(p question.Problem) {
			p.Catalog.Offers = []catalog.Offer{offer("slab", "a", 90000, 9500, 1), offer("slab", "b", 99000, 0, 1)}
		}, 90000, value.Landed{Modules: 99000, Wiring: 7800, Tax: 10680, Cost: 117480, Vendor: "b", Cable: "rope", Device: "link"}},
		{"one shipping serves module and device", func(p question.Problem) {
			p.Catalog.Offers = []catalog.Offer{offer("slab", "a", 90000, 5000, 1), offer("link-strong", "a", 4900, 3000, 1)}
		}, 90000, value.Landed{Modules: 90000, Wiring: 7700, Shipping: 5000, Tax: 10270, Cost: 112970, Vendor: "a", Cable: "rope", Device: "link-strong"}},
		{"two may be cheaper than one", func(p question.Problem) {
			p.Catalog.Offers = []catalog.Offer{offer("slab", "a", 90000, 0, 1), offer("slab", "a", 40000, 0, 2)}
		}, 80000, value.Landed{Modules: 80000, Wiring: 7800, Tax: 8780, Cost: 96580, Vendor: "a", Cable: "rope", Device: "link"}},
		{"a series string reaches the quantity break", func(p question.Problem) {
			b := &p.Catalog.Batteries[0]
			b.NominalV, b.MinV, b.MaxV, b.MaxSeries = 25.6, 22, 29, 2
			p.Catalog.Offers = []catalog.Offer{offer("slab", "a", 90000, 0, 1), offer("slab", "a", 70000, 0, 2)}
		}, 90000, value.Landed{Modules: 140000, Wiring: 8200, Tax: 14820, Cost: 163020, Vendor: "a", Cable: "rope", Device: "link"}},
		{"the device breaks the string's own fault", func(p question.Problem) {
			p.Catalog.Batteries[0].ShortCircuitA = 6000
		}, 100000, value.Landed{Modules: 100000, Wiring: 11800, Tax: 11180, Cost: 122980, Cable: "rope", Device: "link-strong"}},
		{"no string run, no wiring", func(p question.Problem) { p.Scenario.Runs = nil },
			100000, value.Landed{Modules: 100000, Tax: 10000, Cost: 110000}},
		{"what is owned costs as much", func(p question.Problem) {
			p.Scenario.Have = []scenarios.Holding{{PartID: "slab", Count: 3}, {PartID: "rope", Count: 9, ByLength: true}}
		}, 100000, value.Landed{Modules: 100000, Wiring: 7800, Tax: 10780, Cost: 118580, Cable: "rope", Device: "link"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := small()
			c.change(p)
			b := valued(t, p).Batteries[0]
			if b.Price != c.price {
				t.Errorf("price of one: got %s, want %s", b.Price, c.price)
			}
			c.want.CostPerUsableKWh = c.want.Cost.Units() / (b.UsableKWh * float64(b.Series))
			if !exactly(b.Landed.CostPerUsableKWh, c.want.CostPerUsableKWh) {
				t.Errorf("a kWh costs %v, want %v", b.Landed.CostPerUsableKWh, c.want.CostPerUsableKWh)
			}
			b.Landed.CostPerUsableKWh = c.want.CostPerUsableKWh
			if *b.Landed != c.want {
				t.Errorf("got  %+v\nwant %+v", *b.Landed, c.want)
			}
		})
	}
}

// Owned and for sale are marked, a cycle life that is not stated is left out, no cable means no landed
// price.
func TestValueMarks(t *testing.T) {
	p := small()
	price := catalog.Cents(42000)
	p.Scenario.Have = []scenarios.Holding{{PartID: "slab", Count: 2, Sell: &price}}
	p.Catalog.Batteries[0].CycleLife = 0
	p.Catalog.Cables[0].Size = "14 AWG"
	b := valued(t, p).Batteries[0]
	if b.Owned != 2 || b.ForSale == nil || *b.ForSale != 42000 {
		t.Errorf("owned %v, for sale at %v; want 2 at 420", b.Owned, b.ForSale)
	}
	if b.CostPerLifetimeKWh != 0 {
		t.Errorf("a lifetime kWh costs %v, want 0: no cycle life is stated", b.CostPerLifetimeKWh)
	}
	if b.Landed != nil {
		t.Errorf("landed %+v, want none: 14 AWG carries no 40 A", *b.Landed)
	}
	if want := (value.Count{Limits: []string{value.StopsWiring}}); b.Count.Strings != 0 || !slices.Equal(b.Count.Limits, want.Limits) {
		t.Errorf("count %+v, want %+v", b.Count, want)
	}
}

// A battery that does not fit the bus is listed with the condition that fails.
func TestMisfits(t *testing.T) {
	for _, c := range []struct {
		name             string
		nominal, highest float64
		series           int
		want             string
	}{
		{"too high alone", 120, 130, 1, "one of 120 V is more than the bus of 48 V (bus.nominal)"},
		{"too many in series", 12.8, 14.6, 2, "the bus of 48 V takes 4 of 12.8 V in series, the maker allows 2 (batteries.csv, max_series)"},
		{"above the bus when full", 51.8, 60.2, 1, "1 in series reach 60.2 V, the bus is never above 60 V (bus.high)"},
		{"below the bus", 44.4, 50.4, 1, "1 in series have 44.4 V, the bus is never below 46 V (bus.low)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := small()
			b := &p.Catalog.Batteries[0]
			b.NominalV, b.MaxV, b.MaxSeries = c.nominal, c.highest, c.series
			v := valued(t, p)
			if len(v.Batteries) != 0 || len(v.Misfits) != 1 || v.Misfits[0] != (value.Misfit{Part: "slab", Reason: c.want}) {
				t.Errorf("got %+v, want only the misfit %q", v, c.want)
			}
		})
	}
}
