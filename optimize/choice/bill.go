package choice

import (
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
)

// Account writes the bill of a choice into a plan: its lines in market order, and the sums.
func Account(b *bench.Bench, c *Choice, p *plan.Plan) {
	quantities := Quantities(b, c)
	for _, i := range c.touched(b, quantities) {
		lines := lines(b, &c.Market.Articles[i], quantities[i], c.acquired(i, quantities[i]))
		for _, l := range lines {
			p.Spend += l.Line
			p.Credit += l.Credit
		}
		p.Bill = append(p.Bill, lines...)
	}
	p.ShippingBy = Shipping(b, c)
	for _, s := range p.ShippingBy { // a sum of whole cents: order does not matter
		p.Shipping += s
	}
	p.Tax = catalog.RoundCents(b.Scenario.Tax * float64(p.Spend+p.Shipping))
	p.Cost = p.Spend + p.Shipping + p.Tax - p.Credit
}

// touched returns the articles that a choice uses, buys or sells, in market order: a few dozen of thousands.
func (c *Choice) touched(b *bench.Bench, quantities []float64) []int {
	list := slices.Clone(b.Owned)
	for i, n := range quantities {
		if n != 0 {
			list = append(list, i)
		}
	}
	for i := range c.Bought {
		list = append(list, i)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// acquired returns where a quantity of an article comes from: all of it is bought, unless the choice says otherwise.
func (c *Choice) acquired(article int, quantity float64) Acquired {
	if got, special := c.Bought[article]; special {
		return got
	}
	return Acquired{Buy: []float64{quantity}}
}

// Shipping returns what each vendor charges for shipping what a choice orders there.
func Shipping(b *bench.Bench, c *Choice) map[string]plan.Money {
	quantities := Quantities(b, c)
	shipping := map[string]plan.Money{}
	for _, i := range c.touched(b, quantities) {
		a := &c.Market.Articles[i]
		for j, n := range c.acquired(i, quantities[i]).Buy {
			o := a.From
			if len(a.Offers) > 0 {
				o = &a.Offers[j]
			}
			if n > 0 && o != nil {
				shipping[o.Vendor] = max(shipping[o.Vendor], plan.Money(o.Shipping))
			}
		}
	}
	return shipping
}

// lines returns the bill's lines of one article: one for each offer it is bought at, or a single one.
func lines(b *bench.Bench, a *market.Article, quantity float64, got Acquired) []plan.Line {
	blank := plan.Line{Part: a.ID, Kind: a.Kind, Unit: a.Unit(), UnitPrice: a.Cents / 100, Vendor: a.Vendor}
	var lines []plan.Line
	for j, n := range got.Buy {
		if n <= 0 {
			continue
		}
		l := blank
		cents := a.Cents
		if len(a.Offers) > 0 {
			cents = a.OfferCents(a.Offers[j])
			l.Vendor, l.UnitPrice = a.Offers[j].Vendor, cents/100
		}
		l.Quantity, l.Buy = n, n
		l.Line = catalog.RoundCents(n * cents)
		lines = append(lines, l)
	}
	sell, each := a.Sold(got.Used)
	if len(lines) == 0 {
		if quantity <= 0 && sell <= 0 {
			return nil
		}
		// None of it is bought, so the price shown is the catalogue's own.
		blank.Vendor, blank.UnitPrice = "", b.Market.Articles[a.Position].Cents/100
		lines = append(lines, blank)
	}
	lines[0].Have = got.Used
	lines[0].Quantity += got.Used
	installed := 0.0
	for i := range lines {
		lines[i].Quantity = math.Min(lines[i].Quantity, quantity-installed) // more was bought than is needed
		installed += lines[i].Quantity
	}
	if sell > 0 {
		lines[0].Sell = sell
		lines[0].Credit = catalog.RoundCents(sell * each)
	}
	return lines
}

// OverBudget reports whether the bill of a choice is above the budget and the money in hand from earlier sales.
func OverBudget(b *bench.Bench, c *Choice) bool {
	if b.Scenario.Limits.Budget == math.MaxInt64 {
		return false
	}
	return Cost(b, c) > plan.Money(b.Scenario.Limits.Budget+b.Scenario.Sold)
}

// Cost returns the total of the finished bill of a choice.
func Cost(b *bench.Bench, c *Choice) plan.Money {
	var p plan.Plan
	Account(b, c, &p)
	return p.Cost
}
