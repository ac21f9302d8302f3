package sun

import (
	"cartwright/scenarios"
	"cartwright/scenarios/sky"
)

// fromHours makes a year from a file of hours: of light on the plane itself, or of direct and diffuse light, carried
// to the plane by where the sun is in each hour.
func fromHours(s *scenarios.Sun) *Year {
	w := s.Hours
	if w.POA != nil {
		return &Year{Plane: w.POA, AirC: w.TempC}
	}
	p := plane(s)
	y := &Year{Plane: make([]float64, Hours), AirC: w.TempC}
	for h := range y.Plane {
		n := h/24 + 1
		from := sky.HourAngle(sky.SolarHour(n, float64(h%24), s.LongitudeDeg, s.ZoneH))
		y.Plane[h] = p.ofFile(n, from, from+15, w.DNI[h], w.DHI[h])
	}
	return y
}

// ofFile returns the light on the plane between two hour angles, in Wh/m2, from the direct light on a plane that
// faces the sun (normal) and the diffuse light on the level. The beam is taken from normal and not as the difference of
// global and diffuse light, which near the horizon is mostly error.
func (p Plane) ofFile(n int, from, to, normal, diffuse float64) float64 {
	outside := sky.Hour(p.Latitude, n, from, to)
	up := 0.0
	for _, part := range sky.Sunlit(p.Latitude, sky.Declination(n), from, to) {
		up += part[1] - part[0]
	}
	light := Light{Diffuse: diffuse}
	if up > 0 {
		// The mean cosine of the zenith while the sun is up is what a level plane has of the beam.
		light.Beam = normal * outside / sky.Normal(n) / (up / 15)
	}
	return p.On(light, p.Beam(n, from, to), outside)
}
