package view

import (
	"fmt"

	"cartwright/optimize/value"
)

// answer names the battery whose landed energy is cheapest, and the one whose extra energy is, of those that fit.
func (v Value) answer() section {
	var landed, extra *value.BatteryValue
	for i := range v.Table.Batteries {
		b := &v.Table.Batteries[i]
		if b.Landed == nil || b.Count.Strings == 0 {
			continue
		}
		if landed == nil || b.Landed.CostPerUsableKWh < landed.Landed.CostPerUsableKWh {
			landed = b
		}
		if b.CostPerExtraKWh != 0 && (extra == nil || b.CostPerExtraKWh < extra.CostPerExtraKWh) {
			extra = b
		}
	}
	if landed == nil && !v.Table.Complete {
		return section{title: "Stopped before it was known which battery has room on this cart."}
	}
	if landed == nil {
		return section{title: "No battery has room on this cart."}
	}
	that := "that fits"
	if !v.Table.Complete {
		that = "that fits, of the batteries counted"
	}
	s := section{title: fmt.Sprintf("Cheapest energy %s: %s, %s %s for each usable kWh, ready on the bus.",
		that, landed.Part, fixed(landed.Landed.CostPerUsableKWh, 2), v.Scenario.Currency)}
	if extra != nil && len(v.Scenario.Have) > 0 {
		s.prose = []string{fmt.Sprintf("Beyond the batteries owned today: %s, %s %s for each extra kWh.",
			extra.Part, fixed(extra.CostPerExtraKWh, 2), v.Scenario.Currency)}
	}
	return s
}
