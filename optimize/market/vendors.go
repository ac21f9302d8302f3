package market

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
	Name   string
	Levels []float64 // cents, ascending; the first is 0: nothing is ordered that is shipped for money
}

// Undecided is the level of a vendor that is not settled yet: all offers are open and ship for nothing,
// so that costs are bounded from below.
const Undecided = -1

// listVendors finds the vendors who ship for money, the one with most at stake first.
func (m *Market) listVendors() {
	at := map[string]int{}
	for i := range m.Articles {
		for _, o := range m.Articles[i].Offers {
			if o.Shipping <= 0 {
				continue
			}
			k, seen := at[o.Vendor]
			if !seen {
				k = len(m.Vendors)
				at[o.Vendor] = k
				m.Vendors = append(m.Vendors, vendor{o.Vendor, []float64{0}})
			}
			if !slices.Contains(m.Vendors[k].Levels, float64(o.Shipping)) {
				m.Vendors[k].Levels = append(m.Vendors[k].Levels, float64(o.Shipping))
			}
		}
	}
	for i := range m.Vendors {
		sort.Float64s(m.Vendors[i].Levels)
	}
	sort.SliceStable(m.Vendors, func(i, j int) bool {
		return m.Vendors[i].Levels[len(m.Vendors[i].Levels)-1] > m.Vendors[j].Levels[len(m.Vendors[j].Levels)-1]
	})
}

// At returns the market as it is with levels of shipping settled for some vendors.
func (m *Market) At(levels []int) *Market {
	n := *m
	n.Articles = slices.Clone(m.Articles)
	n.ShippingFixed = true
	open := map[string]float64{} // shipping that is paid for, by vendor
	for i, v := range m.Vendors {
		if levels[i] == Undecided {
			open[v.Name] = math.Inf(1)
			continue
		}
		open[v.Name] = v.Levels[levels[i]]
		n.Shipping += v.Levels[levels[i]]
	}
	for i := range n.Articles {
		a := &n.Articles[i]
		if len(a.Offers) > 0 {
			a.admit(open)
		}
	}
	return &n
}

// admit leaves an article the offers whose shipping is paid for. Where the cheapest of them can be had
// from one piece on, it is the price.
func (a *Article) admit(open map[string]float64) {
	var offers []catalog.Offer
	for _, o := range a.Offers {
		if float64(o.Shipping) <= open[o.Vendor] {
			offers = append(offers, o)
		}
	}
	a.Offers = offers
	if len(offers) == 0 {
		a.Buyable = 0
		return
	}
	best := 0
	for i := range offers {
		if a.OfferCents(offers[i]) < a.OfferCents(offers[best]) {
			best = i
		}
	}
	for i := range offers { // of the cheapest, the one with the least minimum
		if a.OfferCents(offers[i]) == a.OfferCents(offers[best]) && offers[i].MinQty < offers[best].MinQty {
			best = i
		}
	}
	if offers[best].MinQty <= 1 && a.Whole || offers[best].MinQty == 0 {
		a.Cents, a.Vendor, a.From, a.Offers = a.OfferCents(offers[best]), offers[best].Vendor, &offers[best], nil
	}
}
