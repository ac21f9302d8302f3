package scenarios

import (
	"fmt"
	"math"
	"strconv"

	"cartwright/scenarios/sky"
)

// A file whose clock is an hour off has some 200 hours of light after dark. A right one has next to none, since the error
// of the sun's position here makes only a few W/m2. No source.
const (
	darkWm2    = 30 // the mean of an hour in which the sun is never up
	mostAtDusk = 10 // such hours in a year
)

// checkNights reports a file whose sun shines at night, and the zone that would fit.
func (w *weather) checkNights(x *Sun, s section) {
	shine := x.Hours.GHI
	if shine == nil {
		shine = x.Hours.POA
	}
	nights, first := 0, -1
	var east, north float64 // the mean direction of the hour angles, by light
	for h, wm2 := range shine {
		n := h/24 + 1
		from := sky.HourAngle(sky.SolarHour(n, float64(h%24), x.LongitudeDeg, x.ZoneH))
		sin, cos := math.Sincos((from + 7.5) * math.Pi / 180)
		east, north = east+wm2*sin, north+wm2*cos
		if wm2 > darkWm2 && sky.Hour(x.LatitudeDeg, n, from, from+15) == 0 {
			if nights++; first < 0 {
				first = h
			}
		}
	}
	if nights <= mostAtDusk {
		return
	}
	fits := x.ZoneH + math.Round(math.Atan2(east, north)*12/math.Pi)
	right := "check latitude, longitude and zone, and that each row is the hour that begins at its time"
	if fits != x.ZoneH {
		right = fmt.Sprintf("with a zone of %s the light would be centred on noon", strconv.FormatFloat(fits, 'f', -1, 64))
	}
	s.wrong("zone", fmt.Sprintf("zone: with %s the sun shines in %d hours of the night, first in line %d of %s",
		strconv.FormatFloat(x.ZoneH, 'f', -1, 64), nights, w.lines[first], w.file), right)
}

// mostOpen is by how much the whole light and the sum of its parts may differ over a year. In measured files they agree
// to a few percent; no source.
const mostOpen = 0.10

// checkClosure warns where the whole light is not the sum of its two parts: columns may be mixed up.
//
//	GHI = DHI + DNI cos(zenith)
func (w *weather) checkClosure(x *Sun, s section) {
	all, parts := 0.0, 0.0
	for h := range x.Hours.GHI {
		n := h/24 + 1
		from := sky.HourAngle(sky.SolarHour(n, float64(h%24), x.LongitudeDeg, x.ZoneH))
		all += x.Hours.GHI[h]
		parts += x.Hours.DHI[h] + x.Hours.DNI[h]*sky.Hour(x.LatitudeDeg, n, from, from+15)/sky.Normal(n)
	}
	if math.Abs(all-parts) > mostOpen*max(all, parts) {
		s.doubtful("file", fmt.Sprintf("over the year %s has %.0f kWh/m2 on the level, but its parts, from the sun and from the sky, are %.0f",
			w.file, all/wattHours, parts/wattHours), "check which column is which")
	}
}

// farDeg is how far a scenario's place may be from its weather file's without a warning, in degrees: some 100 km.
const farDeg = 1

// checkSite compares the place with what the header of a public file says.
func (w *weather) checkSite(x *Sun, s section) {
	if w.site == nil {
		return
	}
	if x.ZoneH != w.site.zoneH && !math.IsNaN(x.ZoneH) {
		s.wrong("zone", fmt.Sprintf("zone: %g is not that of %s, whose clock is %g h ahead of Greenwich's", x.ZoneH, w.file, w.site.zoneH), "leave zone out, or write the file's")
	}
	for _, c := range []struct {
		key         string
		here, there float64
	}{{"latitude", x.LatitudeDeg, w.site.latitude}, {"longitude", x.LongitudeDeg, w.site.longitude}} {
		if math.Abs(c.here-c.there) > farDeg {
			s.doubtful(c.key, fmt.Sprintf("%s: %g deg is far from the %g deg of %s", c.key, c.here, c.there, w.file), "check that the file is of this place")
		}
	}
}
