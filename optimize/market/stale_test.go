package market_test

import (
	"testing"
	"time"

	"cartwright/catalog"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
)

// TestStaleByLength: an offer for cable or conduit has a price for each metre, and it is that offer's date that counts,
// not the part's own. Conduit once counted as sold by the piece, so an old offer of it went unflagged.
func TestStaleByLength(t *testing.T) {
	day := time.Date(2026, 7, 1, 0, 0, 0, 0, time.UTC)
	old, fresh := day.AddDate(0, 0, -catalog.StaleAfter-1), day.AddDate(0, 0, -1)
	c := &catalog.Catalog{
		Cables:   []catalog.Cable{{Part: catalog.Part{ID: "red", AsOf: fresh}}},
		Conduits: []catalog.Conduit{{Part: catalog.Part{ID: "emt", AsOf: fresh}}},
		Offers: []catalog.Offer{
			{PartID: "red", Vendor: "yard", CentsPerM: 320, MinQty: 1, AsOf: old},
			{PartID: "emt", Vendor: "yard", CentsPerM: 450, MinQty: 1, AsOf: old},
		},
	}
	for _, l := range []plan.Line{
		{Part: "red", Kind: string(catalog.KindCable), Unit: "m", Vendor: "yard", Buy: 3, UnitPrice: 3.2},
		{Part: "emt", Kind: string(catalog.KindConduit), Unit: "m", Vendor: "yard", Buy: 3, UnitPrice: 4.5},
	} {
		if !market.StalePrice(c, l, day) {
			t.Errorf("%s at an offer of %d days: not stale", l.Part, catalog.StaleAfter+1)
		}
		if market.StalePrice(c, l, day.AddDate(0, 0, -2)) {
			t.Errorf("%s at an offer of %d days: stale", l.Part, catalog.StaleAfter-1)
		}
	}
}
