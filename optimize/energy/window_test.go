package energy

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cartwright/optimize/plan"
)

// within is how far two sums of the same watts, added in another order, may differ: a part of their
// size, and of a watt-hour near 0.
const within = 1e-9

func near(a, b float64) bool {
	return a == b || math.Abs(a-b) <= within*(1+min(math.Abs(a), math.Abs(b)))
}

// integral returns the energy of a stretch by walking through it piece by piece: slow, and with nothing
// in common with the mass curve.
func integral(watts []float64, stepH, fromH, hours float64) float64 {
	wh := 0.0
	for n := 0; ; n++ { // step n covers n*stepH to (n+1)*stepH
		begin, end := float64(n)*stepH, float64(n+1)*stepH
		if begin >= fromH+hours {
			return wh
		}
		if overlap := math.Min(end, fromH+hours) - math.Max(begin, fromH); overlap > 0 {
			wh += watts[n%len(watts)] * overlap
		}
	}
}

func worst(watts []float64, stepH, hours float64) float64 {
	most := 0.0
	for s := range watts {
		most = math.Max(most, integral(watts, stepH, float64(s)*stepH, hours))
		// The one that ends at the edge begins as far before it as the record's rounds allow.
		from := float64(s)*stepH - math.Mod(hours, float64(len(watts))*stepH)
		if from < 0 {
			from += float64(len(watts)) * stepH
		}
		most = math.Max(most, integral(watts, stepH, from, hours))
	}
	return most
}

// drawDemand draws a demand of a few steps, with some stretches of nothing.
func drawDemand(t *rapid.T) *Demand {
	n := rapid.IntRange(1, 12).Draw(t, "steps")
	watts := rapid.OneOf(rapid.Just(0.0), rapid.SampledFrom([]float64{0.1, 50, 100}), rapid.Float64Range(0, 4000))
	return &Demand{
		StepH: rapid.SampledFrom([]float64{1, 0.5, 1.0 / 3, 1.0 / 60}).Draw(t, "stepH"),
		ACW:   rapid.SliceOfN(watts, n, n).Draw(t, "acW"),
		DCW:   rapid.SliceOfN(watts, n, n).Draw(t, "dcW"),
	}
}

func TestWindowMatchesNumericIntegral(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDemand(t)
		efficiency := rapid.Float64Range(0.5, 1).Draw(t, "efficiency")
		idle := rapid.SampledFrom([]float64{0, 17.5}).Draw(t, "idle")
		hours := d.RecordH() * rapid.Float64Range(0, 3.5).Draw(t, "records")
		bus := make([]float64, d.Steps())
		for i := range bus {
			bus[i] = d.ACW[i]/efficiency + idle + d.DCW[i]
		}
		got, want := d.WindowWh(efficiency, idle, hours), worst(bus, d.StepH, hours)
		if !near(got, want) {
			t.Errorf("window of %v h: %v Wh, integral %v Wh", hours, got, want)
		}
	})
}

func TestWindowNeverFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDemand(t)
		a := d.RecordH() * rapid.Float64Range(0, 3).Draw(t, "a")
		b := a + d.RecordH()*rapid.Float64Range(0, 1).Draw(t, "more")
		short, long := d.WindowWh(0.9, 5, a), d.WindowWh(0.9, 5, b)
		if short > long*(1+within)+within {
			t.Errorf("%v h: %v Wh, %v h: %v Wh", a, short, b, long)
		}
	})
}

// AutonomyH(u) = A: A hours take no more than u, and any more hours take more.
func TestAutonomyIsTheLongestWindow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDemand(t)
		idle := rapid.SampledFrom([]float64{0, 0, 3}).Draw(t, "idle")
		usable := d.WindowWh(0.9, idle, d.RecordH()) * rapid.Float64Range(0, 4).Draw(t, "usable")
		a := d.AutonomyH(0.9, idle, usable)
		if a < 0 || a > MaxAutonomyH {
			t.Fatalf("autonomy %v h", a)
		}
		if got := d.WindowWh(0.9, idle, a); a < MaxAutonomyH && got > usable*(1+2*plan.Tolerance)+within {
			t.Errorf("autonomy %v h takes %v Wh of %v Wh", a, got, usable)
		}
		more := d.StepH / 100
		if got := d.WindowWh(0.9, idle, a+more); a < MaxAutonomyH && got <= usable {
			t.Errorf("autonomy %v h, yet %v h take only %v Wh of %v Wh", a, a+more, got, usable)
		}
	})
}

// AutonomyH(WindowWh(A)) = A where the bus always gives something; never less where it does not.
func TestAutonomyIsTheInverseOfTheWindow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDemand(t)
		hours := d.RecordH() * rapid.Float64Range(0.01, 4).Draw(t, "records")
		if got := d.AutonomyH(0.9, 20, d.WindowWh(0.9, 20, hours)); math.Abs(got-hours) > 1e-6*hours {
			t.Errorf("with idle draw: %v h, want %v h", got, hours)
		}
		// Through a step of next to no watts the hours are uncertain, their energy is not.
		usable := d.WindowWh(0.9, 0, hours)
		if got := d.AutonomyH(0.9, 0, usable); got < hours && !near(d.WindowWh(0.9, 0, got), usable) {
			t.Errorf("without: %v h, less than %v h", got, hours)
		}
	})
}

func TestWindow(t *testing.T) {
	// Four steps of half an hour; through 80 % and with 10 W idle the bus gives 110, 10, 260, 60 W.
	d := &Demand{StepH: 0.5, ACW: []float64{80, 0, 160, 0}, DCW: []float64{0, 0, 50, 50}}
	for _, c := range []struct{ hours, want float64 }{
		{-1, 0}, {0, 0},
		{0.25, 65}, // half of the third step
		{0.5, 130},
		{0.75, 145},         // third step and half of the fourth
		{1, 160},            // third and fourth
		{1.25, 187.5},       // and half of the first, going round
		{1.5, 215},          // third, fourth, first
		{2, 220},            // the record
		{2.5, 350},          // the record and the third step
		{4, 440},            // twice
		{20.75, 2200 + 145}, // ten times and a bit
	} {
		if got := d.WindowWh(0.8, 10, c.hours); !near(got, c.want) {
			t.Errorf("window of %v h: %v Wh, want %v Wh", c.hours, got, c.want)
		}
	}
	bus := d.BusW(0.8, 10)
	for i, want := range []float64{110, 10, 260, 60} {
		if !near(bus[i], want) {
			t.Errorf("step %d: %v W, want %v W", i, bus[i], want)
		}
	}
}

func TestAutonomy(t *testing.T) {
	d := &Demand{StepH: 0.5, ACW: []float64{80, 0, 160, 0}, DCW: []float64{0, 0, 50, 50}}
	gap := &Demand{StepH: 1, ACW: []float64{100, 0, 0, 0, 0, 0}, DCW: make([]float64, 6)}
	// 0.1 + 0.1 + 0.1 is more than 0.3 in binary; the stretch of nothing behind it must not be lost.
	tenths := &Demand{StepH: 1, ACW: []float64{0.1, 0.1, 0.1, 0, 0}, DCW: make([]float64, 5)}
	for _, c := range []struct {
		name                     string
		d                        *Demand
		efficiency, idle, usable float64
		want                     float64
	}{
		{"less than nothing", d, 0.8, 10, -1, 0},
		{"less than nothing, no demand", demandOf(t), 1, 0, -1e-9, 0},
		{"nothing", d, 0.8, 10, 0, 0},
		{"part of a step", d, 0.8, 10, 65, 0.25},
		{"a step", d, 0.8, 10, 130, 0.5},
		{"going round", d, 0.8, 10, 187.5, 1.25},
		{"just under the record", d, 0.8, 10, 219, 1.9},
		{"the record", d, 0.8, 10, 220, 2},
		{"the record and a bit", d, 0.8, 10, 285, 2.25},
		{"ten records", d, 0.8, 10, 2200, 20},
		{"to the end of a stretch of nothing", gap, 1, 0, 100, 6},
		{"into the next load", gap, 1, 0, 150, 6.5},
		{"twice", gap, 1, 0, 200, 12},
		{"nothing at all, but load comes", gap, 1, 0, 0, 0},
		{"rounded upward", tenths, 1, 0, 0.3, 5},
		{"no demand", demandOf(t), 1, 0, 100, MaxAutonomyH},
		{"no demand, nothing usable", demandOf(t), 1, 0, 0, MaxAutonomyH},
		{"hardly any demand", &Demand{StepH: 1, ACW: []float64{1e-300}, DCW: []float64{0}}, 1, 0, 1e6, MaxAutonomyH},
		{"a year", &Demand{StepH: 1, ACW: []float64{1}, DCW: []float64{0}}, 1, 0, 8760, 8760},
		{"just under a year", &Demand{StepH: 1, ACW: []float64{1}, DCW: []float64{0}}, 1, 0, 8759.5, 8759.5},
		{"more than a year", &Demand{StepH: 1, ACW: []float64{1}, DCW: []float64{0}}, 1, 0, 8761, MaxAutonomyH},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := c.d.AutonomyH(c.efficiency, c.idle, c.usable); !near(got, c.want) {
				t.Errorf("%v Wh: %v h, want %v h", c.usable, got, c.want)
			}
		})
	}
}
