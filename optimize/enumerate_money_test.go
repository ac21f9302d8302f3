package optimize_test

import (
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/question"
)

// stall knows what parts cost: what is owned, what it sells for, and who asks how much from which quantity.
type stall struct {
	goods  map[string]*good
	order  []*good // as the catalogue has them
	levels [][]float64
	tax    float64
}

// good is one part on the market.
type good struct {
	id      string
	kgEach  float64 // a metre of what is bought by length
	length  bool    // cable, conduit, section
	have    float64
	kept    float64 // so many have to stand on the cart
	sells   bool
	worth   float64 // cents for one that is sold
	sellers []seller
	memo    map[lot]float64
}

// seller is one price of one vendor.
type seller struct {
	vendor      int // -1: the part's own price, which costs no shipping
	price, from float64
	shipping    float64
}

// lot is a number of pieces installed, at a choice of shipping.
type lot struct {
	installed float64
	level     int
}

// newStall reads a problem's prices.
func newStall(p question.Problem) *stall {
	m := &stall{goods: map[string]*good{}, tax: p.Scenario.Tax}
	for _, e := range p.Catalog.All() {
		g := &good{id: e.ID, kgEach: e.MassKg, length: e.Kind == catalog.KindCable || e.Kind == catalog.KindConduit || e.Kind == catalog.KindSection, memo: map[lot]float64{}}
		own := seller{vendor: -1, price: float64(e.Price)}
		switch e.Kind {
		case catalog.KindCable:
			k := cableOf(p.Catalog, e.ID)
			own.price, g.kgEach = k.CentsPerM, k.KgPerM
		case catalog.KindConduit:
			k := &p.Catalog.Conduits[slices.IndexFunc(p.Catalog.Conduits, func(k catalog.Conduit) bool { return k.ID == e.ID })]
			own.price, g.kgEach = k.CentsPerM, k.KgPerM
		case catalog.KindSection: // its mass counts with the frame
			k := &p.Catalog.Sections[slices.IndexFunc(p.Catalog.Sections, func(k catalog.Section) bool { return k.ID == e.ID })]
			own.price = k.CentsPerM
		}
		g.sellers = []seller{own}
		m.goods[e.ID] = g
		m.order = append(m.order, g)
	}
	ends := func(id string, price catalog.Cents) {
		end := &good{id: endOf(id), sellers: []seller{{vendor: -1, price: float64(price)}}, memo: map[lot]float64{}}
		m.goods[end.id] = end
		m.order = append(m.order, end)
	}
	for _, k := range p.Catalog.Cables {
		ends(k.ID, k.EndPrice)
	}
	for _, k := range p.Catalog.Conduits {
		ends(k.ID, k.EndPrice)
	}
	m.offers(p.Catalog.Offers)
	for _, h := range p.Scenario.Have {
		g := m.goods[h.PartID]
		if g.have += h.Count; g.length {
			m.goods[endOf(h.PartID)].have += float64(h.Ends)
		}
		if h.Keep {
			g.kept += h.Count
		}
		if h.Sell != nil {
			if g.sells, g.worth = true, float64(*h.Sell); g.length {
				g.worth = h.SellCentsPerM
			}
		}
	}
	return m
}

// endOf names the ends of a cable or a conduit, which are goods of their own.
func endOf(cable string) string { return cable + " end" }

// cableOf returns the cable of an id.
func cableOf(c *catalog.Catalog, id string) *catalog.Cable {
	return &c.Cables[slices.IndexFunc(c.Cables, func(k catalog.Cable) bool { return k.ID == id })]
}

// offers puts the vendors' prices in the place of the parts' own, and lists every choice of the most that
// is to be paid for shipping to each vendor: nothing, or what one of its offers asks.
func (m *stall) offers(offers []catalog.Offer) {
	var vendors []string
	var asked [][]float64
	for _, o := range offers {
		v := slices.Index(vendors, o.Vendor)
		if v < 0 {
			v, vendors, asked = len(vendors), append(vendors, o.Vendor), append(asked, []float64{0})
		}
		if ship := float64(o.Shipping); !slices.Contains(asked[v], ship) {
			asked[v] = append(asked[v], ship)
		}
		g := m.goods[o.PartID]
		if g.sellers[0].vendor < 0 {
			g.sellers = nil
		}
		s := seller{vendor: v, price: float64(o.Price), from: o.MinQty, shipping: float64(o.Shipping)}
		if g.length {
			s.price = o.CentsPerM
		}
		g.sellers = append(g.sellers, s)
	}
	m.levels = [][]float64{{}}
	for _, ships := range asked {
		var wider [][]float64
		for _, level := range m.levels {
			for _, ship := range ships {
				wider = append(wider, append(slices.Clone(level), ship))
			}
		}
		m.levels = wider
	}
}

// shipping returns what a choice of shipping costs, with tax.
func (m *stall) shipping(level int) float64 {
	cost := 0.0
	for _, ship := range m.levels[level] {
		cost += ship
	}
	return cost * (1 + m.tax)
}

// cost returns the least cents, with tax, for so many pieces installed, less what the rest sells for. All
// bought pieces come from one seller: whatever another one sold, the cheapest of those asked could sell too.
func (m *stall) cost(g *good, installed float64, level int) float64 {
	key := lot{installed, level}
	if c, ok := g.memo[key]; ok {
		return c
	}
	own := min(g.have, installed)
	best := m.withOwn(g, installed, own, level)
	if g.length {
		best = min(best, m.withOwn(g, installed, 0, level))
		for _, s := range g.sellers {
			if used := installed - s.from; used > 0 && used < own {
				best = min(best, m.withOwn(g, installed, used, level))
			}
		}
	} else {
		for used := 0.0; used < own; used++ {
			best = min(best, m.withOwn(g, installed, used, level))
		}
	}
	g.memo[key] = best
	return best
}

// withOwn is cost where so many of the installed pieces are owned ones.
func (m *stall) withOwn(g *good, installed, own float64, level int) float64 {
	cost := 0.0
	if installed > own {
		cost = math.Inf(1)
		for _, s := range g.sellers {
			if s.vendor < 0 || s.shipping <= m.levels[level][s.vendor] {
				cost = min(cost, s.price*max(installed-own, s.from)*(1+m.tax))
			}
		}
	}
	if g.sells {
		cost -= g.worth * (g.have - own)
	}
	return cost
}

// straight reports whether every piece of a part costs the same, so that its cost need not wait for the
// last piece to be counted.
func (g *good) straight() bool {
	if g.have > 0 {
		return false
	}
	for _, s := range g.sellers {
		if s.from > 1 || g.length && s.from > 0 {
			return false
		}
	}
	return true
}
