package scenarios

import "cartwright/catalog/problem"

// SunHours is how many hours a year of sun has: the extra day of a leap year is left out.
const SunHours = 8760

// Sun is where the modules stand and what sunshine there is: twelve monthly figures, or a file of hours.
type Sun struct {
	LatitudeDeg float64 // positive north of the equator
	TiltDeg     float64 // of the modules; 0 level, 90 upright
	AzimuthDeg  float64 // where they face: 0 north, 90 east; default to the equator
	Ground      float64 // 0..1, share of light that the ground throws back; default 0.2
	Losses      float64 // 0..1, lost between module and bus: dirt, mismatch, cable; default 0.1
	ColdestC    float64 // of the air
	HottestC    float64 // of the air; default 40
	Room        *Room   // nil: not stated
	Most        int     // modules at most; 0: not stated
	OnCart      bool    // the modules are carried along; else they stand on the ground
	HeightM     float64 // of the modules' middle from the floor, on the cart

	MonthlyKWhM2 [12]float64 // a day on the level, January first; zero where there are Hours
	WarmthC      [12]float64 // mean temperature of the air
	Hours        *Weather    // nil: monthly figures
	LongitudeDeg float64     // positive east of Greenwich; with Hours
	ZoneH        float64     // how far the clock is ahead of Greenwich's; with Hours
	Pos          problem.Pos
}

// Room is a rectangle that the modules have to lie in, side by side without gaps.
type Room struct {
	LengthM, WidthM float64
}

// Weather is a year hour by hour, the first from midnight on 1 January: light as the mean of the hour in W/m2,
// either GHI, DNI and DHI or POA.
type Weather struct {
	GHI   []float64 // on the level, all of it
	DNI   []float64 // straight from the sun, on a plane that faces it
	DHI   []float64 // on the level, from the rest of the sky
	POA   []float64 // on the plane of the modules
	TempC []float64 // of the air
}
