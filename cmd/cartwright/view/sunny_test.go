package view

import "cartwright/optimize/plan"

// sunny is a plan with everything that the first sample lacks: circuits, an array and its year, links, conduit,
// devices at both ends and of the battery's own, cable cut with slack.
func sunny() Plans {
	p := sample()
	scenario := *p.Scenario
	scenario.Name = "Sun barn"
	p.Scenario = &scenario
	one := first()
	one.Core.Solar = []plan.CoreSolar{{Part: "gleam-400", Series: 3, Parallel: 2, Inputs: 1}}
	one.Bill = append(one.Bill, plan.Line{Part: "gleam-400", Kind: "solar", Quantity: 6, Unit: "each", Buy: 6, UnitPrice: 132, Line: 79200})
	one.Runs[0].BoughtM, one.Runs[0].Links, one.Runs[0].LinkM, one.Runs[0].Devices = 0.75, 3, 0.3, 2
	one.Runs[1].Conduit, one.Runs[1].Devices = "emt-3-4", 1
	one.Runs = append(one.Runs,
		plan.Run{Run: "string", Battery: "slate-48-50", Cable: "cu-4-0", Sets: 1, Count: 1, LengthM: 0.6, Conductors: 2, DesignA: 50,
			RequiredA: 62.5, AllowedA: 230, DeviceA: 80, DropPct: 0.02, DropLimitPct: 2, FaultA: 2700, InterruptingA: 6000, OwnDevice: true},
		plan.Run{Run: "dc", Name: "fridge", Cable: "cu-10", Sets: 1, Device: "fuse-10", Count: 1, LengthM: 2, Conductors: 2, DesignA: 10,
			RequiredA: 10, AllowedA: 30, DeviceA: 10, DropPct: 0.3, DropLimitPct: 3, FaultA: 8400, InterruptingA: 20000, Devices: 1},
		plan.Run{Run: "inlet", Cable: "cu-10", Ground: "cu-10", Sets: 1, Device: "breaker-20", Count: 1, LengthM: 1.5, Conductors: 2, DesignA: 20,
			RequiredA: 20, AllowedA: 30, DeviceA: 20, DropPct: 0.2, DropLimitPct: 3, FaultA: 5000, InterruptingA: 10000, Devices: 1},
		plan.Run{Run: "solar", Cable: "cu-10", Ground: "cu-10", Sets: 1, Device: "breaker-dc-40", Count: 1, LengthM: 8, Conductors: 2,
			DesignA: 34, RequiredA: 42.5, AllowedA: 55, DeviceA: 45, DropPct: 1.21, DropLimitPct: 3, FaultA: 34, InterruptingA: 6000,
			BoughtM: 9, Devices: 1, StringFuse: "fuse-pv-25", StringFuses: 2},
		plan.Run{Run: "bond", Ground: "cu-10", Sets: 1, Count: 1, LengthM: 1})
	one.Legs = nil
	one.Circuits = []plan.Circuit{
		{Circuit: "press, left", Leg: "A", Loads: []string{"press", "lamps"}, CurrentA: 14.2, DeviceA: 20},
		{Circuit: "stove", Leg: "both", Loads: []string{"stove"}, CurrentA: 12.5, DeviceA: 30},
		{Circuit: "fridge", Loads: []string{"fridge"}, CurrentA: 4.3, DeviceA: 10},
		{Circuit: "spare", Leg: "B", DeviceA: 15},
	}
	saved, years := plan.Money(31200), 7.518
	one.Year = &plan.Year{Served: 0.9731, ShortH: 214, LongestShortH: 11, WallKWh: 38.4, SpilledKWh: 402.7, ClippedKWh: 12.3, SunKWh: 1871,
		Cycles: 143.2, Saved: &saved, PaybackYears: &years}
	for i := range 12 {
		m := float64(min(i, 11-i))
		one.Year.Months = append(one.Year.Months, plan.Month{Sun: 80 + 30*m, Load: 118.5, Short: max(0, 9-3*m), Spilled: 12 * m})
	}
	result := *p.Result
	result.Plans = []plan.Plan{one}
	p.Result = &result
	return p
}
