// Package sky says where the sun stands and what it gives outside the air, after Duffie and Beckman, Solar
// Engineering of Thermal Processes, chapter 1. Package scenarios uses it to check whether figures of sunshine can
// be true, and the energy packages to find what reaches the modules.
//
// Days are numbered from 1, 1 January, to 365; a leap year's extra day is left out. Latitudes are positive
// north of the equator, longitudes east of Greenwich. The hour angle is 0 at solar noon and 15 degrees an
// hour, mornings negative. Angles are in degrees, energy in Wh/m2.
//
// Left out: refraction and the width of the sun's disc, which lengthen a day by some minutes, the altitude of
// the place and hills around it. Cooper's declination is up to 1.4 degrees off in mid-October; over a year
// that averages out.
package sky

import "math"

// DaysOfYear is how many days a year has here.
const DaysOfYear = 365

// rad is one degree in radians.
const rad = math.Pi / 180

func sin(deg float64) float64 { return math.Sin(deg * rad) }
func cos(deg float64) float64 { return math.Cos(deg * rad) }
func tan(deg float64) float64 { return math.Tan(deg * rad) }
