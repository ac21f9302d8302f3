package optimize

import (
	"math"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// kindCableEnd is the bill's kind for crimped cable ends, which have a price but no part of their own.
const kindCableEnd = "cable-end"

// article is one thing that can be bought: a part, or the crimped end of a cable.
type article struct {
	id       string
	kind     string  // as on the bill
	cents    float64 // own price of one (of a metre of cable), where no vendor offers it
	kg       float64 // of one
	whole    bool    // counted, not measured
	have     float64
	sells    bool    // what is not used of have is sold
	sellFor  float64 // cents for one
	vendor   string  // who sells it at its own price, where the catalogue says
	offers   []catalog.Offer
	buyable  float64        // how many can be bought at all; +Inf as a rule
	from     *catalog.Offer // where it is bought at one price; nil: at its own
	position int            // in the market
}

// special reports whether the price of one more depends on how many there are already.
func (a *article) special() bool {
	return a.have > 0 || len(a.offers) > 0 || !math.IsInf(a.buyable, 1)
}

// available reports whether there are so many to be had at all.
func (a *article) available(quantity float64) bool {
	const hair = 1e-9 // metres, against the rounding of sums
	return quantity <= a.have+a.buyable+hair
}

// unit returns the bill's unit.
func (a *article) unit() string {
	if a.whole {
		return "each"
	}
	return "m"
}

// offerCents returns the price of one at an offer, in cents.
func (a *article) offerCents(o catalog.Offer) float64 {
	if a.whole {
		return float64(o.Price)
	}
	return o.CentsPerM
}

// boughtCents returns the least price in cents of buying at least quantity, tax and shipping left aside.
// Buying more than needed is cheaper where a quantity break says so; splitting never is, since all may
// be bought where one is cheapest.
func (a *article) boughtCents(quantity float64) float64 {
	if quantity <= 0 {
		return 0
	}
	if len(a.offers) == 0 {
		if quantity > a.buyable {
			return math.Inf(1)
		}
		return quantity * a.cents
	}
	least := math.Inf(1)
	for _, o := range a.offers {
		least = math.Min(least, a.offerCents(o)*math.Max(quantity, o.MinQty))
	}
	return least
}

// leastCents returns what having quantity of the article costs at the least: bought with tax, or owned
// and then not sold. Shipping is left aside, so it bounds the true cost from below.
func (a *article) leastCents(quantity, tax float64) float64 {
	if !a.special() {
		return (1 + tax) * quantity * a.cents
	}
	keep := math.Min(a.have, quantity)
	least := math.Inf(1)
	try := func(used float64) {
		if used < 0 || used > keep {
			return
		}
		least = math.Min(least, used*a.sellFor+(1+tax)*a.boughtCents(quantity-used))
	}
	// The cost is piecewise linear in how many owned ones are used, with a kink at each quantity break.
	try(0)
	try(keep)
	for _, o := range a.offers {
		try(quantity - o.MinQty)
		try(math.Floor(quantity - o.MinQty))
	}
	return least
}

// linearCents bounds from below what quantity of the article costs, by a price for each owned piece that is
// used and one for each bought: no piece more costs less than that.
func (a *article) linearCents(quantity, tax float64) float64 {
	bought := a.boughtFloor(tax)
	if quantity <= a.have {
		return quantity * math.Min(a.sellFor, bought)
	}
	return a.have*math.Min(a.sellFor, bought) + (quantity-a.have)*bought
}

// boughtFloor returns a price in cents below which no unit can be bought, tax included; +Inf where none can.
func (a *article) boughtFloor(tax float64) float64 {
	if len(a.offers) == 0 {
		if a.buyable == 0 {
			return math.Inf(1)
		}
		return (1 + tax) * a.cents
	}
	floor := math.Inf(1)
	for _, o := range a.offers {
		floor = math.Min(floor, (1+tax)*a.offerCents(o))
	}
	return floor
}

// floorCents returns a price in cents below which no unit of the article can be had, tax included.
func (a *article) floorCents(tax float64) float64 {
	floor := a.boughtFloor(tax)
	if a.have > 0 {
		floor = math.Min(floor, a.sellFor)
	}
	return floor
}

// market is everything that can be bought, in the order of a bill.
type market struct {
	articles []article
	byID     map[string]int // parts only
	endOf    map[string]int // cable id -> its crimped end
	tax      float64
	// credit is what selling every owned part that is for sale would bring, in cents. Using one of them
	// instead is then a cost like any other.
	credit float64
	must   int // an article every plan has to have; -1: none

	vendors []vendor // who ship for money
	// shipping is what the vendors whose level is decided take for it, in cents.
	shipping float64
	settled  bool // no order is left to be decided by the program
}

// newMarket lists the catalogue's parts with what is owned and offered of each.
func newMarket(s *scenarios.Scenario, c *catalog.Catalog) *market {
	m := &market{byID: map[string]int{}, endOf: map[string]int{}, tax: s.Tax, must: -1}
	add := func(a article) int {
		a.position = len(m.articles)
		a.buyable = math.Inf(1)
		m.articles = append(m.articles, a)
		return a.position
	}
	perM := map[string]*catalog.Cable{}
	for i := range c.Cables {
		perM[c.Cables[i].ID] = &c.Cables[i]
	}
	for _, e := range c.All() {
		a := article{id: e.ID, kind: string(e.Kind), cents: float64(e.Price), kg: e.MassKg, whole: true, vendor: e.Vendor}
		cable := perM[e.ID]
		if cable != nil {
			a.cents, a.kg, a.whole = cable.CentsPerM, cable.KgPerM, false
		}
		m.byID[e.ID] = add(a)
		if cable != nil {
			m.endOf[e.ID] = add(article{id: e.ID, kind: kindCableEnd, cents: float64(cable.EndPrice), whole: true, vendor: e.Vendor})
		}
	}
	for _, o := range c.Offers {
		if i, ok := m.byID[o.PartID]; ok {
			m.articles[i].offers = append(m.articles[i].offers, o)
		}
	}
	for _, h := range s.Have {
		i, ok := m.byID[h.PartID]
		if !ok {
			continue // Check has reported it
		}
		a := &m.articles[i]
		a.have += h.Count
		if h.Ends > 0 {
			m.end(h.PartID).have += float64(h.Ends)
		}
		if h.Sell != nil {
			a.sells = true
			a.sellFor = float64(*h.Sell)
			if !a.whole {
				a.sellFor = h.SellCentsPerM
			}
		}
	}
	m.listVendors()
	for i := range m.articles {
		m.credit += m.articles[i].have * m.articles[i].sellFor
	}
	return m
}

// part returns the article of a part.
func (m *market) part(id string) *article { return &m.articles[m.byID[id]] }

// end returns the article of a cable's crimped end.
func (m *market) end(cableID string) *article { return &m.articles[m.endOf[cableID]] }
