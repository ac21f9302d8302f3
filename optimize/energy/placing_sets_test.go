package energy

import (
	"testing"

	"pgregory.net/rapid"
)

// TestDemandIsWhatMayBeOn: peaks and surges of the whole, of the legs and of the circuits are those of the largest set
// of loads that may be on together.
func TestDemandIsWhatMayBeOn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawHouse(t)
		d, err := DemandOf(s)
		if err != nil {
			return
		}
		where, err := place(s)
		if err != nil {
			t.Fatal(err)
		}
		var all [][]int
		for minute := 0; minute < dayMin; minute += 60 {
			all = append(all, together(s, minute)...)
		}
		peak, surge, fits := (&hung{where.circuits, where.legs}).measure(s, all)
		if !near(d.PeakLegVA(), peak) || !near(d.PeakLegSurgeVA(), surge) || !fits {
			t.Fatalf("legs: peak %v, surge %v; by sets %v, %v, fits %v", d.PeakLegVA(), d.PeakLegSurgeVA(), peak, surge, fits)
		}
		total, start, bus := 0.0, 0.0, 0.0
		for _, set := range all {
			sum, dc := 0.0, 0.0
			for _, i := range set {
				l := &s.Loads[i]
				if l.DC {
					dc += l.Watts * float64(l.Count)
				} else {
					sum += l.Watts * float64(l.Count) / l.PowerFactor
				}
			}
			total, start, bus = max(total, sum), max(start, sum), max(bus, dc)
			for _, i := range set {
				if l := &s.Loads[i]; !l.DC && l.Count > 0 {
					start = max(start, sum+l.Watts/l.PowerFactor*(l.Start-1))
				}
			}
		}
		if !near(d.PeakTotalVA(), total) || !near(d.PeakSurgeVA(), start) || !near(d.PeakBusDCW(), bus) {
			t.Fatalf("peak %v, surge %v, bus %v; by sets %v, %v, %v", d.PeakTotalVA(), d.PeakSurgeVA(), d.PeakBusDCW(), total, start, bus)
		}
	})
}
