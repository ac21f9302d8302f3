package optimize

import (
	"math"
	"slices"
	"sort"

	"cartwright/catalog"
)

// A vendor ships once an order, at the largest shipping among the lines bought there. How much that is
// ties all that is bought there together, which a solver finds hard. So the search settles it outside the
// program: for a vendor it decides a level of shipping, which is then paid and admits the offers up to it;
// vendors that are not decided ship for nothing. Parts then have plain prices, the program is easy, and
// what it costs bounds from below whatever the open vendors are decided to be. With the shipping it would
// really take its point is a plan, too; where that is no more, nothing is left to decide, else the vendor
// with most to pay is decided next. The least cost over all levels is the least cost.

// vendor is one who ships for money, with the levels that occur.
type vendor struct {
	name   string
	levels []float64 // cents, ascending; the first is 0: nothing is ordered that is shipped for money
}

// undecided is the level of a vendor that is not settled yet: all offers are open and ship for nothing,
// so that costs are bounded from below.
const undecided = -1

// listVendors finds the vendors who ship for money, the one with most at stake first.
func (m *market) listVendors() {
	at := map[string]int{}
	for i := range m.articles {
		for _, o := range m.articles[i].offers {
			if o.Shipping <= 0 {
				continue
			}
			k, seen := at[o.Vendor]
			if !seen {
				k = len(m.vendors)
				at[o.Vendor] = k
				m.vendors = append(m.vendors, vendor{o.Vendor, []float64{0}})
			}
			if !slices.Contains(m.vendors[k].levels, float64(o.Shipping)) {
				m.vendors[k].levels = append(m.vendors[k].levels, float64(o.Shipping))
			}
		}
	}
	for i := range m.vendors {
		sort.Float64s(m.vendors[i].levels)
	}
	sort.SliceStable(m.vendors, func(i, j int) bool {
		return m.vendors[i].levels[len(m.vendors[i].levels)-1] > m.vendors[j].levels[len(m.vendors[j].levels)-1]
	})
}

// at returns the market as it is with levels of shipping settled for some vendors.
func (m *market) at(levels []int) *market {
	n := *m
	n.articles = slices.Clone(m.articles)
	n.settled = true
	open := map[string]float64{} // shipping that is paid for, by vendor
	for i, v := range m.vendors {
		if levels[i] == undecided {
			open[v.name] = math.Inf(1)
			continue
		}
		open[v.name] = v.levels[levels[i]]
		n.shipping += v.levels[levels[i]]
	}
	for i := range n.articles {
		a := &n.articles[i]
		if len(a.offers) > 0 {
			a.admit(open)
		}
	}
	return &n
}

// admit leaves an article the offers whose shipping is paid for. Where the cheapest of them can be had
// from one piece on, it is the price.
func (a *article) admit(open map[string]float64) {
	var offers []catalog.Offer
	for _, o := range a.offers {
		if float64(o.Shipping) <= open[o.Vendor] {
			offers = append(offers, o)
		}
	}
	a.offers = offers
	if len(offers) == 0 {
		a.buyable = 0
		return
	}
	best := 0
	for i := range offers {
		if a.offerCents(offers[i]) < a.offerCents(offers[best]) {
			best = i
		}
	}
	for i := range offers { // of the cheapest, the one with the least minimum
		if a.offerCents(offers[i]) == a.offerCents(offers[best]) && offers[i].MinQty < offers[best].MinQty {
			best = i
		}
	}
	if offers[best].MinQty <= 1 && a.whole || offers[best].MinQty == 0 {
		a.cents, a.vendor, a.from, a.offers = a.offerCents(offers[best]), offers[best].Vendor, &offers[best], nil
	}
}
