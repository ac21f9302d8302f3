package optimize_test

import (
	"math"
	"slices"
	"testing"

	"cartwright/scenarios"
)

// minutes are in a day.
const minutes = 24 * 60

// house is what the loads of a scenario take, worked out minute by minute from the list of loads alone.
type house struct {
	acWh, dcWh []float64 // since midnight, by the first minutes of a day: one more than a day has
	edges      []float64 // hours at which some load goes on or off, and the whole hours

	peakVA, surgeVA float64 // through the inverters
	peakDCW         float64
}

// newHouse works out what the loads take.
func newHouse(t *testing.T, s *scenarios.Scenario) *house {
	t.Helper()
	if s.Measured != nil {
		t.Fatal("measured loads are not enumerated")
	}
	h := &house{acWh: make([]float64, minutes+1), dcWh: make([]float64, minutes+1)}
	for m := range minutes {
		h.acWh[m+1], h.dcWh[m+1] = h.acWh[m], h.dcWh[m]
		for i := range s.Loads {
			l := &s.Loads[i]
			switch wh := l.Watts * float64(l.Count) * l.Duty / 60; {
			case !isOn(l, m):
			case l.DC:
				h.dcWh[m+1] += wh
			default:
				h.acWh[m+1] += wh
			}
		}
		if m == 0 || m%60 == 0 || slices.ContainsFunc(s.Loads, func(l scenarios.Load) bool { return isOn(&l, m) != isOn(&l, m-1) }) {
			h.edges = append(h.edges, float64(m)/60)
			h.peak(s, m)
		}
	}
	return h
}

// isOn reports whether a load is on in a minute of the day.
func isOn(l *scenarios.Load, m int) bool {
	switch {
	case l.AllDay:
		return true
	case l.FromMin <= l.ToMin:
		return l.FromMin <= m && m < l.ToMin
	}
	return m >= l.FromMin || m < l.ToMin
}

// peak takes in all that can be on together in a minute: each list of loads that are never on together gives one of
// its own, every one of them in turn.
func (h *house) peak(s *scenarios.Scenario, m int) {
	off := make([]bool, len(s.Loads))
	var choose func(list int)
	choose = func(list int) {
		if list < len(s.OneAtATime) {
			for _, on := range s.OneAtATime[list] {
				for _, i := range s.OneAtATime[list] {
					off[i] = i != on
				}
				choose(list + 1)
			}
			return
		}
		va, dcW, start := 0.0, 0.0, 0.0
		for i := range s.Loads {
			switch l := &s.Loads[i]; {
			case off[i] || !isOn(l, m) || l.Count == 0:
			case l.DC:
				dcW += l.Watts * float64(l.Count)
			default:
				va += l.Watts * float64(l.Count) / l.PowerFactor
				start = max(start, (l.Start-1)*l.Watts/l.PowerFactor)
			}
		}
		h.peakVA, h.surgeVA, h.peakDCW = max(h.peakVA, va), max(h.surgeVA, va+start), max(h.peakDCW, dcW)
	}
	choose(0)
}

// sinceWh returns what the bus gives from the first midnight up to some hour, idle watts included.
func (h *house) sinceWh(efficiency, idleW, hour float64) float64 {
	at := func(sums []float64) float64 {
		days := math.Floor(hour / 24)
		minute := (hour - 24*days) * 60
		whole := min(minutes-1, int(minute))
		part := minute - float64(whole)
		return days*sums[minutes] + sums[whole] + part*(sums[whole+1]-sums[whole])
	}
	return at(h.acWh)/efficiency + at(h.dcWh) + idleW*hour
}

// windowWh returns the most that the bus gives in some hours on end: the most of all stretches that begin or end where
// a load goes on or off.
func (h *house) windowWh(efficiency, idleW, hours float64) float64 {
	most := 0.0
	for _, edge := range h.edges {
		for _, from := range []float64{edge, edge - hours} {
			most = max(most, h.sinceWh(efficiency, idleW, from+hours)-h.sinceWh(efficiency, idleW, from))
		}
	}
	return most
}

// dayWh returns what the bus gives in a day.
func (h *house) dayWh(efficiency, idleW float64) float64 { return h.sinceWh(efficiency, idleW, 24) }
