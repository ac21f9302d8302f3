// Package frame knows the strength of a frame's pieces: mass and bending of square tubes, flats and angles, and how
// much a shelf's rails carry. All is in SI units: metres, kilograms, pascals.
//
// Left out: the weight of the rails themselves, welds, buckling, and loads that are not spread evenly.
package frame

import (
	"math"

	"cartwright/catalog"
)

// SteelPa is Young's modulus of steel: EN 1993-1-1, 3.2.6.
const SteelPa = 210e9

// steelKgPerM3 is the density of steel: EN 1991-1-1 table A.4, 7850 kg/m3.
const steelKgPerM3 = 7850

// gravity in m/s2: ISO 80000-3:2006, item 3-9.2.
const gravity = 9.80665

// The share of the yield strength to which a rail may be stressed, and the part of its span by which it may sag.
const (
	yieldShare = 0.6 // allowable stress in bending, AISC 360-89 F1.1 for shapes that are not compact; from memory
	sagShare   = 240 // a 240th of the span: common practice, no source
)

// TubeKgPerM returns the mass in kg of a metre of square steel tube of outer side b and wall t in metres, with sharp
// corners.
//
//	0.00785 * (b^2 - (b - 2t)^2)      b and t in mm; EN 10219-2 annex B rounds the corners and gives less
func TubeKgPerM(b, t float64) float64 { return steelKgPerM3 * (b*b - (b-2*t)*(b-2*t)) }

// Bending holds the properties of a section on which its bending about the level axis depends.
type Bending struct {
	InertiaM4 float64 // I, second moment of area
	ModulusM3 float64 // Z = I / distance of the farthest fibre
}

// BendingOf returns the bending of a section as a rail under a shelf: a flat on its edge, an angle about its level
// axis; ok is false for ply, which cannot be a rail.
//
// Source: plane geometry, the parallel axis theorem; as in Roark's Formulas for Stress and Strain, table A.1.
func BendingOf(s *catalog.Section) (b Bending, ok bool) {
	switch s.Shape {
	case catalog.SquareTube:
		inner := s.WidthM - 2*s.WallM
		i := (math.Pow(s.WidthM, 4) - math.Pow(inner, 4)) / 12
		return Bending{i, i / (s.WidthM / 2)}, true
	case catalog.Flat:
		i := s.WidthM * math.Pow(s.HeightM, 3) / 12
		return Bending{i, i / (s.HeightM / 2)}, true
	case catalog.Angle:
		return angle(s.WidthM, s.HeightM, s.WallM), true
	}
	return Bending{}, false
}

// angle returns the bending of an angle with a level leg, an upright leg and a thickness in metres, with sharp corners.
func angle(level, upright, t float64) Bending {
	flange, web := level*t, t*(upright-t) // the level leg below, the upright one on it
	y := (flange*t/2 + web*(t+(upright-t)/2)) / (flange + web)
	i := level*t*t*t/12 + flange*(y-t/2)*(y-t/2) + t*math.Pow(upright-t, 3)/12 + web*math.Pow(t+(upright-t)/2-y, 2)
	return Bending{i, i / math.Max(y, upright-y)}
}

// RailsCarryKg returns the mass in kg, spread evenly, that some rails of a section carry over a span: the lesser of what
// stresses them to 60 % of the yield strength and what makes them sag by a 240th of the span. 0 for a section that
// cannot be a rail.
//
//	w L^2 / (8 Z) <= 0.6 yield      5 w L^4 / (384 E I) <= L / 240      w the load of a rail in N/m
//
// Source: the simply supported beam under an even load, Roark's Formulas for Stress and Strain, table 8.1 case 2e.
func RailsCarryKg(s *catalog.Section, spanM float64, count int) float64 {
	b, ok := BendingOf(s)
	if !ok || !(spanM > 0) || count < 1 {
		return 0
	}
	byStress := yieldShare * s.YieldPa * 8 * b.ModulusM3 / (spanM * spanM)
	bySag := 384 * SteelPa * b.InertiaM4 / (5 * sagShare * math.Pow(spanM, 3))
	return math.Min(byStress, bySag) * spanM * float64(count) / gravity
}
