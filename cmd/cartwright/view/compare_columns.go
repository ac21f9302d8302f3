package view

import (
	"fmt"
	"math"
	"strings"
)

// Columns shows each choice as a column beside the others, as the page does: rows of a name and one figure a choice.
func (c Compare) Columns() (choices []string, rows [][]string) {
	u, currency := unitsOf(c.Scenario), c.Scenario.Currency
	of := func(name string, figure func(i int) string) {
		row := []string{name}
		for i := range c.Table.Outcomes {
			if c.Table.Outcomes[i].Plan == nil {
				row = append(row, "–")
				continue
			}
			row = append(row, figure(i))
		}
		rows = append(rows, row)
	}
	all := c.Table.Outcomes
	for i := range all {
		choices = append(choices, label(&all[i]))
	}
	of("on the cart", func(i int) string { return coreText(all[i].Plan.Core) })
	of("usable kWh", func(i int) string { return fixed(all[i].Plan.UsableKWh, 2) })
	of("runs the loads for, h", func(i int) string { return fixed(all[i].Plan.AutonomyH, 1) })
	of("mass, "+u.unit("kg"), func(i int) string { return u.fixed(all[i].Plan.MassKg, "kg") })
	of("mass left, "+u.unit("kg"), func(i int) string {
		if kg := c.spareKg(all[i].Plan); !math.IsInf(kg, 1) {
			return u.fixed(kg, "kg")
		}
		return "not limited"
	})
	of("cost, "+currency, func(i int) string { return money(all[i].Plan.Cost) })
	of(currency+" for each extra usable kWh", func(i int) string { return stated(all[i].Plan.CostPerExtraKWh, 2) })
	of("savings reach it", func(i int) string { return month(&all[i]) })
	of(currency+" for a kWh over its life", func(i int) string { return stated(all[i].Plan.CostPerLifetimeKWh, 3) })
	of("what binds", func(i int) string { return strings.Join(binds(all[i].Plan), ", ") })
	leaves, cannot := []string{"leaves the cart"}, []string{"cannot be"}
	some, none := false, false
	for i := range all {
		var words []string
		for _, l := range all[i].Left {
			words = append(words, fmt.Sprintf("%d x %s: %s", l.Count, l.Part, l.Reason))
		}
		leaves, some = append(leaves, strings.Join(words, "; ")), some || len(words) > 0
		why := ""
		if all[i].Plan == nil {
			why, none = strings.Join(c.reasons(&all[i]), "; "), true
		}
		cannot = append(cannot, why)
	}
	if some {
		rows = append(rows, leaves)
	}
	if none {
		rows = append(rows, cannot)
	}
	return choices, rows
}
