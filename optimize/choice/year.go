package choice

import (
	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/energy/year"
	"cartwright/optimize/plan"
)

// yearOf returns the simulated year of a plan with a cost.
func yearOf(b *bench.Bench, f *year.Figures, cost plan.Money) *plan.Year {
	const kilo = 1000
	y := &plan.Year{
		Served: f.Served, ShortH: float64(f.ShortH), LongestShortH: float64(f.LongestShortH), WallKWh: f.ShortWh / kilo,
		SpilledKWh: f.SpilledWh / kilo, ClippedKWh: f.ClippedWh / kilo, SunKWh: f.SunWh / kilo, Cycles: f.Cycles,
	}
	for _, m := range f.Months {
		y.Months = append(y.Months, plan.Month{Sun: m.SunWh / kilo, Load: m.LoadWh / kilo, Short: m.ShortWh / kilo, Spilled: m.SpilledWh / kilo})
	}
	if grid := b.Scenario.GridCentsPerKWh; grid > 0 {
		cents := f.Saved(grid)
		saved := catalog.RoundCents(cents)
		y.Saved = &saved
		if years, ok := year.PaybackYears(cost, cents); ok {
			y.PaybackYears = &years
		}
	}
	return y
}
