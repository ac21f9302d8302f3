package chassis

import "math"

// mostWheelsCarry is how many wheels of a stiff cart are sure to touch an uneven floor: three points define a plane.
const mostWheelsCarry = 3

// CasterLoadKg returns the load in kg each caster must be rated for: on an uneven floor one of them is in the air, and
// of five or more only three carry. The factor covers obstacles and shocks. +Inf for fewer than two casters.
//
//	factor * M / min(casters - 1, 3)
//
// Source: the n-1 rule of caster handbooks (three points define a plane), confirmed in 5 independent
// texts; factors 1.0-1.5 indoors, 1.5-2.2 outdoors for carts pushed by hand, confirmed in 1 text; both
// together are common practice, no source.
func CasterLoadKg(massKg, factor float64, casters int) float64 {
	if casters < 2 {
		return math.Inf(1)
	}
	return factor * massKg / float64(min(casters-1, mostWheelsCarry))
}

// TwoCarryKg returns the load in kg of each of two opposite wheels when they alone carry a stiff cart, as may happen
// for a moment on an uneven floor. A rating below it is worth a caution. Common practice, no source.
//
//	M / 2
func TwoCarryKg(massKg float64) float64 { return massKg / 2 }

// HeldSlope returns the slope (rise over run) on which the braked wheels hold a cart whose weight is spread evenly
// over its wheels.
//
//	tan(slope) = grip * braked / casters      Coulomb friction: grip * braked / casters * cos(slope) >= sin(slope)
func HeldSlope(grip float64, braked, casters int) float64 {
	return grip * float64(braked) / float64(casters)
}
