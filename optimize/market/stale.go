package market

import (
	"math"
	"time"

	"cartwright/catalog"
	"cartwright/optimize/plan"
)

// StalePrice reports whether a line of a bill is bought at a price older than catalog.StaleAfter days on the given
// day: that of the offer it is bought at, else the part's own. Ends have no offers. Where two offers of a
// vendor fit the line, it is stale if both are. A line that buys nothing is not.
func StalePrice(c *catalog.Catalog, l plan.Line, day time.Time) bool {
	if l.Buy <= 0 {
		return false
	}
	e, known := c.Find(l.Part)
	if !plan.IsEnd(l.Kind) {
		offered, stale := false, true
		for _, o := range c.OffersFor(l.Part) {
			if madeAt(o, known && e.Kind.ByLength(), l) {
				offered, stale = true, stale && o.Stale(day)
			}
		}
		if offered {
			return stale
		}
	}
	return known && e.Stale(day)
}

// madeAt reports whether a line can have been bought at an offer: from its vendor, at its price, and enough of it.
func madeAt(o catalog.Offer, byLength bool, l plan.Line) bool {
	const hair = 1e-6 // cents, and metres: rounding of quotients and sums
	cents := float64(o.Price)
	if byLength {
		cents = o.CentsPerM
	}
	return o.Vendor == l.Vendor && math.Abs(100*l.UnitPrice-cents) < hair && l.Buy > o.MinQty-hair
}
