package chassis

import "math"

// DefaultTiltDeg is the slope in degrees, in any direction, on which equipment must not tip over.
//
// Source: IEC 62368-1 (ed. 3), static stability; confirmed in 2 independent texts.
const DefaultTiltDeg = 10

// Tilt returns the height in metres of the centre of mass of some bodies, and the slope in degrees at
// which they tip together: the lesser of sideways, over the track, and lengthways, over the wheelbase.
// Below 0 they have tipped already. Without any mass nothing tips: 0 and 90 degrees; so do bodies that
// all lie on the floor within the base.
//
//	tan(tilt) = sum m (track/2 - |y|) / sum m h      and with wheelbase/2 and y = 0
//
// Offsets to the two sides are not set off against each other: each counts as if all were on the side
// the cart tips to. For bodies on one side that is exact, else it errs to the safe side.
//
// Source: a rigid body tips when its centre of mass stands over the edge of its base: statics, as in
// Hibbeler, Engineering Mechanics, 14th ed., problem 11-43.
func Tilt(bodies []Body, trackM, wheelbaseM float64) (cgHeightM, tiltDeg float64) {
	var mass, moment, side float64 // kg, kg·m, kg·m
	for _, b := range bodies {
		mass += b.MassKg
		moment += b.MassKg * b.HeightM
		side += b.MassKg * (trackM/2 - math.Abs(b.OffsetM))
	}
	if mass == 0 {
		return 0, 90
	}
	length := mass * wheelbaseM / 2
	return moment / mass, degrees(math.Atan2(min(side, length), moment))
}

// TiltMargin returns what one body adds to the balance against tipping on a slope, in kg·m. The cart
// stands if the sum over all its bodies is not below 0. HalfBaseM is half of the track; for tipping
// lengthways it is half of the wheelbase and the body's offset is to be 0.
//
//	m * (half - |y|) - tan(tilt) * m * h      the terms of Tilt's condition
func TiltMargin(b Body, halfBaseM, tiltDeg float64) float64 {
	return b.MassKg*(halfBaseM-math.Abs(b.OffsetM)) - math.Tan(radians(tiltDeg))*b.MassKg*b.HeightM
}

func degrees(rad float64) float64 { return rad * 180 / math.Pi }

func radians(deg float64) float64 { return deg * math.Pi / 180 }
