package chassis

import "math"

// CasterLoadKg returns the load in kg each caster must be rated for: on an uneven floor one of them
// hangs in the air, so that all but one carry the cart. The factor covers obstacles and shocks. +Inf
// for fewer than two casters.
//
//	factor * M / (casters - 1)
//
// Source: the n-1 rule of caster handbooks (three points define a plane), confirmed in 5 independent
// texts; factors 1.0-1.5 indoors, 1.5-2.2 outdoors for carts pushed by hand, confirmed in 1 text; both
// together are common practice, no source.
func CasterLoadKg(massKg, factor float64, casters int) float64 {
	if casters < 2 {
		return math.Inf(1)
	}
	return factor * massKg / float64(casters-1)
}
