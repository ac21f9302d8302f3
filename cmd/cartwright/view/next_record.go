package view

import (
	"strconv"
	"strings"

	"cartwright/optimize/next"
	"cartwright/optimize/plan"
)

// nextRecord is the JSON of the next command, format 1:
//
//	{"format":1,"command":"next","scenario":"…","currency":"USD","rules":"nec","complete":true,
//	 "status":"reached","horizon":24,"reached":7,"per_month_within_horizon":0,
//	 "energy_on_the_way_kwh_months":0,"next":{"month":0,"cost":0,"buy":[…]},
//	 "months":[{"month":0,"cash":0,"buy":[{"part":"…","kind":"battery","quantity":1,"unit":"each",
//	            "vendor":"","unit_price":0,"line":0}],"sell":[…],"shipping":0,"tax":0,"cash_left":0,
//	            "outlay":0,"usable_kwh":0,"autonomy_h":0,"mass_kg":0,"cost_per_usable_kwh":0,
//	            "cost_per_extra_kwh":0,"cart":{…}}],
//	 "target":{…},"notices":["…"],"cautions":["…"]}
//
// Status is reached, beyond (the horizon), never or impossible. Cash is in hand before a month's purchases,
// outlay is all that was spent so far less what was sold. A month's cart and the target are whole plans as
// the plan command has them; the parts of a cart on the way are owned by then, so that only crimped ends
// cost anything. Cart stands in the months that change it, and not in those that leave it as it was.
// per_month_within_horizon is what would have to be saved every month to reach the target within the
// horizon, 0 where that is reached anyway. Complete is false where the search was stopped: there may be a better order of
// purchases than months has, or that is empty; and where the target is not proven, one may cost less and be reached sooner.
type nextRecord struct {
	heading
	Complete       bool          `json:"complete"`
	Status         string        `json:"status"`
	Horizon        int           `json:"horizon"`
	Reached        int           `json:"reached"`
	PerMonth       plan.Money    `json:"per_month_within_horizon"`
	EnergyOnTheWay float64       `json:"energy_on_the_way_kwh_months"`
	Next           *nextPurchase `json:"next,omitempty"`
	Months         []monthRecord `json:"months"`
	Target         *planRecord   `json:"target,omitempty"`
	TakenOff       []offRecord   `json:"taken_off"` // what is owned and the target does not use
	Notices        []string      `json:"notices"`   // what keeps batteries apart that could stand together
	Nothing        *barRecord    `json:"nothing_before,omitempty"`
	Cautions       []string      `json:"cautions"`
}

// nextPurchase is the immediate answer.
type nextPurchase struct {
	Month int              `json:"month"`
	Cost  plan.Money       `json:"cost"`
	Buy   []purchaseRecord `json:"buy"`
}

// monthRecord is a month in JSON.
type monthRecord struct {
	Month            int              `json:"month"`
	Cash             plan.Money       `json:"cash"`
	Buy              []purchaseRecord `json:"buy"`
	Sell             []purchaseRecord `json:"sell"`
	Shipping         plan.Money       `json:"shipping"`
	Tax              plan.Money       `json:"tax"`
	Left             plan.Money       `json:"cash_left"`
	Outlay           plan.Money       `json:"outlay"`
	UsableKWh        float64          `json:"usable_kwh"`
	AutonomyH        float64          `json:"autonomy_h"`
	MassKg           float64          `json:"mass_kg"`
	CostPerUsableKWh float64          `json:"cost_per_usable_kwh"`
	CostPerExtraKWh  float64          `json:"cost_per_extra_kwh,omitempty"` // beyond what is owned today
	Cart             *planRecord      `json:"cart,omitempty"`
}

// record holds everything, unrounded.
func (n Next) record() any {
	q := n.Sequence
	r := nextRecord{
		heading: headingOf("next", n.Scenario), Complete: q.Complete, Status: n.status(), Horizon: q.Horizon, Reached: q.Reached,
		PerMonth: n.PerMonth, EnergyOnTheWay: q.EnergyOnTheWay, Months: []monthRecord{}, Target: whole(q.Target), TakenOff: n.off(), Nothing: n.bar(),
		Cautions: listed(n.Cautions), Notices: listed(n.Notices),
	}
	if m := n.firstPurchase(); m != nil {
		r.Next = &nextPurchase{m.Month, spent(m), purchases(m.Buy)}
	}
	months := n.months()
	for i := range months {
		m := &months[i]
		one := monthRecord{Month: m.Month, Cash: m.Cash, Buy: purchases(m.Buy), Sell: purchases(m.Sell), Shipping: m.Shipping,
			Tax: m.Tax, Left: m.Left, Outlay: m.Outlay, CostPerUsableKWh: m.CostPerUsableKWh,
			CostPerExtraKWh: m.CostPerExtraKWh}
		if c := m.Cart; c != nil {
			one.UsableKWh, one.AutonomyH, one.MassKg = c.UsableKWh, c.AutonomyH, c.MassKg
			if i == 0 || months[i-1].Cart == nil || len(m.Buy)+len(m.Sell) > 0 {
				one.Cart = whole(c)
			}
		}
		r.Months = append(r.Months, one)
	}
	return r
}

// records holds a month a row, or the shopping list of the month that was asked for.
func (n Next) records() [][]string {
	if n.Show >= 0 {
		return n.listRecords()
	}
	rows := [][]string{{"month", "buy", "sell", "cash", "spent", "sold_for", "cash_left", "outlay", "currency",
		"usable_kwh", "autonomy_h", "mass_kg", "cost_per_usable_kwh", "cost_per_extra_kwh"}}
	months := n.months()
	for i := range months {
		m := &months[i]
		row := []string{strconv.Itoa(m.Month), written(m.Buy), written(m.Sell),
			money(m.Cash), money(spent(m)), money(spent(m) + m.Left - m.Cash), money(m.Left), money(m.Outlay), n.Scenario.Currency}
		if c := m.Cart; c != nil {
			row = append(row, exact(c.UsableKWh), exact(c.AutonomyH), exact(c.MassKg), exact(m.CostPerUsableKWh), orEmpty(m.CostPerExtraKWh))
		} else {
			row = append(row, "", "", "", "", "")
		}
		rows = append(rows, row)
	}
	return rows
}

// written lists things bought or sold for a cell of a spreadsheet, in SI.
func written(of []next.Purchase) string {
	return strings.ReplaceAll(units{}.sales(of), soft, " + ")
}

// listRecords holds a thing bought or sold a row.
func (n Next) listRecords() [][]string {
	rows := [][]string{{"month", "action", "part", "kind", "name", "quantity", "unit", "vendor", "unit_price", "line", "currency"}}
	m := n.shown()
	if m == nil {
		return rows
	}
	add := func(action string, list []next.Purchase) {
		for _, b := range list {
			rows = append(rows, []string{strconv.Itoa(m.Month), action, b.Part, b.Kind,
				n.plans().describe(plan.Line{Part: b.Part, Kind: b.Kind}), exact(b.Quantity), b.Unit, b.Vendor,
				exact(b.UnitPrice), money(b.Line), n.Scenario.Currency})
		}
	}
	add("buy", m.Buy)
	add("sell", m.Sell)
	return rows
}
