package market

import (
	"math"
	"slices"
	"sort"
)

// dominates reports whether a serves at least as well as b in every way a plan can tell them apart, so
// that b can be left out. heavy says that mass at the backboard may help the cart stand: then a lighter
// option is no better.
func (m *Market) dominates(a, b *Option, heavy bool) bool {
	const hair = 1e-9 // against rounding in sums of the same numbers
	if a.Kg > b.Kg+hair || (heavy && a.Kg < b.Kg-hair) {
		return false
	}
	if a.InterruptingA < b.InterruptingA || a.RatingA < b.RatingA || a.Studs < b.Studs ||
		a.CarriesKg < b.CarriesKg || a.Poles > b.Poles || a.spaces() < b.spaces() || a.Mount != b.Mount ||
		a.FeedsA > b.FeedsA || a.needsMM2() > b.needsMM2() || a.bondsMM2() < b.bondsMM2() || a.bondOf() != b.bondOf() {
		return false
	}
	if m.Must >= 0 && QuantityOf(a, m.Must) == 0 && QuantityOf(b, m.Must) > 0 {
		return false
	}
	for _, u := range b.Uses {
		if m.Articles[u.Article].Keep > 0 && QuantityOf(a, u.Article) < u.Quantity-hair {
			return false
		}
	}
	return m.neverDearer(a, b)
}

// neverDearer reports whether a in the place of b never makes a plan dearer, whatever else is in it: what a has more
// of adds no more than what b has more of costs by itself.
func (m *Market) neverDearer(a, b *Option) bool {
	const hair = 1e-9 // against rounding in sums of the same numbers
	left := b.plain + hair - a.plain
	for _, u := range b.Uses {
		if x := &m.Articles[u.Article]; x.Special() {
			if less := u.Quantity - QuantityOf(a, u.Article); less > hair {
				left += x.saves(less, m)
			}
		}
	}
	for _, u := range a.Uses {
		if x := &m.Articles[u.Article]; x.Special() {
			if more := u.Quantity - QuantityOf(b, u.Article); more > hair {
				if left < 0 {
					return false
				}
				left -= x.adds(more, m)
			}
		}
	}
	return left >= 0
}

// adds returns the most that so much more of an article costs a plan, in cents with tax: bought by itself, with
// shipping of its own where an order is not decided.
func (a *Article) adds(quantity float64, m *Market) float64 {
	if len(a.Offers) == 0 {
		if quantity > a.Buyable {
			return math.Inf(1)
		}
		return (1 + m.Tax) * quantity * a.Cents
	}
	least := math.Inf(1)
	for i := range a.Offers {
		cents := a.OfferCents(a.Offers[i]) * math.Max(quantity, a.Offers[i].MinQty)
		if !m.ShippingFixed {
			cents += float64(a.Offers[i].Shipping)
		}
		least = math.Min(least, cents)
	}
	return (1 + m.Tax) * least
}

// saves returns the least that so much less of an article saves a plan, in cents with tax. Owned pieces are then sold;
// bought ones save their price but where a quantity break may be lost.
func (a *Article) saves(quantity float64, m *Market) float64 {
	switch {
	case a.Have == 0 && len(a.Offers) > 0 && quantity > a.Most-a.Least: // it is all that there can be
		cents, _ := a.boughtCents(quantity, nil)
		return (1 + m.Tax) * cents
	case a.breaks():
		return 0
	}
	each := a.BoughtFloor(m.Tax)
	if a.Have > 0 {
		each = math.Min(each, a.SellFor)
	}
	return quantity * each
}

// breaks reports whether some offer begins at a quantity that a plan may not need.
func (a *Article) breaks() bool {
	for i := range a.Offers {
		if a.Offers[i].MinQty > a.sure() {
			return true
		}
	}
	return false
}

// sure is a quantity that whoever buys any buys at the least: all of it is bought where none is owned.
func (a *Article) sure() float64 {
	switch {
	case a.Have == 0:
		return a.Least
	case a.Whole:
		return 1
	}
	return 0
}

// mostCompared is how many of the options kept a further one is compared with, the cheapest first: one that only a
// dearer one dominates is kept, which is slower and no mistake.
const mostCompared = 64

// Prune returns the options that no other dominates, in their order; of equals the first stays. Their uses are copied.
func (m *Market) Prune(options []Option, heavy bool) []Option {
	order := make([]int, len(options))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool { return options[order[i]].Floor < options[order[j]].Floor })
	var kept []int
	for _, at := range order {
		if !m.dominated(options, kept, at, heavy) {
			kept = append(kept, at)
		}
	}
	slices.Reverse(kept) // a dearer floor may be the better one, where parts are owned or offered
	var both []int
	for i, at := range kept {
		if !m.dominated(options, kept[max(0, i-mostCompared):i], at, heavy) {
			both = append(both, at)
		}
	}
	sort.Ints(both)
	out := make([]Option, 0, len(both))
	for _, at := range both {
		o := options[at]
		o.Uses = slices.Clone(o.Uses)
		out = append(out, o)
	}
	return out
}

// dominated reports whether one of the first few of some options dominates another.
func (m *Market) dominated(options []Option, by []int, at int, heavy bool) bool {
	for i, other := range by {
		if i == mostCompared {
			return false
		}
		if m.dominates(&options[other], &options[at], heavy) {
			return true
		}
	}
	return false
}

// Keep adds an option to those kept, unless one of them dominates it, and drops those it dominates. The
// option's uses are copied where it is kept.
func (m *Market) Keep(kept []Option, o *Option, heavy bool) []Option {
	for i := range kept {
		if m.dominates(&kept[i], o, heavy) {
			return kept
		}
	}
	survivors := kept[:0]
	for i := range kept {
		if !m.dominates(o, &kept[i], heavy) {
			survivors = append(survivors, kept[i])
		}
	}
	clone := *o
	clone.Uses = slices.Clone(o.Uses)
	return append(survivors, clone)
}
