package optimize_test

import (
	"math"
	"slices"

	"cartwright/catalog"
)

// series returns how many modules of a battery make a string, and whether the bus takes it.
func (e *enumeration) series(b *catalog.Battery) (modules int, fits bool) {
	modules = int(math.Floor(e.s.Bus.NominalV/b.NominalV + 0.5))
	n := float64(modules)
	return modules, modules >= 1 && modules <= b.MaxSeries && reaches(n*b.NominalV, e.s.Bus.LowV) && reaches(e.s.Bus.HighV, n*b.MaxV)
}

// together reports whether all batteries of which there are strings may share a bus.
func (e *enumeration) together(n []int) bool {
	for a := range n {
		for b := range a {
			if n[a] > 0 && n[b] > 0 && (e.c.Batteries[a].Group == "" || e.c.Batteries[a].Group != e.c.Batteries[b].Group) {
				return false
			}
		}
	}
	return true
}

// modules returns how many modules there are of a battery.
func (e *enumeration) modules(n []int, b int) int {
	series, _ := e.series(&e.c.Batteries[b])
	return n[b] * series
}

// usableEach returns what one module gives.
func (e *enumeration) usableEach(b *catalog.Battery) float64 {
	return (1 - e.s.Limits.Reserve) * b.UsableFraction * b.CapacityWh * math.Sqrt(b.RoundTrip)
}

// usableWh returns what all modules give.
func (e *enumeration) usableWh(n []int) float64 {
	usable := 0.0
	for b := range n {
		usable += float64(e.modules(n, b)) * e.usableEach(&e.c.Batteries[b])
	}
	return usable
}

// lifeWh returns what all modules give in all their life, of cycles or of years, whichever ends first; 0 where one
// of them states neither.
func (e *enumeration) lifeWh(n []int, inv *catalog.Inverter, units int) float64 {
	cyclesAYear := e.house.dayWh(inv.Efficiency, float64(units)*inv.IdleW) * e.s.UseDays / e.usableWh(n)
	if e.s.Sun != nil {
		_, drawnWh := e.year(n, inv, units)
		cyclesAYear = drawnWh / e.usableWh(n)
	}
	life := 0.0
	for b := range n {
		bat, cycles := &e.c.Batteries[b], math.Inf(1)
		if bat.CycleLife > 0 {
			cycles = bat.CycleLife
		}
		if bat.CalendarYears > 0 {
			cycles = min(cycles, bat.CalendarYears*cyclesAYear)
		}
		if n[b] == 0 {
			continue
		}
		if math.IsInf(cycles, 1) {
			return 0
		}
		life += float64(e.modules(n, b)) * e.usableEach(bat) * cycles
	}
	return life
}

// ohms returns the resistance of one string of a battery.
func (e *enumeration) ohms(b *catalog.Battery) float64 {
	series, _ := e.series(b)
	return float64(series) * b.ResistanceOhm
}

// stands reports whether strings side by side stand a current: all have the same volts across their resistances, so
// that each has amps * (resistance of all in parallel) / (its own), which is at most its own most.
func (e *enumeration) stands(n []int, amps float64, most func(*catalog.Battery) float64) bool {
	siemens := 0.0
	for b := range n {
		siemens += float64(n[b]) / e.ohms(&e.c.Batteries[b])
	}
	for b := range n {
		bat := &e.c.Batteries[b]
		if n[b] > 0 && !reaches(most(bat), amps/siemens/e.ohms(bat)) {
			return false
		}
	}
	return true
}

// unitA returns what flows through the main of one unit at the most: what it draws, or what its charger or its modules
// give.
func (e *enumeration) unitA(inv *catalog.Inverter) float64 {
	return max(inv.ContinuousW/inv.Efficiency/e.s.Bus.LowV, inv.ChargerA, e.field.unitW(inv)/e.s.Bus.LowV)
}

// busA returns what flows to or from all inverters at the most, direct-current loads included.
func (e *enumeration) busA(inv *catalog.Inverter, units int) float64 {
	return float64(units)*e.unitA(inv) + e.house.peakDCW/e.s.Bus.LowV
}

// carries reports whether strings give what the inverters at full load and the loads on the bus take.
func (e *enumeration) carries(n []int, inv *catalog.Inverter, units int) bool {
	amps := (float64(units)*inv.ContinuousW/inv.Efficiency + e.house.peakDCW) / e.s.Bus.LowV
	return e.stands(n, amps, func(b *catalog.Battery) float64 { return b.MaxDischargeA })
}

// surges reports whether strings give the largest peak with a start on top.
func (e *enumeration) surges(n []int, inv *catalog.Inverter) bool {
	amps := (e.house.surgeVA/inv.Efficiency + e.house.peakDCW) / e.s.Bus.LowV
	return e.stands(n, amps, func(b *catalog.Battery) float64 {
		if b.PeakDischargeA == 0 {
			return b.MaxDischargeA
		}
		return b.PeakDischargeA
	})
}

// recharges reports whether chargers, supply and strings put an energy back in time.
func (e *enumeration) recharges(n []int, inv *catalog.Inverter, units int, wantWh float64) bool {
	r := e.s.Recharge
	if r == nil {
		return true
	}
	lossiest := 1.0
	for b := range n {
		if n[b] > 0 {
			lossiest = min(lossiest, e.c.Batteries[b].RoundTrip)
		}
	}
	watts := wantWh / lossiest / r.WithinH // at the bus
	amps := watts / e.s.Bus.NominalV
	if x := r.Supply; x != nil {
		takes := map[string][]float64{"120": {120}, "230": {230}, "240": {240}, "120/240": {120, 240}}[inv.ChargerACV]
		if !slices.Contains(takes, x.Volts) || !reaches(0.8*x.Volts*x.DeviceA*inv.Efficiency, watts) {
			return false
		}
	}
	return reaches(float64(units)*inv.ChargerA, amps) && e.stands(n, amps, func(b *catalog.Battery) float64 { return b.MaxChargeA })
}

// serves reports whether an inverter belongs on the bus, and every load and circuit on it.
func (e *enumeration) serves(inv *catalog.Inverter) bool {
	if inv.DCMinV > e.s.Bus.LowV || inv.DCMaxV < e.s.Bus.HighV {
		return false
	}
	for i := range e.s.Loads {
		if l := &e.s.Loads[i]; !l.DC && l.Leg == "both" && inv.ACV != "120/240" {
			return false
		}
	}
	for i := range e.s.Circuits {
		gives := map[string][]float64{"120": {120}, "230": {230}, "120/240": {120, 240}}[inv.ACV]
		if c := &e.s.Circuits[i]; !c.DC && !slices.Contains(gives, c.Volts) {
			return false
		}
	}
	return true
}

// talks reports whether every battery has a word in common with the inverter, where that is asked for.
func (e *enumeration) talks(n []int, inv *catalog.Inverter) bool {
	for b := range n {
		if n[b] == 0 || !e.s.Limits.SharedProtocols {
			continue
		}
		common := false
		for _, word := range e.c.Batteries[b].Protocols {
			common = common || slices.Contains(inv.Protocols, word)
		}
		if !common {
			return false
		}
	}
	return true
}

// shortA returns what one string of a battery drives into a fault.
func (e *enumeration) shortA(b *catalog.Battery) float64 {
	if b.ShortCircuitA == 0 {
		return b.MaxV / b.ResistanceOhm
	}
	return b.ShortCircuitA
}
