package optimize

import (
	"math"

	"cartwright/optimize/plan"
)

// account writes the bill of a choice into a plan: its lines in market order, and the sums.
func (b *bench) account(c *choice, p *plan.Plan) {
	quantities := b.quantities(c)
	for i := range c.market.articles {
		lines := b.lines(&c.market.articles[i], quantities[i], c.acquired(i, quantities[i]))
		for _, l := range lines {
			p.Spend += l.Line
			p.Credit += l.Credit
		}
		p.Bill = append(p.Bill, lines...)
	}
	for _, s := range b.shipping(c) { // a sum of whole cents: its order does not show
		p.Shipping += s
	}
	p.Tax = plan.Money(math.Round(b.s.Tax * float64(p.Spend+p.Shipping)))
	p.Cost = p.Spend + p.Shipping + p.Tax - p.Credit
}

// acquired returns how a quantity of an article is come by: all of it is bought unless the choice says more.
func (c *choice) acquired(article int, quantity float64) acquired {
	if got, special := c.bought[article]; special {
		return got
	}
	return acquired{buy: []float64{quantity}}
}

// shipping returns what each vendor takes for shipping what a choice orders there.
func (b *bench) shipping(c *choice) map[string]plan.Money {
	quantities := b.quantities(c)
	shipping := map[string]plan.Money{}
	for i := range c.market.articles {
		a := &c.market.articles[i]
		for j, n := range c.acquired(i, quantities[i]).buy {
			o := a.from
			if len(a.offers) > 0 {
				o = &a.offers[j]
			}
			if n > 0 && o != nil {
				shipping[o.Vendor] = max(shipping[o.Vendor], plan.Money(o.Shipping))
			}
		}
	}
	return shipping
}

// lines returns the bill's lines of one article: one for each offer it is bought at, or a single one.
func (b *bench) lines(a *article, quantity float64, got acquired) []plan.Line {
	blank := plan.Line{Part: a.id, Kind: a.kind, Unit: a.unit(), UnitPrice: a.cents / 100, Vendor: a.vendor}
	var lines []plan.Line
	for j, n := range got.buy {
		if n <= 0 {
			continue
		}
		l := blank
		cents := a.cents
		if len(a.offers) > 0 {
			cents = a.offerCents(a.offers[j])
			l.Vendor, l.UnitPrice = a.offers[j].Vendor, cents/100
		}
		l.Quantity, l.Buy = n, n
		l.Line = plan.Money(math.Round(n * cents))
		lines = append(lines, l)
	}
	sell := 0.0
	if a.sells {
		sell = a.have - got.used
	}
	if len(lines) == 0 {
		if quantity <= 0 && sell <= 0 {
			return nil
		}
		blank.Vendor = ""
		lines = append(lines, blank)
	}
	lines[0].Have = got.used
	lines[0].Quantity += got.used
	installed := 0.0
	for i := range lines {
		lines[i].Quantity = math.Min(lines[i].Quantity, quantity-installed) // more was bought than is needed
		installed += lines[i].Quantity
	}
	if sell > 0 {
		lines[0].Sell = sell
		lines[0].Credit = plan.Money(math.Round(sell * a.sellFor))
	}
	return lines
}
