package energy

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/scenarios"
)

func TestInverterFits(t *testing.T) {
	for _, c := range []struct {
		name     string
		acv      string
		min, max float64
		both     bool
		circuits []float64
		want     bool
	}{
		{"the window itself", ACV120, 44, 58.4, false, nil, true},
		{"begins too high", ACV120, 44.1, 60, false, nil, false},
		{"ends too low", ACV120, 40, 58.3, false, nil, false},
		{"120 serves 120", ACV120, 40, 60, false, []float64{120, 120}, true},
		{"120 has no 240", ACV120, 40, 60, false, []float64{120, 240}, false},
		{"120 has no 230", ACV120, 40, 60, false, []float64{230}, false},
		{"120 has one leg", ACV120, 40, 60, true, nil, false},
		{"230 serves 230", ACV230, 40, 60, false, []float64{230}, true},
		{"230 has no 240", ACV230, 40, 60, false, []float64{240}, false},
		{"230 has no 120", ACV230, 40, 60, false, []float64{120}, false},
		{"230 has one leg", ACV230, 40, 60, true, nil, false},
		{"three wires serve 120 and 240", ACVThree, 40, 60, false, []float64{120, 240}, true},
		{"three wires have no 230", ACVThree, 40, 60, false, []float64{230}, false},
		{"three wires have both legs", ACVThree, 40, 60, true, []float64{240}, true},
		{"an output that is none", "277", 40, 60, false, []float64{277}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := &scenarios.Scenario{Bus: scenarios.Bus{NominalV: 48, LowV: 44, HighV: 58.4}}
			for _, v := range c.circuits {
				s.Circuits = append(s.Circuits, scenarios.Circuit{Volts: v})
			}
			inv := &catalog.Inverter{DCMinV: c.min, DCMaxV: c.max, ACV: c.acv}
			if got := InverterFits(s, &Demand{NeedsBothLegs: c.both}, inv); got != c.want {
				t.Errorf("fits %v, want %v", got, c.want)
			}
		})
	}
}

func TestInverterCurrents(t *testing.T) {
	bus := scenarios.Bus{NominalV: 48, LowV: 40, HighV: 58.4}
	for _, c := range []struct {
		acv                   string
		busA, feederV, feeder float64
	}{
		{ACV120, 150, 120, 45},
		{ACV230, 150, 230, 5400.0 / 230},
		{ACVThree, 150, 240, 25},
		{"277", 150, 0, math.Inf(1)},
	} {
		inv := &catalog.Inverter{ContinuousW: 5400, LegW: 3000, Efficiency: 0.9, ACV: c.acv}
		if got := BusA(inv, bus); !near(got, c.busA) {
			t.Errorf("%s: %v A on the bus, want %v A", c.acv, got, c.busA)
		}
		if got := FeederV(inv); got != c.feederV {
			t.Errorf("%s: %v V, want %v V", c.acv, got, c.feederV)
		}
		if got := FeederA(inv); got != c.feeder {
			t.Errorf("%s: feeder %v A, want %v A", c.acv, got, c.feeder)
		}
	}
}

// TestFeederByItsLeg: a leg that may give more than half carries the feeder; 3,600 VA of surge at 90 % from 40 V are 100 A.
func TestFeederByItsLeg(t *testing.T) {
	for legW, want := range map[float64]float64{1800: 15, 2400: 20, 1200: 15} {
		if got := FeederA(&catalog.Inverter{ContinuousW: 3600, LegW: legW, ACV: ACVThree}); got != want {
			t.Errorf("a leg of %v W: %v A, want %v", legW, got, want)
		}
	}
	if got := SurgeA(&catalog.Inverter{Efficiency: 0.9}, scenarios.Bus{LowV: 40}, 3600); !near(got, 100) {
		t.Errorf("surge: %v A, want 100", got)
	}
}
