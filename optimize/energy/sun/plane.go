package sun

import (
	"math"

	"cartwright/scenarios/sky"
)

// Plane is how modules stand.
type Plane struct {
	Latitude float64
	Tilt     float64 // 0 level, 90 upright
	Azimuth  float64 // where they face: 0 north, 90 east, 180 south
	Ground   float64 // 0..1, share of the light that the ground around them throws back
}

// incidence holds the coefficients of cos theta = level + noon cos w + side sin w for a plane and a declination.
type incidence struct{ level, noon, side float64 }

// incidence returns the cosine of the angle between the sun and the plane's normal as a function of the hour angle.
//
//	cos theta = sin d sin lat cos b - sin d cos lat sin b cos g + cos d cos lat cos b cos w
//	          + cos d sin lat sin b cos g cos w + cos d sin b sin g sin w,     g = azimuth - 180
//
// Source: Duffie and Beckman, eq. 1.6.2, which counts g from south, west positive; in three texts.
func (p Plane) incidence(declination float64) incidence {
	g := p.Azimuth - 180
	sd, cd, sl, cl := sin(declination), cos(declination), sin(p.Latitude), cos(p.Latitude)
	sb, cb := sin(p.Tilt), cos(p.Tilt)
	return incidence{
		level: sd*sl*cb - sd*cl*sb*cos(g),
		noon:  cd*cl*cb + cd*sl*sb*cos(g),
		side:  cd * sb * sin(g),
	}
}

// CosIncidence returns the cosine of the angle between the sun and the plane's normal; below 0 the sun is
// behind the plane.
func (p Plane) CosIncidence(declination, hourAngle float64) float64 {
	return p.incidence(declination).at(hourAngle)
}

func (i incidence) at(w float64) float64 { return i.level + i.noon*cos(w) + i.side*sin(w) }

// integral returns the integral of cos theta between two hour angles, in degrees of hour angle.
func (i incidence) integral(from, to float64) float64 {
	return i.level*(to-from) + (i.noon*(sin(to)-sin(from))-i.side*(cos(to)-cos(from)))/rad
}

// front returns the integral between two hour angles of cos theta where it is above 0. It is exact: cos theta is a
// sine wave and changes sign at most twice a turn.
func (i incidence) front(from, to float64) float64 {
	wave := math.Hypot(i.noon, i.side)
	if wave <= math.Abs(i.level) { // the sun is always on one side of the plane
		return max(0, i.integral(from, to))
	}
	crest := math.Atan2(i.side, i.noon) / rad
	half := math.Acos(-i.level/wave) / rad // in front from crest - half to crest + half
	first := crest + 360*math.Ceil((from-crest-half)/360)
	sum := 0.0
	for c := first; c-half < to; c += 360 {
		if start, end := max(from, c-half), min(to, c+half); start < end {
			sum += i.integral(start, end)
		}
	}
	return sum
}

// Beam returns R_b on day n between two hour angles: the direct light on the plane over that on the level while the
// sun is up, which is the integral of the positive cosines of incidence over that of the cosines of the zenith. 0 at
// night.
//
// Source: Duffie and Beckman, eq. 1.8.1 and, for the hours of sunrise and sunset, 2.14.6.
func (p Plane) Beam(n int, from, to float64) float64 {
	d := sky.Declination(n)
	plane, level := p.incidence(d), Plane{Latitude: p.Latitude, Azimuth: 180}.incidence(d)
	front, up := 0.0, 0.0
	for _, part := range sky.Sunlit(p.Latitude, d, from, to) {
		front += plane.front(part[0], part[1])
		up += level.integral(part[0], part[1])
	}
	if !(up > 0) {
		return 0
	}
	return front / up
}

// Light is the light of an hour on a level plane, in Wh/m2.
type Light struct {
	Beam    float64 // straight from the sun
	Diffuse float64 // from the rest of the sky
}

// On returns the light of an hour on the plane, in Wh/m2. Ratio is R_b of the hour, outside the light on a level plane
// outside the atmosphere in that hour, in Wh/m2.
//
//	I_T = (I_b + I_d A) R_b + I_d (1 - A) (1 + cos tilt) / 2 + I ground (1 - cos tilt) / 2,   A = I_b / I_0, at most 1
//
// Source: Hay and Davies (1980); Duffie and Beckman, eq. 2.16.4 and 2.16.7 without their term for the horizon.
func (p Plane) On(l Light, ratio, outside float64) float64 {
	a := 0.0
	if outside > 0 {
		a = min(1, l.Beam/outside)
	}
	sky := (1 + cos(p.Tilt)) / 2
	ground := p.Ground * (1 - cos(p.Tilt)) / 2
	return (l.Beam+l.Diffuse*a)*ratio + l.Diffuse*(1-a)*sky + (l.Beam+l.Diffuse)*ground
}
