package model

import (
	"cartwright/catalog"
	"math"
	"sort"

	"cartwright/optimize/market"
	"cartwright/optimize/milp"
)

// purchase has the variables that say where a special article comes from.
type purchase struct {
	used   milp.Var   // of what is owned
	buy    []milp.Var // by offer; a single one where there are no offers
	chosen []milp.Var // by offer: 1 if any is bought there; nil without offers
	most   float64    // the most that can be needed
}

// need is the quantity of an article that each unit of a variable needs.
type need struct {
	quantity float64
	v        milp.Var
}

// specials returns the special articles that something in the space can use, in market order, and for each the most
// that can be needed.
func (p *program) specials() (articles []int, most map[int]float64) {
	most = p.mostUsed()
	for article := range most {
		articles = append(articles, article)
	}
	sort.Ints(articles)
	return articles, most
}

// orderParts makes the variables of how much of every special article is bought, and where. They come before
// the variables of the slots: which vendor gets an order decides more than what fills a single slot.
func (p *program) orderParts() {
	articles, most := p.specials()
	p.special = articles
	for _, article := range articles {
		a := &p.market.Articles[article]
		var got purchase
		got.most = most[article]
		if a.Whole {
			got.most = math.Ceil(got.most)
		}
		for i := range a.Offers {
			got.chosen = append(got.chosen, p.Model.Binary("order "+a.Kind+" "+a.ID+" offer "+number(i)))
		}
		p.bought[article] = got
	}
	for _, article := range articles {
		a := &p.market.Articles[article]
		amount := p.Model.Continuous
		if a.Whole {
			amount = p.Model.Integer
		}
		got := p.bought[article]
		name := a.Kind + " " + a.ID
		got.used = amount("use owned "+name, 0, math.Min(a.Have, got.most))
		if len(a.Offers) == 0 {
			got.buy = append(got.buy, amount("buy "+name, 0, math.Min(got.most, a.Buyable)))
		}
		for i := range a.Offers {
			got.buy = append(got.buy, amount("buy "+name+" offer "+number(i), 0, got.atMost(a, i)))
		}
		p.bought[article] = got
	}
}

// atMost returns the most that it makes sense to buy at an offer.
func (got *purchase) atMost(a *market.Article, offer int) float64 {
	return math.Max(got.most, math.Ceil(a.Offers[offer].MinQty))
}

// payParts adds up the cost. Articles with one fixed price cost that wherever they are installed. Of special ones, what
// is owned is used or sold, and the rest is bought.
func (p *program) payParts() {
	m := p.market
	needs := map[int]*milp.Expr{}
	var cents milp.Expr // with tax
	installed := func(article int, n need) {
		a := &m.Articles[article]
		if !a.Special() {
			cents.Add((1+m.Tax)*n.quantity*a.Cents, n.v)
			return
		}
		if needs[article] == nil {
			needs[article] = &milp.Expr{}
		}
		needs[article].Add(n.quantity, n.v)
	}
	for i, v := range p.strings {
		installed(m.Part(p.stack(i).Battery.ID).Position, need{float64(p.stack(i).Series), v})
	}
	for i, v := range p.supply {
		s := &p.Bench.Supplies[p.Space.supplies[i]]
		installed(m.Part(s.Inverter.ID).Position, need{float64(s.Units), v})
		if x := s.Array; x != nil {
			installed(m.Part(x.Module.ID).Position, need{float64(x.Modules()), v})
		}
	}
	for i := range p.slots {
		v := &p.slots[i]
		for j, x := range v.filling {
			for _, u := range v.slot.Options[j].Uses {
				installed(u.Article, need{u.Quantity, x})
			}
		}
	}
	p.keep(needs)
	orders := orders{p: p, cents: &cents, lines: map[string][]orderLine{}}
	for _, article := range p.special {
		p.pay(&m.Articles[article], p.bought[article], *needs[article], &cents)
		for i, o := range m.Articles[article].Offers {
			if m.ShippingFixed {
				continue // shipping is in m.Shipping
			}
			orders.add(o.Vendor, float64(o.Shipping), p.bought[article].chosen[i])
		}
	}
	orders.ship()

	cents.Add((1+m.Tax)*m.Shipping-m.Credit, p.one)
	p.Cost.AddExpr(0.01, cents)
	s := p.Bench.Scenario
	if s.Limits.Budget != math.MaxInt64 {
		most := (s.Limits.Budget + s.Sold).Units()
		if !p.Space.strict {
			most += p.Bench.RoundingCents / 100
		}
		p.Model.Row("budget", p.Cost, milp.AtMost, most)
	}
}

// pay writes the rows that meet the need for a special article, and adds what it costs.
func (p *program) pay(a *market.Article, got purchase, need milp.Expr, cents *milp.Expr) {
	m := p.market
	name := a.Kind + " " + a.ID
	cents.Add(a.SellFor, got.used) // what is used is not sold
	met := milp.Sum(milp.T(1, got.used))
	if len(a.Offers) == 0 {
		met.Add(1, got.buy[0])
		cents.Add((1+m.Tax)*a.Cents, got.buy[0])
	}
	for i, o := range a.Offers {
		v, z := got.buy[i], got.chosen[i]
		p.Model.Row("bought only if ordered "+name+" offer "+number(i),
			milp.Sum(milp.T(1, v), milp.T(-got.atMost(a, i), z)), milp.AtMost, 0)
		p.Model.Row("least quantity "+name+" offer "+number(i), milp.Sum(milp.T(1, v), milp.T(-o.MinQty, z)), milp.AtLeast, 0)
		met.Add(1, v)
		cents.Add((1+m.Tax)*a.OfferCents(o), v)
	}
	p.Model.Row("enough "+name, minus(met, need), milp.AtLeast, 0)
}

// orders collects the lines ordered from each vendor, who ships once, at the largest shipping of them.
type orders struct {
	p       *program
	cents   *milp.Expr
	vendors []string
	lines   map[string][]orderLine
}

type orderLine struct {
	shipping float64
	ordered  milp.Var
}

func (o *orders) add(vendor string, shipping float64, ordered milp.Var) {
	if shipping <= 0 {
		return
	}
	if _, seen := o.lines[vendor]; !seen {
		o.vendors = append(o.vendors, vendor)
	}
	o.lines[vendor] = append(o.lines[vendor], orderLine{shipping, ordered})
}

// ship makes each vendor's shipping as large as that of any line ordered there.
func (o *orders) ship() {
	for i, vendor := range o.vendors {
		most := 0.0
		for _, l := range o.lines[vendor] {
			most = math.Max(most, l.shipping)
		}
		v := o.p.Model.Continuous("shipping of vendor "+number(i), 0, most)
		o.cents.Add(1+o.p.market.Tax, v)
		for j, l := range o.lines[vendor] {
			o.p.Model.Row("shipping of vendor "+number(i)+" line "+number(j),
				milp.Sum(milp.T(1, v), milp.T(-l.shipping, l.ordered)), milp.AtLeast, 0)
		}
	}
}

// keep requires that what is to be kept is installed.
func (p *program) keep(needs map[int]*milp.Expr) {
	for _, i := range p.Bench.Kept {
		a := &p.market.Articles[i]
		if p.fixed() && isCore(a.Kind) {
			continue
		}
		var e milp.Expr
		if needs[i] != nil {
			e.AddExpr(1, *needs[i])
		}
		e.Add(0, p.one)
		p.Model.Row("keep "+a.Kind+" "+a.ID, e, milp.AtLeast, a.Keep)
	}
}

// isCore reports whether parts of a kind make up a core. Bench.Keeps checks what is to be kept of them.
func isCore(kind string) bool {
	return kind == string(catalog.KindBattery) || kind == string(catalog.KindInverter) || kind == string(catalog.KindSolar)
}
