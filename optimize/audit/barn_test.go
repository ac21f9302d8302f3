package audit

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// barn is a cart under the nec rules: a 48 V bus with two kinds of battery, one with a device of its own, two
// inverters of 120/240 V side by side with a feeder each in conduit, three circuits and one on the bus, an inlet,
// a bond, slack and steps of cable, owned and sold parts, offers, shipping and tax. The figures of
// barnPlan were worked out apart from this package, from the formulas and tables it names.
func barn() (*scenarios.Scenario, *catalog.Catalog, *plan.Plan) {
	return barnScenario(), barnCatalog(), barnPlan()
}

func barnScenario() *scenarios.Scenario {
	sell := func(c catalog.Cents) *catalog.Cents { return &c }
	return &scenarios.Scenario{
		Name: "barn", Currency: "USD", Rules: scenarios.NEC,
		Bus: scenarios.Bus{NominalV: 48, LowV: 44, HighV: 60},
		Loads: []scenarios.Load{
			{Name: "fridge", Watts: 200, Count: 1, Leg: scenarios.LegAuto, AllDay: true, Duty: 0.5, PowerFactor: 1, Start: 4},
			{Name: "pump", Watts: 1200, Count: 1, Leg: scenarios.LegBoth, FromMin: 6 * 60, ToMin: 8 * 60, Duty: 1, PowerFactor: 1, Start: 3},
			{Name: "lights", Watts: 30, Count: 10, Leg: scenarios.LegAuto, FromMin: 18 * 60, ToMin: 22 * 60, Duty: 1, PowerFactor: 1, Start: 1},
			{Name: "saw", Watts: 900, Count: 1, Leg: scenarios.LegAuto, FromMin: 9 * 60, ToMin: 10 * 60, Duty: 0.2, PowerFactor: 0.75, Start: 3},
			{Name: "vacuum", Watts: 800, Count: 1, Leg: scenarios.LegAuto, FromMin: 9 * 60, ToMin: 10 * 60, Duty: 0.2, PowerFactor: 1, Start: 1, Circuit: "porch"},
			{Name: "router", Watts: 24, Count: 1, DC: true, AllDay: true, Duty: 1, PowerFactor: 1, Start: 1},
		},
		OneAtATime: [][]int{{3, 4}},
		AutonomyH:  24,
		Recharge:   &scenarios.Recharge{WithinH: 8, From: "grid", Supply: &scenarios.Supply{Volts: 240, DeviceA: 20}},
		Cart: scenarios.Cart{
			Casters: 4, WheelbaseM: 0.9, TrackM: 0.6, CasterMassHeightM: 0.06, Rolling: 0.02, Grip: 0.5,
			Frame:     scenarios.Mass{Name: "frame", MassKg: 40, HeightM: 0.35},
			DeckItems: []scenarios.Mass{{Name: "tool box", MassKg: 10, HeightM: 0.8, OffsetM: -0.1}},
			Shelves: []scenarios.Shelf{
				{Name: "low", ElevationM: 0.15, LengthM: 0.95, DepthM: 0.55, Stack: 1, ClearHeightM: 0.3, MaxMassKg: 200, GapM: 0.01},
				{Name: "high", ElevationM: 0.5, LengthM: 0.95, DepthM: 0.55, Stack: 1, ClearHeightM: 0.2, MaxMassKg: math.Inf(1), GapM: 0.01},
			},
			Backboard: scenarios.Backboard{ElevationM: 0.7, OffsetM: 0.15},
		},
		Limits:  scenarios.Limits{MassKg: 400, Budget: 900000, TiltDeg: 10, Reserve: 0.1, PushN: 300, Slope: 0.02, SharedProtocols: true},
		UseDays: 200, Cable: scenarios.CableWish{Slack: 0.1, StepM: 0.25}, CasterFactor: 1.25, ACFaultA: 5000,
		Runs: []scenarios.Run{
			{Kind: scenarios.RunString, LengthM: 0.6, AmbientC: 35, Bundled: 2, Drop: 0.01},
			{Kind: scenarios.RunMain, LengthM: 0.8, AmbientC: 30, Bundled: 2, Drop: 0.01},
			{Kind: scenarios.RunFeeder, LengthM: 1, AmbientC: 30, Bundled: 3, TerminalC: 75, Drop: 0.02, Conduit: "emt"},
			{Kind: scenarios.RunInlet, LengthM: 1.2, AmbientC: 30, Bundled: 2, Drop: 0.03},
			{Kind: scenarios.RunBond, LengthM: 1, AmbientC: 30, Bundled: 2, Drop: 0.03},
		},
		Circuits: []scenarios.Circuit{
			{Name: "bench", Volts: 120, DeviceA: 20, LengthM: 3, Neutral: true, AmbientC: 30, Bundled: 2, Drop: 0.03,
				Receptacle: &scenarios.Receptacle{Role: "receptacle", RatingA: 20, Count: 2}},
			{Name: "porch", Volts: 120, DeviceA: 15, LengthM: 2.5, Neutral: true, AmbientC: 30, Bundled: 2, Drop: 0.03},
			{Name: "pump", Volts: 240, DeviceA: 20, LengthM: 2, AmbientC: 30, Bundled: 2, Drop: 0.03,
				Receptacle: &scenarios.Receptacle{Role: "pump socket", RatingA: 20, Count: 1}},
			{Name: "radio", DC: true, Volts: 48, DeviceA: 10, LengthM: 1.5, AmbientC: 30, Bundled: 2, Drop: 0.03},
		},
		Needs: []scenarios.Need{
			{Role: "shunt", Count: 1, RatingA: 200}, {Role: "disconnect", Count: 1}, {Role: "load-centre", Count: 1, RatingA: 60},
		},
		Have: []scenarios.Holding{
			{PartID: "slab", Count: 1},
			{PartID: "old-inverter", Count: 2, Sell: sell(15000)},
			{PartID: "g8", Count: 1.5, Sell: sell(0), SellCentsPerM: 120},
			{PartID: "fuse-100", Count: 1, Sell: sell(1000)},
		},
		Sold: 50000, Tax: 0.07,
	}
}

// barnCatalog is made up.
func barnCatalog() *catalog.Catalog {
	part := func(id string, price catalog.Cents, kg float64) catalog.Part {
		return catalog.Part{ID: id, Name: id, Price: price, MassKg: kg}
	}
	from := func(p catalog.Part, vendor string) catalog.Part { p.Vendor = vendor; return p }
	cable := func(id string, centsPerM, kgPerM float64, size catalog.Size, end catalog.Cents) catalog.Cable {
		return catalog.Cable{Part: part(id, 0, 0), CentsPerM: centsPerM, KgPerM: kgPerM, Size: size,
			Material: "copper", InsulationC: 90, EndPrice: end}
	}
	fuse := func(id string, price catalog.Cents, kg, amps, breaks float64) catalog.Device {
		return catalog.Device{Part: part(id, price, kg), Type: "fuse", RatingA: amps, Poles: 1, MaxDCV: 80,
			InterruptingDCA: breaks, TerminalC: 75}
	}
	breaker := func(id string, price catalog.Cents, kg, amps float64, poles int) catalog.Device {
		return catalog.Device{Part: part(id, price, kg), Type: "breaker", RatingA: amps, Poles: poles, MaxACV: 240,
			InterruptingACA: 10000, TerminalC: 75, Mount: "plug-in"}
	}
	return &catalog.Catalog{
		Batteries: []catalog.Battery{
			{Part: part("slab", 120000, 45), Group: "g", NominalV: 51.2, MinV: 44.8, MaxV: 58.4, CapacityWh: 5120,
				UsableFraction: 0.9, RoundTrip: 0.9025, MaxDischargeA: 100, PeakDischargeA: 120, MaxChargeA: 50, ResistanceOhm: 0.02,
				MaxFuseA: 150, Protocols: []string{"can", "rs485"}, CycleLife: 5000, MaxParallel: 4, MaxSeries: 1, LengthM: 0.45, WidthM: 0.4, HeightM: 0.15},
			{Part: part("brick", 65000, 24), Group: "g", NominalV: 51.2, MinV: 44.8, MaxV: 58.4, CapacityWh: 2560,
				UsableFraction: 0.9, RoundTrip: 0.81, MaxDischargeA: 60, PeakDischargeA: 60, MaxChargeA: 25, ResistanceOhm: 0.04,
				OwnDeviceA: 80, OwnInterruptingA: 8000, Protocols: []string{"can"},
				ShortCircuitA: 1500, CycleLife: 3000, CalendarYears: 8, MaxParallel: 8, MaxSeries: 1, LengthM: 0.4, WidthM: 0.25, HeightM: 0.14},
		},
		Inverters: []catalog.Inverter{
			{Part: from(part("split-3", 98000, 18), "Cedar"), DCMinV: 42, DCMaxV: 62, ACV: "120/240", ChargerACV: "120/240", ContinuousW: 3000,
				SurgeW: 6000, LegW: 1800, LegSurgeW: 3000, Efficiency: 0.92, IdleW: 25, ChargerA: 40, MaxUnits: 3, Protocols: []string{"can"}},
			{Part: part("old-inverter", 50000, 20), DCMinV: 20, DCMaxV: 32, ACV: "120", ChargerACV: "120", ContinuousW: 1000,
				SurgeW: 2000, LegW: 1000, LegSurgeW: 2000, Efficiency: 0.85, IdleW: 20, MaxUnits: 1},
		},
		Cables: []catalog.Cable{
			cable("g1", 900, 0.45, "1 AWG", 120), cable("g3", 612, 0.28, "3 AWG", 90),
			cable("g1-0", 1000.5, 0.56, "1/0 AWG", 125), cable("g8", 300, 0.09, "8 AWG", 40),
			cable("g10", 180, 0.055, "10 AWG", 30), cable("g12", 120, 0.035, "12 AWG", 25),
		},
		Devices: []catalog.Device{
			fuse("fuse-125", 3200, 0.3, 125, 10000), fuse("fuse-80", 2450, 0.28, 80, 8000), fuse("fuse-100", 2800, 0.3, 100, 10000),
			breaker("b20-f", 2600, 0.4, 20, 2), breaker("b20-1", 900, 0.2, 20, 1), breaker("b20-2", 1800, 0.4, 20, 2),
			breaker("b15-1", 850, 0.2, 15, 1), breaker("b20-in", 1900, 0.4, 20, 2), fuse("fuse-10", 500, 0.05, 10, 10000),
		},
		Busbars: []catalog.Busbar{{Part: part("bars-250", 8500, 1.5), RatingA: 250, Studs: 6}},
		Casters: []catalog.Casters{{Part: part("caster-120", 9600, 8), SetOf: 4, RatingKg: 120, Brakes: 2}},
		Conduits: []catalog.Conduit{{Part: part("emt-3/4", 0, 0), CentsPerM: 450, KgPerM: 0.5, TradeSize: "3/4", Type: "emt",
			InsideMM2: 343, EndPrice: 150}},
		Sundries: []catalog.Sundry{
			{Part: part("shunt-300", 3900, 0.5), Role: "shunt", RatingA: 300},
			{Part: part("switch-300", 4500, 0.8), Role: "disconnect", RatingA: 300},
			{Part: part("panel-8", 8800, 3.2), Role: "load-centre", RatingA: 100, Spaces: 8, Mount: "plug-in"},
			{Part: part("outlet-20", 700, 0.1), Role: "receptacle", RatingA: 20},
			{Part: part("pump-20", 1500, 0.15), Role: "pump socket", RatingA: 20},
		},
		Offers: []catalog.Offer{
			{PartID: "slab", Vendor: "Alder", Price: 115000, MinQty: 1, Shipping: 9000},
			{PartID: "slab", Vendor: "Alder", Price: 110000, MinQty: 3, Shipping: 9000},
			{PartID: "brick", Vendor: "Birch", Price: 64000, MinQty: 1, Shipping: 6000},
			{PartID: "g1", Vendor: "Birch", CentsPerM: 812.5, MinQty: 2, Shipping: 2500},
		},
	}
}

func barnPlan() *plan.Plan {
	return &plan.Plan{
		Rank: 1, Spend: 454213, Shipping: 15000, Tax: 32845, Credit: 30000, Cost: 472058,
		UsableKWh: 9.74592, AutonomyH: 24.725342377638732, MassKg: 225.205,
		CostPerUsableKWh: 484.36473929603363, CostPerExtraKWh: 813.0408123897707, CostPerLifetimeKWh: 0.11225066806449348,
		Core: plan.Core{
			Batteries: []plan.CoreBattery{{Part: "slab", Strings: 2, Series: 1}, {Part: "brick", Strings: 1, Series: 1}},
			Inverter:  plan.CoreInverter{Part: "split-3", Units: 2},
		},
		Bill: barnBill(), Runs: barnRuns(), Limits: barnLimits(),
		Shelves: []plan.Shelf{
			{Shelf: "low", Batteries: []plan.ShelfModules{{Part: "slab", Modules: 2}}, MassKg: 90},
			{Shelf: "high", Batteries: []plan.ShelfModules{{Part: "brick", Modules: 1}}, MassKg: 24},
		},
		Casters: plan.Casters{Part: "caster-120", Count: 4, LoadEachKg: 1.25 * 225.205 / 3, RatingEachKg: 120},
		Balance: plan.Balance{CGHeightMM: 415.85888412779474, TiltDeg: 32.02619291049601, RequiredDeg: 10},
		Circuits: []plan.Circuit{
			{Circuit: "bench", Leg: "A", Loads: []string{"fridge"}, CurrentA: 200.0 / 120, DeviceA: 20},
			{Circuit: "porch", Leg: "B", Loads: []string{"lights", "saw", "vacuum"}, CurrentA: 10, DeviceA: 15},
			{Circuit: "pump", Leg: "both", Loads: []string{"pump"}, CurrentA: 5, DeviceA: 20},
			{Circuit: "radio", Loads: []string{"router"}, CurrentA: 1.25 * 24 / 44, DeviceA: 10},
		},
		Legs: []plan.LegLoad{{Load: "fridge", Leg: "A"}, {Load: "lights", Leg: "B"}, {Load: "saw", Leg: "B"}, {Load: "vacuum", Leg: "B"}},
	}
}

func barnBill() []plan.Line {
	each := func(part, kind string, quantity, price float64, line plan.Money) plan.Line {
		return plan.Line{Part: part, Kind: kind, Quantity: quantity, Unit: "each", Buy: quantity, UnitPrice: price, Line: line}
	}
	metres := func(part string, quantity, price float64, line plan.Money) plan.Line {
		l := each(part, "cable", quantity, price, line)
		l.Unit = "m"
		return l
	}
	conduit := func(part string, quantity, price float64, line plan.Money) plan.Line {
		l := metres(part, quantity, price, line)
		l.Kind = "conduit"
		return l
	}
	from := func(vendor string, l plan.Line) plan.Line { l.Vendor = vendor; return l }
	owned := func(have float64, l plan.Line) plan.Line { l.Have, l.Buy = have, l.Quantity-have; return l }
	return []plan.Line{
		owned(1, from("Alder", each("slab", "battery", 2, 1150, 115000))),
		from("Birch", each("brick", "battery", 1, 640, 64000)),
		from("Cedar", each("split-3", "inverter", 2, 980, 196000)),
		{Part: "old-inverter", Kind: "inverter", Unit: "each", Sell: 2, UnitPrice: 500, Credit: 30000},
		from("Birch", metres("g1", 3, 8.125, 2438)), each("g1", "cable-end", 8, 1.20, 960),
		metres("g3", 2.75, 6.12, 1683), each("g3", "cable-end", 6, 0.90, 540),
		metres("g1-0", 4, 10.005, 4002), each("g1-0", "cable-end", 8, 1.25, 1000),
		owned(1.5, metres("g8", 10, 3, 2550)), each("g8", "cable-end", 16, 0.40, 640),
		metres("g10", 6, 1.80, 1080), each("g10", "cable-end", 8, 0.30, 240),
		metres("g12", 29, 1.20, 3480), each("g12", "cable-end", 22, 0.25, 550),
		conduit("emt-3/4", 2, 4.50, 900), each("emt-3/4", "conduit-end", 4, 1.50, 600),
		each("fuse-125", "device", 2, 32, 6400), owned(1, each("fuse-100", "device", 2, 28, 2800)),
		each("b20-f", "device", 2, 26, 5200), each("b20-1", "device", 1, 9, 900), each("b15-1", "device", 1, 8.50, 850),
		each("b20-2", "device", 1, 18, 1800), each("b20-in", "device", 1, 19, 1900), each("fuse-10", "device", 1, 5, 500),
		each("bars-250", "busbar", 1, 85, 8500), each("caster-120", "casters", 1, 96, 9600),
		each("shunt-300", "sundry", 1, 39, 3900), each("switch-300", "sundry", 1, 45, 4500),
		each("panel-8", "sundry", 1, 88, 8800), each("outlet-20", "sundry", 2, 7, 1400), each("pump-20", "sundry", 1, 15, 1500),
	}
}

// Ampacities by NEC table 310.16, ambient 35 °C by table 310.15(B)(1), resistances by chapter 9 table 8. The
// feeder's and the inlet's 8 and 10 AWG are larger than the 12 AWG that would do, and their grounds grow alike.
func barnRuns() []plan.Run {
	return []plan.Run{
		{Run: "string", Battery: "slab", Cable: "g1", Sets: 1, Device: "fuse-125", Devices: 1, Count: 2, LengthM: 0.6, BoughtM: 0.75, Conductors: 2,
			DesignA: 100, RequiredA: 125, AllowedA: 130, DeviceA: 125, DropPct: 0.12631233595800523, DropLimitPct: 1,
			FaultA: 4420, InterruptingA: 10000},
		{Run: "string", Battery: "brick", Cable: "g3", Sets: 1, OwnDevice: true, Count: 1, LengthM: 0.6, BoughtM: 0.75, Conductors: 2,
			DesignA: 60, RequiredA: 75, AllowedA: 85, DeviceA: 80, DropPct: 0.12057086614173228, DropLimitPct: 1,
			FaultA: 5840, InterruptingA: 8000},
		{Run: "main", Cable: "g1-0", Sets: 1, Device: "fuse-100", Devices: 1, Count: 2, LengthM: 0.8, BoughtM: 1, Conductors: 2,
			DesignA: 74.11067193675889, RequiredA: 92.63833992094861, AllowedA: 125, DeviceA: 100,
			DropPct: 0.09887906798211488, DropLimitPct: 1, FaultA: 7340, InterruptingA: 10000},
		{Run: "feeder", Cable: "g8", Ground: "g8", Conduit: "emt-3/4", Sets: 1, Device: "b20-f", Devices: 1, Count: 2, LengthM: 1, BoughtM: 1.25, Conductors: 3,
			DesignA: 15, RequiredA: 18.75, AllowedA: 50, DeviceA: 20, DropPct: 0.03190616797900262, DropLimitPct: 2,
			FaultA: 5000, InterruptingA: 10000},
		{Run: "branch", Name: "bench", Cable: "g12", Ground: "g12", Sets: 1, Device: "b20-1", Devices: 1, Count: 1, LengthM: 3, BoughtM: 3.5, Conductors: 2,
			DesignA: 20, RequiredA: 20, AllowedA: 20, DeviceA: 20, DropPct: 0.6496062992125984, DropLimitPct: 3,
			FaultA: 5000, InterruptingA: 10000},
		{Run: "branch", Name: "porch", Cable: "g12", Ground: "g12", Sets: 1, Device: "b15-1", Devices: 1, Count: 1, LengthM: 2.5, BoughtM: 2.75, Conductors: 2,
			DesignA: 15, RequiredA: 15, AllowedA: 20, DeviceA: 15, DropPct: 0.406003937007874, DropLimitPct: 3,
			FaultA: 5000, InterruptingA: 10000},
		{Run: "branch", Name: "pump", Cable: "g12", Ground: "g12", Sets: 1, Device: "b20-2", Devices: 1, Count: 1, LengthM: 2, BoughtM: 2.25, Conductors: 2,
			DesignA: 20, RequiredA: 20, AllowedA: 20, DeviceA: 20, DropPct: 0.21653543307086615, DropLimitPct: 3,
			FaultA: 5000, InterruptingA: 10000},
		{Run: "dc", Name: "radio", Cable: "g12", Sets: 1, Device: "fuse-10", Devices: 1, Count: 1, LengthM: 1.5, BoughtM: 1.75, Conductors: 2,
			DesignA: 10, RequiredA: 10, AllowedA: 20, DeviceA: 10, DropPct: 0.406003937007874, DropLimitPct: 3,
			FaultA: 7340, InterruptingA: 10000},
		{Run: "inlet", Cable: "g10", Ground: "g10", Sets: 1, Device: "b20-in", Devices: 1, Count: 1, LengthM: 1.2, BoughtM: 1.5, Conductors: 3,
			DesignA: 20, RequiredA: 20, AllowedA: 30, DeviceA: 20, DropPct: 0.08136482939632546, DropLimitPct: 3,
			FaultA: 5000, InterruptingA: 10000},
		{Run: "bond", Ground: "g3", Sets: 1, Count: 1, LengthM: 1, BoughtM: 1.25},
	}
}

func barnLimits() []plan.Limit {
	least := func(name string, value, limit float64, unit string) plan.Limit {
		return plan.Limit{Name: name, Value: value, Limit: limit, Unit: unit, Slack: value - limit}
	}
	most := func(name string, value, limit float64, unit string) plan.Limit {
		return plan.Limit{Name: name, Value: value, Limit: limit, Unit: unit, Slack: limit - value}
	}
	binds := func(l plan.Limit) plan.Limit { l.Binding = true; return l }
	return []plan.Limit{
		least("autonomy", 24.725342377638732, 24, "h"),
		least("power", 6000, 1400, "W"), least("leg power", 3600, 1200, "W"),
		least("surge", 12000, 3800, "W"), least("leg surge", 6000, 3600, "W"),
		least("bus current", 250, 148.76679841897231, "A"), least("bus current, peak", 300, 94.4189723320158, "A"),
		least("recharge, charger", 73.6, 27.865561817856506, "A"), least("recharge, batteries", 125, 27.865561817856506, "A"),
		most("mass", 225.205, 400, "kg"), most("budget", 4720.58, 9500, "USD"),
		least("tilt, sideways", 32.02619291049601, 10, "deg"), least("tilt, lengthways", 47.25802270539409, 10, "deg"),
		most("push", 88.34026453, 300, "N"), least("hold", 25, 2, "%"), most("caster load", 93.83541666666667, 120, "kg"),
		most("bus bar current", 185.95849802371538, 250, "A"), binds(most("bus bar studs", 6, 6, "each")),
		binds(most("load-centre spaces", 8, 8, "each")),
		most("shelf room: low", 0.8541666666666666, 1, ""), most("shelf mass: low", 90, 200, "kg"),
		most("shelf room: high", 0.27083333333333337, 1, ""),
	}
}
