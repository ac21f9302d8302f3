package energy

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// hung is the circuit and leg of each load, in one try.
type hung struct {
	circuits []int
	legs     []scenarios.Leg
}

// together lists every set of loads that may be on at a minute: of each list of those never on together one, or none
// where none of it is on.
func together(s *scenarios.Scenario, minute int) [][]int {
	sets := [][]int{nil}
	listed := map[int]bool{}
	for _, list := range s.OneAtATime {
		var next [][]int
		for _, i := range list {
			listed[i] = true
			if runsAt(&s.Loads[i], minute) {
				for _, set := range sets {
					next = append(next, append(set[:len(set):len(set)], i))
				}
			}
		}
		if next != nil {
			sets = next
		}
	}
	for i := range s.Loads {
		if !listed[i] && runsAt(&s.Loads[i], minute) {
			for k := range sets {
				sets[k] = append(sets[k][:len(sets[k]):len(sets[k])], i)
			}
		}
	}
	return sets
}

// runsAt reports whether a load is on at a minute, by going through its minutes.
func runsAt(l *scenarios.Load, minute int) bool {
	for m := l.FromMin; !l.AllDay; m++ {
		if m%dayMin == l.ToMin%dayMin {
			return false
		}
		if m%dayMin == minute {
			return true
		}
	}
	return true
}

// measure returns the larger leg's peak and surge of a try, and whether every circuit carries what may be on.
func (h *hung) measure(s *scenarios.Scenario, sets [][]int) (peak, surge float64, fits bool) {
	for _, set := range sets {
		var leg [2]float64
		amps := make([]float64, len(s.Circuits))
		share := func(i int) [2]float64 {
			return map[scenarios.Leg][2]float64{scenarios.LegA: {1, 0}, scenarios.LegB: {0, 1}, scenarios.LegBoth: {0.5, 0.5}}[h.legs[i]]
		}
		va := func(i int, units float64) float64 { return units * s.Loads[i].Watts / s.Loads[i].PowerFactor }
		for _, i := range set {
			l := &s.Loads[i]
			for k := range leg {
				leg[k] += share(i)[k] * va(i, float64(l.Count))
			}
			if c := h.circuits[i]; c >= 0 {
				a := va(i, float64(l.Count)) / s.Circuits[c].Volts
				if l.DC {
					a = l.Watts * float64(l.Count) / s.Bus.LowV
				}
				hours := 24.0
				if !l.AllDay {
					hours = float64((l.ToMin-l.FromMin+dayMin)%dayMin) / 60
				}
				if s.Rules == scenarios.NEC && l.Duty == 1 && hours >= 3 {
					a *= 1.25
				}
				amps[c] += a
			}
		}
		for c := range amps {
			if !plan.AtMost(amps[c], s.Circuits[c].DeviceA) {
				return 0, 0, false
			}
		}
		peak = max(peak, leg[0], leg[1])
		surge = max(surge, leg[0], leg[1])
		for _, i := range set {
			if s.Loads[i].Count > 0 {
				for k := range leg {
					surge = max(surge, leg[k]+share(i)[k]*va(i, 1)*(s.Loads[i].Start-1))
				}
			}
		}
	}
	return peak, surge, true
}

// everyPlacing calls try for every way to hang loads on circuits and circuits on legs, in the scenario's order, A
// before B.
func everyPlacing(s *scenarios.Scenario, try func(*hung)) {
	of := make([]scenarios.Leg, len(s.Circuits)) // the leg of each circuit
	h := hung{make([]int, len(s.Loads)), make([]scenarios.Leg, len(s.Loads))}
	ac, dc := false, false
	for _, c := range s.Circuits {
		ac, dc = ac || !c.DC, dc || c.DC
	}
	var next func(i int)
	next = func(i int) {
		if i == len(s.Loads) {
			try(&h)
			return
		}
		l := &s.Loads[i]
		on := func(c int, leg scenarios.Leg) {
			h.circuits[i], h.legs[i] = c, leg
			next(i + 1)
		}
		legs := []scenarios.Leg{l.Leg}
		switch {
		case l.DC:
			legs = []scenarios.Leg{""}
		case l.Leg == scenarios.LegAuto:
			legs = []scenarios.Leg{scenarios.LegA, scenarios.LegB}
		}
		if l.DC && !dc || !l.DC && !ac {
			for _, leg := range legs {
				on(-1, leg)
			}
			return
		}
		for c := range s.Circuits {
			x := &s.Circuits[c]
			if x.DC != l.DC || l.Circuit != "" && l.Circuit != x.Name {
				continue
			}
			if x.DC {
				on(c, "")
				continue
			}
			if x.Volts == 240 {
				if l.Leg == scenarios.LegBoth || l.Leg == scenarios.LegAuto && l.Circuit != "" {
					on(c, scenarios.LegBoth)
				}
				continue
			}
			if l.Leg == scenarios.LegBoth {
				continue
			}
			for _, leg := range legs {
				if was := of[c]; was == "" || was == leg {
					of[c] = leg
					on(c, leg)
					of[c] = was
				}
			}
		}
	}
	next(0)
}

// drawHouse draws a small scenario of loads and circuits, some of which have no placing.
func drawHouse(t *rapid.T) *scenarios.Scenario {
	s := &scenarios.Scenario{Rules: rapid.SampledFrom([]scenarios.Rules{scenarios.NEC, scenarios.IEC}).Draw(t, "rules"), Bus: scenarios.Bus{NominalV: 51.2, LowV: 44, HighV: 58}}
	volts := []float64{120, 120, 240}
	if s.Rules == scenarios.IEC {
		volts = []float64{230}
	}
	for c := range rapid.IntRange(0, 4).Draw(t, "circuits") {
		x := scenarios.Circuit{Name: fmt.Sprint("c", c), DeviceA: rapid.SampledFrom([]float64{15, 20, 30}).Draw(t, "device"), Volts: rapid.SampledFrom(volts).Draw(t, "volts")}
		if rapid.IntRange(0, 4).Draw(t, "on the bus") == 0 {
			x.DC, x.Volts = true, s.Bus.NominalV
		}
		s.Circuits = append(s.Circuits, x)
	}
	for i := range rapid.IntRange(2, 6).Draw(t, "loads") {
		l := scenarios.Load{Name: fmt.Sprint("l", i), Count: rapid.SampledFrom([]int{1, 1, 1, 2, 0}).Draw(t, "count"),
			Watts:       rapid.SampledFrom([]float64{60, 300, 333.3, 700, 1200, 1440, 1800, 2400}).Draw(t, "watts"),
			PowerFactor: rapid.SampledFrom([]float64{1, 1, 0.8}).Draw(t, "power factor"), Duty: rapid.SampledFrom([]float64{1, 1, 0.5}).Draw(t, "duty"),
			Start: rapid.SampledFrom([]float64{1, 1, 3, 5.5}).Draw(t, "start"), AllDay: rapid.Bool().Draw(t, "all day"), Leg: scenarios.LegAuto}
		if !l.AllDay {
			l.FromMin = 60 * rapid.IntRange(0, 23).Draw(t, "from")
			l.ToMin = (l.FromMin + 60*rapid.IntRange(1, 5).Draw(t, "hours")) % dayMin
		}
		l.DC = rapid.IntRange(0, 6).Draw(t, "dc") == 0
		if !l.DC && s.Rules == scenarios.NEC {
			l.Leg = rapid.SampledFrom([]scenarios.Leg{scenarios.LegAuto, scenarios.LegAuto, scenarios.LegAuto, scenarios.LegA, scenarios.LegB, scenarios.LegBoth}).Draw(t, "leg")
		}
		if len(s.Circuits) > 0 && rapid.IntRange(0, 4).Draw(t, "named") == 0 {
			l.Circuit = s.Circuits[rapid.IntRange(0, len(s.Circuits)-1).Draw(t, "circuit")].Name
		}
		s.Loads = append(s.Loads, l)
	}
	lists := make([][]int, 2) // a load is on one list at most
	for i := range s.Loads {
		if k := rapid.IntRange(0, 4).Draw(t, "list"); k < 2 {
			lists[k] = append(lists[k], i)
		}
	}
	for _, list := range lists {
		if len(list) > 1 {
			s.OneAtATime = append(s.OneAtATime, list)
		}
	}
	return s
}

// TestPlacingMatchesBruteForce: the larger leg's peak is least, then its surge, then it is the first in the scenario's
// order; where nothing fits, it is a mistake.
func TestPlacingMatchesBruteForce(t *testing.T) {
	placed, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		s := drawHouse(t)
		var sets [][]int
		for minute := 0; minute < dayMin; minute += 60 {
			sets = append(sets, together(s, minute)...)
		}
		peak, surge := math.Inf(1), math.Inf(1)
		each := func(keep func(h *hung, p, g float64)) {
			everyPlacing(s, func(h *hung) {
				if p, g, fits := h.measure(s, sets); fits {
					keep(h, p, g)
				}
			})
		}
		each(func(_ *hung, p, g float64) {
			if !plan.AtLeast(p, peak) || plan.AtMost(p, peak) && g < surge {
				peak, surge = p, g
			}
		})
		got, err := place(s)
		if math.IsInf(peak, 1) {
			if refused++; err == nil {
				t.Fatalf("placed, and nothing fits: %+v", got)
			}
			return
		}
		if placed++; err != nil {
			t.Fatalf("refused, and there is a way: %v", err)
		}
		var first *hung
		each(func(h *hung, p, g float64) {
			if first == nil && plan.AtMost(p, peak) && plan.AtMost(g, surge) {
				first = &hung{append([]int{}, h.circuits...), append([]scenarios.Leg{}, h.legs...)}
			}
		})
		if !got.proven {
			t.Fatal("six loads not proven")
		}
		if fmt.Sprint(got.circuits, got.legs) != fmt.Sprint(first.circuits, first.legs) {
			p, g, fits := (&hung{got.circuits, got.legs}).measure(s, sets)
			t.Fatalf("placed on %v legs %v, with peak %v, surge %v (fits %v); brute force has %v legs %v, with %v and %v",
				got.circuits, got.legs, p, g, fits, first.circuits, first.legs, peak, surge)
		}
	})
	if placed < 10 || refused < 10 {
		t.Errorf("%d placed and %d refused: too few of one", placed, refused)
	}
}
