package value

import (
	"context"
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
)

// Landed is what one string of a battery costs wired to the bus, when it alone is bought: its modules, its
// cable with crimped ends and its device, shipping, and the tax on all of it. The
// device breaks the string's own short circuit; with other strings it may have to break more.
type Landed struct {
	Modules  plan.Money
	Wiring   plan.Money
	Shipping plan.Money
	Tax      plan.Money
	Cost     plan.Money // of all together
	// CostPerUsableKWh is Cost over the usable energy of the string; common practice, no source.
	CostPerUsableKWh float64
	Vendor           string // of the modules
	Cable            string // "" where the scenario lists no string run
	Device           string
}

// buying is one way to buy an article: a quantity at one price.
type buying struct {
	quantity   float64
	centsEach  float64
	vendor     string
	shipsCents plan.Money     // once for all that is bought there
	offer      *catalog.Offer // nil: at its own price
}

// cents returns the cost, rounded to the cent as on a bill.
func (b buying) cents() plan.Money { return catalog.RoundCents(b.quantity * b.centsEach) }

// purchases returns every way to buy a quantity of an article: at each of its offers, at least the offer's
// min_qty; at its own price where it has none. Splitting a quantity never pays: all of it can be
// bought at the cheaper offer.
func purchases(a *market.Article, quantity float64) []buying {
	if len(a.Offers) == 0 {
		return []buying{{quantity: quantity, centsEach: a.Cents, vendor: a.Vendor}}
	}
	var ways []buying
	for i := range a.Offers {
		o := &a.Offers[i]
		ways = append(ways, buying{math.Max(quantity, o.MinQty), a.OfferCents(*o), o.Vendor, plan.Money(o.Shipping), o})
	}
	return ways
}

// land finds the cheapest way to buy and wire one string of a battery; nil where there is none.
func land(ctx context.Context, b *bench.Bench, bat *catalog.Battery, series int) *Landed {
	options, ok := b.RunOptions(wiring.StringDuty(b.Scenario, bat, b.LeastBusA(), 1))
	if !ok {
		return nil
	}
	modules := market.Use{Article: b.Market.Part(bat.ID).Position, Quantity: float64(series)}
	var best *Landed
	try := func(o *market.Option) {
		needs := []market.Use{modules}
		if o != nil {
			needs = append(needs, o.Uses...)
		}
		below := plan.Money(math.MaxInt64)
		if best != nil {
			below = best.Cost
		}
		l := cheapestOrder(ctx, b.Market, needs, below)
		if l == nil {
			return
		}
		if o != nil {
			l.Cable = o.Wire.Cable.ID
			if o.Wire.Device != nil {
				l.Device = o.Wire.Device.ID
			}
		}
		best = l
	}
	if options == nil { // the scenario lists no string run: none is planned
		try(nil)
	}
	for i := range options {
		if plan.AtLeast(options[i].InterruptingA, wiring.ShortCircuitA(bat)) {
			try(&options[i])
		}
	}
	if best != nil {
		usable := float64(series) * energy.UsableWh(bat, b.Scenario.Limits.Reserve)
		best.CostPerUsableKWh = energy.CostPerKWh(catalog.Cents(best.Cost), usable)
	}
	return best
}

// cheapestOrder finds the cheapest way to buy some quantities together, if it costs less than below; else it returns
// nil. The first need is the modules. Shipping links what is bought from one vendor, so all combinations of offers are
// tried, except those that cost too much before all is chosen.
func cheapestOrder(ctx context.Context, m *market.Market, needs []market.Use, below plan.Money) *Landed {
	ways := make([][]buying, len(needs))
	rest := make([]plan.Money, len(needs)+1) // the least cost of the needs from here on
	for i := len(needs) - 1; i >= 0; i-- {
		ways[i] = worthwhile(purchases(&m.Articles[needs[i].Article], needs[i].Quantity))
		least := plan.Money(math.MaxInt64)
		for _, way := range ways[i] {
			least = min(least, way.cents())
		}
		rest[i] = rest[i+1] + least
	}
	var best *Landed
	chosen := make([]buying, 0, len(needs))
	var choose func()
	choose = func() {
		at := len(chosen)
		l := order(m, chosen, rest[at])
		switch {
		case l.Cost >= below || ctx.Err() != nil:
		case at == len(needs):
			best, below = l, l.Cost
		default:
			for _, way := range ways[at] {
				chosen = append(chosen, way)
				choose()
				chosen = chosen[:at]
			}
		}
	}
	choose()
	return best
}

// worthwhile leaves out the ways to buy for which the same vendor has one that costs no more and ships for no more.
func worthwhile(ways []buying) []buying {
	var kept []buying
	for i, way := range ways {
		beaten := slices.ContainsFunc(kept, func(k buying) bool { return way.beatenBy(k) }) ||
			slices.ContainsFunc(ways[i+1:], func(k buying) bool { return way.beatenBy(k) && !k.beatenBy(way) })
		if !beaten {
			kept = append(kept, way)
		}
	}
	return kept
}

// beatenBy reports whether another way to buy is as good in everything.
func (b buying) beatenBy(other buying) bool {
	return other.vendor == b.vendor && other.cents() <= b.cents() && other.shipsCents <= b.shipsCents
}

// order adds up some purchases, the first of which is the modules, and more, the least cost of what is not chosen yet.
func order(m *market.Market, chosen []buying, more plan.Money) *Landed {
	l := &Landed{}
	ships := map[string]plan.Money{}
	for i, way := range chosen {
		if i == 0 {
			l.Modules, l.Vendor = way.cents(), way.vendor
		} else {
			l.Wiring += way.cents()
		}
		ships[way.vendor] = max(ships[way.vendor], way.shipsCents)
	}
	for _, s := range ships { // a sum of whole cents: order does not matter
		l.Shipping += s
	}
	l.Tax = catalog.RoundCents(m.Tax * float64(l.Modules+l.Wiring+l.Shipping+more))
	l.Cost = l.Modules + l.Wiring + l.Shipping + more + l.Tax
	return l
}
