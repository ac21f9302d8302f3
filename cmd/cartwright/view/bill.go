package view

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cartwright/optimize/plan"
)

// bill shows what to buy, by vendor where vendors are known, and what it comes to. The short bill has ends in the line
// of their cable or conduit, and no subtotals of vendors.
func (p Plans) bill(one *plan.Plan) section {
	title := detailTitle(one, "what to buy")
	vendors, bought := vendorsOf(one.Bill)
	if len(bought) == 0 {
		lines := []string{"Nothing: everything it needs is owned already."}
		if one.Credit != 0 {
			lines = append(lines, "What is sold brings "+money(one.Credit)+" "+p.Scenario.Currency+".")
		}
		return section{title: title, prose: lines}
	}
	currency, marks := p.Scenario.Currency, slices.ContainsFunc(bought, p.stale)
	heading := "price\n" + currency
	if marks {
		heading = "price \n" + currency + " "
	}
	t := &table{columns: []column{
		number("buy"), text("unit"), text("part"), text("what it is"), number(heading), number("sum\n" + currency),
	}}
	withEnds := false
	for _, vendor := range vendors {
		var subtotal plan.Money
		if len(vendors) > 1 || vendor != "" {
			t.row("", "", "from "+seller(vendor)+":", "", "", "")
		}
		for _, l := range bought {
			if l.Vendor != vendor {
				continue
			}
			subtotal += l.Line
			whole, ends := endsOf(bought, l)
			switch {
			case p.Full || whole == nil && ends == nil:
				p.billRow(t, l, p.describe(l), l.Line, marks)
			case ends != nil:
				p.billRow(t, l, fmt.Sprintf("%s, %s ends", p.describe(l), short(ends.Buy, 0)), l.Line+ends.Line, marks)
				withEnds = true
			}
		}
		if p.Full && len(vendors) > 1 {
			t.row("", "", "", "subtotal "+seller(vendor), "", money(subtotal))
		}
	}
	p.sums(t, one)
	t.notes = p.billNotes(one, bought, withEnds, marks)
	return section{title: title, table: t}
}

// endsOf returns, of a cable or a conduit, the ends bought with it, and of ends the cable or conduit that they are for.
func endsOf(bought []plan.Line, of plan.Line) (whole, ends *plan.Line) {
	for i := range bought {
		switch l := &bought[i]; {
		case l.Part != of.Part || l.Vendor != of.Vendor || l.Kind == of.Kind:
		case plan.IsEnd(l.Kind):
			ends = l
		case plan.IsEnd(of.Kind):
			whole = l
		}
	}
	return whole, ends
}

// billRow adds a line of the bill.
func (p Plans) billRow(t *table, l plan.Line, what string, sum plan.Money, marks bool) {
	told := p.units().line(l)
	each := fixed(told.UnitPrice, 2)
	if marks {
		each = price(each, p.stale(l))
	}
	t.row(enough(told.Buy), told.Unit, l.Part, what, each, money(sum))
}

// sums adds what the bill comes to.
func (p Plans) sums(t *table, one *plan.Plan) {
	t.row("", "", "", "", "", strings.Repeat("-", len(money(one.Spend))))
	t.row("", "", "", "all parts", "", money(one.Spend))
	if one.Shipping != 0 {
		t.row("", "", "", "shipping", "", money(one.Shipping))
	}
	if one.Tax != 0 {
		t.row("", "", "", "tax, "+short(p.Scenario.Tax*100, 3)+" %", "", money(one.Tax))
	}
	if one.Credit != 0 {
		t.row("", "", "", "less what is sold", "", money(-one.Credit))
	}
	t.row("", "", "", "cost", "", money(one.Cost))
}

// billNotes explains what is not plain from the lines of the bill.
func (p Plans) billNotes(one *plan.Plan, bought []plan.Line, withEnds, marks bool) []string {
	var notes []string
	if withEnds {
		notes = append(notes, "The sum of a cable or conduit includes its ends; --full lists them apart.")
	}
	if marks {
		notes = append(notes, staleNote(p.AsOf))
	}
	if over := p.units().overbought(bought); len(over) > 0 {
		notes = append(notes, "Bought but not installed, because more cost less than fewer: "+strings.Join(over, ", ")+".")
	}
	if remarks := p.remarks(one.Bill); p.Full && remarks != "" {
		notes = append(notes, "The catalogue notes: "+remarks+".")
	}
	return notes
}

// billRecords holds the whole bill of the plan shown.
func (p Plans) billRecords() [][]string {
	rows := [][]string{{"part", "kind", "name", "quantity", "unit", "have", "buy", "sell", "vendor", "unit_price",
		"line", "credit", "currency", "stale", "notes"}}
	one := p.shown()
	if one == nil {
		return rows
	}
	for _, l := range one.Bill {
		rows = append(rows, []string{l.Part, l.Kind, p.describe(l), exact(l.Quantity), l.Unit, exact(l.Have),
			exact(l.Buy), exact(l.Sell), l.Vendor, exact(l.UnitPrice), money(l.Line), money(l.Credit),
			p.Scenario.Currency, strconv.FormatBool(p.stale(l)), p.notes(l)})
	}
	return rows
}
