package energy_test

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/scenarios"
)

// steady returns the demand of mean watts all day, through the inverter and on the bus.
func steady(acW, dcW float64) *energy.Demand {
	load := func(watts float64, dc bool) scenarios.Load {
		return scenarios.Load{
			Watts: watts, Count: 1, Leg: scenarios.LegA, AllDay: true, Duty: 1, PowerFactor: 1, Start: 1, DC: dc,
		}
	}
	d, err := energy.DemandOf(&scenarios.Scenario{Loads: []scenarios.Load{load(acW, false), load(dcW, true)}})
	if err != nil {
		panic(err)
	}
	return d
}

// Masters, Renewable and Efficient Electric Power Systems (2004), Example 9.15: 3109 Wh of loads a day
// through an inverter of 85 % take 3658 Wh; confirmed in 1 text.
func ExampleDemand_WindowWh_mastersExample915() {
	d := steady(3109.0/24, 0)
	fmt.Printf("%.0f Wh\n", d.WindowWh(0.85, 0, 24))
	// Output: 3658 Wh
}

// Masters (2004), Example 9.15, second part: with a refrigerator of 800 Wh a day on direct current and
// 1969 Wh through the inverter (2316 Wh on the bus) it is 3116 Wh, 15 % less; confirmed in 1 text.
func ExampleDemand_WindowWh_mastersExample915direct() {
	d := steady(1969.0/24, 800.0/24)
	fmt.Printf("%.0f Wh through the inverter\n", steady(1969.0/24, 0).WindowWh(0.85, 0, 24))
	fmt.Printf("%.0f Wh\n", d.WindowWh(0.85, 0, 24))
	fmt.Printf("%.0f %% less\n", 100*(1-d.WindowWh(0.85, 0, 24)/3658))
	// Output:
	// 2316 Wh through the inverter
	// 3116 Wh
	// 15 % less
}

// Maini and Agrawal, Satellite Technology, Example 4.6, p. 134: 3600 W through 1.2 h of eclipse, cells
// of 90 Ah at 1.3 V, 80 % depth of discharge, 95 % discharge efficiency, 60 Wh/kg. Printed: 49 cells,
// 5684.2 Wh, 94.74 kg; confirmed in 1 text and recomputed.
func ExampleUsableWh_mainiAgrawalExample46() {
	cell := &catalog.Battery{CapacityWh: 90 * 1.3, UsableFraction: 0.8, RoundTrip: 0.95 * 0.95}
	need := steady(0, 3600).WindowWh(1, 0, 1.2)
	each := energy.UsableWh(cell, 0)
	stored := need / each * cell.CapacityWh
	fmt.Printf("%.0f cells\n", math.Ceil(need/each))
	fmt.Printf("%.1f Wh\n", stored)
	fmt.Printf("%.2f kg\n", stored/60)
	// Output:
	// 49 cells
	// 5684.2 Wh
	// 94.74 kg
}

// A university lecture note on spacecraft batteries: 3200 W through 1.2 h at 60 % depth of discharge
// and 40 Wh/kg take 160 kg; confirmed in 1 text.
func ExampleUsableWh_lectureNote() {
	kilogram := &catalog.Battery{CapacityWh: 40, UsableFraction: 0.60, RoundTrip: 1}
	need := steady(0, 3200).WindowWh(1, 0, 1.2)
	fmt.Printf("%.0f kg\n", need/energy.UsableWh(kilogram, 0))
	// Output: 160 kg
}

// Open Source Solar Project, "Energy storage sizing and selection", step 2: where one day of autonomy
// takes a battery of 205 Ah, two take 410 Ah and three 615 Ah; confirmed in 1 text. Here at 12 V.
func ExampleDemand_WindowWh_daysOfAutonomy() {
	d := steady(0, 205.0*12/24)
	for days := 1.0; days <= 3; days++ {
		fmt.Printf("%.0f Ah\n", d.WindowWh(1, 0, 24*days)/12)
	}
	// Output:
	// 205 Ah
	// 410 Ah
	// 615 Ah
}

// An open hardware project's notes on power system design, "Batteries": 300 Wh a day for two days out of lithium
// iron phosphate that may be emptied by 80 % take 750 Wh, 62.5 Ah at 12 V; confirmed in 1 text.
func ExampleUsableWh_twoDays() {
	d := steady(0, 300.0/24)
	wattHour := &catalog.Battery{CapacityWh: 1, UsableFraction: 0.80, RoundTrip: 1}
	nameplate := d.WindowWh(1, 0, 2*24) / energy.UsableWh(wattHour, 0)
	fmt.Printf("%.0f Wh, %.1f Ah\n", nameplate, nameplate/12)
	// Output: 750 Wh, 62.5 Ah
}

// Masters (2004), ch. 9, off-grid cabin, from memory: 3000 Wh a day through 85 % at 24 V for 4.6 days,
// 80 % depth of discharge, factor 0.97 for temperature and rate. Printed: 3529 Wh, 147 Ah a day, 676 Ah
// usable, 871 Ah (from rounded steps; 872 unrounded).
func ExampleUsableWh_mastersCabin() {
	d := steady(3000.0/24, 0)
	day := d.WindowWh(0.85, 0, 24)
	all := d.WindowWh(0.85, 0, 4.6*24)
	wattHour := &catalog.Battery{CapacityWh: 1, UsableFraction: 0.80 * 0.97, RoundTrip: 1}
	fmt.Printf("%.0f Wh, %.0f Ah a day, %.0f Ah usable, %.0f Ah\n",
		day, day/24, all/24, all/energy.UsableWh(wattHour, 0)/24)
	// Output: 3529 Wh, 147 Ah a day, 676 Ah usable, 872 Ah
}

// North American Clean Energy, "Measuring the true costs", part 2: the throughput cost is
// cost / (quantity * Ah * V * DoD * cycle life). The figures are invented.
func ExampleCostPerKWh_throughput() {
	b := &catalog.Battery{CapacityWh: 100 * 51.2, UsableFraction: 0.8, RoundTrip: 1, CycleLife: 4000}
	fmt.Printf("%.4f a kWh\n", energy.CostPerKWh(catalog.CentsFrom(2*1200), 2*energy.LifetimeWh(b, 0, 365)))
	// Output: 0.0732 a kWh
}

// A load of 100 W from 08:00 to 20:00: 1200 Wh last through a whole day, wherever it begins.
func ExampleDemand_AutonomyH() {
	d, err := energy.DemandOf(&scenarios.Scenario{Loads: []scenarios.Load{{
		Name: "lamp", Watts: 100, Count: 1, Leg: scenarios.LegAuto,
		FromMin: 8 * 60, ToMin: 20 * 60, Duty: 1, PowerFactor: 1, Start: 1,
	}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(d.AutonomyH(1, 0, 600), d.AutonomyH(1, 0, 1200), d.AutonomyH(1, 0, 1250))
	// Output: 6 24 24.5
}
