package told

import (
	"math"
	"testing"
)

// The international yard and pound of 1959, standard gravity of 1901: 1 lb = 0.45359237 kg, 1 ft = 0.3048 m, 1 in
// = 25.4 mm, 1 lbf = 4.4482216152605 N; a cubic foot is 28.316846592 litres.
func TestFigure(t *testing.T) {
	for _, c := range []struct {
		v        float64
		si, unit string
		want     float64
	}{
		{0.45359237, "kg", "lb", 1}, {0.3048, "m", "ft", 1}, {25.4, "mm", "in", 1}, {4.4482216152605, "N", "lbf", 1},
		{28.316846592, "l", "ft3", 1}, {0.45359237, "kg/kWh", "lb/kWh", 1}, {1, "kg/m", "lb/ft", 0.3048 / 0.45359237},
		{7, "h", "h", 7}, {7, "", "", 7}, {7, "USD", "USD", 7},
	} {
		if got := US.Unit(c.si); got != c.unit {
			t.Errorf("US tells %s in %s, want %s", c.si, got, c.unit)
		}
		// Two divisions and a product of float64 lose no more than some 1e-16 each.
		if got := US.Figure(c.v, c.si); math.Abs(got-c.want) > 1e-12*c.want {
			t.Errorf("US tells %g %s as %.17g, want %.17g", c.v, c.si, got, c.want)
		}
		if got := Metric.Figure(c.v, c.si); got != c.v || Metric.Unit(c.si) != c.si {
			t.Errorf("metric tells %g %s as %g %s", c.v, c.si, got, Metric.Unit(c.si))
		}
	}
}
