package energy

import (
	"math"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// OwnedWh returns the usable energy in Wh of the owned batteries, in whole strings that fit the bus. Where they are
// of parallel groups that cannot share a bus, it is that of the group with the most. The cost of extra energy is
// counted from here.
func OwnedWh(s *scenarios.Scenario, c *catalog.Catalog) float64 {
	count := map[string]float64{}
	for _, h := range s.Have {
		count[h.PartID] += h.Count
	}
	byGroup, most := map[string]float64{}, 0.0
	for i := range c.Batteries {
		b := &c.Batteries[i]
		if len(count) == 0 || count[b.ID] == 0 {
			continue
		}
		series, fits := Fits(s.Bus, b)
		if !fits {
			continue
		}
		strings := math.Floor(count[b.ID] / float64(series))
		if b.MaxParallel > 0 {
			strings = math.Min(strings, float64(b.MaxParallel))
		}
		group := b.Group
		if group == "" {
			group = "\x00" + b.ID // shares a bus only with itself
		}
		byGroup[group] += strings * float64(series) * UsableWh(b, s.Limits.Reserve)
		most = math.Max(most, byGroup[group])
	}
	return most
}

// CostPerExtraKWh returns what each usable kWh beyond those owned costs, in currency units; 0 where there is none
// beyond.
func CostPerExtraKWh(costUnits, usableWh, ownedWh float64) float64 {
	const hairWh = 1e-6 // against the rounding of sums
	if usableWh-ownedWh <= hairWh {
		return 0
	}
	return costUnits / ((usableWh - ownedWh) / 1000)
}
