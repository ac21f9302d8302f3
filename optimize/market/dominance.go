package market

import (
	"cmp"
	"math"
	"slices"
)

// dominates reports whether a serves at least as well as b in every way that matters to a plan, and never costs more, so
// that b can be left out. heavy says that mass on the backboard may help the cart stand: then a lighter
// option is no better. gone is an article of which a plan with a has none at all; nothing if there is no such article.
func (m *Market) dominates(a, b *Option, heavy bool, gone int) bool {
	return m.serves(a, b, heavy) && m.neverDearer(a, b, gone)
}

// serves reports whether a serves at least as well as b, whatever it costs.
func (m *Market) serves(a, b *Option, heavy bool) bool {
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
	return true
}

// neverDearer reports whether replacing b by a never makes a plan dearer, whatever else is in it: what a uses more of
// adds at most what b's other uses are sure to save.
func (m *Market) neverDearer(a, b *Option, gone int) bool {
	left := b.plain + hair - a.plain
	for _, u := range b.Uses {
		if x := &m.Articles[u.Article]; x.Special() {
			if less := u.Quantity - QuantityOf(a, u.Article); less > hair {
				if x.Position == gone {
					left += less * x.FloorCents(m.Tax)
				} else {
					left += x.saves(less, m)
				}
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

// adds returns the most that this much more of an article can cost a plan, in cents with tax: bought by itself, with
// its own shipping where orders are still to be decided. +Inf for an article of which only so many can be had: another
// part of the plan may need them all.
func (a *Article) adds(quantity float64, m *Market) float64 {
	if len(a.Offers) == 0 {
		if !math.IsInf(a.Buyable, 1) {
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

// saves returns the least that this much less of an article saves a plan, in cents with tax. Owned pieces are then
// sold; bought ones save their price, unless a quantity break is lost.
func (a *Article) saves(quantity float64, m *Market) float64 {
	switch {
	case a.Have == 0 && len(a.Offers) > 0 && quantity > a.Most-a.Least: // the plan has none besides
		cents, _ := a.boughtCents(quantity, nil)
		return (1 + m.Tax) * cents
	case !a.breaks():
		each := a.BoughtFloor(m.Tax)
		if a.Have > 0 {
			each = math.Min(each, a.SellFor)
		}
		return quantity * each
	case a.Have > 0 || !m.ShippingFixed || math.IsInf(a.Most, 1):
		return 0
	}
	// As a function of the total, the cost has a kink where an offer begins and where it becomes the cheapest; the saving
	// is least where the total before or after is at a kink.
	least, _ := a.boughtCents(quantity, nil)
	try := func(all float64) {
		if all < quantity+a.Least || all > a.Most {
			return
		}
		before, _ := a.boughtCents(all, nil)
		after, _ := a.boughtCents(all-quantity, nil)
		least = math.Min(least, before-after)
	}
	try(quantity + a.Least)
	try(a.Most)
	for i := range a.Offers {
		try(a.Offers[i].MinQty)
		try(a.Offers[i].MinQty + quantity)
		for j := range a.Offers {
			from := a.OfferCents(a.Offers[i]) * a.Offers[i].MinQty / a.OfferCents(a.Offers[j])
			try(from)
			try(from + quantity)
		}
	}
	return (1 + m.Tax) * math.Max(0, least)
}

// breaks reports whether some offer begins at a quantity above what any buyer needs.
func (a *Article) breaks() bool {
	for i := range a.Offers {
		if a.Offers[i].MinQty > a.sure() {
			return true
		}
	}
	return false
}

// sure is the least quantity that a plan buys if it buys any: all that it uses, where none is owned.
func (a *Article) sure() float64 {
	switch {
	case a.Have == 0:
		return a.Least
	case a.Whole:
		return 1
	}
	return 0
}

// nothing stands for no article.
const nothing = -1

// Spare returns the options without those that use an article. ok is false where one of those is not dominated by one of
// the others, with the article counted at its least price: then it may be worth having.
func (m *Market) Spare(options []Option, article int, heavy bool) (without []Option, ok bool) {
	for i := range options {
		if QuantityOf(&options[i], article) == 0 {
			without = append(without, options[i])
		}
	}
	for i := range options {
		if QuantityOf(&options[i], article) > 0 && !slices.ContainsFunc(without, func(o Option) bool {
			return m.dominates(&o, &options[i], heavy, article)
		}) {
			return options, false
		}
	}
	return without, true
}

// mostCompared is with how many of the options kept a further one is compared. An option dominated only by one it was
// not compared with is kept, which costs time but is not wrong.
const mostCompared = 64

// Prune returns the options that no other dominates, in their order; of equals the first stays. Where there are very
// many, some that are dominated may stay as well (see mostCompared). Their uses are copied.
func (m *Market) Prune(options []Option, heavy bool) []Option {
	left := byFloor(options)
	// First each is compared with the cheapest kept, then with its neighbours in price.
	left = m.sift(options, left, heavy, true)
	slices.Reverse(left)
	left = m.sift(options, left, heavy, false)
	slices.Sort(left)
	out := make([]Option, 0, len(left))
	for _, at := range left {
		o := options[at]
		o.Uses = slices.Clone(o.Uses) // the caller may reuse the memory of its options
		out = append(out, o)
	}
	return out
}

// byFloor returns the indices of options by rising floor, equals in their order.
func byFloor(options []Option) []int {
	type priced struct {
		floor float64
		at    int
	}
	list := make([]priced, len(options))
	for i := range list {
		list[i] = priced{options[i].Floor, i}
	}
	slices.SortFunc(list, func(a, b priced) int { return cmp.Or(cmp.Compare(a.floor, b.floor), a.at-b.at) })
	order := make([]int, len(list))
	for i := range list {
		order[i] = list[i].at
	}
	return order
}

// sift goes through options in the order given and keeps those that none of mostCompared kept before dominates: of the
// first kept, or of the last.
func (m *Market) sift(options []Option, order []int, heavy, first bool) []int {
	kept := make([]int, 0, len(order))
	for _, at := range order {
		by := kept[:min(len(kept), mostCompared)]
		if !first {
			by = kept[max(0, len(kept)-mostCompared):]
		}
		if !slices.ContainsFunc(by, func(other int) bool {
			return m.dominates(&options[other], &options[at], heavy, nothing)
		}) {
			kept = append(kept, at)
		}
	}
	return kept
}

// Keep adds an option to those kept, unless one of them dominates it, and drops those it dominates. The
// option's uses are copied where it is kept.
func (m *Market) Keep(kept []Option, o *Option, heavy bool) []Option {
	for i := range kept {
		if m.dominates(&kept[i], o, heavy, nothing) {
			return kept
		}
	}
	survivors := kept[:0]
	for i := range kept {
		if !m.dominates(o, &kept[i], heavy, nothing) {
			survivors = append(survivors, kept[i])
		}
	}
	clone := *o
	clone.Uses = slices.Clone(o.Uses)
	return append(survivors, clone)
}
