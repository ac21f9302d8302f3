package view

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// sample is a hand-made answer of two plans: mixed batteries, two vendors, owned and sold parts, an own
// breaker and a branch. Its figures are chosen to be told apart on a page, not computed.
func sample() Plans {
	price := catalog.Cents(12000)
	return Plans{
		Scenario: &scenarios.Scenario{
			Name: "Barn lights", Currency: "USD", Rules: scenarios.NEC, Units: scenarios.US, Tax: 0.0825, UseDays: 365, CasterFactor: 1.25,
			Cart: scenarios.Cart{Shelves: []scenarios.Shelf{
				{Name: "lower", MaxMassKg: 150}, {Name: "upper", MaxMassKg: math.Inf(1)},
			}},
			Have: []scenarios.Holding{
				{PartID: "slate-48-100", Count: 2, Sell: &price},
				{PartID: "cu-4-0", Count: 7.5},
			},
		},
		Catalog: &catalog.Catalog{
			Batteries: []catalog.Battery{
				{Part: catalog.Part{ID: "slate-48-100", Name: "Slate 48 V 100 Ah rack module"}},
				{Part: catalog.Part{ID: "slate-48-50", Name: "Slate 48 V 50 Ah rack module"}},
			},
			Inverters: []catalog.Inverter{{Part: catalog.Part{ID: "gust-5k-split", Name: "Gust 5 kW split phase"}}},
			Cables: []catalog.Cable{
				{Part: catalog.Part{ID: "cu-4-0", Name: "Fine-strand copper 4/0 AWG"}},
				{Part: catalog.Part{ID: "cu-10", Name: "Copper 10 AWG"}},
			},
			Devices: []catalog.Device{{Part: catalog.Part{ID: "fuse-t-175", Name: "Fast fuse 175 A"}}},
		},
		Result: &question.Result{
			Plans: []plan.Plan{first(), second()},
			Solver: question.Solver{Name: "cartwright", Version: "1", Status: question.Optimal,
				Seconds: 0.25, Models: 12, Proofs: 11, Cells: 40},
			Cautions: []string{"Stored energy and arcs of direct current can kill and burn.",
				"A figure from a table is a check, not a permission; the local code and a licensed electrician decide what may be built."},
		},
		By:       question.ByCost,
		Distinct: question.DistinctCore,
	}
}

func first() plan.Plan {
	return plan.Plan{
		Rank: 1, Cost: 234567, Spend: 220000, Shipping: 4000, Tax: 18480, Credit: 7913,
		UsableKWh: 9.8, AutonomyH: 24.5, MassKg: 210.34, CostPerUsableKWh: 239.354, Proven: true,
		CostPerLifetimeKWh: 0.0399, CostPerExtraKWh: 521.26,
		Core: plan.Core{
			Batteries: []plan.CoreBattery{{Part: "slate-48-100", Strings: 2, Series: 1}, {Part: "slate-48-50", Strings: 1, Series: 1}},
			Inverter:  plan.CoreInverter{Part: "gust-5k-split", Units: 1},
		},
		Bill: []plan.Line{
			{Part: "slate-48-100", Kind: "battery", Quantity: 2, Unit: "each", Have: 1, Buy: 1, Sell: 1,
				Vendor: "Kestrel Supply", UnitPrice: 900, Line: 90000, Credit: 7913},
			{Part: "slate-48-50", Kind: "battery", Quantity: 1, Unit: "each", Buy: 1, Vendor: "Kestrel Supply", UnitPrice: 500, Line: 50000},
			{Part: "gust-5k-split", Kind: "inverter", Quantity: 1, Unit: "each", Buy: 1, UnitPrice: 790, Line: 79000},
			{Part: "cu-4-0", Kind: "cable", Quantity: 3.6, Unit: "m", Have: 3.6, UnitPrice: 14.125},
			{Part: "cu-4-0", Kind: "cable-end", Quantity: 8, Unit: "each", Buy: 8, UnitPrice: 1.25, Line: 1000},
		},
		Runs: []plan.Run{
			{Run: "string", Battery: "slate-48-100", Cable: "cu-4-0", Sets: 1, Device: "fuse-t-175", Count: 2, LengthM: 0.6,
				Conductors: 2, DesignA: 100, RequiredA: 125, AllowedA: 230, DeviceA: 175, DropPct: 0.0431, DropLimitPct: 2,
				FaultA: 5400, InterruptingA: 20000},
			{Run: "main", Cable: "cu-4-0", Sets: 2, Device: "fuse-t-175", Count: 1, LengthM: 0.9, Conductors: 2,
				DesignA: 121.5, RequiredA: 151.9, AllowedA: 460, DeviceA: 175, DropPct: 0.1, DropLimitPct: 2, FaultA: 8400, InterruptingA: 20000},
			{Run: "feeder", Cable: "cu-10", Ground: "cu-10", Sets: 1, Count: 1, LengthM: 1.2, Conductors: 3, DesignA: 20.8,
				RequiredA: 26, AllowedA: 30, DeviceA: 30, DropPct: 0.09, DropLimitPct: 3, FaultA: 5000},
			{Run: "branch", Name: "press, left", Cable: "cu-10", Ground: "cu-10", Sets: 1, Device: "breaker-20", Count: 1, LengthM: 2,
				Conductors: 2, DesignA: 20, RequiredA: 20, AllowedA: 30, DeviceA: 20, DropPct: 0.22, DropLimitPct: 3, FaultA: 5000, InterruptingA: 10000},
		},
		Shelves: []plan.Shelf{
			{Shelf: "lower", Batteries: []plan.ShelfModules{{Part: "slate-48-100", Modules: 2}, {Part: "slate-48-50", Modules: 1}}, MassKg: 118},
			{Shelf: "upper"},
		},
		Casters: plan.Casters{Part: "trundle-150", Count: 4, LoadEachKg: 87.64, RatingEachKg: 150},
		Balance: plan.Balance{CGHeightMM: 412.4, TiltDeg: 24.31, RequiredDeg: 10},
		Legs:    []plan.LegLoad{{Load: "kettle", Leg: "A"}, {Load: "press", Leg: "B"}, {Load: "lamps", Leg: "A"}},
		Limits: []plan.Limit{
			{Name: plan.LimitAutonomy, Value: 24.5, Limit: 24, Unit: "h", Slack: 0.5},
			{Name: plan.LimitMass, Value: 210.34, Limit: 211, Unit: "kg", Slack: 0.66, Binding: true},
			{Name: plan.LimitBudget, Value: 2345.67, Limit: 3000, Unit: "USD", Slack: 654.33},
			{Name: plan.LimitShelfRoom + "lower", Value: 0.75, Limit: 1, Slack: 0.25},
		},
		Audit: plan.Audit{Passed: true, Checks: []plan.Check{{Name: "mass", Passed: true}, {Name: "cost", Passed: true}}},
	}
}

func second() plan.Plan {
	p := first()
	p.Rank, p.Cost, p.UsableKWh, p.AutonomyH, p.MassKg, p.CostPerUsableKWh = 2, 251000, 12.1, 24.5, 199.9, 207.438
	p.CostPerExtraKWh = 369.12
	p.Core = plan.Core{
		Batteries: []plan.CoreBattery{{Part: "pebble-12-200", Strings: 2, Series: 4}},
		Inverter:  plan.CoreInverter{Part: "gust-5k-split", Units: 2},
	}
	return p
}
