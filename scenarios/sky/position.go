package sky

import "math"

// Declination returns the angle of the sun at noon above the plane of the equator on day n, in degrees.
//
//	23.45 sin(360 (284 + n) / 365)
//
// Source: Cooper, Solar Energy 12 (1969) 333; Duffie and Beckman, eq. 1.6.1a.
func Declination(n int) float64 { return 23.45 * sin(360*float64(284+n)/DaysOfYear) }

// EquationOfTime returns by how many minutes the sun is ahead of mean solar time on day n.
//
//	229.2 (0.000075 + 0.001868 cos B - 0.032077 sin B - 0.014615 cos 2B - 0.04089 sin 2B),  B = 360 (n - 1) / 365
//
// Source: Spencer, Search 2 (1971) 172; Duffie and Beckman, eq. 1.5.3. Spencer's own first constant is
// 0.0000075; the textbooks' misprint is a second of time.
func EquationOfTime(n int) float64 {
	b := 360 * float64(n-1) / DaysOfYear
	return 229.2 * (0.000075 + 0.001868*cos(b) - 0.032077*sin(b) - 0.014615*cos(2*b) - 0.04089*sin(2*b))
}

// SolarHour returns the solar time, in hours, of a time on the clock of day n. ZoneH is how many hours the
// clock is ahead of Greenwich's, without summer time. It may fall outside of 0 to 24.
//
//	clock + (4 (longitude - 15 zone) + E) / 60
//
// Source: Duffie and Beckman, eq. 1.5.2, which counts longitudes west of Greenwich.
func SolarHour(n int, clockH, longitude, zoneH float64) float64 {
	return clockH + (4*(longitude-15*zoneH)+EquationOfTime(n))/60
}

// HourAngle returns the hour angle of a solar time in hours, in degrees.
//
//	15 (h - 12)
//
// Source: Duffie and Beckman, section 1.6.
func HourAngle(solarH float64) float64 { return 15 * (solarH - 12) }

// CosZenith returns the cosine of the angle between the sun and straight up; below 0 the sun has set.
//
//	cos lat cos d cos w + sin lat sin d
//
// Source: Duffie and Beckman, eq. 1.6.5.
func CosZenith(latitude, declination, hourAngle float64) float64 {
	return cos(latitude)*cos(declination)*cos(hourAngle) + sin(latitude)*sin(declination)
}

// SunsetHourAngle returns the hour angle at which the sun sets, in degrees: 180 where it does not set and
// 0 where it does not rise. It rises at the same angle before noon.
//
//	acos(-tan lat tan d)
//
// Source: Duffie and Beckman, eq. 1.6.10.
func SunsetHourAngle(latitude, declination float64) float64 {
	return math.Acos(min(1, max(-1, -tan(latitude)*tan(declination)))) / rad
}

// Sunlit returns the parts of an hour, between two hour angles less than a day apart, in which the sun is up:
// none, one or, where it sets and rises again, two. Of those that are not there start and end are equal.
func Sunlit(latitude, declination, from, to float64) [2][2]float64 {
	turn := 360 * math.Round((from+to)/720) // noon nearest to the hour's middle
	from, to = from-turn, to-turn
	ws := SunsetHourAngle(latitude, declination)
	var parts [2][2]float64
	i := 0
	for _, noon := range [...]float64{-360, 0, 360} {
		start, end := max(from, noon-ws), min(to, noon+ws)
		if start < end && i < len(parts) {
			parts[i] = [2]float64{start, end}
			i++
		}
	}
	return parts
}
