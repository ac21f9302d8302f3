package value

import (
	"context"
	"errors"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/energy/year"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
)

// cycles knows the cycles a year of a bank with exactly the energy that the autonomy needs.
type cycles struct {
	b     *bench.Bench
	plain float64       // without sun: cycles a year with the inverter that draws least
	sunny *bench.Supply // with sun: inverters and array of the best plan; nil: there is no plan
	hours *year.Hours   // of sunny
}

// cyclesOf prepares the cycles; with sun it also returns the best plan, whose inverters and array they are for.
func cyclesOf(ctx context.Context, p question.Problem, b *bench.Bench) (*cycles, *plan.Plan, error) {
	c := &cycles{b: b, plain: math.Inf(1)}
	for i := range b.Supplies {
		if v := &b.Supplies[i]; v.NeedWh > 0 {
			c.plain = math.Min(c.plain, v.YearWh/v.NeedWh)
		}
	}
	if math.IsInf(c.plain, 1) {
		c.plain = b.Scenario.UseDays
	}
	if p.Scenario.Sun == nil {
		return c, nil, nil
	}
	best, err := search.First(ctx, p, &bench.Before{}, question.ByCost, false)
	if err != nil && !errors.Is(err, question.ErrUnknown) {
		return nil, nil, err
	}
	if best == nil {
		return c, nil, nil
	}
	for i := range b.Supplies {
		if v := &b.Supplies[i]; v.Is(&best.Core) {
			c.sunny, c.hours = v, b.Hours(i)
		}
	}
	return c, best, nil
}

// lifetimeWh returns the energy in Wh that one module of a battery gives in its life; 0: not stated, or with sun no plan.
func (c *cycles) lifetimeWh(bat *catalog.Battery, series int) float64 {
	reserve, aYear := c.b.Scenario.Limits.Reserve, c.plain
	if c.b.Scenario.Sun != nil {
		if c.sunny == nil {
			return 0
		}
		// A fraction of a string counts, so that the banks of all batteries have the same energy.
		strings := c.sunny.NeedWh / (float64(series) * energy.UsableWh(bat, reserve))
		s := year.Store{CapacityWh: c.sunny.NeedWh, ChargeW: strings * bat.MaxChargeA * c.b.Scenario.Bus.NominalV, RoundTrip: bat.RoundTrip}
		aYear = year.Simulate(c.hours, c.hours.Net(), s).Cycles
	}
	return energy.LifetimeWh(bat, reserve, aYear)
}
