package doubt

import (
	"testing"

	"cartwright/catalog"
)

// TestPriceRangeByLength: a price for a metre is in doubt like any other, by its own range or the usual one. Conduit and
// sections once counted as having no price, so that theirs was certain.
func TestPriceRangeByLength(t *testing.T) {
	c := &catalog.Catalog{
		Cables:   []catalog.Cable{{Part: catalog.Part{ID: "red"}, CentsPerM: 300}},
		Conduits: []catalog.Conduit{{Part: catalog.Part{ID: "emt"}, CentsPerM: 400, LowCentsPerM: 300, HighCentsPerM: 600}},
		Sections: []catalog.Section{{Part: catalog.Part{ID: "tube"}, CentsPerM: 500}, {Part: catalog.Part{ID: "scrap"}}},
	}
	want := map[string][2]float64{"red": {0.9, 1.1}, "emt": {0.75, 1.5}, "tube": {0.9, 1.1}, "scrap": {1, 1}}
	for _, e := range c.All() {
		if low, high := priceRange(c, e, 0.1); low != want[e.ID][0] || high != want[e.ID][1] {
			t.Errorf("%s: %g to %g, want %v", e.ID, low, high, want[e.ID])
		}
	}
}
