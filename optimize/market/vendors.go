package market

import (
	"encoding/binary"
	"math"
	"slices"
	"sort"
	"sync"

	"cartwright/catalog"
)

// A vendor ships once an order, at the largest shipping among the lines bought there. How much that is
// ties all that is bought there together, which a solver finds hard. So the search settles it outside the
// program. For each vendor there is a level of shipping that is paid, and one up to which offers are open: between
// them shipping costs nothing. Parts then have plain prices, the program is easy, and what it costs bounds from below
// whatever is really ordered. With the shipping it would really take its point is a plan, too; where that is no more,
// nothing is left to decide. Else the vendor with most to pay is decided: either no offer of that level is open, or it
// is paid. The least cost over both is the least cost.

// vendor is one who ships for money, with the levels that occur.
type vendor struct {
	Name   string
	Levels []float64 // cents, ascending; the first is 0: nothing is ordered that is shipped for money
}

// Orders say of each vendor, by its place in Vendors, which level of shipping is paid and up to which its offers are open.
type Orders struct {
	Paid []int
	Open Open
}

// AnyOrder pays nothing and leaves everything open.
func (m *Market) AnyOrder() Orders {
	o := Orders{make([]int, len(m.Vendors)), make(Open, len(m.Vendors))}
	for i := range m.Vendors {
		o.Open[i] = len(m.Vendors[i].Levels) - 1
	}
	return o
}

// Just returns the orders that pay each vendor what it takes for shipping, in cents, and leave open what that ships.
func (m *Market) Just(takes func(vendor string) float64) Orders {
	o := Orders{make([]int, len(m.Vendors)), make(Open, len(m.Vendors))}
	for i := range m.Vendors {
		o.Paid[i] = m.LevelOf(i, takes(m.Vendors[i].Name))
		o.Open[i] = o.Paid[i]
	}
	return o
}

// Without returns the orders that take nothing of a vendor's level and above; ok is false where it is paid already.
func (o Orders) Without(vendor, level int) (less Orders, ok bool) {
	less = Orders{o.Paid, slices.Clone(o.Open)}
	less.Open[vendor] = level - 1
	return less, level > o.Paid[vendor]
}

// Paying returns the orders that pay a vendor's level.
func (o Orders) Paying(vendor, level int) Orders {
	more := Orders{slices.Clone(o.Paid), o.Open}
	more.Paid[vendor] = level
	return more
}

// PaidCents returns the shipping that orders pay, without tax.
func (m *Market) PaidCents(o Orders) float64 {
	cents := 0.0
	for i, level := range o.Paid {
		cents += m.Vendors[i].Levels[level]
	}
	return cents
}

// LevelOf returns the level of a vendor's shipping.
func (m *Market) LevelOf(vendor int, cents float64) int {
	return sort.SearchFloat64s(m.Vendors[vendor].Levels, cents)
}

// Nobodys is the offer of what is not bought at one, and who is owed nothing.
const Nobodys = -1

// place is whose an offer is, by place in Vendors, and at which level of shipping; of one who ships for nothing Nobodys.
type place struct{ vendor, level int }

// Open is up to which level of shipping offers are open, by vendor; nil: all are.
type Open []int

// admits reports whether an offer of an article is open.
func (o Open) admits(a *Article, offer int) bool {
	return o == nil || a.places == nil || a.places[offer].vendor < 0 || a.places[offer].level <= o[a.places[offer].vendor]
}

// Raise notes in levels, by vendor, that an article is bought at an offer.
func (a *Article) Raise(levels []int, offer int) {
	if offer < 0 || a.places == nil || a.places[offer].vendor < 0 {
		return
	}
	p := a.places[offer]
	levels[p.vendor] = max(levels[p.vendor], p.level)
}

// FloorAt returns a price in cents, tax included, below which no unit of the article is had of as many as a plan can
// need, at the offers that are open, the offer that has it, and how many can be had.
func (a *Article) FloorAt(tax float64, open Open) (each float64, offer int, most float64) {
	each, offer, most = math.Inf(1), Nobodys, a.Have+a.Buyable
	if len(a.Offers) == 0 {
		if a.Buyable > 0 {
			each = (1 + tax) * a.Cents
		}
	} else {
		most = a.Have
		for i := range a.Offers {
			if !open.admits(a, i) {
				continue
			}
			o := &a.Offers[i]
			most = a.Have + a.Buyable
			if cents := (1 + tax) * a.OfferCents(*o) * math.Max(1, o.MinQty/a.Most); cents < each {
				each, offer = cents, i
			}
		}
	}
	if a.Have > 0 && a.SellFor <= each {
		each, offer = a.SellFor, Nobodys
	}
	return each, offer, most
}

// listVendors finds the vendors who ship for money, the one with most at stake first.
func (m *Market) listVendors() {
	for i := range m.Articles {
		for _, o := range m.Articles[i].Offers {
			if o.Shipping <= 0 {
				continue
			}
			k := m.vendor(o.Vendor)
			if k < 0 {
				k = len(m.Vendors)
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
	for i := range m.Articles {
		a := &m.Articles[i]
		for _, o := range a.Offers {
			p := place{m.vendor(o.Vendor), 0}
			if p.vendor >= 0 {
				p.level = m.LevelOf(p.vendor, float64(o.Shipping))
			}
			a.places = append(a.places, p)
		}
	}
}

// vendor returns the place of a vendor who ships for money.
func (m *Market) vendor(name string) int {
	return slices.IndexFunc(m.Vendors, func(v vendor) bool { return v.Name == name })
}

// openMarkets remembers markets by the levels up to which offers are open.
type openMarkets struct {
	lock  sync.Mutex
	known map[string]*Market
}

// Key names levels.
func (o Open) Key() string {
	key := make([]byte, 0, len(o))
	for _, level := range o {
		key = binary.AppendUvarint(key, uint64(level))
	}
	return string(key)
}

// At returns the market at the offers that are open up to some levels, shipping left aside; made once.
func (m *Market) At(open Open) *Market {
	key := open.Key()
	m.open.lock.Lock()
	defer m.open.lock.Unlock()
	n := m.open.known[key]
	if n == nil {
		n = m.at(open)
		m.open.known[key] = n
	}
	return n
}

func (m *Market) at(open Open) *Market {
	n := *m
	n.Articles = slices.Clone(m.Articles)
	n.ShippingFixed, n.priced = true, &pricedLists{known: map[listKey][]Option{}}
	for i := range n.Articles {
		a := &n.Articles[i]
		if len(a.Offers) > 0 {
			a.admit(open)
		}
	}
	return &n
}

// Paying returns the market with so much shipping paid.
func (m *Market) Paying(cents float64) *Market {
	n := *m
	n.Shipping = cents
	return &n
}

// Needing returns the market for a plan that needs at most so much of each article: quantity breaks beyond that are left
// out. Nothing is left out while orders are to be decided.
func (m *Market) Needing(most map[int]float64) *Market {
	n := *m
	n.Articles = slices.Clone(m.Articles)
	for article, quantity := range most {
		a := &n.Articles[article]
		if len(a.Offers) == 0 || quantity >= a.Most {
			continue
		}
		a.Most = quantity
		if m.ShippingFixed {
			a.admit(nil)
		}
	}
	return &n
}

// admit leaves an article the offers whose shipping is open, and of them those that may be the cheapest of some
// quantity. Where that is one that whoever buys any reaches, it is the price.
func (a *Article) admit(open Open) {
	var offers []catalog.Offer
	for i := range a.Offers {
		if open.admits(a, i) {
			offers = append(offers, a.Offers[i])
		}
	}
	a.Offers, a.places = nil, nil
	if len(offers) == 0 {
		a.Buyable = 0
		return
	}
	// By what they come to at the least: an offer is of use where more of it is cheaper than by all those before.
	sure := a.sure()
	sort.SliceStable(offers, func(i, j int) bool {
		x, y := math.Max(sure, offers[i].MinQty), math.Max(sure, offers[j].MinQty)
		if x != y {
			return x < y
		}
		return a.OfferCents(offers[i]) < a.OfferCents(offers[j])
	})
	least, all := math.Inf(1), math.Inf(1) // of one, and of all that can be needed
	for _, o := range offers {
		each := a.OfferCents(o)
		if each >= least || each*math.Max(o.MinQty, sure) >= all {
			continue
		}
		least, all = each, math.Min(all, each*math.Max(o.MinQty, a.Most))
		a.Offers = append(a.Offers, o)
	}
	if first := a.Offers[0]; len(a.Offers) == 1 && first.MinQty <= sure {
		a.Cents, a.Vendor, a.From, a.Offers = a.OfferCents(first), first.Vendor, &first, nil
	}
}
