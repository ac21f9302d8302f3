package market_test

import (
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/market"
	"cartwright/scenarios"
)

// Of two switches the cheap one does as well, and leaves the dear one out; but not where only so many of it are to be
// had, since another place in the plan may need them.
func TestWhatIsScarceLeavesNothingOut(t *testing.T) {
	c := &catalog.Catalog{Sundries: []catalog.Sundry{
		{Part: catalog.Part{ID: "cheap", Price: 100}, Role: "switch", RatingA: 50},
		{Part: catalog.Part{ID: "dear", Price: 900}, Role: "switch", RatingA: 50},
	}}
	for _, x := range []struct {
		buyable float64 // how many of the cheap one; below 0: as many as one likes
		left    int
	}{{-1, 1}, {1, 2}, {2, 2}} {
		m := market.New(&scenarios.Scenario{}, c)
		if x.buyable >= 0 {
			m.Part("cheap").Buyable = x.buyable
		}
		left := m.Prune([]market.Option{m.Single("cheap"), m.Single("dear")}, false)
		if len(left) != x.left || left[0].Part != "cheap" {
			t.Errorf("%v of the cheap one to be had: %d options are left, want %d", x.buyable, len(left), x.left)
		}
	}
}
