package optimize

import (
	"math"
	"sort"

	"cartwright/optimize/milp"
)

// buy adds up the cost: parts at one fixed price where they are installed; of the others, what is owned
// is used first or sold, and the rest is bought at one of the offers.
func (p *program) buy() {
	m := p.b.market
	needs := map[int]*milp.Expr{}
	var cents milp.Expr // with tax
	installed := func(article int, quantity float64, v milp.Var) {
		a := &m.articles[article]
		if !a.special() {
			cents.Add((1+m.tax)*quantity*a.cents, v)
			return
		}
		if needs[article] == nil {
			needs[article] = &milp.Expr{}
		}
		needs[article].Add(quantity, v)
	}
	for i, v := range p.strings {
		installed(m.part(p.stack(i).bat.ID).position, float64(p.stack(i).series), v)
	}
	for i, v := range p.supply {
		s := &p.b.supplies[p.sp.supplies[i]]
		installed(m.part(s.inv.ID).position, float64(s.units), v)
	}
	for i := range p.slots {
		v := &p.slots[i]
		for j, x := range v.filling {
			for _, u := range v.slot.options[j].uses {
				installed(u.article, u.quantity, x)
			}
		}
	}

	special := make([]int, 0, len(needs))
	for article := range needs {
		special = append(special, article)
	}
	sort.Ints(special)
	orders := newOrders(p, &cents)
	for _, article := range special {
		p.bought[article] = p.purchase(article, *needs[article], &cents, orders)
	}
	orders.ship()

	cents.Const(-m.credit)
	p.cost.AddExpr(0.01, cents)
	s := p.b.s
	if s.Limits.Budget != math.MaxInt64 {
		p.m.Row("budget", p.cost, milp.AtMost, (s.Limits.Budget + s.Sold).Units())
	}
}

// purchase says how a need for a special article is met and adds what it costs.
func (p *program) purchase(article int, need milp.Expr, cents *milp.Expr, orders *orders) purchase {
	m := p.b.market
	a := &m.articles[article]
	amount := p.m.Continuous
	if a.whole {
		amount = p.m.Integer
	}
	most := p.mostOf(need)
	if a.whole {
		most = math.Ceil(most)
	}
	name := a.kind + " " + a.id
	got := purchase{used: amount("use owned "+name, 0, math.Min(a.have, most))}
	cents.Add(a.sellFor, got.used) // what is used is not sold
	met := milp.Sum(milp.T(1, got.used))
	if len(a.offers) == 0 {
		v := amount("buy "+name, 0, most)
		got.buy = []milp.Var{v}
		met.Add(1, v)
		cents.Add((1+m.tax)*a.cents, v)
	}
	for i, o := range a.offers {
		v := amount("buy "+name+" offer "+number(i), 0, math.Max(most, math.Ceil(o.MinQty)))
		z := p.m.Binary("order " + name + " offer " + number(i))
		p.m.Row("bought only if ordered "+name+" offer "+number(i),
			milp.Sum(milp.T(1, v), milp.T(-math.Max(most, math.Ceil(o.MinQty)), z)), milp.AtMost, 0)
		p.m.Row("least quantity "+name+" offer "+number(i), milp.Sum(milp.T(1, v), milp.T(-o.MinQty, z)), milp.AtLeast, 0)
		got.buy = append(got.buy, v)
		got.chosen = append(got.chosen, z)
		met.Add(1, v)
		cents.Add((1+m.tax)*a.offerCents(o), v)
		orders.add(o.Vendor, float64(o.Shipping), z)
	}
	p.m.Row("enough "+name, minus(met, need), milp.AtLeast, 0)
	return got
}

// mostOf returns the largest value a need can take within the bounds of its variables.
func (p *program) mostOf(need milp.Expr) float64 {
	_, most := p.m.Range(need)
	return most
}

// orders collects what ships from each vendor: once an order, at the largest shipping of its lines.
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

func newOrders(p *program, cents *milp.Expr) *orders {
	return &orders{p: p, cents: cents, lines: map[string][]orderLine{}}
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
		v := o.p.m.Continuous("shipping of vendor "+number(i), 0, most)
		o.cents.Add(1+o.p.b.market.tax, v)
		for j, l := range o.lines[vendor] {
			o.p.m.Row("shipping of vendor "+number(i)+" line "+number(j),
				milp.Sum(milp.T(1, v), milp.T(-l.shipping, l.ordered)), milp.AtLeast, 0)
		}
	}
}
