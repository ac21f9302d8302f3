package audit

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// fair is a cart under the iec rules: a 24 V bus with two modules in series, parallel sets, the inverter's
// own breaker on the main, measured loads, and nothing asked for but what every cart has. The figures of
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
	return &scenarios.Scenario{
		Name: "fair", Currency: "EUR", Rules: scenarios.IEC,
		Bus:       scenarios.Bus{NominalV: 24, LowV: 21, HighV: 30},
		Measured:  &scenarios.Measured{StepMin: 60, LegA: watts},
		AutonomyH: 24,
		Cart: scenarios.Cart{
			Casters: 4, WheelbaseM: 0.6, TrackM: 0.5, CasterMassHeightM: 0.05, Rolling: 0.02, Grip: 0.5,
			Frame:     scenarios.Mass{Name: "frame", MassKg: 20, HeightM: 0.3},
			Shelves:   []scenarios.Shelf{low, high},
			Backboard: scenarios.Backboard{ElevationM: 0.6, OffsetM: 0.1},
		},
		Limits:  scenarios.Limits{MassKg: math.Inf(1), Budget: math.MaxInt64, TiltDeg: 10},
		UseDays: 365, CasterFactor: 1.5, ACFaultA: 3000,
		Runs: []scenarios.Run{
			{Kind: scenarios.RunString, LengthM: 0.5, AmbientC: 30, Bundled: 2, Drop: 0.02},
			{Kind: scenarios.RunMain, LengthM: 0.6, AmbientC: 30, Bundled: 2, Drop: 0.02, OwnBreakerA: 125},
			{Kind: scenarios.RunFeeder, LengthM: 0.8, AmbientC: 30, Bundled: 2, Drop: 0.03},
		},
		Circuits: []scenarios.Circuit{
			{Name: "stall", Volts: 230, DeviceA: 10, LengthM: 4, Neutral: true, AmbientC: 30, Bundled: 2, Drop: 0.03,
				Receptacle: &scenarios.Receptacle{Role: "receptacle", RatingA: 16, Count: 1}},
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
	fuse := func(id string, price catalog.Cents, kg, amps, dcV, dcA, acV, acA float64) catalog.Device {
		return catalog.Device{Part: part(id, price, kg), Type: "fuse", Class: "gG", RatingA: amps, Poles: 1,
			MaxDCV: dcV, InterruptingDCA: dcA, MaxACV: acV, InterruptingACA: acA, TerminalC: 75}
	}
	return &catalog.Catalog{
		Batteries: []catalog.Battery{
			{Part: part("block", 31000, 12), NominalV: 12.8, MinV: 10, MaxV: 14.6, CapacityWh: 1280, UsableFraction: 0.8,
				RoundTrip: 0.96, MaxDischargeA: 100, PeakDischargeA: 100, MaxChargeA: 50, ResistanceOhm: 0.006, CycleLife: 4000,
				MaxParallel: 4, MaxSeries: 4, LengthM: 0.33, WidthM: 0.17, HeightM: 0.22},
		},
		Inverters: []catalog.Inverter{
			{Part: part("sine-2", 42000, 9), DCMinV: 20, DCMaxV: 32, ACV: "230", ChargerACV: "230", ContinuousW: 2000, SurgeW: 4000,
				LegW: 2000, LegSurgeW: 4000, Efficiency: 0.9, IdleW: 12, ChargerA: 35, MaxUnits: 1},
		},
		Cables: []catalog.Cable{
			cable("c50", 550, 0.5, "50 mm2", 70, 90), cable("c35", 410, 0.38, "35 mm2", 90, 80),
			cable("c1.5", 55, 0.02, "1.5 mm2", 70, 0),
		},
		Devices: []catalog.Device{
			fuse("gg-125", 1800, 0.25, 125, 80, 10000, 0, 0),
			fuse("gg-10", 400, 0.05, 10, 0, 0, 400, 50000), fuse("gg-10-b", 450, 0.06, 10, 0, 0, 400, 50000),
		},
		Busbars:  []catalog.Busbar{{Part: part("bars-150", 4000, 0.8), RatingA: 150, Studs: 4}},
		Casters:  []catalog.Casters{{Part: part("caster-60", 6000, 5), SetOf: 4, RatingKg: 60}},
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
	least := func(name string, value, limit float64, unit string) plan.Limit {
		return plan.Limit{Name: name, Value: value, Limit: limit, Unit: unit, Slack: value - limit}
	}
	most := func(name string, value, limit float64, unit string) plan.Limit {
		return plan.Limit{Name: name, Value: value, Limit: limit, Unit: unit, Slack: limit - value}
	}
	binds := func(l plan.Limit) plan.Limit { l.Binding = true; return l }
	two := []plan.ShelfModules{{Part: "block", Modules: 2}}
	return &plan.Plan{
		Rank: 1, Spend: 186294, Cost: 186294,
		UsableKWh: 4.013243994575959, AutonomyH: 24.261651799253393, MassKg: 86.254,
		CostPerUsableKWh: 464.1980409159846, CostPerLifetimeKWh: 0.11604951022899614,
		Core: plan.Core{
			Batteries: []plan.CoreBattery{{Part: "block", Strings: 2, Series: 2}},
			Inverter:  plan.CoreInverter{Part: "sine-2", Units: 1},
		},
		Bill: []plan.Line{
			each("block", "battery", 4, 310, 124000), each("sine-2", "inverter", 1, 420, 42000),
			metres("c50", 4, 5.5, 2200), each("c50", "cable-end", 16, 0.9, 1440),
			metres("c35", 1.2, 4.1, 492), each("c35", "cable-end", 4, 0.8, 320),
			metres("c1.5", 14.4, 0.55, 792), // its ends cost nothing and are left out
			each("gg-125", "device", 2, 18, 3600), each("gg-10", "device", 1, 4, 400), each("gg-10-b", "device", 1, 4.5, 450),
			each("bars-150", "busbar", 1, 40, 4000), each("caster-60", "casters", 1, 60, 6000), each("outlet-16", "sundry", 1, 6, 600),
		},
		// Ampacities by IEC 60364-5-52 tables B.52.2 and B.52.3, resistances by IEC 60228 class 5 at 70 °C.
		Runs: []plan.Run{
			{Run: "string", Battery: "block", Cable: "c50", Sets: 2, Device: "gg-125", Count: 2, LengthM: 0.5, Conductors: 2,
				DesignA: 100, RequiredA: 100, AllowedA: 336, DeviceA: 125, DropPct: 0.09621854166666666, DropLimitPct: 2,
				FaultA: 2433.3333333333335, InterruptingA: 10000},
			{Run: "main", Cable: "c35", Sets: 1, Count: 1, LengthM: 0.6, Conductors: 2,
				DesignA: 105.82010582010581, RequiredA: 105.82010582010581, AllowedA: 171, DeviceA: 125,
				DropPct: 0.3507201058201057, DropLimitPct: 2, FaultA: 4866.666666666667},
			{Run: "feeder", Cable: "c1.5", Ground: "c1.5", Sets: 1, Device: "gg-10", Count: 1, LengthM: 0.8, Conductors: 2,
				DesignA: 8.695652173913043, RequiredA: 8.695652173913043, AllowedA: 17.5, DeviceA: 10,
				DropPct: 0.09626283553875237, DropLimitPct: 3, FaultA: 3000, InterruptingA: 50000},
			{Run: "branch", Name: "stall", Cable: "c1.5", Ground: "c1.5", Sets: 1, Device: "gg-10-b", Count: 1, LengthM: 4, Conductors: 2,
				DesignA: 10, RequiredA: 10, AllowedA: 17.5, DeviceA: 10, DropPct: 0.553511304347826, DropLimitPct: 3,
				FaultA: 3000, InterruptingA: 50000},
		},
		Shelves: []plan.Shelf{{Shelf: "a", Batteries: two, MassKg: 24}, {Shelf: "b", Batteries: two, MassKg: 24}},
		Casters: plan.Casters{Part: "caster-60", Count: 4, LoadEachKg: 43.127, RatingEachKg: 60},
		Balance: plan.Balance{CGHeightMM: 364.9964059637814, TiltDeg: 32.734472012945794, RequiredDeg: 10},
		Limits: []plan.Limit{
			least("autonomy", 24.261651799253393, 24, "h"),
			least("power", 2000, 420, "W"), least("surge", 4000, 420, "W"),
			least("bus current", 200, 105.82010582010581, "A"),
			least("tilt, sideways", 32.734472012945794, 10, "deg"), least("tilt, lengthways", 39.41767099246688, 10, "deg"),
			most("caster load", 43.127, 60, "kg"),
			most("bus bar current", 132.27513227513225, 150, "A"), most("bus bar studs", 3, 4, "each"),
			binds(most("shelf room: a", 1, 1, "")), most("shelf mass: a", 24, 30, "kg"),
			binds(most("shelf room: b", 1, 1, "")), most("shelf mass: b", 24, 30, "kg"),
		},
	}
}
