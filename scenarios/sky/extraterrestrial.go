package sky

// Constant is the solar constant, W/m2: what reaches a plane that faces the sun, outside the air, at the mean
// distance. Duffie and Beckman, section 1.2.
const Constant = 1367.0

// Normal returns what reaches a plane that faces the sun outside the air on day n, in W/m2.
//
//	Gsc (1 + 0.033 cos(360 n / 365))
//
// Source: Duffie and Beckman, eq. 1.4.1a.
func Normal(n int) float64 { return Constant * (1 + 0.033*cos(360*float64(n)/DaysOfYear)) }

// Day returns H0, what a level plane outside the air gets on day n, in Wh/m2.
//
//	24 / pi Gsc (1 + 0.033 cos(360 n / 365)) (cos lat cos d sin ws + pi ws / 180 sin lat sin d)
//
// Source: Duffie and Beckman, eq. 1.10.3.
func Day(latitude float64, n int) float64 {
	ws := SunsetHourAngle(latitude, Declination(n))
	return Normal(n) * levelHours(latitude, Declination(n), -ws, ws)
}

// Hour returns I0, what a level plane outside the air gets on day n between two hour angles, in Wh/m2; of
// hours partly in the night only what the sun is up for.
//
//	12 / pi Gsc (1 + 0.033 cos(360 n / 365)) (cos lat cos d (sin w2 - sin w1) + pi (w2 - w1) / 180 sin lat sin d)
//
// Source: Duffie and Beckman, eq. 1.10.4.
func Hour(latitude float64, n int, from, to float64) float64 {
	sum := 0.0
	for _, part := range Sunlit(latitude, Declination(n), from, to) {
		sum += levelHours(latitude, Declination(n), part[0], part[1])
	}
	return Normal(n) * sum
}

// levelHours returns the integral of the cosine of the zenith angle between two hour angles, in hours.
func levelHours(latitude, declination, from, to float64) float64 {
	sum := cos(latitude)*cos(declination)*(sin(to)-sin(from))/rad + sin(latitude)*sin(declination)*(to-from)
	return max(0, sum) / 15
}

// MeanDay returns the day of the year whose H0 is nearest to its month's mean. Months count from 0.
//
// Source: Klein, Solar Energy 19 (1977) 325; Duffie and Beckman, table 1.6.1; in ten texts.
func MeanDay(month int) int {
	return [...]int{17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344}[month]
}

// DaysOfMonth returns how many days a month has. Months count from 0.
func DaysOfMonth(month int) int {
	return [...]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}[month]
}
