package bound

import (
	"container/heap"
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/market"
)

// priced is costs at the offers that are open, twice: own lets every slot use all that is owned; apart has nothing owned
// except batteries, inverters and modules, and is nil where nothing else is owned.
type priced struct {
	o          *Bounds
	own, apart *costs
	// The least cents of shipping that the orders of what every plan has add, where no order is decided.
	joinedOwn, joinedApart float64
}

// pricedAt returns the costs where offers are open up to some levels. They are made once.
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

// of returns the least cost of a core without shipping (Figures.Cents and OpenCents), and the levels of shipping of the
// orders it would take.
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
	return cents, max(open, apart.cents+p.joinedApart-saved-further), levels
}

// Ordered returns the figures of a core at the offers that orders leave open, with the shipping they pay, and by vendor
// the level of shipping that it would take.
func (o *Bounds) Ordered(c *bench.Core, orders market.Orders) (f Figures, levels []int) {
	f, l := o.weigh(c, &Further{})
	f.Cents, f.OpenCents, levels = o.pricedAt(orders.Open).of(c, l)
	m := o.Bench.Market
	paid := (1 + m.Tax) * m.PaidCents(orders)
	f.Cents += paid
	f.OpenCents += paid
	return f, levels
}

// MarketAt returns the market at the offers that orders leave open, with the shipping they pay.
func (o *Bounds) MarketAt(orders market.Orders) *market.Market {
	return o.Bench.Market.At(orders.Open).Paying(o.Bench.Market.PaidCents(orders))
}

// Owed returns the vendor who, at some levels of shipping, is owed the most beyond what is paid; market.Nobodys where
// none is.
func Owed(m *market.Market, levels, paid []int) int {
	owed, most := market.Nobodys, 0.0
	for v, level := range levels {
		if l := m.Vendors[v].Levels; level > paid[v] && l[level]-l[paid[v]] > most {
			owed, most = v, l[level]-l[paid[v]]
		}
	}
	return owed
}

// joinOrders finds the least shipping that what every plan has adds. Whatever else a plan buys costs no less than it
// does without shipping, so that may be added to every bound.
func (o *Bounds) joinOrders() {
	if len(o.Bench.Market.Vendors) == 0 || len(o.Bench.Fixed) == 0 {
		return
	}
	o.full.joinedOwn = o.join(func(p *priced) *costs { return p.own })
	if o.full.apart != nil {
		o.full.joinedApart = o.join(func(p *priced) *costs { return p.apart })
	}
}

// mostJoined is how many orders are looked at; after that the least bound so far is used.
const mostJoined = 500

// join returns a lower bound on how much more what every plan has costs with shipping than without.
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

// ordered is orders with what they cost and the levels of shipping they would take.
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
