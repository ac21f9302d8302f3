package view

import (
	"slices"
	"strconv"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
)

// kindCableEnd is the kind of a bill's line for crimped ends; its part is the cable.
const kindCableEnd = "cable-end"

// bill shows what to buy, by vendor where vendors are known, and what it comes to.
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
	currency := p.Scenario.Currency
	marks := slices.ContainsFunc(bought, p.stale)
	each := func(l plan.Line) string {
		if !marks {
			return fixed(l.UnitPrice, 2)
		}
		return price(fixed(l.UnitPrice, 2), p.stale(l))
	}
	heading := "price a unit\n" + currency
	if marks {
		heading = "price a unit \n" + currency + " "
	}
	t := &table{columns: []column{
		number("buy"), text("unit"), text("part"), text("what it is"), number(heading), number("sum\n" + currency),
	}}
	for _, vendor := range vendors {
		var subtotal plan.Money
		if len(vendors) > 1 || vendor != "" {
			t.row("", "", "from "+seller(vendor)+":", "", "", "")
		}
		for _, l := range bought {
			if l.Vendor != vendor {
				continue
			}
			t.row(enough(l.Buy), l.Unit, l.Part, p.describe(l), each(l), money(l.Line))
			subtotal += l.Line
		}
		if len(vendors) > 1 {
			t.row("", "", "", "subtotal "+seller(vendor), "", money(subtotal))
		}
	}
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
	if marks {
		t.notes = append(t.notes, staleNote(p.AsOf))
	}
	if over := overbought(bought); len(over) > 0 {
		t.notes = append(t.notes, "Bought but not installed, because so many cost less than fewer: "+strings.Join(over, ", ")+".")
	}
	if remarks := p.remarks(one.Bill); remarks != "" {
		t.notes = append(t.notes, "The catalogue notes: "+remarks+".")
	}
	return section{title: title, table: t}
}

// remarks returns what the catalogue notes of the parts that are installed, those of the same note together:
// "a, b: second-hand. c: also a switch".
func (p Plans) remarks(bill []plan.Line) string {
	var notes []string
	parts := map[string][]string{}
	for _, l := range bill {
		e, ok := p.Catalog.Find(l.Part)
		if !ok || e.Notes == "" || l.Quantity <= 0 || l.Kind == kindCableEnd || slices.Contains(parts[e.Notes], l.Part) {
			continue
		}
		if len(parts[e.Notes]) == 0 {
			notes = append(notes, e.Notes)
		}
		parts[e.Notes] = append(parts[e.Notes], l.Part)
	}
	for i, note := range notes {
		notes[i] = strings.Join(parts[note], ", ") + ": " + strings.TrimRight(note, ".")
	}
	return strings.Join(notes, ". ")
}

// stale reports whether a line is bought at a price that is too old.
func (p Plans) stale(l plan.Line) bool {
	return !p.AsOf.IsZero() && market.StalePrice(p.Catalog, l, p.AsOf)
}

// overbought lists what is bought beyond what is installed, as a quantity break can make it.
func overbought(bought []plan.Line) []string {
	const hair = 1e-6 // of a metre; rounding of sums of lengths
	var over []string
	for _, l := range bought {
		switch spare := l.Buy + l.Have - l.Quantity; {
		case spare <= hair:
		case l.Kind == kindCableEnd:
			over = append(over, short(spare, 0)+" ends of "+l.Part)
		case l.Unit == "m":
			over = append(over, short(spare, 2)+" m of "+l.Part)
		default:
			over = append(over, short(spare, 0)+" x "+l.Part)
		}
	}
	return over
}

// seller returns the vendor's name, or words for none.
func seller(vendor string) string {
	if vendor == "" {
		return "any seller"
	}
	return vendor
}

// vendorsOf returns the lines that buy something and their vendors by name, none last.
func vendorsOf(bill []plan.Line) (vendors []string, bought []plan.Line) {
	for _, l := range bill {
		if l.Buy <= 0 {
			continue
		}
		bought = append(bought, l)
		if !slices.Contains(vendors, l.Vendor) {
			vendors = append(vendors, l.Vendor)
		}
	}
	slices.SortFunc(vendors, func(a, b string) int {
		switch {
		case a == "" && b != "":
			return 1
		case b == "" && a != "":
			return -1
		}
		return strings.Compare(a, b)
	})
	return vendors, bought
}

// describe returns what a line of the bill is, in words.
func (p Plans) describe(l plan.Line) string {
	if l.Kind == kindCableEnd {
		return "crimped ends"
	}
	return p.name(l.Part)
}

// notes returns the remark of the catalogue on a line's part.
func (p Plans) notes(l plan.Line) string {
	if e, ok := p.Catalog.Find(l.Part); ok {
		return e.Notes
	}
	return ""
}

// owned shows what becomes of what is owned: used, sold, left over.
func (p Plans) owned(one *plan.Plan) section {
	t := &table{columns: []column{
		text("part"), text("unit"), number("owned"), number("used"), number("sold"), number("left over"),
		number("sold for\n" + p.Scenario.Currency),
	}}
	for _, h := range p.Scenario.Have {
		unit := "each"
		if e, ok := p.Catalog.Find(h.PartID); ok && e.Kind == catalog.KindCable {
			unit = "m"
		}
		var used, sold float64
		var credit plan.Money
		for _, l := range one.Bill {
			if l.Part == h.PartID && l.Kind != kindCableEnd {
				used += l.Have
				sold += l.Sell
				credit += l.Credit
			}
		}
		income := none
		if sold > 0 {
			income = money(credit)
		}
		t.row(h.PartID, unit, short(h.Count, 2), short(used, 2), short(sold, 2), short(h.Count-used-sold, 2), income)
	}
	return section{title: detailTitle(one, "what becomes of what is owned"), table: t}
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
