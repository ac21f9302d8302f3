package energy

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// UsableWh returns the energy in Wh one module gives to the bus: the usable fraction of its nameplate energy,
// less the half of the round-trip loss that falls on the way out, less the reserve (0..1) kept back.
//
//	U = capacity * usable_fraction * sqrt(round_trip) * (1 - reserve)
//
// Source: capacity, depth of discharge and discharge efficiency as in Maini and Agrawal, Satellite
// Technology, Example 4.6, p. 134. That a round trip loses equally both ways, so that one way is its
// square root, and the reserve are common practice, no source.
func UsableWh(b *catalog.Battery, reserve float64) float64 {
	return b.CapacityWh * b.UsableFraction * math.Sqrt(b.RoundTrip) * (1 - reserve)
}

// LifetimeWh returns the energy in Wh that one module gives to the bus in its whole life, with cyclesAYear full
// cycles a year; 0 where neither a cycle life nor calendar years are stated. Where both are, the earlier end counts.
//
//	U * min(cycle_life, calendar_years * cycles a year)
//
// Source: the divisor of the throughput cost, cost / (quantity * Ah * V * DoD * cycle life), in North
// American Clean Energy, "Measuring the true costs", part 2; confirmed in 1 text. That age may end a battery's life
// before its cycles do is common practice, no source.
func LifetimeWh(b *catalog.Battery, reserve, cyclesAYear float64) float64 {
	cycles := math.Inf(1)
	if b.CycleLife > 0 {
		cycles = b.CycleLife
	}
	if b.CalendarYears > 0 {
		cycles = math.Min(cycles, b.CalendarYears*cyclesAYear)
	}
	if math.IsInf(cycles, 1) {
		return 0
	}
	return cycles * UsableWh(b, reserve)
}

// YearWh returns the energy in Wh the bus gives in a year without sun, in which the cart is used on useDays days:
// so many times the record's mean day. Efficiency is 0..1, idleW is of all units together.
//
//	Y = mean day * use.days
func (d *Demand) YearWh(efficiency, idleW, useDays float64) float64 {
	sum := 0.0
	for _, w := range d.BusW(efficiency, idleW) {
		sum += w * d.StepH
	}
	return sum * dayH / d.RecordH() * useDays
}

// dayH is the hours of a day.
const dayH = 24

// CostPerKWh returns a cost in currency units for each kWh of an energy in Wh. With usable energy it is the
// cost of storage as installed, with lifetime energy the throughput cost. +Inf for no energy.
//
//	cost / (energy / 1000)
//
// Source: the throughput cost as at LifetimeWh; per usable kWh it is common practice, no source.
func CostPerKWh(cost catalog.Cents, energyWh float64) float64 {
	if !(energyWh > 0) {
		return math.Inf(1)
	}
	return cost.Units() / (energyWh / 1000)
}

// Series returns how many modules of nominalV are put in series on a bus of busNominalV; 0 where a module's
// voltage is more than twice that of the bus.
//
//	round(bus nominal / module nominal)      halves upward; common practice, no source
func Series(busNominalV, nominalV float64) int {
	if !(nominalV > 0) {
		return 0
	}
	return int(math.Round(busNominalV / nominalV))
}

// AboveLow reports whether a voltage is not below the bus window, up to the rounding of a product.
func AboveLow(bus scenarios.Bus, volts float64) bool { return plan.AtLeast(volts, bus.LowV) }

// BelowHigh reports whether a voltage is not above the bus window, up to the rounding of a product.
func BelowHigh(bus scenarios.Bus, volts float64) bool { return plan.AtMost(volts, bus.HighV) }

// Fits returns how many modules of a battery are put in series on the bus, and whether the battery may be used
// there: the number is from 1 to what the maker allows, and the string's nominal voltage is not below the bus window
// and its highest voltage not above it.
func Fits(bus scenarios.Bus, b *catalog.Battery) (series int, ok bool) {
	series = Series(bus.NominalV, b.NominalV)
	n := float64(series)
	ok = series >= 1 && series <= b.MaxSeries && AboveLow(bus, n*b.NominalV) && BelowHigh(bus, n*b.MaxV)
	return series, ok
}

// ShareBus reports whether two batteries may sit on the same bus: they are of one parallel group, or
// the same part.
func ShareBus(a, b *catalog.Battery) bool {
	return a.ID == b.ID || a.Group != "" && a.Group == b.Group
}
