package view

import (
	"fmt"
	"slices"
	"strconv"

	"cartwright/optimize/next"
	"cartwright/optimize/plan"
)

// table shows the months; those in which nothing happens are folded into one row.
func (n Next) table() section {
	currency, u := n.Scenario.Currency, n.units()
	t := &table{columns: []column{
		text("month"), text("buy, sell"), number("cash\nleft\n" + currency), number("usable\nkWh"),
		number("lasts\nh"), number("mass\n" + u.unit("kg")), number(currency + "/\nusable\nkWh"),
	}}
	months := n.months()
	extra := slices.ContainsFunc(months, func(m next.Month) bool { return m.CostPerExtraKWh != m.CostPerUsableKWh })
	if extra {
		t.columns = append(t.columns, number(currency+"/\nextra\nkWh"))
	}
	for i := 0; i < len(months); i++ {
		m, name := &months[i], strconv.Itoa(months[i].Month)
		what := u.purchasesCell(m.Buy)
		if len(m.Sell) > 0 {
			sold := "sell " + u.sales(m.Sell)
			if what != "" {
				sold = items(what, sold)
			}
			what = sold
		}
		if len(m.Buy)+len(m.Sell) == 0 {
			for i+1 < len(months) && len(months[i+1].Buy)+len(months[i+1].Sell) == 0 {
				i++
			}
			if last := &months[i]; last.Month > m.Month {
				name, m = name+"-"+strconv.Itoa(last.Month), last
			}
			if what = "save"; m.Month == n.Sequence.Reached && n.Sequence.Within {
				what = "nothing"
			}
		}
		cells := []string{name, what, money(m.Left)}
		if c := m.Cart; c != nil {
			cells = append(cells, fixed(c.UsableKWh, 2), fixed(c.AutonomyH, 1), u.fixed(c.MassKg, "kg"), fixed(m.CostPerUsableKWh, 2), extraText(m.CostPerExtraKWh))
		} else {
			cells = append(cells, none, none, none, none, none)
		}
		t.row(cells[:len(t.columns)]...)
	}
	t.notes = []string{
		"Month 0 is now. " + currency + "/usable kWh: all that was spent so far, less what was sold, for a kWh on the cart.",
		"A cart on the way is safe; its autonomy, its power and its recharge may still be short of what is asked.",
	}
	if extra {
		t.notes[0] += " Extra kWh: beyond those of the batteries owned today."
	}
	return section{title: "Month by month", table: t, bullets: n.shortOf()}
}

// shortOf says how far the power of the carts on the way falls short of what can be on together.
func (n Next) shortOf() []string {
	var list []string
	told := map[string]float64{} // by limit, what was said of it last
	for _, m := range n.months() {
		if m.Cart == nil || m.Month == n.Sequence.Reached {
			continue
		}
		for _, l := range m.Cart.Limits {
			switch l.Name {
			case plan.LimitPower, plan.LimitLeg, plan.LimitSurge:
				if l.Slack < 0 && told[l.Name] != l.Value {
					list = append(list, fmt.Sprintf("From month %d on the %s is %s W, where %s W can be asked for at once.",
						m.Month, l.Name, fixed(l.Value, 0), fixed(l.Limit, 0)))
					told[l.Name] = l.Value
				}
			}
		}
	}
	return list
}
