package cli

import (
	"slices"
	"testing"
	"time"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

func date(t *testing.T, text string) time.Time {
	t.Helper()
	d, err := time.Parse(time.DateOnly, text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// A price is stale past 180 days (catalog.StaleAfter); only what is bought, from whom it is bought, counts.
func TestStalePrices(t *testing.T) {
	c := &catalog.Catalog{
		Busbars: []catalog.Busbar{
			{Part: catalog.Part{ID: "old", AsOf: date(t, "2026-01-01")}},
			{Part: catalog.Part{ID: "new", AsOf: date(t, "2026-06-30")}},
			{Part: catalog.Part{ID: "undated"}},
			{Part: catalog.Part{ID: "old-but-offered", AsOf: date(t, "2026-01-01")}},
			{Part: catalog.Part{ID: "old-offer", AsOf: date(t, "2026-06-30")}},
			{Part: catalog.Part{ID: "owned", AsOf: date(t, "2026-01-01")}},
		},
		Offers: []catalog.Offer{
			{PartID: "old-but-offered", Vendor: "yard", AsOf: date(t, "2026-06-30")},
			{PartID: "old-offer", Vendor: "yard", AsOf: date(t, "2026-01-01")},
			{PartID: "old-offer", Vendor: "yard", AsOf: date(t, "2026-01-01"), Price: 500, MinQty: 4},
			{PartID: "old-but-offered", Vendor: "yard", AsOf: date(t, "2026-01-01"), Price: 500, MinQty: 4},
		},
	}
	r := &question.Result{Plans: []plan.Plan{
		{Bill: []plan.Line{{Part: "old-offer", Vendor: "yard", Buy: 1}, {Part: "old", Buy: 1}, {Part: "new", Buy: 1}}},
		{Bill: []plan.Line{{Part: "old", Buy: 2}, {Part: "undated", Buy: 1}, {Part: "owned", Have: 1},
			{Part: "old-but-offered", Vendor: "yard", Buy: 1}}},
	}}
	want := []string{
		"Prices older than 180 days on 2026-07-01: old, old-offer. Ask again before you buy.",
	}
	if got := view.StalePrices(c, r, date(t, "2026-07-01")); !slices.Equal(got, want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
	if got := view.StalePrices(c, r, date(t, "2026-06-30")); len(got) != 0 {
		t.Errorf("on day 180: got %q, want none", got)
	}
}
