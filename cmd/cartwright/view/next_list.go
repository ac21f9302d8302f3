package view

import (
	"fmt"
	"strings"

	"cartwright/optimize/next"
	"cartwright/optimize/plan"
)

// list shows what is bought and sold in a month, and what it comes to.
func (n Next) list(m *next.Month) section {
	currency := n.Scenario.Currency
	title := "Shopping list for now"
	if m.Month > 0 {
		title = fmt.Sprintf("Shopping list for month %d", m.Month)
	}
	var income plan.Money
	for _, b := range m.Sell {
		income += b.Line
	}
	if len(m.Buy) == 0 {
		return section{title: title, prose: []string{
			"Buy nothing; sell " + joined(n.units().sales(m.Sell)) + " for " + money(income) + " " + currency + "."}}
	}
	t := &table{columns: []column{
		number("buy"), text("unit"), text("part"), text("what it is"),
		number("price\n" + currency), number("sum\n" + currency),
	}}
	n.bought(t, m)
	sums := []struct {
		label  string
		amount plan.Money
	}{{"shipping", m.Shipping}, {"tax, " + short(n.Scenario.Tax*100, 3) + " %", m.Tax}}
	total := money(spent(m))
	t.row("", "", "", "", "", strings.Repeat("-", len(total)))
	for _, s := range sums {
		if s.amount != 0 {
			t.row("", "", "", s.label, "", money(s.amount))
		}
	}
	t.row("", "", "", "all of it", "", total)
	for _, b := range m.Sell {
		t.row("", "", b.Part, "less "+n.units().quantity(b)+" that is sold", "", money(-b.Line))
	}
	if len(m.Sell) > 0 {
		t.row("", "", "", "money needed", "", money(spent(m)-income))
	}
	return section{title: title, table: t}
}

// bought adds a month's purchases to a table, by vendor where vendors are known.
func (n Next) bought(t *table, m *next.Month) {
	var lines []plan.Line
	u := n.units()
	for _, b := range m.Buy {
		lines = append(lines, u.line(plan.Line{Part: b.Part, Kind: b.Kind, Buy: b.Quantity, Unit: b.Unit, Vendor: b.Vendor,
			UnitPrice: b.UnitPrice, Line: b.Line}))
	}
	vendors, lines := vendorsOf(lines)
	for _, vendor := range vendors {
		if len(vendors) > 1 || vendor != "" {
			t.row("", "", "from "+seller(vendor)+":", "", "", "")
		}
		var subtotal plan.Money
		for _, l := range lines {
			if l.Vendor == vendor {
				t.row(enough(l.Buy), l.Unit, l.Part, n.plans().describe(l), fixed(l.UnitPrice, 2), money(l.Line))
				subtotal += l.Line
			}
		}
		if len(vendors) > 1 {
			t.row("", "", "", "subtotal "+seller(vendor), "", money(subtotal))
		}
	}
}

// plans returns a view of the scenario's plans, for what it knows of parts and carts.
func (n Next) plans() Plans { return Plans{Scenario: n.Scenario, Catalog: n.Catalog} }

// shown returns the month that is shown in full, nil for none.
func (n Next) shown() *next.Month {
	if n.Show < 0 || n.Show >= len(n.Sequence.Months) {
		return nil
	}
	return &n.Sequence.Months[n.Show]
}

// cart shows in full what stands on the cart in the month that was asked for.
func (n Next) cart() sheet {
	m := n.shown()
	if m == nil {
		return nil
	}
	name := "The cart " + when(m.Month)
	if m.Cart == nil {
		return sheet{{title: name + ": nothing stands yet"}}
	}
	p := n.plans()
	p.Full = true
	s := p.built(m.Cart)
	for i := range s {
		s[i].title = name + strings.TrimPrefix(s[i].title, "Plan 0")
	}
	return s
}
