package chassis

import "math"

// StandardGravity in m/s²: ISO 80000-3:2006, item 3-9.2; the same exact value is in the CODATA list.
const StandardGravity = 9.80665

// RollingCoefficient is the force to keep a cart rolling on a hard level floor, as a part of its
// weight.
//
// Source: UK HSE, Manual handling guidance L23 and INDG143, "at least 2 %"; one origin. On soft or
// uneven ground the same guidance gives up to 0.10.
const RollingCoefficient = 0.02

// PushN returns the force in newtons that keeps a cart rolling up a slope (rise over run); rolling is the ground's
// rolling resistance as a part of the weight. Starting takes more.
//
//	(rolling + slope) * M * g
//
// Source: UK HSE guidance as at RollingCoefficient, which adds the load times the slope. Rise over run
// stands for the sine of the slope's angle and errs to the safe side, by 0.35 % at 1 in 12.
func PushN(massKg, rolling, slope float64) float64 {
	return (rolling + slope) * massKg * StandardGravity
}

// StepN returns the level force in newtons at the axle that just lifts a wheel, with a mass on it, over a step. +Inf
// where the step is as high as the axle.
//
//	m g sqrt(2 r h - h^2) / (r - h)
//
// Source: torques about the edge of the step, as in Halliday and Resnick, Fundamentals of Physics, chapter 12.
func StepN(massKg, radiusM, stepM float64) float64 {
	if stepM >= radiusM {
		return math.Inf(1)
	}
	return massKg * StandardGravity * math.Sqrt(2*radiusM*stepM-stepM*stepM) / (radiusM - stepM)
}
