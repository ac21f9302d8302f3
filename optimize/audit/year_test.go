package audit

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cartwright/catalog"
	energyyear "cartwright/optimize/energy/year"
	"cartwright/scenarios"
)

// drawYear makes up a cart with sun: any array, loads and bank.
func drawYear(t *rapid.T) *auditor {
	float := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	k := newFair()
	for h := range k.s.Measured.LegA {
		k.s.Measured.LegA[h] = rapid.SampledFrom([]float64{0, 60, 300, 900}).Draw(t, "watts")
	}
	k.battery("block").MaxChargeA = float("charge", 1, 60)
	k.battery("block").RoundTrip = rapid.SampledFrom([]float64{1, 0.9, 0.7}).Draw(t, "round trip")
	k.battery("block").CapacityWh = float("capacity", 50, 5000)
	k.inverter("sine-2").SolarMaxW = float("most", 100, 3000)
	k.leaf().Watts = float("module", 10, 400)
	a := k.auditor().of(k.p)
	a.recognise()
	return a
}

// Going through the year again and again until it repeats comes to what one pass of shift and clamp comes to.
func TestYearAgainstShiftAndClamp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawYear(t)
		got := a.simulate()
		flows := a.flows()
		h := &energyyear.Hours{SunWh: make([]float64, yearH)}
		net := make([]float64, yearH)
		for i := range flows {
			h.SunWh[i], h.BusWh[i%24] = flows[i].sun, flows[i].load
			net[i] = flows[i].sun - flows[i].load
		}
		amps, _ := a.chargeA()
		trip, _ := a.lossiest()
		want := energyyear.Simulate(h, net, energyyear.Store{CapacityWh: a.usableWh(), ChargeW: amps * a.s.Bus.NominalV, RoundTrip: trip})
		same := func(x, y float64) bool { return math.Abs(x-y) <= 1e-6*(1+math.Abs(y)) }
		if !same(got.served, want.Served) || !same(got.wallWh, want.ShortWh) || !same(got.spilledWh, want.SpilledWh) ||
			!same(got.cycles, want.Cycles) || got.shortH != float64(want.ShortH) || got.longestH != float64(want.LongestShortH) {
			t.Fatalf("served %g short %g Wh, %g h, %g h at a stretch, spilled %g Wh, %g cycles\nwant %+v",
				got.served, got.wallWh, got.shortH, got.longestH, got.spilledWh, got.cycles, want)
		}
	})
}

// What comes in is given, spilled, lost or still there.
func TestYearLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawYear(t)
		y := a.simulate()
		trip, _ := a.lossiest()
		drawn := y.cycles * a.usableWh()
		// Of the load: from the wall, from the store, else straight from the sun.
		straight := y.loadWh - y.wallWh - drawn
		if lost := y.sunWh - straight - y.spilledWh - drawn/trip; math.Abs(lost) > 1e-6*y.sunWh+1e-3 {
			t.Fatalf("%g Wh are lost of %g", lost, y.sunWh)
		}
		if math.Abs(y.endsWh-y.atStartWh) > 1e-6*a.usableWh() {
			t.Fatalf("the year begins with %g Wh and ends with %g", y.atStartWh, y.endsWh)
		}
	})
}

func TestLongest(t *testing.T) {
	for _, tt := range []struct {
		marks string
		want  float64
	}{{"....", 0}, {"xxxx", 4}, {".xx.", 2}, {"x..xx", 3}, {"xx.x", 3}, {"", 0}} {
		var marks []bool
		for _, m := range tt.marks {
			marks = append(marks, m == 'x')
		}
		if got := longest(marks); got != tt.want {
			t.Errorf("longest stretch in %q is %g, want %g", tt.marks, got, tt.want)
		}
	}
}

// Steps across the hour count pro rata, wherever the record begins.
func TestByHour(t *testing.T) {
	watts := make([]float64, 36) // of 40 minutes
	watts[0], watts[1] = 60, 120
	d, err := measuredRecord(&scenarios.Measured{StepMin: 40, LegA: watts})
	if err != nil {
		t.Fatal(err)
	}
	ac, _ := d.byHour(0)
	if ac[0] != 40+40 || math.Abs(ac[1]-40) > 1e-9 {
		t.Errorf("hours have %g and %g W, want 80 and 40", ac[0], ac[1])
	}
	if ac, _ = d.byHour(23*60 + 40); math.Abs(ac[23]-20) > 1e-9 || math.Abs(ac[0]-20-80) > 1e-9 || math.Abs(ac[1]) > 1e-9 {
		t.Errorf("from 23:40 on hours have %g, %g and %g W, want 20, 100 and 0", ac[23], ac[0], ac[1])
	}
}

// Hours of a file of the light on the plane itself pass through.
func TestLightOfAFile(t *testing.T) {
	s := *fairScenario().Sun
	s.Hours = &scenarios.Weather{POA: make([]float64, yearH), TempC: make([]float64, yearH)}
	s.Hours.POA[12], s.Hours.TempC[12] = 800, 20
	k := newFair()
	k.s.Sun = &s
	a := For(k.s, k.c).of(k.p)
	a.recognise()
	// The cells are at 20 + 25/800 * 800 = 45 C: 900 W * 0.8 * (1 - 0.0035 * 20) * 0.9.
	if got, want := a.sunW()[12], 900*0.8*0.93*0.9; math.Abs(got-want) > 1e-9 {
		t.Errorf("the array gives %g W, want %g", got, want)
	}
}

// Two modules of 400 W in twice full sun on some inputs of some units that take 500 W each: the fullest unit sets what is cut off.
func TestWhatUnitsTake(t *testing.T) {
	for _, tt := range []struct {
		units, inputs float64
		most, perUnit float64 // W
	}{{1, 1, 500, 500}, {2, 1, 500, 500}, {1, 2, 500, 500}, {2, 2, 1000, 400}, {2, 3, 750, 500}, {3, 2, 1000, 400}} {
		a := &auditor{s: &scenarios.Scenario{Sun: &scenarios.Sun{}}, units: tt.units, inverter: &catalog.Inverter{SolarMaxW: 500, Efficiency: 1},
			array:  &array{&catalog.Solar{Watts: 400}, 1, 2 / tt.inputs, tt.inputs},
			demand: newRecord(24, 60), light: func() *light { return &light{full(yearH, 2000), full(yearH, 25)} }}
		a.array.NOCTC = 20
		if got := a.flows()[0].sun; math.Abs(got-tt.most) > 1e-9 {
			t.Errorf("%g inputs on %g units take %g W, want %g", tt.inputs, tt.units, got, tt.most)
		}
		if got := a.sunPerUnitW(); math.Abs(got-tt.perUnit) > 1e-9 {
			t.Errorf("%g inputs on %g units: %g W on one unit, want %g", tt.inputs, tt.units, got, tt.perUnit)
		}
	}
}

func full(n int, x float64) []float64 {
	xs := make([]float64, n)
	for i := range xs {
		xs[i] = x
	}
	return xs
}
