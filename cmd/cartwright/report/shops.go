package report

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/plan"
)

// shop is what to buy from one vendor.
type shop struct {
	Vendor string
	Items  []item
	Sum    string
}

// item is one line of a shopping list.
type item struct {
	Quantity, Part, Name, Comes, Price, Sum string
	AsOf                                    string // date of the price
	Old                                     bool   // the price is old
}

// noVendor is where parts are bought that state no vendor.
const noVendor = "any vendor"

// shops lists what to buy by vendor, in order of their names; parts of no vendor come last.
func (r *Report) shops(p *plan.Plan, u told.Units) []shop {
	var list []shop
	sums := map[string]plan.Money{}
	for _, l := range p.Bill {
		if l.Buy <= 0 {
			continue
		}
		vendor := cmp.Or(l.Vendor, r.part(l.Part).Vendor, noVendor)
		i := slices.IndexFunc(list, func(s shop) bool { return s.Vendor == vendor })
		if i < 0 {
			list = append(list, shop{Vendor: vendor})
			i = len(list) - 1
		}
		list[i].Items = append(list[i].Items, r.item(l, u))
		sums[vendor] += l.Line
	}
	for i := range list {
		list[i].Sum = sums[list[i].Vendor].String()
	}
	slices.SortStableFunc(list, func(a, b shop) int {
		if (a.Vendor == noVendor) != (b.Vendor == noVendor) {
			if a.Vendor == noVendor {
				return 1
			}
			return -1
		}
		return cmp.Compare(a.Vendor, b.Vendor)
	})
	return list
}

// part returns what the catalogue says of a part; the zero part where it is not there.
func (r *Report) part(id string) catalog.Part {
	if e, ok := r.Catalog.Find(id); ok {
		return *e.Part
	}
	return catalog.Part{ID: id}
}

// item words a line of the bill.
func (r *Report) item(l plan.Line, u told.Units) item {
	part := r.part(l.Part)
	x := item{Quantity: told.Number(l.Buy, 3), Part: l.Part, Name: part.Name, Price: told.Fixed(l.UnitPrice, 2), Sum: l.Line.String()}
	switch l.Kind {
	case string(catalog.KindCable), string(catalog.KindConduit), string(catalog.KindSection):
		x.Quantity, x.Comes = u.Cut(l.Buy), "by length"
		if l.Kind == string(catalog.KindCable) {
			x.Comes = "off the reel"
		}
		x.Price = told.Fixed(u.PerLength(l.UnitPrice), 2) + " a " + u.LengthUnit()
	case plan.KindCableEnd:
		x.Name, x.Comes = "crimped ends for "+l.Part, "each with its cable"
	case plan.KindConduitEnd:
		x.Name, x.Comes = "fittings for the ends of "+l.Part, "each with its conduit"
	case string(catalog.KindBusbar):
		x.Comes = "a pair, + and -"
	case string(catalog.KindCasters):
		if i := slices.IndexFunc(r.Catalog.Casters, func(c catalog.Casters) bool { return c.ID == l.Part }); i >= 0 {
			x.Comes = fmt.Sprintf("sets of %d", r.Catalog.Casters[i].SetOf)
		}
	}
	asOf, old := r.dated(l)
	if !asOf.IsZero() {
		x.AsOf, x.Old = asOf.Format(time.DateOnly), old
	}
	return x
}

// dated returns the date of the price that a line is bought at, and whether it is old: the date of the offer used,
// else that of the part.
func (r *Report) dated(l plan.Line) (asOf time.Time, old bool) {
	part := r.part(l.Part)
	asOf, old = part.AsOf, part.Stale(r.AsOf)
	reached := -1.0
	for _, o := range r.Catalog.Offers {
		if o.PartID == l.Part && o.Vendor == l.Vendor && o.MinQty <= l.Buy && o.MinQty > reached {
			asOf, old, reached = o.AsOf, o.Stale(r.AsOf), o.MinQty
		}
	}
	return asOf, old
}

// total is a line under the shopping lists.
type total struct {
	Name, Sum string
	Last      bool
}

// totals adds the bill up.
func totals(p *plan.Plan) []total {
	list := []total{{Name: "all parts", Sum: p.Spend.String()}}
	if p.Shipping != 0 {
		list = append(list, total{Name: "shipping", Sum: p.Shipping.String()})
	}
	if p.Tax != 0 {
		list = append(list, total{Name: "tax", Sum: p.Tax.String()})
	}
	if p.Credit != 0 {
		list = append(list, total{Name: "less what is sold", Sum: (-p.Credit).String()})
	}
	return append(list, total{Name: "cost", Sum: p.Cost.String(), Last: true})
}

// owned is what becomes of something that is owned.
type owned struct{ Part, Name, Use, Sell, Price string }

// owned lists what is used or sold of what is owned.
func (r *Report) owned(p *plan.Plan, u told.Units) []owned {
	var list []owned
	for _, l := range p.Bill {
		if l.Have <= 0 && l.Sell <= 0 {
			continue
		}
		amount := func(x float64) string {
			switch {
			case x <= 0:
				return ""
			case catalog.Kind(l.Kind).ByLength():
				return u.Cut(x)
			}
			return told.Number(x, 3)
		}
		x := owned{Part: l.Part, Name: r.part(l.Part).Name, Use: amount(l.Have), Sell: amount(l.Sell)}
		if l.Credit > 0 {
			x.Price = l.Credit.String()
		}
		list = append(list, x)
	}
	return list
}
