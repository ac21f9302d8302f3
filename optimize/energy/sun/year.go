package sun

import (
	"cartwright/catalog"
	"cartwright/scenarios"
	"cartwright/scenarios/sky"
)

// Year is the light and air that the modules have, hour by hour: Hours values of each, the first from midnight on
// 1 January.
type Year struct {
	Plane []float64 // light on the plane of the modules, W/m2
	AirC  []float64
}

// Of returns the year of a scenario's sun.
func Of(s *scenarios.Sun) *Year {
	if s.Hours == nil {
		return fromMonths(s)
	}
	return fromHours(s)
}

// plane returns how the modules of a scenario stand.
func plane(s *scenarios.Sun) Plane {
	return Plane{Latitude: s.LatitudeDeg, Tilt: s.TiltDeg, Azimuth: s.AzimuthDeg, Ground: s.Ground}
}

// ModuleW returns the watts of one module hour by hour, less the share that is lost on the way.
func (y *Year) ModuleW(m *catalog.Solar, losses float64) []float64 {
	watts := make([]float64, len(y.Plane))
	for h := range watts {
		watts[h] = ModuleW(m, y.AirC[h], y.Plane[h], losses)
	}
	return watts
}

// fromMonths makes a year of hours from twelve monthly figures.
func fromMonths(s *scenarios.Sun) *Year {
	y := &Year{Plane: make([]float64, 0, Hours), AirC: make([]float64, 0, Hours)}
	n := 1
	for month, kWh := range s.MonthlyKWhM2 {
		for _, day := range DaysOfMonth(s.LatitudeDeg, month, kWh*1000) {
			y.Plane = append(y.Plane, dayOnPlane(plane(s), n, day)...)
			for range 24 {
				y.AirC = append(y.AirC, s.WarmthC[month])
			}
			n++
		}
	}
	return y
}

// DaysOfMonth returns the light on a level plane on each day of a month (0 is January), in Wh/m2. Each day is its
// clearness by Days times its own H0, all scaled so that their mean is meanWh.
func DaysOfMonth(latitude float64, month int, meanWh float64) []float64 {
	first := 1
	for m := range month {
		first += sky.DaysOfMonth(m)
	}
	days := make([]float64, sky.DaysOfMonth(month))
	outside := sky.Day(latitude, sky.MeanDay(month))
	if !(outside > 0 && meanWh > 0) {
		return days
	}
	sum := 0.0
	for i, k := range Days(meanWh/outside, len(days)) {
		days[i] = k * sky.Day(latitude, first+i)
		sum += days[i]
	}
	for i := range days {
		days[i] *= meanWh * float64(len(days)) / sum
	}
	return days
}

// HoursOfDay returns the light of each hour of day n on a level plane that gets dayWh in all, in Wh/m2; zeros on a day
// so short that the sun is not up in the middle of any hour.
func HoursOfDay(latitude float64, n int, dayWh float64) [24]Light {
	var hours [24]Light
	outside := sky.Day(latitude, n)
	if !(outside > 0 && dayWh > 0) {
		return hours
	}
	sunset := sky.SunsetHourAngle(latitude, sky.Declination(n))
	diffuse := dayWh * DiffuseShare(dayWh/outside, sunset)
	var share, diffuseShare [24]float64
	sum, diffuseSum := 0.0, 0.0
	for h := range hours {
		w := sky.HourAngle(float64(h) + 0.5)
		share[h], diffuseShare[h] = HourShare(w, sunset), DiffuseHourShare(w, sunset)
		sum += share[h]
		diffuseSum += diffuseShare[h]
	}
	if !(sum > 0) {
		return hours
	}
	for h := range hours {
		all := dayWh * share[h] / sum
		d := min(all, diffuse*diffuseShare[h]/diffuseSum)
		hours[h] = Light{Beam: all - d, Diffuse: d}
	}
	return hours
}

// dayOnPlane returns the light on a plane in each hour of day n, in Wh/m2.
func dayOnPlane(p Plane, n int, dayWh float64) []float64 {
	on := make([]float64, 24)
	for h, light := range HoursOfDay(p.Latitude, n, dayWh) {
		if light.Beam+light.Diffuse > 0 {
			from, to := sky.HourAngle(float64(h)), sky.HourAngle(float64(h+1))
			on[h] = p.On(light, p.Beam(n, from, to), sky.Hour(p.Latitude, n, from, to))
		}
	}
	return on
}
