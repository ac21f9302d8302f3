package sun

import "math"

// DiffuseShare returns the share of a day's light that is diffuse, from the day's clearness k = H / H0 and the hour
// angle of sunset in degrees.
//
//	ws <= 81.4:  1 - 0.2727 K + 2.4495 K^2 - 11.9514 K^3 + 9.3879 K^4    K < 0.715, else 0.143
//	ws > 81.4:   1 + 0.2832 K - 2.5557 K^2 + 0.8448 K^3                  K < 0.722, else 0.175
//
// Source: Erbs, Klein and Duffie, Solar Energy 28 (1982) 293; Duffie and Beckman, eq. 2.11.1; in three texts.
func DiffuseShare(k, sunset float64) float64 {
	if sunset <= 81.4 {
		if k < 0.715 {
			return 1 - 0.2727*k + 2.4495*k*k - 11.9514*k*k*k + 9.3879*k*k*k*k
		}
		return 0.143
	}
	if k < 0.722 {
		return 1 + 0.2832*k - 2.5557*k*k + 0.8448*k*k*k
	}
	return 0.175
}

// HourShare returns r_t, the share of a day's light that falls in the hour around an hour angle; 0 at night.
// Over a day the shares add up to 1 within a percent or so.
//
//	r_t = pi / 24 (a + b cos w) (cos w - cos ws) / (sin ws - pi ws / 180 cos ws)
//	a = 0.409 + 0.5016 sin(ws - 60),  b = 0.6609 - 0.4767 sin(ws - 60)
//
// Source: Collares-Pereira and Rabl, Solar Energy 22 (1979) 155; Duffie and Beckman, eq. 2.13.1; in four texts.
func HourShare(hourAngle, sunset float64) float64 {
	a := 0.409 + 0.5016*sin(sunset-60)
	b := 0.6609 - 0.4767*sin(sunset-60)
	return (a + b*cos(hourAngle)) * DiffuseHourShare(hourAngle, sunset)
}

// DiffuseHourShare returns r_d, the share of a day's diffuse light that falls in the hour around an hour
// angle; 0 at night.
//
//	r_d = pi / 24 (cos w - cos ws) / (sin ws - pi ws / 180 cos ws)
//
// Source: Liu and Jordan, Solar Energy 4 (1960) 1; Duffie and Beckman, eq. 2.13.3; in four texts.
func DiffuseHourShare(hourAngle, sunset float64) float64 {
	if math.Abs(hourAngle) >= sunset {
		return 0
	}
	return math.Pi / 24 * (cos(hourAngle) - cos(sunset)) / (sin(sunset) - sunset*rad*cos(sunset))
}
