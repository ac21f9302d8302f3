// Package market knows what everything costs: articles with their own prices, owned pieces and offers, levels
// of shipping by vendor, and options, the priced ways to fill a slot.
package market

import (
	"math"
	"reflect"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Article is one thing that can be bought: a part, or the crimped end of a cable.
type Article struct {
	ID       string
	Kind     string  // as on the bill
	Cents    float64 // own price of one (of a metre of cable), where no vendor offers it
	kg       float64 // of one
	Whole    bool    // counted, not measured
	Have     float64
	Keep     float64 // the least quantity that has to be installed
	Sells    bool    // what is owned and not used is sold
	SellFor  float64 // cents for one
	Idle     float64 // owned besides Have, and not to be used
	idleFor  float64 // cents for one of Idle
	Vendor   string  // who sells it at its own price, where the catalogue says
	Offers   []catalog.Offer
	places   []place        // of the offers, where orders are still to be decided
	Buyable  float64        // how many can be bought at all; +Inf as a rule
	From     *catalog.Offer // where it is bought at one price; nil: at its own
	Position int            // in the market
	// For all but batteries, inverters and solar modules: the least that an option that uses any uses, and the most that
	// any plan can need. Before that is known: 1 for what is counted and 0 for what is measured, and +Inf.
	Least, Most float64
}

// Special reports whether the quantity in the whole plan matters: some are owned or kept, there are offers, or only so
// many can be bought. Else each costs its own price.
func (a *Article) Special() bool {
	return a.Have > 0 || a.Keep > 0 || len(a.Offers) > 0 || !math.IsInf(a.Buyable, 1)
}

// hair guards against the rounding of sums of the same numbers: metres, pieces, kilograms or cents.
const hair = 1e-9

// Available reports whether that many can be had at all.
func (a *Article) Available(quantity float64) bool {
	return quantity <= a.Have+a.Buyable+hair
}

// Sold returns how much of what is owned is sold if a quantity is used, and for how many cents each.
func (a *Article) Sold(used float64) (quantity, cents float64) {
	switch {
	case !a.Sells:
		return 0, 0
	case a.idleFor > 0:
		return a.Idle, a.idleFor
	}
	return a.Have + a.Idle - used, a.SellFor
}

// Unit returns the bill's unit.
func (a *Article) Unit() string {
	if a.Whole {
		return "each"
	}
	return "m"
}

// OfferCents returns the price of one at an offer, in cents.
func (a *Article) OfferCents(o catalog.Offer) float64 {
	if a.Whole {
		return float64(o.Price)
	}
	return o.CentsPerM
}

// boughtCents returns the least price in cents of buying at least quantity, without tax and shipping, and the offer it
// is bought at, Nobodys where there is none. Buying more than needed may be cheaper because of a quantity break;
// splitting between offers never is, since all can be bought at the cheaper of the two.
func (a *Article) boughtCents(quantity float64, open Open) (cents float64, offer int) {
	if quantity <= 0 {
		return 0, Nobodys
	}
	if len(a.Offers) == 0 {
		if quantity > a.Buyable+hair {
			return math.Inf(1), Nobodys
		}
		return quantity * a.Cents, Nobodys
	}
	least, offer := math.Inf(1), Nobodys
	for i := range a.Offers {
		if !open.admits(a, i) {
			continue
		}
		o := &a.Offers[i]
		if cents := a.OfferCents(*o) * math.Max(quantity, o.MinQty); cents < least {
			least, offer = cents, i
		}
	}
	return least, offer
}

// LeastCents returns the least that having quantity of the article costs in cents: bought with tax, or owned
// and then not sold. Shipping is left out, so it is a lower bound.
func (a *Article) LeastCents(quantity, tax float64) float64 {
	cents, _ := a.LeastAt(quantity, tax, nil)
	return cents
}

// LeastAt is LeastCents at the offers that are open, with the offer that is taken.
func (a *Article) LeastAt(quantity, tax float64, open Open) (cents float64, offer int) {
	if !a.Special() {
		return (1 + tax) * quantity * a.Cents, Nobodys
	}
	keep := math.Min(a.Have, quantity)
	least, offer := math.Inf(1), Nobodys
	try := func(used float64) {
		if used < 0 || used > keep {
			return
		}
		bought, at := a.boughtCents(quantity-used, open)
		if cents := used*a.SellFor + (1+tax)*bought; cents < least {
			least, offer = cents, at
		}
	}
	// The cost is piecewise linear in how many owned ones are used, with a kink at each quantity break.
	try(0)
	if keep > 0 {
		try(keep)
		for _, o := range a.Offers {
			try(quantity - o.MinQty)
			try(math.Floor(quantity - o.MinQty))
		}
	}
	return least, offer
}

// LinearCents returns a lower bound in cents on what quantity of the article costs: one price for each owned piece that
// is used, and one for each bought.
func (a *Article) LinearCents(quantity, tax float64) float64 {
	bought := a.BoughtFloor(tax)
	if quantity <= a.Have {
		return quantity * math.Min(a.SellFor, bought)
	}
	return a.Have*math.Min(a.SellFor, bought) + (quantity-a.Have)*bought
}

// BoughtFloor returns a price in cents below which no unit can be bought, tax included; +Inf where none can.
func (a *Article) BoughtFloor(tax float64) float64 {
	if len(a.Offers) == 0 {
		if a.Buyable == 0 {
			return math.Inf(1)
		}
		return (1 + tax) * a.Cents
	}
	floor := math.Inf(1)
	for _, o := range a.Offers {
		floor = math.Min(floor, (1+tax)*a.OfferCents(o))
	}
	return floor
}

// FloorCents returns a price in cents below which no unit of the article can be had, tax included.
func (a *Article) FloorCents(tax float64) float64 {
	each, _, _ := a.FloorAt(tax, nil)
	return each
}

// Market is everything that can be bought, in the order of a bill.
type Market struct {
	Articles []Article
	byID     map[string]int // parts only
	endOf    map[string]int // cable id -> its crimped end
	Tax      float64
	// credit is what selling every owned part that is for sale would bring, in cents. Using one of them
	// instead is then a cost like any other.
	Credit float64
	Must   int // position of an article every plan has to have; -1: none

	Vendors []vendor // who ship for money
	// Shipping is what the vendors are paid for shipping, in cents, without tax.
	Shipping      float64
	ShippingFixed bool // the search has decided the orders; the program has none to decide
	levels        Open // where offers are left out: up to which they are open
	priced        *pricedLists
	codes         *codes
	open          *openMarkets
}

// New lists the catalogue's parts with what is owned and offered of each.
func New(s *scenarios.Scenario, c *catalog.Catalog) *Market {
	m := &Market{codes: &codes{known: map[*Option]coded{}, priced: map[admittedKey][]Option{}}, open: &openMarkets{known: map[string]*Market{}}, byID: map[string]int{}, endOf: map[string]int{}, Tax: s.Tax, Must: -1}
	add := func(a Article) int {
		a.Position = len(m.Articles)
		a.Buyable, a.Most = math.Inf(1), math.Inf(1)
		if a.Whole {
			a.Least = 1
		}
		m.Articles = append(m.Articles, a)
		return a.Position
	}
	lengths := byLength(c)
	for _, e := range c.All() {
		a := Article{ID: e.ID, Kind: string(e.Kind), Cents: float64(e.Price), kg: e.MassKg, Whole: true, Vendor: e.Vendor}
		stock, measured := lengths[e.ID]
		if measured {
			a.Cents, a.kg, a.Whole = stock.centsPerM, stock.kgPerM, false
		}
		m.byID[e.ID] = add(a)
		if stock.endKind != "" {
			m.endOf[e.ID] = add(Article{ID: e.ID, Kind: stock.endKind, Cents: float64(stock.endPrice), Whole: true, Vendor: e.Vendor})
		}
	}
	for _, o := range c.Offers {
		if i, ok := m.byID[o.PartID]; ok {
			m.Articles[i].Offers = append(m.Articles[i].Offers, o)
		}
	}
	for _, h := range s.Have {
		i, ok := m.byID[h.PartID]
		if !ok {
			continue // Check has reported it
		}
		a := &m.Articles[i]
		a.Have += h.Count
		if h.Keep {
			a.Keep += h.Count
		}
		if h.Ends > 0 {
			m.End(h.PartID).Have += float64(h.Ends)
		}
		if h.Sell != nil {
			a.Sells = true
			a.SellFor = float64(*h.Sell)
			if !a.Whole {
				a.SellFor = h.SellCentsPerM
			}
		}
	}
	m.listVendors()
	for i := range m.Articles {
		m.Credit += m.Articles[i].Have * m.Articles[i].SellFor
	}
	return m
}

// Same reports whether two markets have the same articles at the same prices: then what one has worked out holds for
// both.
func (m *Market) Same(n *Market) bool {
	return m.Tax == n.Tax && m.Credit == n.Credit && m.Must == n.Must && m.Shipping == n.Shipping &&
		m.ShippingFixed == n.ShippingFixed && reflect.DeepEqual(m.Vendors, n.Vendors) && reflect.DeepEqual(m.Articles, n.Articles)
}

// SetIdle takes a quantity of an owned part out of use. That is sold where the part is for sale; the rest is not sold.
func (m *Market) SetIdle(id string, quantity float64) {
	a := m.Part(id)
	a.Have -= quantity
	m.Credit -= a.Have * a.SellFor
	a.Idle, a.idleFor, a.SellFor = quantity, a.SellFor, 0
}

// Part returns the article of a part.
func (m *Market) Part(id string) *Article { return &m.Articles[m.byID[id]] }

// End returns the article of a cable's crimped end.
func (m *Market) End(cableID string) *Article { return &m.Articles[m.endOf[cableID]] }

// stock is what is bought by length.
type stock struct {
	centsPerM, kgPerM float64
	endKind           string // "" where its ends have no price
	endPrice          catalog.Cents
}

// byLength returns what is bought by length: cables and conduits with their ends, and sections, whose mass counts as
// the frame's.
func byLength(c *catalog.Catalog) map[string]stock {
	lengths := map[string]stock{}
	for i := range c.Cables {
		x := &c.Cables[i]
		lengths[x.ID] = stock{x.CentsPerM, x.KgPerM, plan.KindCableEnd, x.EndPrice}
	}
	for i := range c.Conduits {
		x := &c.Conduits[i]
		lengths[x.ID] = stock{x.CentsPerM, x.KgPerM, plan.KindConduitEnd, x.EndPrice}
	}
	for i := range c.Sections {
		lengths[c.Sections[i].ID] = stock{centsPerM: c.Sections[i].CentsPerM}
	}
	return lengths
}
