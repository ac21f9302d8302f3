package catalog_test

import (
	"testing"
	"time"

	"cartwright/catalog"
)

func TestStale(t *testing.T) {
	day := time.Date(2026, 11, 25, 9, 30, 0, 0, time.FixedZone("east", 3*3600))
	for _, test := range []struct {
		name string
		asOf time.Time
		want bool
	}{
		{"not stated", time.Time{}, false},
		{"today", time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC), false},
		{"180 days ago", time.Date(2026, 5, 29, 0, 0, 0, 0, time.UTC), false}, // 2+30+31+31+30+31+25 = 180
		{"181 days ago", time.Date(2026, 5, 28, 0, 0, 0, 0, time.UTC), true},
		{"181 days ago, late", time.Date(2026, 5, 28, 23, 59, 0, 0, time.UTC), true},
		{"years ago", time.Date(2019, 1, 1, 0, 0, 0, 0, time.UTC), true},
		{"tomorrow", time.Date(2026, 11, 26, 0, 0, 0, 0, time.UTC), false},
	} {
		t.Run(test.name, func(t *testing.T) {
			if got := (catalog.Part{AsOf: test.asOf}).Stale(day); got != test.want {
				t.Errorf("a part's price of %v: stale is %v on %v", test.asOf, got, day)
			}
			if got := (catalog.Offer{AsOf: test.asOf}).Stale(day); got != test.want {
				t.Errorf("an offer of %v: stale is %v on %v", test.asOf, got, day)
			}
		})
	}
}
