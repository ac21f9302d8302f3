package year_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/energy/year"
	"cartwright/scenarios"
)

const hours = 8760

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: got %.12g, want %.12g within %g", what, got, want, within)
	}
}

// aYear returns a random year of an array and loads.
func aYear(rng *rand.Rand) *year.Hours {
	module := make([]float64, hours)
	clear := 0.5
	for h := range module {
		if h%24 == 0 {
			clear = 0.6*clear + 0.4*rng.Float64()
		}
		season := 1 - 0.4*math.Cos(2*math.Pi*float64(h)/hours)
		if hour := h % 24; hour > 6 && hour < 18 {
			module[h] = 400 * clear * season * math.Sin(math.Pi*float64(hour-6)/12)
		}
	}
	var load year.Load
	for h := range 24 {
		load.ACW[h] = 100 * rng.Float64()
		load.DCW[h] = 20 * rng.Float64()
	}
	modules := 1 + rng.IntN(6)
	return year.HoursOf(module, modules, 250*float64(modules), load, load.BusW(0.9, 10))
}

// Over a year: what the sun gives is given on, lost in the store or spilled; what the loads ask is served or short.
// Both for the year and for its months; what is short is what Short says.
func TestYearBalances(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 1))
	for range 60 {
		y, s := aYear(rng), store(rng)
		net := y.Net()
		f := year.Simulate(y, net, s)
		short := year.Short(net, s)
		if f.ShortWh != short.Wh {
			t.Fatalf("%+v: %g short in the year, %g by Short", s, f.ShortWh, short.Wh)
		}
		var sum year.Month
		for _, m := range f.Months {
			sum.SunWh += m.SunWh
			sum.LoadWh += m.LoadWh
			sum.ShortWh += m.ShortWh
			sum.SpilledWh += m.SpilledWh
		}
		within := 1e-9 * f.SunWh
		near(t, "load", sum.LoadWh, y.AskedWh(), within)
		near(t, "short", sum.ShortWh, f.ShortWh, within)
		near(t, "spilled", sum.SpilledWh, f.SpilledWh, within)
		near(t, "served", f.Served, 1-f.ShortWh/sum.LoadWh, 1e-12)
		// The store ends as it began: what is drawn was charged, less what the round trip takes.
		near(t, "sun", f.SunWh, sum.LoadWh-f.ShortWh-f.DrawnWh+f.DrawnWh/s.RoundTrip+f.SpilledWh, 1e-8*f.SunWh)
		if s.CapacityWh > 0 {
			near(t, "cycles", f.Cycles*s.CapacityWh, f.DrawnWh, within)
		}
	}
}

// The simulation against a plain one: begin anywhere, run until a year ends as it began, look at every hour.
func TestSimulateAgainstYearAfterYear(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	across := 0
	for range 60 {
		y, s := aYear(rng), store(rng)
		net := y.Net()
		stored, served := s.CapacityWh/2, 0.0
		var shorts []bool
		for {
			began, shortWh := stored, 0.0
			shorts, served = make([]bool, hours), 0
			for h, n := range net {
				give := 0.0
				if n >= 0 {
					stored = min(s.CapacityWh, stored+min(n, s.ChargeW)*s.RoundTrip)
				} else {
					give = min(-n, stored)
					stored -= give
					shortWh += -n - give
					shorts[h] = -n-give > 1e-9*y.BusWh[h%24]
				}
				served += (y.Load.ACW[h%24] + y.Load.DCW[h%24]) * (1 - max(0, -n-give)/y.BusWh[h%24])
			}
			if math.Abs(stored-began) <= 1e-9*(1+s.CapacityWh) {
				break
			}
		}
		count, longest, run := 0, 0, 0
		for h := range 2 * hours { // twice round: a stretch may run across New Year
			if shorts[h%hours] {
				run++
			} else {
				run = 0
			}
			longest = max(longest, min(run, hours))
			if h < hours && shorts[h] {
				count++
			}
		}
		f := year.Simulate(y, net, s)
		if f.ShortH != count || f.LongestShortH != longest {
			t.Errorf("%+v: %d hours short, longest %d; want %d and %d", s, f.ShortH, f.LongestShortH, count, longest)
		}
		near(t, "served loads", f.ServedLoadWh, served, 1e-9*served)
		if shorts[0] && shorts[hours-1] {
			across++
		}
	}
	if across == 0 {
		t.Error("no stretch runs across New Year: the test says little")
	}
}

// A year with no sun at all is short in every hour, and one without loads in none.
func TestYearsOfNothing(t *testing.T) {
	var load year.Load
	for h := range load.ACW {
		load.ACW[h] = 100
	}
	dark := year.HoursOf(make([]float64, hours), 3, 1000, load, load.BusW(0.8, 0))
	s := year.Store{CapacityWh: 5000, ChargeW: 1000, RoundTrip: 0.9}
	f := year.Simulate(dark, dark.Net(), s)
	if f.ShortH != hours || f.LongestShortH != hours || f.Served != 0 || f.Cycles != 0 || f.ServedLoadWh != 0 {
		t.Errorf("no sun: %+v", f)
	}
	sunny := make([]float64, hours)
	for h := range sunny {
		sunny[h] = 50
	}
	idle := year.HoursOf(sunny, 2, 80, year.Load{}, [24]float64{})
	f = year.Simulate(idle, idle.Net(), year.Store{RoundTrip: 1})
	if f.Served != 1 || f.ShortH != 0 || f.LongestShortH != 0 || f.SunWh != 80*hours || f.ClippedWh != 20*hours || f.SpilledWh != f.SunWh {
		t.Errorf("no loads: %+v", f)
	}
}

// Loads are averaged over each hour of the day and over all days; steps across the hour count pro rata.
func TestLoadOf(t *testing.T) {
	// Two days in steps of 90 minutes are not allowed; 45 min are: 32 steps a day, from 0:15.
	m := &scenarios.Measured{StepMin: 45, StartMin: 15}
	for range 2 * 32 {
		m.LegA = append(m.LegA, 0)
	}
	m.LegA[0] = 400  // first day, 0:15 to 1:00: 300 Wh
	m.LegA[33] = 800 // second day, 1:00 to 1:45: 600 Wh
	m.LegA[31] = 240 // first day, 23:30 to 0:15: 120 Wh in the last half hour, 60 Wh after midnight
	s := &scenarios.Scenario{Measured: m}
	d, err := energy.DemandOf(s)
	if err != nil {
		t.Fatal(err)
	}
	l := year.LoadOf(s, d)
	for h, want := range map[int]float64{0: 180, 1: 300, 2: 0, 22: 0, 23: 60} {
		near(t, "hour", l.ACW[h], want, 1e-9)
	}
	listed := &scenarios.Scenario{Loads: []scenarios.Load{
		{Name: "lamp", Watts: 60, Count: 1, Leg: scenarios.LegAuto, FromMin: 18*60 + 30, ToMin: 20 * 60, Duty: 0.5, PowerFactor: 1, Start: 1},
		{Name: "gauge", Watts: 8, Count: 2, AllDay: true, Duty: 1, PowerFactor: 1, Start: 1, DC: true},
	}}
	if d, err = energy.DemandOf(listed); err != nil {
		t.Fatal(err)
	}
	l = year.LoadOf(listed, d)
	bus := l.BusW(0.5, 10)
	for h, want := range map[int]float64{0: 26, 18: 26 + 30, 19: 26 + 60, 20: 26} {
		near(t, "bus", bus[h], want, 1e-9)
	}
}

// Saved and payback: 1000 kWh of loads at 30 cents are 300 a year, which pay 900 in three.
func TestPayback(t *testing.T) {
	f := year.Figures{ServedLoadWh: 1e6}
	near(t, "saved", f.Saved(30), 30000, 1e-9)
	if years, ok := year.PaybackYears(90000, f.Saved(30)); !ok || years != 3 {
		t.Errorf("payback: %g, %v", years, ok)
	}
	if _, ok := year.PaybackYears(90000, 0); ok {
		t.Error("nothing saved pays back")
	}
	if years, ok := year.PaybackYears(catalog.Cents(-500), 100); !ok || years != 0 {
		t.Errorf("a plan that brings money pays back in %g years, %v", years, ok)
	}
}

func TestNoAllocation(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 1))
	y, s := aYear(rng), year.Store{CapacityWh: 2000, ChargeW: 500, RoundTrip: 0.95}
	net := y.Net()
	if n := testing.AllocsPerRun(5, func() { year.Short(net, s) }); n != 0 {
		t.Errorf("Short allocates %g times", n)
	}
	if n := testing.AllocsPerRun(5, func() { year.Simulate(y, net, s) }); n != 0 {
		t.Errorf("Simulate allocates %g times", n)
	}
}

func BenchmarkShort(b *testing.B) {
	y := aYear(rand.New(rand.NewPCG(8, 1)))
	net := y.Net()
	b.ReportAllocs()
	for b.Loop() {
		year.Short(net, year.Store{CapacityWh: 2000, ChargeW: 500, RoundTrip: 0.95})
	}
}

func BenchmarkSimulate(b *testing.B) {
	y := aYear(rand.New(rand.NewPCG(8, 1)))
	net := y.Net()
	b.ReportAllocs()
	for b.Loop() {
		year.Simulate(y, net, year.Store{CapacityWh: 2000, ChargeW: 500, RoundTrip: 0.95})
	}
}

func BenchmarkLeastStorage(b *testing.B) {
	y := aYear(rand.New(rand.NewPCG(8, 1)))
	net := y.Net()
	for b.Loop() {
		year.LeastStorage(net, 500, 0.95, 0.05*y.AskedWh())
	}
}
