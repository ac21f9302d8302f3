package view

import (
	"strings"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// holding is what becomes of an owned part: used, sold, left over, in the units it is told in.
type holding struct {
	part, unit              string
	have, used, sold, spare float64
	credit                  plan.Money
}

// becomes returns what becomes of an owned part.
func (p Plans) becomes(h scenarios.Holding, one *plan.Plan) holding {
	si, u := countedIn(p.Catalog, h.PartID), p.units()
	out := holding{part: h.PartID, unit: u.unit(si), have: u.figure(h.Count, si)}
	for _, l := range one.Bill {
		if l.Part == h.PartID && !plan.IsEnd(l.Kind) {
			out.used += u.figure(l.Have, si)
			out.sold += u.figure(l.Sell, si)
			out.credit += l.Credit
		}
	}
	out.spare = out.have - out.used - out.sold
	return out
}

// owned shows what becomes of what is owned; in short in a sentence each for what is used, sold and left over.
func (p Plans) owned(one *plan.Plan) section {
	title := detailTitle(one, "what becomes of what is owned")
	if !p.Full {
		return section{title: title, prose: p.ownedText(one)}
	}
	t := &table{columns: []column{
		text("part"), text("unit"), number("owned"), number("used"), number("sold"), number("left over"),
		number("sold for\n" + p.Scenario.Currency),
	}}
	for _, h := range p.Scenario.Have {
		b, income := p.becomes(h, one), none
		if b.sold > 0 {
			income = money(b.credit)
		}
		t.row(b.part, b.unit, short(b.have, 2), short(b.used, 2), short(b.sold, 2), short(b.spare, 2), income)
	}
	return section{title: title, table: t}
}

// ownedText says what becomes of what is owned.
func (p Plans) ownedText(one *plan.Plan) []string {
	var used, sold, spare []string
	for _, h := range p.Scenario.Have {
		b := p.becomes(h, one)
		add := func(to *[]string, n float64) {
			switch text := short(n, 2); {
			case text == "0":
			case b.unit == "each":
				*to = append(*to, text+" x "+b.part)
			default:
				*to = append(*to, text+" "+b.unit+" "+b.part)
			}
		}
		add(&used, b.used)
		add(&spare, b.spare)
		if b.sold > 0 {
			add(&sold, b.sold)
			sold[len(sold)-1] += " for " + money(b.credit)
		}
	}
	var lines []string
	for _, l := range []struct {
		label string
		parts []string
	}{{"Used", used}, {"Sold", sold}, {"Left over", spare}} {
		if len(l.parts) > 0 {
			lines = append(lines, l.label+": "+strings.Join(l.parts, ", ")+".")
		}
	}
	return lines
}
