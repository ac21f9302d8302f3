package energy

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"cartwright/scenarios"
)

// circuit returns a circuit of an alternating voltage.
func circuit(name string, volts, deviceA float64) scenarios.Circuit {
	return scenarios.Circuit{Name: name, Volts: volts, DeviceA: deviceA, Neutral: true}
}

// auto returns a load that runs for two hours, on a leg that the program chooses.
func auto(name string, watts float64) scenarios.Load {
	l := between(name, watts, 600, 720)
	l.Leg, l.PowerFactor = scenarios.LegAuto, 1
	return l
}

// house returns a scenario of some loads and circuits under nec.
func house(loads []scenarios.Load, circuits ...scenarios.Circuit) *scenarios.Scenario {
	return &scenarios.Scenario{Rules: scenarios.NEC, Bus: scenarios.Bus{NominalV: 51.2, LowV: 44, HighV: 58.4}, Loads: loads, Circuits: circuits}
}

// TestNoCircuitForALoad: two loads of 2,900 W fit no circuit of 15 A, whatever the leg; each mistake names the load,
// what it draws and the largest circuit it may be on.
func TestNoCircuitForALoad(t *testing.T) {
	leg := func(l scenarios.Load, leg scenarios.Leg) scenarios.Load { l.Leg = leg; return l }
	on := func(l scenarios.Load, name string) scenarios.Load { l.Circuit = name; return l }
	dc := func(l scenarios.Load) scenarios.Load { l.DC = true; return l }
	for _, c := range []struct {
		name string
		s    *scenarios.Scenario
		want []string // nil: it is placed
	}{
		{"two of 2,900 W on 15 A", house([]scenarios.Load{auto("saw", 2900), auto("kiln", 2900)}, circuit("bench", 120, 15)),
			[]string{`"saw" draws 24.17 A`, `"kiln" draws 24.17 A`, "largest circuit it may be on has a device of 15 A"}},
		{"1,800 W on 15 A", house([]scenarios.Load{auto("saw", 1800)}, circuit("bench", 120, 15)), nil},
		{"1,801 W on 15 A", house([]scenarios.Load{auto("saw", 1801)}, circuit("bench", 120, 15)), []string{`"saw" draws 15.01 A`}},
		{"two of 1,000 W on 15 A", house([]scenarios.Load{auto("saw", 1000), auto("mill", 1000)}, circuit("bench", 120, 15)),
			[]string{"cannot carry all loads at once", "one_at_a_time", "8.333 A"}},
		{"of both legs on 120 V", house([]scenarios.Load{leg(auto("saw", 500), scenarios.LegBoth)}, circuit("bench", 120, 15)), []string{"needs one of 240 V"}},
		{"of both legs on 240 V", house([]scenarios.Load{leg(auto("saw", 3600), scenarios.LegBoth)}, circuit("bench", 240, 15)), nil},
		{"not named, beside 240 V alone", house([]scenarios.Load{auto("saw", 500)}, circuit("bench", 240, 15)), []string{"needs one of 120 V"}},
		{"named on 240 V: of both legs", house([]scenarios.Load{on(auto("saw", 3600), "bench")}, circuit("bench", 240, 15)), nil},
		{"leg A named on 240 V", house([]scenarios.Load{on(leg(auto("saw", 500), scenarios.LegA), "bench")}, circuit("bench", 240, 15)), []string{`it may not be on "bench"`}},
		{"legs A and B on one circuit", house([]scenarios.Load{leg(auto("saw", 100), scenarios.LegA), leg(auto("mill", 100), scenarios.LegB)}, circuit("bench", 120, 15)), []string{"cannot carry all loads"}},
		{"on the bus, circuits of ac alone", house([]scenarios.Load{dc(auto("pump", 500))}, circuit("bench", 120, 15)), nil},
		{"on the bus: 660 W on 15 A at 44 V", house([]scenarios.Load{dc(auto("pump", 660))}, scenarios.Circuit{Name: "bus", DC: true, Volts: 51.2, DeviceA: 15}), nil},
		{"on the bus: 661 W", house([]scenarios.Load{dc(auto("pump", 661))}, scenarios.Circuit{Name: "bus", DC: true, Volts: 51.2, DeviceA: 15}), []string{`"pump" draws 15.02 A`}},
		{"on the bus, named on ac", house([]scenarios.Load{on(dc(auto("pump", 1)), "bench")}, circuit("bench", 120, 15), scenarios.Circuit{Name: "bus", DC: true, Volts: 51.2, DeviceA: 15}),
			[]string{"needs one with volts: dc"}},
	} {
		_, err := DemandOf(c.s)
		if c.want == nil {
			if err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		for _, want := range c.want {
			if err == nil || !strings.Contains(err.Error(), want) {
				t.Errorf("%s: %v; want %s", c.name, err, want)
			}
		}
	}
}

// TestCircuitA: watts / (V · power factor), 125 % of it where a load of full duty runs three hours or more (NFPA 70
// 210.20(A) and article 100: 16 A without end take a device of 20 A), not under iec.
func TestCircuitA(t *testing.T) {
	hours := func(from, to int) func(*scenarios.Load) {
		return func(l *scenarios.Load) { l.FromMin, l.ToMin = from, to }
	}
	for _, c := range []struct {
		name   string
		rules  scenarios.Rules
		dc     bool
		change func(*scenarios.Load)
		want   float64
	}{
		{"two hours", scenarios.NEC, false, nil, 16},
		{"three hours", scenarios.NEC, false, hours(600, 780), 20},
		{"a minute less", scenarios.NEC, false, hours(600, 779), 16},
		{"three hours past midnight", scenarios.NEC, false, hours(1380, 120), 20},
		{"two hours past midnight", scenarios.NEC, false, hours(1380, 60), 16},
		{"all day", scenarios.NEC, false, func(l *scenarios.Load) { l.AllDay = true }, 20},
		{"all day at half the duty", scenarios.NEC, false, func(l *scenarios.Load) { l.AllDay, l.Duty = true, 0.99 }, 16},
		{"all day under iec", scenarios.IEC, false, func(l *scenarios.Load) { l.AllDay = true }, 16},
		{"two of them", scenarios.NEC, false, func(l *scenarios.Load) { l.Count = 2 }, 32},
		{"power factor of 0.8", scenarios.NEC, false, func(l *scenarios.Load) { l.PowerFactor = 0.8 }, 20},
		{"on the bus at its lowest", scenarios.NEC, true, func(l *scenarios.Load) { l.PowerFactor = 0.8 }, 1920.0 / 44},
		{"on the bus, all day", scenarios.NEC, true, func(l *scenarios.Load) { l.AllDay = true }, 1.25 * 1920 / 44},
	} {
		l := auto("lamp", 1920)
		if c.change != nil {
			c.change(&l)
		}
		s := house(nil)
		s.Rules = c.rules
		if got := CircuitA(s, &scenarios.Circuit{Volts: 120, DC: c.dc}, &l); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v A, want %v", c.name, got, c.want)
		}
	}
}

// TestOneAtATime: a saw of 1,800 W that starts with five times that, a vacuum and a compressor of one person count as
// the saw alone, on the inverter and on a circuit; not so where they may be on together.
func TestOneAtATime(t *testing.T) {
	saw, vacuum, compressor := auto("saw", 1800), auto("vacuum", 1200), auto("compressor", 1500)
	saw.Start, compressor.Start = 3, 4
	s := house([]scenarios.Load{saw, vacuum, compressor}, circuit("bench", 120, 15))
	if _, err := DemandOf(s); err == nil {
		t.Error("all three at once on 15 A")
	}
	s.OneAtATime = [][]int{{0, 1, 2}}
	d, err := DemandOf(s)
	if err != nil {
		t.Fatal(err)
	}
	// The compressor starts with 6,000 VA, more than the saw's 5,400.
	if d.PeakTotalVA() != 1800 || d.PeakSurgeVA() != 6000 || d.PeakLegVA() != 1800 || d.PeakLegSurgeVA() != 6000 {
		t.Errorf("peak %v, surge %v, leg %v and %v VA; want 1800, 6000 on all and on one leg", d.PeakTotalVA(), d.PeakSurgeVA(), d.PeakLegVA(), d.PeakLegSurgeVA())
	}
	if got := d.ACW[10]; got != 4500 {
		t.Errorf("energy stays the sum: %v W, want 4500", got)
	}
	want := CircuitLoad{Circuit: "bench", Leg: scenarios.LegA, Loads: []string{"saw", "vacuum", "compressor"}, CurrentA: 15, DeviceA: 15}
	if fmt.Sprint(d.Circuits) != fmt.Sprint([]CircuitLoad{want}) {
		t.Errorf("%+v, want %+v", d.Circuits, want)
	}
}

// TestCircuitsShareTheLegs: two of 1,200 W on two circuits go one to each leg; an unused circuit is listed on leg A.
func TestCircuitsShareTheLegs(t *testing.T) {
	s := house([]scenarios.Load{auto("a", 1200), auto("b", 1200), auto("c", 100)}, circuit("one", 120, 15), circuit("two", 120, 15), circuit("spare", 120, 15))
	d, err := DemandOf(s)
	if err != nil || !d.LegsProven || d.PeakLegVA() != 1300 {
		t.Fatalf("larger leg %v VA, proven %v, %v; want 1300", d.PeakLegVA(), d.LegsProven, err)
	}
	want := []CircuitLoad{
		{"one", scenarios.LegA, []string{"a", "c"}, 1300.0 / 120, 15},
		{"two", scenarios.LegB, []string{"b"}, 10, 15},
		{"spare", scenarios.LegA, []string{}, 0, 15},
	}
	if fmt.Sprint(d.Circuits) != fmt.Sprint(want) {
		t.Errorf("%+v, want %+v", d.Circuits, want)
	}
	if want := []LegLoad{{"a", scenarios.LegA}, {"b", scenarios.LegB}, {"c", scenarios.LegA}}; fmt.Sprint(d.Legs) != fmt.Sprint(want) {
		t.Errorf("%v, want %v", d.Legs, want)
	}
}

// TestTooManyPlacingsIsAnError: loads of unrelated watts that fill their circuits nearly whole are more than the search
// goes through; it says so, and asks for names.
func TestTooManyPlacingsIsAnError(t *testing.T) {
	var loads []scenarios.Load
	var circuits []scenarios.Circuit
	for i := range 26 { // nine circuits of 15 A: any three of the loads are a hair too much for one
		loads = append(loads, auto(fmt.Sprint(i), 600.0+0.01*math.Sqrt(float64(7+i*i%13))))
	}
	for i := range 9 {
		circuits = append(circuits, circuit(fmt.Sprint("c", i), 120, 15))
	}
	_, err := DemandOf(house(loads, circuits...))
	if err == nil || !strings.Contains(err.Error(), "found no way to put 26 loads on 9 circuits; name the circuit") {
		t.Errorf("%v", err)
	}
}

// TestManyLoadsOnCircuitsAreProven: twenty loads of many sizes and hours on six circuits are placed, proved, in a moment:
// the legs are searched before the circuits.
func TestManyLoadsOnCircuitsAreProven(t *testing.T) {
	var s *scenarios.Scenario
	for k := range 8 {
		s = house(nil)
		for i := range 6 {
			s.Circuits = append(s.Circuits, circuit(fmt.Sprint("c", i), 120, []float64{15, 20}[(i+k)%2]))
		}
		for i := range 20 {
			l := auto(fmt.Sprint(i), 50+10*float64((37*i*i+11*k*i+5*k)%60))
			l.FromMin = 60 * ((7*i + k) % 20)
			l.ToMin, l.Start = l.FromMin+60*(1+i%4), []float64{1, 1, 3}[i%3]
			s.Loads = append(s.Loads, l)
		}
		d, err := DemandOf(s)
		if err != nil || !d.LegsProven {
			t.Errorf("house %d: proven %v, %v", k, err == nil && d.LegsProven, err)
		}
	}
}
