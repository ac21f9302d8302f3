package audit

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// drawLoads makes up a few loads, lists of those never on together, and circuits.
func drawLoads(t *rapid.T) *scenarios.Scenario {
	s := &scenarios.Scenario{Rules: rapid.SampledFrom([]scenarios.Rules{scenarios.NEC, scenarios.IEC}).Draw(t, "rules"), Bus: scenarios.Bus{LowV: 44}}
	circuits := rapid.IntRange(0, 3).Draw(t, "circuits")
	for i := range circuits {
		s.Circuits = append(s.Circuits, scenarios.Circuit{Name: fmt.Sprint("c", i),
			Volts: rapid.SampledFrom([]float64{120, 120, 240}).Draw(t, "volts"), DeviceA: rapid.SampledFrom([]float64{15, 20, 30}).Draw(t, "device")})
	}
	for i := range rapid.IntRange(1, 5).Draw(t, "loads") {
		l := scenarios.Load{Name: fmt.Sprint("l", i), Watts: float64(rapid.IntRange(1, 20).Draw(t, "watts")) * 100, Count: 1,
			PowerFactor: rapid.SampledFrom([]float64{1, 0.8}).Draw(t, "factor"), Duty: rapid.SampledFrom([]float64{1, 0.5}).Draw(t, "duty"),
			Start: rapid.SampledFrom([]float64{1, 3}).Draw(t, "start"),
			Leg:   rapid.SampledFrom([]scenarios.Leg{scenarios.LegAuto, scenarios.LegAuto, scenarios.LegA, scenarios.LegBoth}).Draw(t, "leg")}
		l.AllDay = rapid.Bool().Draw(t, "all day")
		if !l.AllDay {
			l.FromMin = 60 * rapid.IntRange(0, 23).Draw(t, "from")
			l.ToMin = (l.FromMin + 60*rapid.IntRange(1, 6).Draw(t, "for")) % dayMin
		}
		if circuits > 0 && rapid.IntRange(0, 3).Draw(t, "named") == 0 {
			l.Circuit, l.Leg = fmt.Sprint("c", rapid.IntRange(0, circuits-1).Draw(t, "circuit")), scenarios.LegAuto
		}
		s.Loads = append(s.Loads, l)
	}
	if len(s.Loads) > 2 && rapid.Bool().Draw(t, "one at a time") {
		s.OneAtATime = [][]int{{0, 2}}
	}
	return s
}

// eachPlacing visits every placing of the loads that keeps the circuits' devices.
func eachPlacing(s *scenarios.Scenario, threeWire bool, visit func(h *hookup)) {
	h := newHookup(s)
	var hang func(i int)
	hang = func(i int) {
		if i == len(s.Loads) {
			for c := range s.Circuits {
				if !plan.AtMost(circuitA(s, &h, c), s.Circuits[c].DeviceA) {
					return
				}
			}
			visit(&h)
			return
		}
		was := h.legs[i]
		if len(s.Circuits) > 0 {
			for c := range s.Circuits {
				if mayHang(s, i, c, h.circuitLegs[c], threeWire) {
					h.circuits[i] = c
					if threeWire {
						h.legs[i] = h.circuitLegs[c]
					}
					hang(i + 1)
				}
			}
			h.circuits[i] = noCircuit
		} else if was == scenarios.LegAuto && threeWire {
			for _, h.legs[i] = range []scenarios.Leg{scenarios.LegA, scenarios.LegB} {
				hang(i + 1)
			}
		} else {
			hang(i + 1)
		}
		h.legs[i] = was
	}
	var turn func(c int)
	turn = func(c int) {
		switch {
		case c == len(s.Circuits):
			hang(0)
		case !threeWire:
			turn(c + 1)
		case s.Circuits[c].Volts == splitV:
			h.circuitLegs[c] = scenarios.LegBoth
			turn(c + 1)
		default:
			for _, h.circuitLegs[c] = range []scenarios.Leg{scenarios.LegA, scenarios.LegB} {
				turn(c + 1)
			}
		}
	}
	turn(0)
}

// The search finds the least of all placings, and nothing better than it.
func TestSpreadIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, threeWire := drawLoads(t), rapid.IntRange(0, 3).Draw(t, "wires") > 0
		peak, surge := math.Inf(1), math.Inf(1)
		eachPlacing(s, threeWire, func(h *hookup) {
			d, err := recordOf(s, h.legs)
			if err != nil {
				t.Fatal(err)
			}
			p, g := d.larger()
			if p < peak*(1-1e-9) || p < peak*(1+1e-9) && g < surge {
				peak, surge = p, g
			}
		})
		found, proven := spread(s, threeWire, math.Inf(1), math.Inf(1))
		if !proven {
			t.Fatal("the search was cut short")
		}
		if (found.best == nil) != math.IsInf(peak, 1) {
			t.Fatalf("found %v, by trial a peak of %g VA", found.best, peak)
		}
		if found.best == nil {
			return
		}
		d, err := recordOf(s, found.best.legs)
		if err != nil {
			t.Fatal(err)
		}
		if p, g := d.larger(); math.Abs(p-peak) > 1e-6*peak || math.Abs(g-surge) > 1e-6*surge {
			t.Fatalf("peak %g and surge %g VA, by trial %g and %g", p, g, peak, surge)
		}
		if again, _ := spread(s, threeWire, peak, surge); again.best != nil {
			t.Fatalf("better than the best: %g and %g VA", again.peak, again.surge)
		}
	})
}

// Of a list the largest is on; one that starts stands for it. A saw of 1,200 VA that starts at three times that, a
// vacuum of 800 VA and a fridge of 200 VA beside them.
func TestOneAtATime(t *testing.T) {
	saw, vacuum, fridge := draw{0, 1200, 2400, [2]float64{1, 0}}, draw{0, 800, 3000, [2]float64{0, 1}}, draw{noList, 200, 0, [2]float64{0.5, 0.5}}
	all := func(*draw) float64 { return 1 }
	if peak, surge := together([]draw{saw, vacuum, fridge}, all); peak != 1400 || surge != 200+800+3000 {
		t.Errorf("peak %g and surge %g VA, want 1400 and 4000", peak, surge)
	}
	if peak, surge := together([]draw{saw, vacuum, fridge}, func(x *draw) float64 { return x.share[0] }); peak != 1300 || surge != 3700 {
		t.Errorf("leg A: peak %g and surge %g VA, want 1300 and 3700", peak, surge)
	}
	if peak, surge := together(nil, all); peak != 0 || surge != 0 {
		t.Errorf("of nothing: %g and %g VA", peak, surge)
	}
	// Less than the watts on starting is no more than the peak.
	if peak, surge := together([]draw{{noList, 500, -400, [2]float64{}}}, all); surge != peak {
		t.Errorf("a soft start: %g, %g VA", peak, surge)
	}
}
