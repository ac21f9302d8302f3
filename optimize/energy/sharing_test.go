package energy

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cartwright/catalog"
	"cartwright/scenarios"
)

func parallel(ohm, maxA float64, series, count int) Strings {
	return Strings{
		Battery: &catalog.Battery{ResistanceOhm: ohm, MaxDischargeA: maxA, MaxChargeA: maxA / 2, RoundTrip: 1},
		Series:  series, Count: count,
	}
}

func drawStrings(t *rapid.T) []Strings {
	var all []Strings
	for range rapid.IntRange(1, 4).Draw(t, "kinds") {
		all = append(all, parallel(
			rapid.Float64Range(0.001, 0.05).Draw(t, "ohm"), rapid.Float64Range(10, 200).Draw(t, "maxA"),
			rapid.IntRange(1, 4).Draw(t, "series"), rapid.IntRange(0, 3).Draw(t, "count")))
	}
	return all
}

// Kirchhoff's laws: the currents add up, and the volts lost in every string are the same.
func TestSharesObeyKirchhoff(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := drawStrings(t)
		busA := rapid.Float64Range(0, 500).Draw(t, "busA")
		sum, drop, any := 0.0, math.NaN(), false
		for i, a := range ShareA(all, busA) {
			s := all[i]
			if s.Count == 0 {
				if a != 0 {
					t.Errorf("no strings give %v A", a)
				}
				continue
			}
			sum += a * float64(s.Count)
			v := a * s.Battery.ResistanceOhm * float64(s.Series)
			if any && !near(v, drop) {
				t.Errorf("%v V lost in one string, %v V in another", v, drop)
			}
			drop, any = v, true
		}
		if any && !near(sum, busA) {
			t.Errorf("currents sum to %v A, want %v A", sum, busA)
		}
	})
}

// The condition in words: no string gives more than its maximum.
func TestCarriesIsNoStringAboveItsMaximum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := drawStrings(t)
		busA := rapid.Float64Range(0.1, 500).Draw(t, "busA")
		want, present := true, false
		for i, a := range ShareA(all, busA) {
			if all[i].Count > 0 {
				present = true
				want = want && a <= all[i].Battery.MaxDischargeA
			}
		}
		if got := Carries(all, busA); got != (want && present) {
			t.Errorf("carries %v A: %v, want %v", busA, got, want && present)
		}
		if carry := CarryA(all); present && (!Carries(all, carry) || Carries(all, carry*1.0001)) {
			t.Errorf("%v A is not the most they carry", carry)
		}
	})
}

func TestSharing(t *testing.T) {
	for _, c := range []struct {
		name  string
		all   []Strings
		carry float64
	}{
		{"none", nil, 0},
		{"none of a kind", []Strings{parallel(0.01, 100, 1, 0)}, 0},
		{"one", []Strings{parallel(0.01, 100, 1, 1)}, 100},
		{"three equal", []Strings{parallel(0.003, 100, 1, 3)}, 300},
		{"series lowers no current", []Strings{parallel(0.01, 100, 4, 2)}, 200},
		{"a kind not present counts for nothing", []Strings{parallel(0.01, 100, 1, 1), parallel(0.001, 1, 1, 0)}, 100},
		// The second takes as much as the first and may give half.
		{"the weaker limits", []Strings{parallel(0.01, 100, 1, 1), parallel(0.01, 50, 1, 1)}, 100},
		// A stiff small string takes three quarters: 40 A / (3/4) is less than the 100 A of the other alone.
		{"a further string may lower it", []Strings{parallel(0.03, 100, 1, 1), parallel(0.01, 40, 1, 1)}, 160.0 / 3},
		{"in series it takes less", []Strings{parallel(0.03, 100, 1, 1), parallel(0.01, 100, 3, 1)}, 200},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := CarryA(c.all); !near(got, c.carry) {
				t.Errorf("%v A, want %v A", got, c.carry)
			}
			if !Carries(c.all, c.carry) {
				t.Error("does not carry what it carries")
			}
			if Carries(c.all, c.carry+0.001) {
				t.Error("carries more")
			}
		})
	}
	if got := ConductanceS(&catalog.Battery{ResistanceOhm: 0.02}, 4); got != 12.5 {
		t.Errorf("conductance %v S, want 12.5", got)
	}
}

func TestRecharge(t *testing.T) {
	// 4800 Wh at 48 V within 5 h: 20 A, and 31.25 A where a round trip of 0.64 takes 1/0.64 of it.
	if got := RechargeA(4800, 48, 5, 1); got != 20 {
		t.Errorf("%v A, want 20 A", got)
	}
	if got := RechargeA(4800, 48, 5, 0.64); !near(got, 31.25) {
		t.Errorf("%v A, want 31.25 A", got)
	}
	good, bad := parallel(0.01, 60, 1, 2), parallel(0.01, 30, 1, 1)
	bad.Battery.RoundTrip = 0.64
	if got := GridRechargeA([]Strings{good, bad}, 4800, 48, 5); !near(got, 31.25) {
		t.Errorf("the worst round trip: %v A, want 31.25 A", got)
	}
	if got := GridRechargeA([]Strings{bad, good}, 4800, 48, 5); !near(got, 31.25) {
		t.Errorf("the worst round trip first: %v A, want 31.25 A", got)
	}
	if got := ChargeA([]Strings{good, bad}); !near(got, 45) { // of equal strings each takes a third: 15 A of the one that takes least
		t.Errorf("together %v A, want 45 A", got)
	}
	bad.Count = 0
	if got := GridRechargeA([]Strings{good, bad}, 4800, 48, 5); got != 20 {
		t.Errorf("a kind not present: %v A, want 20 A", got)
	}
	if got := GridRechargeA(nil, 4800, 48, 5); got != 0 {
		t.Errorf("no strings: %v A", got)
	}
}

// TestPeakA: for a moment a string gives its peak, or no more than its maximum where it states none.
func TestPeakA(t *testing.T) {
	peaky, plain := parallel(0.01, 60, 1, 2), parallel(0.01, 50, 1, 1)
	peaky.Battery.PeakDischargeA = 90
	if got := PeakA([]Strings{peaky}); !near(got, 180) {
		t.Errorf("%v A, want 180", got)
	}
	if got := PeakA([]Strings{peaky, plain}); !near(got, 150) { // the plain one has a third
		t.Errorf("beside one of no peak: %v A, want 150", got)
	}
	if got := CarryA([]Strings{peaky}); !near(got, 120) {
		t.Errorf("without end: %v A, want 120", got)
	}
}

// TestChargersA: all units' chargers, and no more than 80 % of the supply's device (NFPA 70 210.20(A), from memory): 20 A
// of 120 V at 90 % are 1,728 W, 36 A at 48 V.
func TestChargersA(t *testing.T) {
	inv := &catalog.Inverter{ChargerA: 25, Efficiency: 0.9}
	for _, c := range []struct {
		name   string
		supply *scenarios.Supply
		units  int
		want   float64
	}{
		{"no supply stated", nil, 2, 50},
		{"less than the supply", &scenarios.Supply{Volts: 120, DeviceA: 20}, 1, 25},
		{"two share it", &scenarios.Supply{Volts: 120, DeviceA: 20}, 2, 36},
		{"240 V", &scenarios.Supply{Volts: 240, DeviceA: 20}, 3, 72},
	} {
		s := &scenarios.Scenario{Bus: scenarios.Bus{NominalV: 48}, Recharge: &scenarios.Recharge{Supply: c.supply}}
		if got := ChargersA(s, inv, c.units); !near(got, c.want) {
			t.Errorf("%s: %v A, want %v", c.name, got, c.want)
		}
	}
	if got := ChargersA(&scenarios.Scenario{Bus: scenarios.Bus{NominalV: 48}}, inv, 1); got != 25 {
		t.Errorf("no recharge asked: %v A, want 25", got)
	}
}

func TestSourcesAreComplete(t *testing.T) {
	for _, s := range Sources() {
		if s.Kind == "" || s.Name == "" || s.Source == "" || s.Confidence == "" {
			t.Errorf("incomplete: %+v", s)
		}
	}
	if len(Sources()) == 0 {
		t.Error("no sources")
	}
}
