package audit

import (
	"testing"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// Two modules of 4 usable kWh are owned: 12 kWh for 2000 are 4 more, at 500 each; 8 are no more than are owned.
func TestExtra(t *testing.T) {
	s := &scenarios.Scenario{Bus: scenarios.Bus{NominalV: 48, LowV: 46, HighV: 60}, Have: []scenarios.Holding{{PartID: "slab", Count: 2}}}
	c := &catalog.Catalog{Batteries: []catalog.Battery{{Part: catalog.Part{ID: "slab"}, NominalV: 51.2, MaxV: 58, MaxSeries: 1,
		CapacityWh: 5000, UsableFraction: 0.8, RoundTrip: 1}}}
	if got := OwnedWh(s, c); got != 8000 {
		t.Fatalf("OwnedWh = %v, want 8000", got)
	}
	for _, x := range []struct {
		stated, usableWh float64
		passes           bool
	}{{500, 12000, true}, {0, 8000, true}, {500.1, 12000, false}, {250, 12000, false}, {0, 12000, false}, {166.67, 8000, false}} {
		if got := Extra(s, c, x.stated, 2000, x.usableWh); got.Passed != x.passes || got.Name != rulePerKWh {
			t.Errorf("Extra of %v at %v Wh: %+v, want passed %v", x.stated, x.usableWh, got, x.passes)
		}
	}
}
