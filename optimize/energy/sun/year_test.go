package sun_test

import (
	"math"
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/energy/sun"
	"cartwright/scenarios"
	"cartwright/scenarios/sky"
)

// madison is Duffie and Beckman's Madison, Example 2.19.1, in kWh/m2 a day.
func madison() *scenarios.Sun {
	s := &scenarios.Sun{LatitudeDeg: 43, TiltDeg: 60, AzimuthDeg: 180, Ground: 0.2, Losses: 0.1}
	for m, mj := range []float64{6.44, 9.89, 12.86, 16.05, 21.36, 23.04, 22.58, 20.33, 14.59, 10.48, 6.37, 5.74} {
		s.MonthlyKWhM2[m] = mj / 3.6
		s.WarmthC[m] = float64(m)
	}
	return s
}

// The days of a month have the month's mean, and the hours of a day what the day has.
func TestMonthsAddUp(t *testing.T) {
	s := madison()
	n := 1
	for m, kWh := range s.MonthlyKWhM2 {
		days := sun.DaysOfMonth(s.LatitudeDeg, m, kWh*1000)
		sum := 0.0
		for _, day := range days {
			sum += day
			hours := 0.0
			for h, l := range sun.HoursOfDay(s.LatitudeDeg, n, day) {
				hours += l.Beam + l.Diffuse
				if l.Beam < 0 || l.Diffuse < 0 {
					t.Errorf("day %d, hour %d: %+v", n, h, l)
				}
			}
			near(t, "hours of a day", hours, day, 1e-9*day)
			n++
		}
		near(t, "days of a month", sum/float64(len(days)), kWh*1000, 1e-9*kWh*1000)
	}
}

// On the level the year of a plane is the year of the figures; tilted it is near the book's monthly means, whose
// sky is all alike and whose month is a day.
func TestYearOfMonths(t *testing.T) {
	s := madison()
	tilted := sun.Of(s)
	s.TiltDeg = 0
	level := sun.Of(s)
	printed := []float64{0, 0, 0, 14.7, 16.6, 16.5, 16.8, 17.5, 15.6, 15.2, 11.4, 0} // months with a ground of 0.2
	h := 0
	for m, kWh := range s.MonthlyKWhM2 {
		hours := 24 * sky.DaysOfMonth(m)
		flat, on := 0.0, 0.0
		for range hours {
			flat += level.Plane[h]
			on += tilted.Plane[h]
			if level.AirC[h] != float64(m) {
				t.Fatalf("hour %d: air of %g C, want %d", h, level.AirC[h], m)
			}
			h++
		}
		// On the level R_b is 1, and the plane takes the whole sky.
		near(t, "level", flat, kWh*1000*float64(hours)/24, 1e-9*flat)
		if want := printed[m]; want > 0 {
			near(t, "tilted, MJ/m2 a day", on/float64(hours)*24*0.0036, want, 0.07*want)
		}
	}
	if h != sun.Hours || len(tilted.Plane) != sun.Hours || len(tilted.AirC) != sun.Hours {
		t.Errorf("%d hours", h)
	}
}

// South of the equator the same figures half a year later give nearly the same light: the year is not quite even.
func TestYearIsEvenHanded(t *testing.T) {
	north, south := madison(), madison()
	south.LatitudeDeg, south.AzimuthDeg = -43, 0
	for m := range 12 {
		south.MonthlyKWhM2[m] = north.MonthlyKWhM2[(m+6)%12]
	}
	sum := func(s *scenarios.Sun) float64 {
		all := 0.0
		for _, g := range sun.Of(s).Plane {
			all += g
		}
		return all
	}
	near(t, "south over north", sum(south)/sum(north), 1, 0.02)
}

// East and west are alike in a day whose clock is the sun's.
func TestEastAndWest(t *testing.T) {
	east, west := madison(), madison()
	east.AzimuthDeg, west.AzimuthDeg = 90, 270
	e, w := sun.Of(east).Plane, sun.Of(west).Plane
	for h := range e {
		if mirror := h - h%24 + 23 - h%24; math.Abs(e[h]-w[mirror]) > 1e-9*(1+e[h]) {
			t.Fatalf("hour %d: %g in the east, %g mirrored in the west", h, e[h], w[mirror])
		}
	}
}

// A polar winter has no light and no mistake. A day on which the sun is up in the middle of no hour counts nothing.
func TestPolarYear(t *testing.T) {
	s := &scenarios.Sun{LatitudeDeg: 70, TiltDeg: 90, AzimuthDeg: 180, Ground: 0.6}
	s.MonthlyKWhM2 = [12]float64{0, 0.6, 2, 4, 5.2, 5.5, 5, 3.4, 1.8, 0.7, 0.1, 0}
	y := sun.Of(s)
	for h, g := range y.Plane {
		if !(g >= 0 && g < 2*sky.Constant) { // an upright plane, a clear day on the horizon and snow before it
			t.Fatalf("hour %d: %g W/m2", h, g)
		}
	}
	if slices.Max(y.Plane[:24*31]) != 0 || slices.Max(y.Plane[24*340:]) != 0 {
		t.Error("light in the polar night")
	}
	short := 0
	for n := 1; n <= sky.DaysOfYear; n++ {
		if ws := sky.SunsetHourAngle(70, sky.Declination(n)); ws > 0 && ws < 7.5 {
			short++
			if sun.HoursOfDay(70, n, 10) != ([24]sun.Light{}) {
				t.Errorf("day %d, sunset at %g degrees, has light", n, ws)
			}
		}
	}
	if short == 0 {
		t.Error("70 degrees north has no day of less than an hour")
	}
}

// A file made from the hours of a year gives that year again, through its clock and its figures: the light straight
// from the sun is then of an even hour, not of its middle. A file of the plane is taken as it is.
func TestYearOfHours(t *testing.T) {
	months := madison()
	file := *months
	file.Hours = &scenarios.Weather{TempC: make([]float64, sun.Hours)}
	file.LongitudeDeg, file.ZoneH = 0, 0
	w := file.Hours
	h := 0
	for m, kWh := range months.MonthlyKWhM2 {
		for range sun.DaysOfMonth(43, m, kWh*1000) {
			n := h/24 + 1
			day := sun.DaysOfMonth(43, m, kWh*1000)[n-firstOf(m)]
			for hour, l := range sun.HoursOfDay(43, n, day) {
				outside := sky.Hour(43, n, sky.HourAngle(float64(hour)), sky.HourAngle(float64(hour+1)))
				normal := 0.0
				if outside > 0 {
					normal = l.Beam / outside * sky.Normal(n)
				}
				w.GHI = append(w.GHI, l.Beam+l.Diffuse)
				w.DHI = append(w.DHI, l.Diffuse)
				w.DNI = append(w.DNI, normal)
				h++
			}
		}
	}
	sum := func(y *sun.Year) (all float64) {
		for _, g := range y.Plane {
			all += g
		}
		return all
	}
	// The clock of a file at Greenwich is off by the equation of time, up to a quarter of an hour either way.
	near(t, "file over months", sum(sun.Of(&file))/sum(sun.Of(months)), 1, 0.03)

	onPlane := &scenarios.Weather{POA: w.GHI, TempC: w.TempC}
	file.Hours = onPlane
	if !slices.Equal(sun.Of(&file).Plane, w.GHI) {
		t.Error("light on the plane is not taken as it is")
	}
}

func firstOf(month int) int {
	n := 1
	for m := range month {
		n += sky.DaysOfMonth(m)
	}
	return n
}

// A module in the year: its watts follow the light, less the losses, and never fall below nothing.
func TestModuleWatts(t *testing.T) {
	y := &sun.Year{Plane: []float64{0, 500, 1000}, AirC: []float64{-20, 20, 45}}
	m := &catalog.Solar{Watts: 400, PowerTempPctPerC: -0.35, NOCTC: 45}
	got := y.ModuleW(m, 0.1)
	// 500 W/m2 and 20 C: cells of 35.625 C, 3.72 % less; 1000 and 45: 76.25 C, 17.94 % less.
	for h, want := range []float64{0, 400 * 0.5 * (1 - 0.0035*10.625) * 0.9, 400 * (1 - 0.0035*51.25) * 0.9} {
		near(t, "watts", got[h], want, 1e-9)
	}
}

// The hours of a day share out its light, and where no hour is all diffuse, its diffuse light, exactly.
func TestHoursShareOutTheDay(t *testing.T) {
	days := 0
	for _, latitude := range []float64{-35, 0, 20, 43, 60} {
		for n := 1; n <= 365; n += 13 {
			dayWh := 0.6 * sky.Day(latitude, n)
			sum, diffuse, capped := 0.0, 0.0, false
			for _, l := range sun.HoursOfDay(latitude, n, dayWh) {
				sum += l.Beam + l.Diffuse
				diffuse += l.Diffuse
				capped = capped || l.Diffuse > 0 && l.Beam == 0
			}
			if math.Abs(sum-dayWh) > 1e-9*dayWh {
				t.Errorf("latitude %g, day %d: the hours have %g Wh/m2 of %g", latitude, n, sum, dayWh)
			}
			if capped {
				continue
			}
			days++
			want := dayWh * sun.DiffuseShare(0.6, sky.SunsetHourAngle(latitude, sky.Declination(n)))
			if math.Abs(diffuse-want) > 1e-9*want {
				t.Errorf("latitude %g, day %d: %g Wh/m2 of the hours are diffuse, want %g", latitude, n, diffuse, want)
			}
		}
	}
	if days < 50 {
		t.Errorf("%d days looked at", days)
	}
}

// At dusk a record may have light in an hour whose middle the sun does not see: it is the sky's, the same from everywhere.
func TestLightWithoutSun(t *testing.T) {
	p := sun.Plane{Latitude: 43, Tilt: 60, Azimuth: 180, Ground: 0.2}
	near(t, "light at dusk", p.On(sun.Light{Diffuse: 8}, 5, 0), 8*(1+0.5)/2+8*0.2*(1-0.5)/2, 1e-12)
}
