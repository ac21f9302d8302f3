package catalog

import (
	"fmt"
	"math"
)

func sectionPart(s *Section) *Part { return &s.Part }

var sectionTable = table[Section]{
	file: "sections.csv",
	pos:  posOf(sectionPart),
	columns: common(sectionPart, optional(perMetre(
		func(s *Section) *float64 { return &s.CentsPerM },
		func(s *Section) *float64 { return &s.LowCentsPerM },
		func(s *Section) *float64 { return &s.HighCentsPerM },
		func(s *Section) *float64 { return &s.KgPerM })),
		choice("shape", []string{string(SquareTube), string(Flat), string(Angle), string(Ply)},
			func(s *Section) *string { return (*string)(&s.Shape) }).must(),
		number("width_mm", millimetres, positive, func(s *Section) *float64 { return &s.WidthM }).blankZero(),
		number("height_mm", millimetres, positive, func(s *Section) *float64 { return &s.HeightM }).blankZero(),
		number("wall_mm", millimetres, positive, func(s *Section) *float64 { return &s.WallM }).blankZero(),
		number("yield_mpa", megapascals, positive, func(s *Section) *float64 { return &s.YieldPa }).or("235"),
	),
	rules: append(priceRange("_per_m", func(s *Section) (low, price, high float64) {
		return s.LowCentsPerM, s.CentsPerM, s.HighCentsPerM
	}), rule[Section]{"shape", []string{"width_mm", "height_mm", "wall_mm", "mass_kg_per_m"},
		func(s *Section, _ func(string) entry) *flaw { return s.misshapen() }}),
	finish: (*Section).shape,
}

// optional makes the columns of price and mass of a section optional: what is not bought has no price, and the mass of
// steel follows from its sides.
func optional(columns []column[Section]) []column[Section] {
	for i := range columns {
		columns[i].need = false
	}
	columns[0] = columns[0].blankZero()
	columns[3].derived = "of steel, from its sides"
	return columns
}

// misshapen says what is wrong with the sides of a section, nil for nothing.
func (s *Section) misshapen() *flaw {
	wrong := func(right string) *flaw {
		return &flaw{fmt.Sprintf("the sides of this %s are not clear", s.Shape), right}
	}
	stock := *s
	stock.shape()
	switch s.Shape {
	case SquareTube:
		if s.WidthM == 0 || s.WallM == 0 || s.HeightM != 0 && s.HeightM != s.WidthM || 2*s.WallM >= s.WidthM {
			return wrong("write width_mm, its outer side, and wall_mm, less than half of it; height_mm is the same as width_mm or empty")
		}
	case Flat:
		if len(s.stated()) != 2 {
			return wrong("write two of width_mm, height_mm and wall_mm: its two sides")
		}
	case Angle:
		if s.WidthM == 0 || s.WallM == 0 || s.WallM >= s.WidthM || s.HeightM != 0 && s.WallM >= s.HeightM {
			return wrong("write width_mm, its level leg, wall_mm, less than a leg, and height_mm where the upright leg is another")
		}
	case Ply:
		if s.KgPerM == 0 {
			return &flaw{"ply states no mass", "write kilograms per metre under mass_kg_per_m; only that of steel is computed"}
		}
	}
	if m := stock.KgPerM; m < leastStockKgPerM || m > mostStockKgPerM {
		return &flaw{fmt.Sprintf("steel of these sides weighs %s kg a metre", rough(m)), "write the sides in the units of their headers"}
	}
	return nil
}

// The least and the greatest mass of a metre of stock that is read: more than wire, and light enough to lift. No source.
const leastStockKgPerM, mostStockKgPerM = 1e-3, 1e3

// stated returns the sides that are stated.
func (s *Section) stated() []float64 {
	var sides []float64
	for _, side := range []float64{s.WidthM, s.HeightM, s.WallM} {
		if side != 0 {
			sides = append(sides, side)
		}
	}
	return sides
}

// steelKgPerM3 is the density of steel, EN 1991-1-1 annex A and EN 10219-2: 7.85 kg/dm3.
const steelKgPerM3 = 7850

// shape fills the sides that follow from others, and the mass of steel where none is stated: the area of the profile
// with sharp corners, times the density.
func (s *Section) shape() {
	var area float64
	switch sides := s.stated(); {
	case s.Shape == SquareTube:
		s.HeightM = s.WidthM
		inner := s.WidthM - 2*s.WallM
		area = s.WidthM*s.WidthM - inner*inner
	case s.Shape == Flat && len(sides) == 2:
		s.WidthM, s.HeightM, s.WallM = min(sides[0], sides[1]), max(sides[0], sides[1]), 0
		area = s.WidthM * s.HeightM
	case s.Shape == Angle:
		if s.HeightM == 0 {
			s.HeightM = s.WidthM
		}
		area = (s.WidthM + s.HeightM - s.WallM) * s.WallM
	}
	if s.KgPerM == 0 {
		s.KgPerM = math.Max(area, 0) * steelKgPerM3
	}
}

// OfSteel reports whether a section weighs what steel of its sides does, rounded corners and the tolerances of rolling
// counted in. Ply never does.
func (s *Section) OfSteel() bool {
	steel := *s
	steel.KgPerM = 0
	steel.shape()
	return s.Shape != Ply && math.Abs(s.KgPerM/steel.KgPerM-1) <= 0.2
}
