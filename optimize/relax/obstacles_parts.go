package relax

import (
	"cartwright/optimize/bench"
)

// noSupply says which condition no inverter meets, "" where it is told otherwise.
func noSupply(b *bench.Bench) string {
	var all []bench.Serving
	for i := range b.Catalog.Inverters {
		all = append(all, bench.Servings(&b.Catalog.Inverters[i])...)
	}
	if c, left := bench.Blame(b.InverterConditions(), all); c != nil {
		return c.None(left)
	}
	return ""
}

// noStack says which condition no battery meets, "" where it is told otherwise.
func noStack(b *bench.Bench) string {
	var all []*bench.Standing
	for i := range b.Catalog.Batteries {
		all = append(all, b.StandingOf(&b.Catalog.Batteries[i]))
	}
	if c, left := bench.Blame(b.BatteryConditions(), all); c != nil {
		return c.None(left)
	}
	return ""
}
