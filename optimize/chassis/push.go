package chassis

// StandardGravity in m/s²: ISO 80000-3:2006, item 3-9.2; the same exact value is in the CODATA list.
const StandardGravity = 9.80665

// RollingCoefficient is the force to keep a cart rolling on a hard level floor, as a part of its
// weight.
//
// Source: UK HSE, Manual handling guidance L23 and INDG143, "at least 2 %"; one origin. On soft or
// uneven ground the same guidance has up to 0.10: state that as a slope.
const RollingCoefficient = 0.02

// PushN returns the force in newtons to push a cart up a slope (rise over run).
//
//	(0.02 + slope) * M * g
//
// Source: UK HSE guidance as at RollingCoefficient, which adds the load times the slope. Rise over run
// stands for the sine of the slope's angle and errs to the safe side, by 0.35 % at 1 in 12.
func PushN(massKg, slope float64) float64 {
	return (RollingCoefficient + slope) * massKg * StandardGravity
}
