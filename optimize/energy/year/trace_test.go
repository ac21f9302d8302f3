package year_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cartwright/optimize/energy/year"
)

// What is written down hour by hour adds up to what Simulate says of the year, and the year ends with the store it
// began with.
func TestATraceAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := &year.Hours{SunWh: make([]float64, 8760)}
		for h := range y.BusWh {
			y.BusWh[h] = rapid.Float64Range(0, 500).Draw(t, "load")
		}
		peak := rapid.Float64Range(0, 3000).Draw(t, "peak")
		for h := range y.SunWh {
			y.SunWh[h] = math.Max(0, peak*math.Sin(float64(h%24-6)/12*math.Pi)*(1-0.5*math.Cos(float64(h)/8760*2*math.Pi)))
		}
		s := year.Store{
			CapacityWh: rapid.Float64Range(0, 20000).Draw(t, "capacity"), ChargeW: rapid.Float64Range(100, 5000).Draw(t, "charge"),
			RoundTrip: rapid.Float64Range(0.7, 1).Draw(t, "round trip"),
		}
		net := y.Net()
		f, trace := year.Simulate(y, net, s), year.TraceOf(net, s)
		short, spilled := 0.0, 0.0
		for h := range net {
			short, spilled = short+trace.ShortWh[h], spilled+trace.SpilledWh[h]
			if trace.StoredWh[h] < 0 || trace.StoredWh[h] > s.CapacityWh {
				t.Fatalf("hour %d: %v Wh in a store of %v", h, trace.StoredWh[h], s.CapacityWh)
			}
		}
		const exact = 1e-6 // Wh; sums of 8,760 figures in another order
		if math.Abs(short-f.ShortWh) > exact*(1+f.ShortWh) || math.Abs(spilled-f.SpilledWh) > exact*(1+f.SpilledWh) {
			t.Errorf("short %v and spilled %v Wh; simulated %v and %v", short, spilled, f.ShortWh, f.SpilledWh)
		}
	})
}
