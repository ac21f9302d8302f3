package audit

import (
	"math"

	"cartwright/optimize/energy/sun"
	"cartwright/scenarios"
	"cartwright/scenarios/sky"
)

// sunW returns what the array gives in each hour of the year, before the inverter cuts any off, in W.
//
//	watts · g / 1000 · (1 + power_temp / 100 (Tc - 25)) · (1 - losses),   Tc = air + (noct - 20) / 800 g
func (a *auditor) sunW() []float64 {
	x, s := a.array, a.s.Sun
	watts := make([]float64, yearH)
	if s.Hours != nil {
		watts = make([]float64, len(s.Hours.TempC)) // a record of fewer days goes round likewise
	}
	if x == nil {
		return watts
	}
	year := a.light()
	for h, g := range year.plane {
		cellC := year.airC[h] + (x.NOCTC-noctAirC)/noctWm2*g
		heat := 1 + x.PowerTempPctPerC/100*(cellC-ratedC)
		watts[h] = math.Max(0, x.watts()*g/fullSunWm2*heat*(1-s.Losses))
	}
	return watts
}

// light is a year of hours.
type light struct {
	plane []float64 // on the plane of the modules, W/m2
	airC  []float64
}

// lightOf returns the light of a scenario's sun. Hours from a file are carried to the plane by energy/sun, which has its
// own tests; hours from twelve figures are worked out here a second time.
func lightOf(s *scenarios.Sun) *light {
	if s.Hours != nil {
		y := sun.Of(s)
		return &light{y.Plane, y.AirC}
	}
	y := &light{}
	n := 1
	for m, days := range monthDays {
		for _, dayWh := range daysWh(s, m, n, days) {
			hours := hoursOf(s, n, dayWh)
			y.plane = append(y.plane, hours[:]...)
			for range hours {
				y.airC = append(y.airC, s.WarmthC[m])
			}
			n++
		}
	}
	return y
}

// daysWh returns the light on a level plane on each day of a month that begins on day first of the year, in Wh/m2: each
// day's clearness times its own light outside the atmosphere, all scaled to the month's figure.
func daysWh(s *scenarios.Sun, month, first, days int) []float64 {
	wanted := s.MonthlyKWhM2[month] * 1000
	day := make([]float64, days)
	outside := sky.Day(s.LatitudeDeg, sky.MeanDay(month))
	if outside <= 0 || wanted <= 0 {
		return day
	}
	mean := wanted / outside
	spread := sun.ClearnessOf(mean)
	sum := 0.0
	for d, rank := range sun.Order(mean, days) {
		day[d] = spread.Day((2*float64(rank)-1)/(2*float64(days))) * sky.Day(s.LatitudeDeg, first+d)
		sum += day[d]
	}
	for d := range day {
		day[d] *= wanted * float64(days) / sum
	}
	return day
}

// hoursOf returns the light on the plane of the modules in each hour of day n, in Wh/m2, given the day's light on the
// level. The whole and the diffuse light are each spread by their own curve at mid-hour, and scaled to sum to their day.
func hoursOf(s *scenarios.Sun, n int, dayWh float64) (plane [24]float64) {
	outside := sky.Day(s.LatitudeDeg, n)
	if outside <= 0 {
		return plane
	}
	sunset := sky.SunsetHourAngle(s.LatitudeDeg, sky.Declination(n))
	diffuseWh := dayWh * sun.DiffuseShare(dayWh/outside, sunset)
	var whole, diffuse [24]float64
	wholeSum, diffuseSum := 0.0, 0.0
	for h := range plane {
		mid := sky.HourAngle(float64(h) + 0.5)
		whole[h], diffuse[h] = sun.HourShare(mid, sunset), sun.DiffuseHourShare(mid, sunset)
		wholeSum += whole[h]
		diffuseSum += diffuse[h]
	}
	if wholeSum <= 0 {
		return plane
	}
	at := sun.Plane{Latitude: s.LatitudeDeg, Tilt: s.TiltDeg, Azimuth: s.AzimuthDeg}
	for h := range plane {
		all := dayWh * whole[h] / wholeSum
		if all <= 0 {
			continue
		}
		hazy := math.Min(all, diffuseWh*diffuse[h]/diffuseSum)
		from, to := sky.HourAngle(float64(h)), sky.HourAngle(float64(h+1))
		plane[h] = tilted(s, all-hazy, hazy, at.Beam(n, from, to), sky.Hour(s.LatitudeDeg, n, from, to))
	}
	return plane
}

// tilted returns the light on the plane in an hour, from beam and diffuse light on the level, R_b and the light on a level
// plane outside the atmosphere: Hay and Davies (1980); Duffie and Beckman, section 2.16.
//
//	I_T = (I_b + I_d A) R_b + I_d (1 - A)(1 + cos tilt)/2 + I · ground · (1 - cos tilt)/2,   A = I_b / I_0
func tilted(s *scenarios.Sun, beam, diffuse, ratio, outside float64) float64 {
	straight := 0.0
	if outside > 0 {
		straight = math.Min(1, beam/outside)
	}
	level := math.Cos(s.TiltDeg * math.Pi / 180)
	return (beam+diffuse*straight)*ratio + diffuse*(1-straight)*(1+level)/2 + (beam+diffuse)*s.Ground*(1-level)/2
}
