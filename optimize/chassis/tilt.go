package chassis

import "math"

// DefaultTiltDeg is the slope in degrees, in any direction, on which equipment must not tip over.
//
// Source: IEC 62368-1 (ed. 3), static stability; confirmed in 2 independent texts.
const DefaultTiltDeg = 10

// Tilt returns the height in metres of the centre of mass of some bodies, and the slope in degrees at which they tip
// together: the lesser of sideways and lengthways. A negative slope means they tip on the level. Without mass it
// returns 0 m and 90 degrees.
func Tilt(bodies []Body, base Base) (cgHeightM, tiltDeg float64) {
	mass, moment := 0.0, 0.0 // kg, kg·m
	for _, b := range bodies {
		mass += b.MassKg
		moment += b.MassKg * b.HeightM
	}
	if mass == 0 {
		return 0, 90
	}
	return moment / mass, min(TiltOver(bodies, base.Side), TiltOver(bodies, base.End))
}

// TiltOver returns the slope in degrees at which some bodies tip together over an edge.
//
//	tan(tilt) = sum m (reach - lean |y|) / sum m h
//
// With four wheels the numerator is sum m (track/2 - |y|) sideways, and sum m wheelbase/2 lengthways. Offsets to the
// two sides are not set off against each other: each counts as if it were on the side the cart tips to.
// For bodies on one side that is exact, else it errs to the safe side.
//
// Source: a rigid body tips when its centre of mass stands over the edge of its base: statics, as in
// Hibbeler, Engineering Mechanics, 14th ed., problem 11-43.
func TiltOver(bodies []Body, e Edge) float64 {
	var mass, holding, moment float64 // kg, kg·m, kg·m
	for _, b := range bodies {
		mass += b.MassKg
		holding += TiltMargin(b, e, 0)
		moment += b.MassKg * b.HeightM
	}
	if mass == 0 {
		return 90
	}
	return degrees(math.Atan2(holding, moment))
}

// TiltMargin returns what one body adds to the balance over an edge on a slope, in kg·m. The cart stands
// if the sum over all its bodies is at least 0.
//
//	m * (reach - lean |y|) - tan(tilt) * m * h      the terms of TiltOver's condition
func TiltMargin(b Body, e Edge, tiltDeg float64) float64 {
	return b.MassKg*(e.ReachM-e.Lean*math.Abs(b.OffsetM)) - math.Tan(radians(tiltDeg))*b.MassKg*b.HeightM
}

func degrees(rad float64) float64 { return rad * 180 / math.Pi }

func radians(deg float64) float64 { return deg * math.Pi / 180 }
