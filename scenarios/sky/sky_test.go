package sky_test

import (
	"math"
	"testing"

	"cartwright/scenarios/sky"
)

// Duffie and Beckman, table 1.6.1: declinations of the mean days, to a tenth of a degree.
func TestMeanDays(t *testing.T) {
	printed := [12]float64{-20.9, -13.0, -2.4, 9.4, 18.8, 23.1, 21.2, 13.5, 2.2, -9.6, -18.9, -23.0}
	for m, want := range printed {
		// 0.06: the table's last digit; February is printed -13.0 where the formula has -12.95.
		if got := sky.Declination(sky.MeanDay(m)); math.Abs(got-want) > 0.06 {
			t.Errorf("month %d: %.2f, printed %.1f", m+1, got, want)
		}
	}
	first := 1
	for m := range 12 {
		if n := sky.MeanDay(m); n < first || n >= first+sky.DaysOfMonth(m) {
			t.Errorf("month %d: its mean day %d is not in it", m+1, n)
		}
		first += sky.DaysOfMonth(m)
	}
	if first != sky.DaysOfYear+1 {
		t.Errorf("the months have %d days", first-1)
	}
}

// Duffie and Beckman, Example 2.19.1 (4th edition): Madison, MJ/m2 a day.
func TestDayMadison(t *testing.T) {
	printed := [12]float64{13.37, 18.81, 26.03, 33.78, 39.42, 41.78, 40.56, 35.92, 28.80, 20.90, 14.62, 11.91}
	for m, want := range printed {
		// 0.011: the book's solar constant is given to four digits.
		if got := sky.Day(43, sky.MeanDay(m)) * 0.0036; math.Abs(got-want) > 0.011 {
			t.Errorf("month %d: %.3f, printed %.2f", m+1, got, want)
		}
	}
}

// Duffie and Beckman, table 1.10.1. Its digits come from another formula of the declination: 0.45 MJ/m2.
func TestDayTable(t *testing.T) {
	for latitude, printed := range map[float64][12]float64{
		45:  {12.2, 17.4, 25.1, 33.2, 39.2, 41.7, 40.4, 35.3, 27.8, 19.6, 13.3, 10.7},
		0:   {36.2, 37.4, 37.8, 36.7, 34.8, 33.5, 34.0, 35.7, 37.2, 37.3, 36.3, 35.7},
		-60: {41.0, 32.4, 21.2, 10.9, 4.5, 2.2, 3.1, 8.0, 17.0, 28.4, 38.7, 43.7},
	} {
		for m, want := range printed {
			if got := sky.Day(latitude, sky.MeanDay(m)) * 0.0036; math.Abs(got-want) > 0.45 {
				t.Errorf("latitude %g, month %d: %.2f, printed %.1f", latitude, m+1, got, want)
			}
		}
	}
}

// The hours of a day add up to the day, from pole to pole, whatever part of the hour the clock is off.
func TestHoursAddUp(t *testing.T) {
	for latitude := -90.0; latitude <= 90; latitude += 7.5 {
		for n := 1; n <= sky.DaysOfYear; n += 13 {
			for _, off := range []float64{0, 3.75, -170, 178} {
				sum := 0.0
				for h := range 24 {
					from := sky.HourAngle(float64(h)) + off
					sum += sky.Hour(latitude, n, from, from+15)
				}
				// 1e-9: the sums of some hundred sines.
				if day := sky.Day(latitude, n); math.Abs(sum-day) > 1e-9*sky.Constant {
					t.Errorf("latitude %g, day %d, off by %g: %g, the day has %g", latitude, n, off, sum, day)
				}
			}
		}
	}
}

// The sun does not rise at the pole in winter, nor set in summer.
func TestPolar(t *testing.T) {
	for _, c := range []struct {
		latitude float64
		n        int
		want     float64
	}{{70, 355, 0}, {70, 172, 180}, {-70, 355, 180}, {-70, 172, 0}, {90, 172, 180}, {0, 172, 90}} {
		if got := sky.SunsetHourAngle(c.latitude, sky.Declination(c.n)); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("latitude %g, day %d: %g, want %g", c.latitude, c.n, got, c.want)
		}
	}
	if got := sky.Day(70, 355); got != 0 {
		t.Errorf("a polar night has %g Wh/m2", got)
	}
}
