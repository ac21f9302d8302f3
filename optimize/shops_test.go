package optimize_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/question"
)

// Shopped returns a demo with so many shops that make so many offers each, instead of those that come with the
// program. A shop ships in three levels, parcels for nothing now and then, and gives a quantity break for a third of
// what it has. The shops and their prices are invented. The same numbers give the same offers for ever.
func Shopped(t testing.TB, name string, shops, each int, seed uint64) question.Problem {
	t.Helper()
	const stream = 0x5407 // any fixed number: a second half of the generator's seed
	g := &generator{Rand: rand.New(rand.NewPCG(seed, stream))}
	p := demo(t, name)
	p.Catalog.Offers = nil
	all := slices.DeleteFunc(p.Catalog.All(), func(e catalog.Entry) bool { return e.Kind == catalog.KindSection })
	for i := range shops {
		s := shop{
			name: fmt.Sprintf("shop %c", 'A'+i), level: g.between(0.88, 1.02),
			parcel: catalog.CentsFrom(math.Round(g.between(4, 12))), crate: catalog.CentsFrom(math.Round(g.between(15, 40))),
			pallet: catalog.CentsFrom(math.Round(g.between(60, 160))),
		}
		if g.IntN(4) == 0 {
			s.parcel = 0
		}
		var offers []catalog.Offer
		for _, at := range g.Perm(len(all)) {
			if offers = append(offers, g.offers(p.Catalog, &all[at], &s)...); len(offers) >= each {
				break
			}
		}
		p.Catalog.Offers = append(p.Catalog.Offers, offers[:min(each, len(offers))]...)
	}
	p.Scenario.Name = fmt.Sprintf("%s, %d shops with %d offers each", name, shops, each)
	return p
}

// shop is one who sells: how dear, and what shipping costs by the size of the parcel.
type shop struct {
	name                  string
	level                 float64
	parcel, crate, pallet catalog.Cents
}

// offers draws what a shop asks for a part: for one, and now and then for more.
func (g *generator) offers(c *catalog.Catalog, e *catalog.Entry, s *shop) []catalog.Offer {
	const parcelKg, crateKg = 1, 20 // at the most
	o := catalog.Offer{PartID: e.ID, Vendor: s.name, MinQty: 1, Shipping: s.parcel}
	switch {
	case e.MassKg > crateKg:
		o.Shipping = s.pallet
	case e.MassKg > parcelKg || e.Kind.ByLength():
		o.Shipping = s.crate
	}
	part := s.level * g.between(0.9, 1.1)
	if e.Kind.ByLength() {
		o.CentsPerM = math.Round(part * float64(e.Price))
		for i := range c.Cables {
			if c.Cables[i].ID == e.ID {
				o.CentsPerM = math.Round(part * c.Cables[i].CentsPerM)
			}
		}
		for i := range c.Conduits {
			if c.Conduits[i].ID == e.ID {
				o.CentsPerM = math.Round(part * c.Conduits[i].CentsPerM)
			}
		}
	} else {
		o.Price = catalog.Cents(math.Round(part * float64(e.Price)))
	}
	list := []catalog.Offer{o}
	if g.IntN(3) == 0 {
		o.MinQty = float64(2 + g.IntN(4))
		if e.Kind.ByLength() {
			o.MinQty *= 3
		}
		less := g.between(0.85, 0.97)
		o.Price, o.CentsPerM = catalog.Cents(math.Round(less*float64(o.Price))), math.Round(less*o.CentsPerM)
		list = append(list, o)
	}
	return list
}
