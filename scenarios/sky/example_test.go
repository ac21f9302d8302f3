package sky_test

import (
	"fmt"
	"math"

	"cartwright/scenarios/sky"
)

const degrees = 180 / math.Pi

// Duffie and Beckman, Example 1.5.1, p. 12: Madison, 89.4 degrees west, 3 February, 10:30 by the clock.
// Printed: E -13.5 min, solar time 10:19; confirmed in 4 independent texts.
func ExampleSolarHour() {
	h := sky.SolarHour(34, 10.5, -89.4, -6)
	fmt.Printf("%.1f min, %d:%02.0f\n", sky.EquationOfTime(34), int(h), (h-math.Floor(h))*60)
	// Output: -13.5 min, 10:19
}

// Duffie and Beckman, Example 1.6.1, p. 15: 13 February. Printed: -14; confirmed in 3 independent texts.
func ExampleDeclination() {
	fmt.Printf("%.0f\n", sky.Declination(44))
	// Output: -14
}

// Duffie and Beckman, Example 1.6.2, p. 16: Madison at 9:30 on 13 February and at 18:30 on 1 July. Printed:
// 66.5 and 79.6 degrees; confirmed in 4 independent texts.
func ExampleCosZenith() {
	fmt.Printf("%.1f\n", math.Acos(sky.CosZenith(43, sky.Declination(44), -37.5))*degrees)
	fmt.Printf("%.1f\n", math.Acos(sky.CosZenith(43, 23.1, 97.5))*degrees)
	// Output:
	// 66.5
	// 79.6
}

// Duffie and Beckman, Example 1.6.3, p. 19: Madison on 16 March, declination -2.4. Printed: 87.8; confirmed in 2 independent texts.
func ExampleSunsetHourAngle() {
	fmt.Printf("%.1f\n", sky.SunsetHourAngle(43, -2.4))
	// Output: 87.8
}

// FAO Irrigation and Drainage Paper 56, Examples 8 and 9: 20 degrees south on 3 September. Printed: 32.2 MJ/m2
// and 11.7 h of daylight; confirmed in 9 independent texts.
func ExampleDay_fao() {
	fmt.Printf("%.1f MJ/m2\n", sky.Day(-20, 246)*0.0036)
	fmt.Printf("%.1f h\n", sky.SunsetHourAngle(-20, sky.Declination(246))/7.5)
	// Output:
	// 32.2 MJ/m2
	// 11.7 h
}

// Duffie and Beckman, Example 1.10.1, p. 38: Madison on 15 April. Printed: 33.8 MJ/m2; confirmed in 2
// independent texts.
func ExampleDay() {
	fmt.Printf("%.1f MJ/m2\n", sky.Day(43, 105)*0.0036)
	// Output: 33.8 MJ/m2
}

// Duffie and Beckman, Example 1.10.2, p. 41: the same, 10 to 11 solar time. Printed, from memory: 3.79 MJ/m2.
func ExampleHour() {
	fmt.Printf("%.2f MJ/m2\n", sky.Hour(43, 105, -30, -15)*0.0036)
	// Output: 3.79 MJ/m2
}

// Reda and Andreas, Solar Position Algorithm, NREL/TP-560-34302, table A5.1: 17 October 2003, 12:30:30, zone -7.
// Printed: zenith 50.13 degrees without refraction, hour angle 11.11, equation of time 14.64 min. Cooper's
// declination is a degree off in October, and the zenith with it.
func ExampleCosZenith_spa() {
	const n = 290
	w := sky.HourAngle(sky.SolarHour(n, 12+30.5/60, -105.1786, -7))
	fmt.Printf("%.0f min, hour angle %.0f, zenith %.1f\n",
		sky.EquationOfTime(n), w, math.Acos(sky.CosZenith(39.742476, sky.Declination(n), w))*degrees)
	// Output: 15 min, hour angle 11, zenith 51.1
}
