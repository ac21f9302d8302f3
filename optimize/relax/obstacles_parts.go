package relax

import (
	"fmt"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/wiring"
)

// noSupply says which condition no inverter meets, "" where it is told otherwise.
func noSupply(b *bench.Bench) string {
	s, d := b.Scenario, b.Demand
	left := make([]*catalog.Inverter, len(b.Catalog.Inverters))
	for i := range left {
		left[i] = &b.Catalog.Inverters[i]
	}
	largest := func(watts func(*catalog.Inverter) float64) (most float64) {
		for _, inv := range left {
			most = max(most, watts(inv))
		}
		return most
	}
	all := func(w float64, inv *catalog.Inverter) float64 { return float64(max(1, inv.MaxUnits)) * w }
	continuous := func(inv *catalog.Inverter) float64 { return all(inv.ContinuousW, inv) }
	surge := func(inv *catalog.Inverter) float64 { return all(inv.SurgeW, inv) }
	leg := func(inv *catalog.Inverter) float64 { return all(inv.LegW, inv) }
	const side = ", in the number its maker allows side by side,"
	for _, step := range []struct {
		meets func(*catalog.Inverter) bool
		words func() string
	}{
		{func(inv *catalog.Inverter) bool { return inv.DCMinV <= s.Bus.LowV && inv.DCMaxV >= s.Bus.HighV },
			func() string {
				return fmt.Sprintf("no inverter of the catalogue takes the whole bus, from %s to %s V", figure(s.Bus.LowV), figure(s.Bus.HighV))
			}},
		{func(inv *catalog.Inverter) bool { return energy.InverterFits(s, d, inv) },
			func() string { return "no inverter that takes the bus gives " + voltsAsked(b) }},
		{func(inv *catalog.Inverter) bool { return b.Partial || continuous(inv) >= d.PeakTotalW() },
			func() string {
				return fmt.Sprintf("no inverter that fits%s carries the loads that can be on together, %s W; the largest gives %s W", side, figure(d.PeakTotalW()), figure(largest(continuous)))
			}},
		{func(inv *catalog.Inverter) bool {
			return b.Partial || inv.ACV != bench.ThreeWire || leg(inv) >= d.PeakLegW()
		},
			func() string {
				return fmt.Sprintf("no inverter that fits%s carries the loads on one leg, %s W; the largest gives %s W a leg", side, figure(d.PeakLegW()), figure(largest(leg)))
			}},
		{func(inv *catalog.Inverter) bool { return b.Partial || surge(inv) >= d.SurgeW() },
			func() string {
				return fmt.Sprintf("no inverter that fits%s stands the largest start, %s W with all else on; the strongest stands %s W", side, figure(d.SurgeW()), figure(largest(surge)))
			}},
		{func(inv *catalog.Inverter) bool { return s.Recharge == nil || inv.ChargerA > 0 },
			func() string { return "no inverter that carries the loads has a charger, and recharge asks for one" }},
	} {
		var kept []*catalog.Inverter
		for _, inv := range left {
			if step.meets(inv) {
				kept = append(kept, inv)
			}
		}
		if len(kept) == 0 {
			if len(left) == 0 {
				return "" // told of the file
			}
			return step.words()
		}
		left = kept
	}
	return noSupplyRuns(b, left)
}

// noSupplyRuns says why none of some inverters that serve has a main and a feeder: what stops the smallest.
func noSupplyRuns(b *bench.Bench, left []*catalog.Inverter) string {
	units := func(inv *catalog.Inverter) int {
		d := b.Demand
		for u := 1; u < inv.MaxUnits && !b.Partial; u++ {
			n := float64(u)
			if n*inv.ContinuousW >= d.PeakTotalW() && n*inv.SurgeW >= d.SurgeW() && (inv.ACV != bench.ThreeWire || n*inv.LegW >= d.PeakLegW()) {
				return u
			}
		}
		return max(1, inv.MaxUnits)
	}
	watts := func(inv *catalog.Inverter) float64 { return float64(units(inv)) * inv.ContinuousW }
	least := left[0]
	for _, inv := range left {
		if watts(inv) < watts(least) {
			least = inv
		}
	}
	of := fmt.Sprintf(" of %d x %s", units(least), least.ID)
	if len(left) > 1 {
		of += " (the smallest that serves)"
	}
	if d, listed := wiring.MainDuty(b.Scenario, least); listed {
		if _, ok := b.RunOptions(d, true); !ok {
			return noRun(b, d, "the main"+of)
		}
	}
	if d, listed := wiring.FeederDuty(b.Scenario, least, units(least)); listed {
		if _, ok := b.RunOptions(d, true); !ok {
			return noRun(b, d, "the feeder"+of)
		}
	}
	return "no inverter that serves the loads has both a main and a feeder that the rules accept"
}

// voltsAsked names the voltages that loads and circuits ask of an inverter.
func voltsAsked(b *bench.Bench) string {
	var volts []string
	note := func(v string) {
		for _, known := range volts {
			if known == v {
				return
			}
		}
		volts = append(volts, v)
	}
	for i := range b.Scenario.Circuits {
		note(figure(b.Scenario.Circuits[i].Volts) + " V")
	}
	words := strings.Join(volts, " and ") + " for the circuits"
	if len(volts) == 0 {
		words = "the volts asked for"
	}
	if b.Demand.NeedsBothLegs {
		words += ", and 240 V between two legs for loads"
	}
	return words
}

// noStack says which condition no battery meets, "" where it is told otherwise.
func noStack(b *bench.Bench) string {
	s := b.Scenario
	type fit struct {
		bat           *catalog.Battery
		series        int
		room, carried int // modules by the shelves' floors, and of these by their mass limits too
	}
	var left []fit
	for i := range b.Catalog.Batteries {
		bat := &b.Catalog.Batteries[i]
		series, ok := energy.Fits(s.Bus, bat)
		if !ok {
			continue
		}
		f := fit{bat: bat, series: series}
		for j := range s.Cart.Shelves {
			sh := &s.Cart.Shelves[j]
			room := chassis.ShelfCapacity(sh, bat)
			f.room += room
			if bat.MassKg > 0 && float64(room)*bat.MassKg > sh.MaxMassKg {
				room = int(sh.MaxMassKg/bat.MassKg + 1e-9) // against the rounding of a quotient, as on the bench
			}
			f.carried += room
		}
		left = append(left, f)
	}
	if len(left) == 0 {
		if len(b.Catalog.Batteries) == 0 {
			return ""
		}
		return fmt.Sprintf("no battery of the catalogue, in the number in series its maker allows, makes up the bus of %s V between %s and %s V",
			figure(s.Bus.NominalV), figure(s.Bus.LowV), figure(s.Bus.HighV))
	}
	for _, step := range []struct {
		meets func(*fit) bool
		words string
	}{
		{func(f *fit) bool { return f.room >= f.series }, "the shelves have no room for a string of any battery that fits the bus: look at their length, depth and clear_height"},
		{func(f *fit) bool { return f.carried >= f.series }, "the shelves' max_mass is too little for a string of any battery that fits the bus and their floor"},
		{func(f *fit) bool { return energy.UsableWh(f.bat, s.Limits.Reserve) > 0 },
			fmt.Sprintf("a reserve of %s %% leaves nothing of a battery to draw", figure(100*s.Limits.Reserve))},
	} {
		var kept []fit
		for i := range left {
			if step.meets(&left[i]) {
				kept = append(kept, left[i])
			}
		}
		if len(kept) == 0 {
			return step.words
		}
		left = kept
	}
	least := left[0].bat
	for i := range left {
		if left[i].bat.MaxDischargeA < least.MaxDischargeA {
			least = left[i].bat
		}
	}
	of := " of " + least.ID
	if len(left) > 1 {
		of += " (the battery of least current that fits)"
	}
	d, _ := wiring.StringDuty(s, least)
	return noRun(b, d, "a string"+of)
}
