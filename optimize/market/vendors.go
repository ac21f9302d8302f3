package market

import (
	"encoding/binary"
	"math"
	"slices"
	"sort"
	"sync"

	"cartwright/catalog"
)

// Each order from a vendor is shipped once, at the largest shipping among the lines bought there. That ties together
// all that is bought from the vendor, which makes a program hard to solve, so the search decides it outside the program.
// For each vendor it has a level of shipping that is paid, and one up to which offers are open; the difference counts as
// free. Parts then have plain prices, the program is easy, and its optimum is a lower bound on every plan with those
// offers. Its point is a plan too, once the true shipping is added; where that adds nothing, the case is decided.
// Else it is split on the vendor with the most unpaid shipping: either no offer of that level is open, or the level is
// paid. The lesser of the two optima is the optimum.

// vendor is one who ships for money, with the levels of shipping that occur.
type vendor struct {
	Name   string
	Levels []float64 // cents, ascending; the first is 0: nothing is ordered that is shipped for money
}

// Orders has for each vendor, by its index in Vendors, the level of shipping that is paid and the level up to which its
// offers are open.
type Orders struct {
	Paid []int
	Open Open
}

// AnyOrder returns the orders that pay nothing and leave every offer open.
func (m *Market) AnyOrder() Orders {
	o := Orders{make([]int, len(m.Vendors)), make(Open, len(m.Vendors))}
	for i := range m.Vendors {
		o.Open[i] = len(m.Vendors[i].Levels) - 1
	}
	return o
}

// Just returns the orders that pay each vendor the shipping it takes, in cents, and leave open the offers that this
// ships.
func (m *Market) Just(takes func(vendor string) float64) Orders {
	o := Orders{make([]int, len(m.Vendors)), make(Open, len(m.Vendors))}
	for i := range m.Vendors {
		o.Paid[i] = m.LevelOf(i, takes(m.Vendors[i].Name))
		o.Open[i] = o.Paid[i]
	}
	return o
}

// Without returns the orders with a vendor's offers of a level and above closed; ok is false where that level is paid
// already.
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

// PaidCents returns the shipping in cents that orders pay, without tax.
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

// Nobodys stands for no offer where a thing is not bought at one, and for no vendor where none is owed shipping.
const Nobodys = -1

// place is the vendor of an offer, by index in Vendors, and the offer's level of shipping; Nobodys for a vendor who
// ships for nothing.
type place struct{ vendor, level int }

// Open has by vendor the level of shipping up to which offers are open; nil: all are.
type Open []int

// admits reports whether an offer of an article is open.
func (o Open) admits(a *Article, offer int) bool {
	return a.places == nil || o.at(a.places[offer])
}

// at reports whether the offers of a place are open.
func (o Open) at(p place) bool { return o == nil || p.vendor < 0 || p.level <= o[p.vendor] }

// Raise raises levels, by vendor, to at least that of an offer at which an article is bought.
func (a *Article) Raise(levels []int, offer int) {
	if offer < 0 || a.places == nil || a.places[offer].vendor < 0 {
		return
	}
	p := a.places[offer]
	levels[p.vendor] = max(levels[p.vendor], p.level)
}

// FloorAt returns a price in cents, tax included, below which no unit of the article can be had at the offers that are
// open, given the most that a plan can need; the offer with that price; and how many units can be had.
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
		m.codes.places = append(m.codes.places, a.places)
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

// Key returns a map key for the levels.
func (o Open) Key() string {
	key := make([]byte, 0, len(o))
	for _, level := range o {
		key = binary.AppendUvarint(key, uint64(level))
	}
	return string(key)
}

// At returns the market with only the offers that are open, without shipping. It is made once.
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
	n.ShippingFixed, n.levels, n.priced = true, slices.Clone(open), &pricedLists{known: map[listKey][]Option{}}
	for i := range n.Articles {
		a := &n.Articles[i]
		if len(a.Offers) > 0 {
			a.admit(open)
		}
	}
	return &n
}

// Paying returns the market with a shipping paid, in cents without tax.
func (m *Market) Paying(cents float64) *Market {
	n := *m
	n.Shipping = cents
	return &n
}

// Needing returns the market for a plan that needs at most the given quantities of articles. Quantity breaks beyond that
// are left out, unless orders are still to be decided.
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

// admit leaves an article only the open offers that may be the cheapest for some quantity. Where that is a single one
// which every buyer can take, it becomes the article's own price.
func (a *Article) admit(open Open) {
	offers := make([]catalog.Offer, 0, len(a.Offers))
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
	// By rising least quantity: an offer is of use only if each is cheaper than at all offers before it.
	sure := a.sure()
	sort.SliceStable(offers, func(i, j int) bool {
		x, y := math.Max(sure, offers[i].MinQty), math.Max(sure, offers[j].MinQty)
		if x != y {
			return x < y
		}
		return a.OfferCents(offers[i]) < a.OfferCents(offers[j])
	})
	least, all := math.Inf(1), math.Inf(1) // of one, and of all that can be needed
	a.Offers = offers[:0]
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
