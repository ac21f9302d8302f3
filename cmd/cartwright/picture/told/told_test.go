package told

import (
	"testing"

	"pgregory.net/rapid"

	"cartwright/scenarios"
)

func TestAmounts(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{US.Length(0.4413), "17 3/8 in"}, {Metric.Length(0.4413), "441 mm"},
		{US.Length(0), "0 in"}, {US.Length(0.0127), "1/2 in"}, {US.Length(-0.1016), "-4 in"},
		{US.Cut(0.9144), "3 ft"}, {US.Cut(0.92), "3 ft 1/4 in"}, {US.Cut(0.1), "3 15/16 in"}, {US.Cut(1.0668), "3 ft 6 in"},
		{Metric.Cut(0.9144), "0.915 m"}, {Metric.Cut(2), "2 m"},
		{US.Mass(100), "220 lb"}, {Metric.Mass(100), "100 kg"}, {Metric.Mass(41.73), "41.7 kg"},
		{US.Force(100), "22 lbf"}, {Metric.Force(100), "100 N"},
		{Angle(21.04), "21.0°"}, {Angle(-0.01), "0.0°"}, {Amps(125), "125 A"}, {Amps(9954.5), "10 kA"}, {Amps(117.5), "117.5 A"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	if got := UnitsOf(&scenarios.Scenario{Rules: scenarios.IEC}); got != Metric {
		t.Errorf("iec is told in %s", got)
	}
}

// A foot is 304.8 mm exactly; a piece of whole feet is not told a sixteenth longer.
func TestWholeFeetStayWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		feet := rapid.IntRange(1, 400).Draw(t, "feet")
		if got, want := US.Cut(float64(feet)*0.3048), Number(float64(feet), 0)+" ft"; got != want {
			t.Errorf("%s, want %s", got, want)
		}
	})
}
