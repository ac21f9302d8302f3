package energy

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

func TestUsableAndLifetimeEnergy(t *testing.T) {
	b := &catalog.Battery{CapacityWh: 5000, UsableFraction: 0.9, RoundTrip: 0.81, CycleLife: 3000}
	for _, c := range []struct{ reserve, want float64 }{{0, 4050}, {0.2, 3240}, {1, 0}} {
		if got := UsableWh(b, c.reserve); !near(got, c.want) {
			t.Errorf("reserve %v: %v Wh, want %v Wh", c.reserve, got, c.want)
		}
		if got := LifetimeWh(b, c.reserve, 250); !near(got, 3000*c.want) {
			t.Errorf("reserve %v: %v Wh in its life, want %v Wh", c.reserve, got, 3000*c.want)
		}
	}
	if got := LifetimeWh(&catalog.Battery{CapacityWh: 1, UsableFraction: 1, RoundTrip: 1}, 0, 250); got != 0 {
		t.Errorf("no life stated: %v Wh, want 0", got)
	}
}

// A calendar of 10 years of 100 cycles ends it before 3,000 cycles do, one of 10 years of 400 does not.
func TestLifetimeEndsByTheCalendar(t *testing.T) {
	b := &catalog.Battery{CapacityWh: 1000, UsableFraction: 1, RoundTrip: 1, CycleLife: 3000, CalendarYears: 10}
	for _, c := range []struct{ cycles, want float64 }{{100, 1e6}, {300, 3e6}, {400, 3e6}} {
		if got := LifetimeWh(b, 0, c.cycles); !near(got, c.want) {
			t.Errorf("%v cycles a year: %v Wh, want %v", c.cycles, got, c.want)
		}
	}
	b.CycleLife = 0
	if got := LifetimeWh(b, 0, 400); !near(got, 4e6) {
		t.Errorf("by the calendar alone: %v Wh, want 4e6", got)
	}
}

func TestCostPerKWh(t *testing.T) {
	for _, c := range []struct {
		cost     catalog.Cents
		energyWh float64
		want     float64
	}{
		{catalog.CentsFrom(1200), 4000, 300},
		{0, 4000, 0},
		{100, 0, math.Inf(1)},
		{0, 0, math.Inf(1)},
		{100, -5, math.Inf(1)},
		{100, math.NaN(), math.Inf(1)},
	} {
		if got := CostPerKWh(c.cost, c.energyWh); got != c.want {
			t.Errorf("%v for %v Wh: %v, want %v", c.cost, c.energyWh, got, c.want)
		}
	}
}

func TestSeries(t *testing.T) {
	for _, c := range []struct {
		bus, module float64
		want        int
	}{
		{48, 51.2, 1}, {48, 48, 1}, {48, 25.6, 2}, {48, 12.8, 4}, {48, 12, 4}, {48, 2, 24},
		{24, 51.2, 0}, {24, 25.6, 1}, {24, 12.8, 2}, {48, 32, 2} /* 1.5 */, {48, 32.1, 1},
		{48, 0, 0}, {48, -1, 0}, {48, math.NaN(), 0},
	} {
		if got := Series(c.bus, c.module); got != c.want {
			t.Errorf("%v V modules on %v V: %d, want %d", c.module, c.bus, got, c.want)
		}
	}
}

func TestFits(t *testing.T) {
	low, high := 44.0, 58.4
	bus := scenarios.Bus{NominalV: 48, LowV: low, HighV: high}
	for _, c := range []struct {
		name             string
		bus              scenarios.Bus
		nominal, maxV    float64
		maxSeries, wantN int
		want             bool
	}{
		{"one module", bus, 51.2, 58.4, 1, 1, true},
		{"a hair above the window", bus, 51.2, 58.41, 1, 1, false},
		{"four modules", bus, 12.8, 14.6, 4, 4, true},
		{"three allowed", bus, 12.8, 14.6, 3, 4, false},
		{"above the window in series", bus, 12.8, 14.7, 4, 4, false},
		{"at the low end", bus, 44, 50, 1, 1, true},
		{"at the tolerances", bus, low * (1 - plan.Tolerance/2), high * (1 + plan.Tolerance/2), 1, 1, true},
		{"below the low end", bus, 43.99, 50, 1, 1, false},
		{"below the low end in series", bus, 10.99, 12, 4, 4, false},
		{"none would do", scenarios.Bus{NominalV: 24, LowV: 0, HighV: 60}, 51.2, 58.4, 1, 0, false},
		// 3 * 4.2 is 12.600000000000001 in binary.
		{"rounded upward", scenarios.Bus{NominalV: 11.1, LowV: 9, HighV: 12.6}, 3.7, 4.2, 3, 3, true},
		// 3 * 1.1 is 3.3000000000000003; 6 * 0.7 is 4.199999999999999.
		{"rounded downward", scenarios.Bus{NominalV: 4.2, LowV: 4.2, HighV: 9}, 0.7, 1, 6, 6, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			n, ok := Fits(c.bus, &catalog.Battery{NominalV: c.nominal, MaxV: c.maxV, MaxSeries: c.maxSeries})
			if n != c.wantN || ok != c.want {
				t.Errorf("%d in series, fits %v; want %d, %v", n, ok, c.wantN, c.want)
			}
		})
	}
}

func TestShareBus(t *testing.T) {
	battery := func(id, group string) *catalog.Battery {
		return &catalog.Battery{Part: catalog.Part{ID: id}, Group: group}
	}
	for _, c := range []struct {
		name string
		a, b *catalog.Battery
		want bool
	}{
		{"the same, no group", battery("x", ""), battery("x", ""), true},
		{"two, no group", battery("x", ""), battery("y", ""), false},
		{"one group", battery("x", "g"), battery("y", "g"), true},
		{"two groups", battery("x", "g"), battery("y", "h"), false},
		{"one without", battery("x", "g"), battery("y", ""), false},
	} {
		if got := ShareBus(c.a, c.b); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// TestYearWh: the record's mean day as often as the cart is used: 100 W all day at 80 % and 20 W idle are 3,480 Wh.
func TestYearWh(t *testing.T) {
	for _, days := range []int{1, 3} {
		d := &Demand{StepH: 1, ACW: make([]float64, 24*days), DCW: make([]float64, 24*days)}
		for i := range d.ACW {
			d.ACW[i] = 100
		}
		if got := d.YearWh(0.8, 20, 52); !near(got, 24*145*52) {
			t.Errorf("a record of %d days: %v Wh, want %v", days, got, 24*145*52)
		}
	}
}
