// Package sun turns what a person knows of a place's sunshine, twelve figures or a file of hours, into the
// light on the plane of the modules, hour by hour over a year, and that into the watts of a module. It follows
// Duffie and Beckman, Solar Engineering of Thermal Processes, chapters 1 and 2; the sky itself is in
// scenarios/sky.
//
// A year has 8,760 hours, the first from midnight on 1 January; hour h of a day runs from h to h + 1. With
// monthly figures the clock shows solar time, so no longitude is needed; loads and sun are then out of step by the
// hour or so between clock and sun.
//
// Left out: shadows, snow and dirt (state them as losses), the sky's brighter horizon, reflection at the glass,
// wind. The days of a month come in a fixed order in which one day resembles the next about as much as in real
// weather; they are a year to plan with, not a forecast.
//
// Angles are in degrees, azimuths clockwise from north, light in W/m2 as the mean of an hour, which is Wh/m2.
package sun

import "math"

// Hours is how many hours a year has here.
const Hours = 8760

// rad is one degree in radians.
const rad = math.Pi / 180

func sin(deg float64) float64 { return math.Sin(deg * rad) }
func cos(deg float64) float64 { return math.Cos(deg * rad) }
