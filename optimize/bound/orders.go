package bound

import (
	"container/heap"
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/market"
)

// priced is costs at the offers that are open: as if all that is owned were there for every slot, and with nothing
// owned but batteries and inverters, nil where that is so anyway.
type priced struct {
	o          *Bounds
	own, apart *costs
	// Cents that joining the orders of what every plan has adds at the least, where nothing is decided.
	joinedOwn, joinedApart float64
	market                 *market.Market // made when first needed
}

// pricedAt returns the costs where offers are open up to some levels, made once.
func (o *Bounds) pricedAt(open market.Open) *priced {
	key := open.Key()
	p := o.at[key]
	if p == nil {
		p = o.newPriced(open)
		o.at[key] = p
	}
	return p
}

func (o *Bounds) newPriced(open market.Open) *priced {
	p := &priced{o: o, own: newCosts(o, o.Bench.Market, open)}
	if o.apartMarket != nil {
		p.apart = newCosts(o, o.apartMarket, open)
	}
	return p
}

// of returns what a core costs at the least, shipping left aside, and the levels of the orders it would take.
func (p *priced) of(c *bench.Core, l load) (cents, open float64, levels []int) {
	own, further := p.own.of(c, l)
	cents, open, levels = own.cents+p.joinedOwn, own.cents+p.joinedOwn-further, own.levels
	if p.apart == nil {
		return cents, open, levels
	}
	apart, further := p.apart.of(c, l)
	saved := p.o.saved(c)
	if paid := apart.cents + p.joinedApart - saved; paid > cents {
		cents, levels = paid, apart.levels
	}
	return cents, math.Max(open, apart.cents+p.joinedApart-saved-further), levels
}

// Ordered returns the figures of a core with what orders pay for shipping, at the offers that they leave open, and the
// levels of shipping that it would take, by vendor.
func (o *Bounds) Ordered(c *bench.Core, orders market.Orders) (f Figures, levels []int) {
	f, l := o.weigh(c, &Further{})
	f.Cents, f.OpenCents, levels = o.pricedAt(orders.Open).of(c, l)
	m := o.Bench.Market
	paid := (1 + m.Tax) * m.PaidCents(orders)
	f.Cents += paid
	f.OpenCents += paid
	return f, levels
}

// MarketAt returns the market where orders pay for shipping.
func (o *Bounds) MarketAt(orders market.Orders) *market.Market {
	return o.Bench.Market.At(orders.Open).Paying(o.Bench.Market.PaidCents(orders))
}

// Owed returns the vendor whose shipping some levels leave most to pay of, beyond what is paid; nobody where there is
// none.
func Owed(m *market.Market, levels, paid []int) int {
	owed, most := market.Nobodys, 0.0
	for v, level := range levels {
		if l := m.Vendors[v].Levels; level > paid[v] && l[level]-l[paid[v]] > most {
			owed, most = v, l[level]-l[paid[v]]
		}
	}
	return owed
}

// joinOrders finds what shipping adds, at the least, to what every plan has: wherever that is bought, whatever else a
// plan buys costs no less than where all is shipped for nothing.
func (o *Bounds) joinOrders() {
	if len(o.Bench.Market.Vendors) == 0 || len(o.Bench.Fixed) == 0 {
		return
	}
	o.full.joinedOwn = o.join(func(p *priced) *costs { return p.own })
	if o.full.apart != nil {
		o.full.joinedApart = o.join(func(p *priced) *costs { return p.apart })
	}
}

// mostJoined is how many orders are looked at: after as many the least that is left stands.
const mostJoined = 500

// join returns the least that the cheapest orders for what every plan has add to what it costs shipped for nothing.
func (o *Bounds) join(of func(*priced) *costs) float64 {
	m := o.Bench.Market
	var open ordersHeap
	push := func(orders market.Orders) {
		fixed := of(o.pricedAt(orders.Open)).fixed
		heap.Push(&open, ordered{orders, fixed.cents + (1+m.Tax)*m.PaidCents(orders), fixed.levels})
	}
	push(o.any)
	free := open[0].cents
	if math.IsInf(free, 1) {
		return 0
	}
	for n := 0; ; n++ {
		x := heap.Pop(&open).(ordered)
		vendor := Owed(m, x.levels, x.orders.Paid)
		if vendor == market.Nobodys || n == mostJoined || math.IsInf(x.cents, 1) {
			return x.cents - free
		}
		if less, ok := x.orders.Without(vendor, x.levels[vendor]); ok {
			push(less)
		}
		push(x.orders.Paying(vendor, x.levels[vendor]))
	}
}

// ordered is orders with what they cost and the levels they take.
type ordered struct {
	orders market.Orders
	cents  float64
	levels []int
}

// ordersHeap has the cheapest first.
type ordersHeap []ordered

func (h ordersHeap) Len() int           { return len(h) }
func (h ordersHeap) Less(i, j int) bool { return h[i].cents < h[j].cents }
func (h ordersHeap) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }
func (h *ordersHeap) Push(x any)        { *h = append(*h, x.(ordered)) }

func (h *ordersHeap) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}
