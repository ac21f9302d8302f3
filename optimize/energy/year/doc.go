// Package year runs a store through a year of hours. What the sun gives beyond the loads charges it; what the loads
// take beyond the sun empties it; what it cannot give is short and comes from the wall. The package answers
// how much of a year is served, and how large a store must be to serve a share of it.
//
// The year goes round: it ends with the store as full as it began. Each hour takes a store s to
// min(hi, max(lo, s + a)), and so does a whole year; one pass finds a, lo and hi, and the year that counts
// starts at lo where a < 0, else at hi.
//
// What is short is the optimum of a linear program (a store can do no better than give at once), so it is convex and
// falling in capacity and charging limit together, and each year simulated gives a tangent plane that is nowhere above
// it: see Shortage. It is not monotone over banks: one more battery of a kind that charges slowly can lower the whole
// bank's charging limit.
//
// Left out: self-discharge, the fall of a battery's capacity with age and cold, charging that tapers
// off. The loads are the same every day.
//
// Energy is in Wh, power in W; an hour's mean power and its energy are the same number.
package year

import (
	"math"

	"cartwright/optimize/energy"
	"cartwright/scenarios"
)

// Store is a bank of batteries as the year sees it.
type Store struct {
	CapacityWh float64 // usable energy
	ChargeW    float64 // the most it is charged with; +Inf: no limit
	RoundTrip  float64 // 0..1, energy out per energy in
}

// StoreOf returns the bank of some strings on the bus of a scenario: the usable energy of all, charged at most as fast
// as the strings together allow, with the round trip of the lossiest.
func StoreOf(s *scenarios.Scenario, strings []energy.Strings) Store {
	store := Store{ChargeW: energy.ChargeA(strings) * s.Bus.NominalV, RoundTrip: 1}
	for _, x := range strings {
		if x.Count > 0 {
			store.CapacityWh += float64(x.Count*x.Series) * energy.UsableWh(x.Battery, s.Limits.Reserve)
			store.RoundTrip = math.Min(store.RoundTrip, x.Battery.RoundTrip)
		}
	}
	return store
}
