package audit

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// fair is a cart under the iec rules: a 24 V bus with two modules in series, parallel sets, the inverter's
// own breaker on the main, measured loads, fine strand, a frame and rails cut from sections, stacked modules, and the sun's year of an array that is carried along. The figures of
// fairPlan were worked out apart from this package, from the formulas and tables it names.
func fair() (*scenarios.Scenario, *catalog.Catalog, *plan.Plan) {
	return fairScenario(), fairCatalog(), fairPlan()
}

func fairScenario() *scenarios.Scenario {
	watts := make([]float64, 24)
	for h := range watts {
		watts[h] = 60
		if h >= 17 && h < 22 {
			watts[h] = 420
		}
	}
	shelf := scenarios.Shelf{LengthM: 0.4, DepthM: 0.36, Stack: 1, ClearHeightM: 0.25, MaxMassKg: 30}
	low, high := shelf, shelf
	low.Name, low.ElevationM = "a", 0.1
	high.Name, high.ElevationM = "b", 0.4
	high.Stack, high.ClearHeightM, high.MaxMassKg = 2, 0.45, math.Inf(1)
	high.Rails = &scenarios.Rails{Section: "flat-20", SpanM: 0.4, Count: 2}
	return &scenarios.Scenario{
		Name: "fair", Currency: "EUR", Rules: scenarios.IEC,
		Bus:       scenarios.Bus{NominalV: 24, LowV: 21, HighV: 30},
		Measured:  &scenarios.Measured{StepMin: 60, LegA: watts},
		AutonomyH: 24,
		Recharge:  &scenarios.Recharge{WithinH: 6, From: "grid", Supply: &scenarios.Supply{Volts: 230, DeviceA: 10}},
		Cart: scenarios.Cart{
			Casters: 4, WheelbaseM: 0.6, TrackM: 0.5, CasterMassHeightM: 0.05, Rolling: 0.02, Grip: 0.5,
			Pieces: []scenarios.Piece{
				{Section: "tube-30", LengthM: 0.5, Count: 4, HeightM: 0.35}, {Section: "tube-30", LengthM: 0.6, Count: 6, HeightM: 0.25},
			},
			Shelves:   []scenarios.Shelf{low, high},
			Backboard: scenarios.Backboard{ElevationM: 0.6, OffsetM: 0.1},
		},
		Limits: scenarios.Limits{MassKg: math.Inf(1), Budget: math.MaxInt64, TiltDeg: 10, Served: 0.6},
		Sun: &scenarios.Sun{
			LatitudeDeg: 48, TiltDeg: 35, AzimuthDeg: 180, Ground: 0.2, Losses: 0.1, ColdestC: -15, HottestC: 40,
			Room: &fairRoom, OnCart: true, HeightM: 1.1,
			MonthlyKWhM2: [12]float64{1, 1.8, 3, 4.3, 5.2, 5.8, 5.7, 4.9, 3.6, 2.1, 1.1, 0.8},
			WarmthC:      [12]float64{0, 1, 5, 9, 14, 17, 19, 19, 15, 10, 4, 1},
		},
		GridCentsPerKWh: 35,
		UseDays:         365, Cable: scenarios.CableWish{Fine: true}, CasterFactor: 1.5, ACFaultA: 3000,
		Runs: []scenarios.Run{
			{Kind: scenarios.RunString, LengthM: 0.5, LinkM: 0.25, AmbientC: 30, Bundled: 2, Drop: 0.02},
			{Kind: scenarios.RunMain, LengthM: 0.6, AmbientC: 30, Bundled: 2, Drop: 0.02, OwnBreakerA: 125},
			{Kind: scenarios.RunFeeder, LengthM: 0.8, AmbientC: 30, Bundled: 2, Drop: 0.03},
			{Kind: scenarios.RunInlet, LengthM: 1, AmbientC: 30, Bundled: 2, Drop: 0.03},
			{Kind: scenarios.RunSolar, LengthM: 5, AmbientC: 30, Bundled: 2, Drop: 0.03},
			{Kind: scenarios.RunBond, LengthM: 0.9, AmbientC: 30, Bundled: 2, Drop: 0.03},
		},
		Circuits: []scenarios.Circuit{
			{Name: "stall", Volts: 230, DeviceA: 10, LengthM: 4, Neutral: true, AmbientC: 30, Bundled: 2, Drop: 0.03, Conduit: "pvc-40",
				Receptacle: &scenarios.Receptacle{Role: "receptacle", RatingA: 16, Count: 1}},
			{Name: "cooler", DC: true, Volts: 24, DeviceA: 10, LengthM: 1.5, AmbientC: 30, Bundled: 2, Drop: 0.03},
		},
	}
}

// fairCatalog is made up.
func fairCatalog() *catalog.Catalog {
	part := func(id string, price catalog.Cents, kg float64) catalog.Part {
		return catalog.Part{ID: id, Name: id, Price: price, MassKg: kg}
	}
	cable := func(id string, centsPerM, kgPerM float64, size catalog.Size, insulationC float64, end catalog.Cents) catalog.Cable {
		return catalog.Cable{Part: part(id, 0, 0), CentsPerM: centsPerM, KgPerM: kgPerM, Size: size,
			Material: "copper", InsulationC: insulationC, EndPrice: end}
	}
	fine := func(c catalog.Cable) catalog.Cable { c.Fine = true; return c }
	outer := func(mm float64, c catalog.Cable) catalog.Cable { c.OuterM = mm / 1000; return c }
	fuse := func(id string, price catalog.Cents, kg, amps, dcV, dcA, acV, acA float64) catalog.Device {
		return catalog.Device{Part: part(id, price, kg), Type: "fuse", Class: "gG", RatingA: amps, Poles: 1,
			MaxDCV: dcV, InterruptingDCA: dcA, MaxACV: acV, InterruptingACA: acA, TerminalC: 75}
	}
	pv := func(poles int, d catalog.Device) catalog.Device { d.Class, d.Poles = "gPV", poles; return d }
	return &catalog.Catalog{
		Batteries: []catalog.Battery{
			{Part: part("block", 31000, 12), NominalV: 12.8, MinV: 10, MaxV: 14.6, CapacityWh: 1280, UsableFraction: 0.8,
				RoundTrip: 0.96, MaxDischargeA: 100, PeakDischargeA: 120, MaxChargeA: 50, ResistanceOhm: 0.006, CycleLife: 4000, CalendarYears: 15,
				MaxParallel: 4, MaxSeries: 4, LengthM: 0.33, WidthM: 0.17, HeightM: 0.22},
		},
		Inverters: []catalog.Inverter{
			{Part: part("sine-2", 42000, 9), DCMinV: 20, DCMaxV: 32, ACV: "230", ChargerACV: "230", ContinuousW: 2000, SurgeW: 4000,
				LegW: 2000, LegSurgeW: 4000, Efficiency: 0.9, IdleW: 12, ChargerA: 35, MaxUnits: 1,
				SolarMaxW: 700, SolarMaxVocV: 150, MPPTMinV: 25, MPPTMaxV: 100, MPPTMaxA: 20, MPPTInputs: 2},
		},
		Cables: []catalog.Cable{
			fine(cable("c50", 550, 0.5, "50 mm2", 70, 90)), fine(cable("c35", 410, 0.38, "35 mm2", 90, 80)),
			outer(2.8, cable("c1.5", 55, 0.02, "1.5 mm2", 70, 0)), cable("c4", 120, 0.05, "4 mm2", 90, 40),
		},
		Devices: []catalog.Device{
			fuse("gg-125", 1800, 0.25, 125, 80, 10000, 0, 0),
			fuse("gg-10", 400, 0.05, 10, 0, 0, 400, 50000), fuse("gg-10-b", 450, 0.06, 10, 0, 0, 400, 50000),
			fuse("gg-10-in", 420, 0.05, 10, 0, 0, 400, 50000), fuse("gg-10-dc", 380, 0.04, 10, 80, 10000, 0, 0),
			pv(2, fuse("pv-25", 2500, 0.3, 25, 100, 10000, 0, 0)), pv(1, fuse("pv-10", 500, 0.02, 10, 100, 10000, 0, 0)),
		},
		Busbars: []catalog.Busbar{{Part: part("bars-150", 4000, 0.8), RatingA: 150, Studs: 4}},
		Casters: []catalog.Casters{{Part: part("caster-60", 6000, 5), SetOf: 4, RatingKg: 60}},
		Conduits: []catalog.Conduit{{Part: part("pvc-20", 0, 0), CentsPerM: 200, KgPerM: 0.1, TradeSize: "20 mm", Type: "pvc-40",
			InsideMM2: 100, EndPrice: 50}},
		Solar: []catalog.Solar{{Part: part("leaf", 15000, 3), Watts: 100, VocV: 24, VmpV: 20, IscA: 5.3, ImpA: 5, VocTempPctPerC: -0.3,
			PowerTempPctPerC: -0.35, NOCTC: 45, MaxFuseA: 12, MaxSystemV: 100, LengthM: 1, WidthM: 0.5}},
		Sections: []catalog.Section{
			{Part: part("tube-30", 0, 0), CentsPerM: 350, KgPerM: 1.7584, Shape: catalog.SquareTube, WidthM: 0.03, HeightM: 0.03, WallM: 0.002, YieldPa: 235e6},
			{Part: part("flat-20", 0, 0), KgPerM: 0.471, Shape: catalog.Flat, WidthM: 0.003, HeightM: 0.02, YieldPa: 235e6},
		},
		Sundries: []catalog.Sundry{{Part: part("outlet-16", 600, 0.1), Role: "receptacle", RatingA: 16}},
	}
}

func fairPlan() *plan.Plan {
	each := func(part, kind string, quantity, price float64, line plan.Money) plan.Line {
		return plan.Line{Part: part, Kind: kind, Quantity: quantity, Unit: "each", Buy: quantity, UnitPrice: price, Line: line}
	}
	metres := func(part string, quantity, price float64, line plan.Money) plan.Line {
		l := each(part, "cable", quantity, price, line)
		l.Unit = "m"
		return l
	}
	of := func(kind string, l plan.Line) plan.Line { l.Kind = kind; return l }
	least := func(name string, value, limit float64, unit string) plan.Limit {
		return plan.Limit{Name: name, Value: value, Limit: limit, Unit: unit, Slack: value - limit}
	}
	most := func(name string, value, limit float64, unit string) plan.Limit {
		return plan.Limit{Name: name, Value: value, Limit: limit, Unit: unit, Slack: limit - value}
	}
	binds := func(l plan.Limit) plan.Limit { l.Binding = true; return l }
	two := []plan.ShelfModules{{Part: "block", Modules: 2}}
	return &plan.Plan{
		Rank: 1, Spend: 333123, Cost: 333123,
		UsableKWh: 4.013243994575959, AutonomyH: 24.261651799253393, MassKg: 105.66304,
		CostPerUsableKWh: 830.0591751964932, CostPerExtraKWh: 830.0591751964932, CostPerLifetimeKWh: 0.3245573784344727,
		Core: plan.Core{
			Batteries: []plan.CoreBattery{{Part: "block", Strings: 2, Series: 2}},
			Inverter:  plan.CoreInverter{Part: "sine-2", Units: 1},
			Solar:     []plan.CoreSolar{{Part: "leaf", Series: 3, Parallel: 3, Inputs: 1}},
		},
		Year: fairYear(),
		Bill: []plan.Line{
			each("block", "battery", 4, 310, 124000), each("sine-2", "inverter", 1, 420, 42000),
			metres("c50", 5, 5.5, 2750), each("c50", "cable-end", 24, 0.9, 2160),
			metres("c35", 2.1, 4.1, 861), each("c35", "cable-end", 6, 0.8, 480),
			metres("c1.5", 20.4, 0.55, 1122), // its ends cost nothing and are left out
			each("leaf", "solar", 9, 150, 135000), metres("c4", 15, 1.2, 1800), each("c4", "cable-end", 6, 0.4, 240),
			each("pv-25", "device", 1, 25, 2500), each("pv-10", "device", 3, 5, 1500),
			of("conduit", metres("pvc-20", 4, 2, 800)), each("pvc-20", "conduit-end", 2, 0.5, 100),
			of("section", metres("tube-30", 5.6, 3.5, 1960)),
			each("gg-125", "device", 2, 18, 3600), each("gg-10", "device", 1, 4, 400), each("gg-10-b", "device", 1, 4.5, 450),
			each("gg-10-in", "device", 1, 4.2, 420), each("gg-10-dc", "device", 1, 3.8, 380),
			each("bars-150", "busbar", 1, 40, 4000), each("caster-60", "casters", 1, 60, 6000), each("outlet-16", "sundry", 1, 6, 600),
		},
		// Ampacities by IEC 60364-5-52 tables B.52.2 and B.52.3, resistances by IEC 60228 class 5 at 70 °C.
		Runs: []plan.Run{
			{Run: "string", Battery: "block", Cable: "c50", Sets: 2, Device: "gg-125", Devices: 1, Count: 2, LengthM: 0.5, BoughtM: 0.5,
				Links: 1, LinkM: 0.25, Conductors: 2,
				DesignA: 100, RequiredA: 100, AllowedA: 268.8, DeviceA: 125, DropPct: 0.12027317708333334, DropLimitPct: 2,
				FaultA: 2433.3333333333335, InterruptingA: 10000},
			{Run: "main", Cable: "c35", Sets: 1, Count: 1, LengthM: 0.6, BoughtM: 0.6, Conductors: 2,
				DesignA: 105.82010582010581, RequiredA: 105.82010582010581, AllowedA: 171, DeviceA: 125,
				DropPct: 0.3507201058201057, DropLimitPct: 2, FaultA: 4866.666666666667},
			{Run: "feeder", Cable: "c1.5", Ground: "c1.5", Sets: 1, Device: "gg-10", Devices: 1, Count: 1, LengthM: 0.8, BoughtM: 0.8, Conductors: 2,
				DesignA: 8.695652173913043, RequiredA: 8.695652173913043, AllowedA: 17.5, DeviceA: 10,
				DropPct: 0.09626283553875237, DropLimitPct: 3, FaultA: 3000, InterruptingA: 50000},
			{Run: "branch", Name: "stall", Cable: "c1.5", Ground: "c1.5", Conduit: "pvc-20", Sets: 1, Device: "gg-10-b", Devices: 1, Count: 1, LengthM: 4, BoughtM: 4, Conductors: 2,
				DesignA: 10, RequiredA: 10, AllowedA: 17.5, DeviceA: 10, DropPct: 0.553511304347826, DropLimitPct: 3,
				FaultA: 3000, InterruptingA: 50000},
			{Run: "dc", Name: "cooler", Cable: "c1.5", Sets: 1, Device: "gg-10-dc", Devices: 1, Count: 1, LengthM: 1.5, BoughtM: 1.5, Conductors: 2,
				DesignA: 10, RequiredA: 10, AllowedA: 19.5, DeviceA: 10, DropPct: 1.98918125, DropLimitPct: 3,
				FaultA: 4866.666666666667, InterruptingA: 10000},
			{Run: "inlet", Cable: "c1.5", Ground: "c1.5", Sets: 1, Device: "gg-10-in", Devices: 1, Count: 1, LengthM: 1, BoughtM: 1, Conductors: 2,
				DesignA: 10, RequiredA: 10, AllowedA: 17.5, DeviceA: 10, DropPct: 0.1383778260869565, DropLimitPct: 3,
				FaultA: 3000, InterruptingA: 50000},
			{Run: "solar", Cable: "c4", Ground: "c4", Sets: 1, Device: "pv-25", Devices: 1, StringFuse: "pv-10", StringFuses: 3, Count: 1,
				LengthM: 5, BoughtM: 5, Conductors: 2, DesignA: 19.875, RequiredA: 19.875, AllowedA: 40.95, DeviceA: 25,
				DropPct: 1.48066875, DropLimitPct: 3, FaultA: 19.875, InterruptingA: 10000},
			{Run: "bond", Ground: "c35", Sets: 1, Count: 1, LengthM: 0.9, BoughtM: 0.9},
		},
		Shelves: []plan.Shelf{{Shelf: "a", Batteries: two, MassKg: 24}, {Shelf: "b", Batteries: two, MassKg: 24}},
		Casters: plan.Casters{Part: "caster-60", Count: 4, LoadEachKg: 52.83152, RatingEachKg: 60},
		Balance: plan.Balance{CGHeightMM: 588.4085863893373, TiltDeg: 21.773554091819243, RequiredDeg: 10},
		Limits: []plan.Limit{
			least("autonomy", 24.261651799253393, 24, "h"),
			least("power", 2000, 420, "W"), least("surge", 4000, 420, "W"),
			least("bus current", 200, 105.82010582010581, "A"), least("bus current, peak", 240, 22.22222222222222, "A"),
			least("recharge, charger", 35, 28.125, "A"), least("recharge, batteries", 100, 28.125, "A"),
			least("served", 0.6883854808286397, 0.6, ""),
			least("tilt, sideways", 21.773554091819243, 10, "deg"), least("tilt, lengthways", 27.014751690469225, 10, "deg"),
			most("caster load", 52.83152, 60, "kg"),
			most("bus bar current", 132.27513227513225, 150, "A"), binds(most("bus bar studs", 4, 4, "each")),
			most("shelf room: a", 0.825, 1, ""), most("shelf mass: a", 24, 30, "kg"),
			most("shelf room: b", 0.425, 1, ""), most("shelf mass: b", 24, 115.02398882391029, "kg"),
		},
	}
}

// fairYear was worked out apart from here by a script of its own, from the formulas of Duffie and Beckman and sums
// over a thousand parts of each hour.
func fairYear() *plan.Year {
	saved, payback := plan.Money(28446), 11.710915503438507
	return &plan.Year{
		Served: 0.6883854808286397, ShortH: 2937, LongestShortH: 90, WallKWh: 442.21839644648475, SpilledKWh: 93.13954418809242,
		ClippedKWh: 8.239783125455611, SunKWh: 1098.5520283486223, Cycles: 170.5007558705227,
		Months: []plan.Month{
			{Sun: 44.49827318589848, Load: 120.52799999999885, Short: 77.18395291287825, Spilled: 0},
			{Sun: 65.99020494705243, Load: 108.86399999999901, Short: 46.34396837695397, Spilled: 0.1831961659825281},
			{Sun: 97.07405760862751, Load: 120.52799999999885, Short: 31.413574291447414, Spilled: 5.127514286961964},
			{Sun: 113.56345086219079, Load: 116.6399999999989, Short: 16.31926766693138, Spilled: 10.1591836185405},
			{Sun: 125.65993957080204, Load: 120.52799999999885, Short: 13.575228531135219, Spilled: 15.53461649193302},
			{Sun: 128.4210585236192, Load: 116.6399999999989, Short: 11.110183198728384, Spilled: 19.857962864063005},
			{Sun: 132.54982741087775, Load: 120.52799999999885, Short: 11.193202306790505, Spilled: 20.07097575215718},
			{Sun: 125.08279696616061, Load: 120.52799999999885, Short: 13.166261037332227, Spilled: 14.56800098554297},
			{Sun: 104.89921231956707, Load: 116.6399999999989, Short: 19.99431031957356, Spilled: 5.40321024916832},
			{Sun: 77.73356788688517, Load: 120.52799999999885, Short: 46.15899546897806, Spilled: 2.234883773742914},
			{Sun: 45.46356821705059, Load: 116.6399999999989, Short: 71.91776247948145, Spilled: 0},
			{Sun: 37.61607084989005, Load: 120.52799999999885, Short: 83.84168985624068, Spilled: 0},
		},
		Saved: &saved, PaybackYears: &payback,
	}
}

// fairRoom is shared, so that two carts have equal suns.
var fairRoom = scenarios.Room{LengthM: 3, WidthM: 1.6}
