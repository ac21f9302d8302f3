package view

import (
	"fmt"
	"strconv"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Bought shows what is bought and sold, what money is in hand then, and which lines of the scenario's file
// change.
type Bought struct {
	Scenario *scenarios.Scenario
	Catalog  *catalog.Catalog
	// Plan is the rank of the plan that is bought; 0 where the months up to and including Month are, or Part, which
	// no plan bought.
	Plan, Month int
	Part        string

	Buy, Sell                    []next.Purchase
	Spend, Shipping, Tax, Credit plan.Money
	Owned                        scenarios.Owned // afterwards
	Short                        plan.Money      // of what was paid, what the money in hand was not enough for
	Income                       plan.Money      // saved in the months
	Changes                      []scenarios.LineChange
	Writes                       bool // the file is written next
	Cautions                     []string
}

// paid returns what is paid for purchases, with shipping and tax.
func (b Bought) paid() plan.Money { return b.Spend + b.Shipping + b.Tax }

// what names what is bought.
func (b Bought) what() string {
	switch {
	case b.Plan > 0:
		return fmt.Sprintf("Plan %d", b.Plan)
	case b.Part != "":
		return unitsOf(b.Scenario).purchases(b.Buy)
	case b.Month == 0:
		return "Month 0"
	}
	return fmt.Sprintf("All up to month %d", b.Month)
}

// sheet shows what is bought and sold, then the money, then the lines.
func (b Bought) sheet() sheet {
	if len(b.Changes) == 0 {
		return sheet{{title: fmt.Sprintf("%s for %s: nothing is bought or sold, and %s stays as it is.", b.what(), b.Scenario.Name, b.Scenario.File)}}
	}
	return append(sheet{b.list(), b.money(), b.difference()}, cautions(b.Cautions)...)
}

// list is the table of what is bought and sold.
func (b Bought) list() section {
	currency, u := b.Scenario.Currency, unitsOf(b.Scenario)
	t := &table{columns: []column{text(""), number("quantity"), text("unit"), text("part"), text("what it is"), number("sum\n" + currency)}}
	add := func(action string, list []next.Purchase, sign plan.Money) {
		for _, p := range list {
			quantity := short(u.figure(p.Quantity, p.Unit), 2)
			if sign > 0 {
				quantity = enough(u.figure(p.Quantity, p.Unit))
			}
			t.row(action, quantity, u.unit(p.Unit), p.Part, b.describe(p), money(sign*p.Line))
		}
	}
	add("bought", b.Buy, 1)
	if b.Shipping != 0 {
		t.row("", "", "", "", "shipping", money(b.Shipping))
	}
	if b.Tax != 0 {
		t.row("", "", "", "", "tax, "+short(100*b.Scenario.Tax, 3)+" %", money(b.Tax))
	}
	add("sold", b.Sell, -1)
	total := money(b.paid() - b.Credit)
	t.row("", "", "", "", "", strings.Repeat("-", len(total)))
	t.row("", "", "", "", "paid in all", total)
	return section{title: fmt.Sprintf("%s for %s: bought and sold", b.what(), b.Scenario.Name), table: t}
}

// describe returns what a purchase is, in words.
func (b Bought) describe(p next.Purchase) string {
	return Plans{Catalog: b.Catalog}.describe(plan.Line{Part: p.Part, Kind: p.Kind})
}

// money says what becomes of the money, and what the file says of it.
func (b Bought) money() section {
	s, currency := b.Scenario, b.Scenario.Currency
	var lines []string
	amount := func(key string, from, to catalog.Cents) {
		if from == to {
			lines = append(lines, fmt.Sprintf("%s stays at %s.", key, money(plan.Money(to))))
		} else {
			lines = append(lines, fmt.Sprintf("%s goes from %s to %s.", key, money(plan.Money(from)), money(plan.Money(to))))
		}
	}
	lines = append(lines, fmt.Sprintf("What is sold brings %s %s, and %s are paid: from that first, then from what was sold before, then from savings.",
		money(b.Credit), currency, money(b.paid())))
	amount("sold", s.Sold, b.Owned.Sold)
	switch {
	case s.Savings == nil:
		if b.Short > 0 {
			lines = append(lines, fmt.Sprintf("The other %s came from elsewhere: the file states no savings.", money(b.Short)))
		}
	case b.Owned.SavingsNow == nil:
		lines = append(lines, fmt.Sprintf("savings.now stays at %s: that is less than the %s still to pay, so the money came from elsewhere, and what is left of the savings is not known. Enter it yourself.",
			money(plan.Money(s.Savings.Now)), money(b.Short)))
	default:
		if b.Income != 0 {
			lines = append(lines, fmt.Sprintf("Up to month %d another %s is saved.", b.Month, money(b.Income)))
		}
		amount("savings.now", s.Savings.Now, *b.Owned.SavingsNow)
	}
	if s.Limits.Budget < endlessCents {
		lines = append(lines, fmt.Sprintf("limits.budget stays at %s: it is what may be spent from now on. Lower it if it was meant for the whole cart.", money(plan.Money(s.Limits.Budget))))
	}
	return section{title: "Money in hand", prose: lines}
}

// endlessCents is a budget beyond any that is stated: there is none.
const endlessCents = catalog.Cents(endless)

// difference shows the lines that change, old ones with a minus, new ones with a plus.
func (b Bought) difference() section {
	title := "Lines of " + b.Scenario.File + " that would change"
	if b.Writes {
		title = "Lines of " + b.Scenario.File + " that change"
	}
	width := 0
	for _, c := range b.Changes {
		width = max(width, len(strconv.Itoa(c.Line+len(c.Old))))
	}
	var lines []string
	for _, c := range b.Changes {
		for i, old := range c.Old {
			lines = append(lines, fmt.Sprintf("%*d - %s", width, c.Line+i, old))
		}
		for _, is := range c.New {
			lines = append(lines, fmt.Sprintf("%*s + %s", width, "", is))
		}
	}
	s := section{title: title, text: lines}
	if !b.Writes {
		s.text = append(s.text, "", "Nothing is written without --write.")
	}
	return s
}
