package view

import (
	"cartwright/catalog"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
)

// boughtRecord is the JSON of the bought command, format 1:
//
//	{"format":1,"command":"bought","scenario":"…","currency":"USD","rules":"nec","file":"…/scenario.yaml",
//	 "plan":1,"month":2,
//	 "buy":[{"part":"…","kind":"battery","quantity":1,"unit":"each","vendor":"","unit_price":0,"line":0}],
//	 "sell":[…],"spend":0,"shipping":0,"tax":0,"credit":0,
//	 "have":[{"part":"…","count":1,"unit":"each","ends":0}],
//	 "sold":{"from":1150,"to":0},"savings_now":{"from":900,"to":0},"from_elsewhere":0,
//	 "changes":[{"line":61,"old":["…"],"new":["…"]}],"cautions":["…"]}
//
// There is either plan, the rank of the plan that is bought, or month, up to which all is, or part, which is
// bought by itself. Have is all that
// is owned afterwards. Savings_now is missing where the scenario has no savings, or where they are left as
// they are because from_elsewhere says that money from elsewhere was needed. Line is the number of the first
// of the old lines, or of the line before which the new ones are put where there is no old one.
type boughtRecord struct {
	heading
	File          string             `json:"file"`
	Plan          int                `json:"plan,omitempty"`
	Part          string             `json:"part,omitempty"`
	Month         *int               `json:"month,omitempty"`
	Buy           []purchaseRecord   `json:"buy"`
	Sell          []purchaseRecord   `json:"sell"`
	Spend         plan.Money         `json:"spend"`
	Shipping      plan.Money         `json:"shipping"`
	Tax           plan.Money         `json:"tax"`
	Credit        plan.Money         `json:"credit"`
	Have          []ownedRecord      `json:"have"`
	Sold          amountRecord       `json:"sold"`
	SavingsNow    *amountRecord      `json:"savings_now,omitempty"`
	FromElsewhere plan.Money         `json:"from_elsewhere"`
	Changes       []fileChangeRecord `json:"changes"`
	Cautions      []string           `json:"cautions"`
}

// ownedRecord is what is owned of a part, in JSON.
type ownedRecord struct {
	Part  string  `json:"part"`
	Count float64 `json:"count"`
	Unit  string  `json:"unit"` // "each" or "m"
	Ends  int     `json:"ends"`
}

// amountRecord is an amount that changes, in JSON.
type amountRecord struct {
	From plan.Money `json:"from"`
	To   plan.Money `json:"to"`
}

// fileChangeRecord is a place where lines change, in JSON.
type fileChangeRecord struct {
	Line int      `json:"line"`
	Old  []string `json:"old"`
	New  []string `json:"new"`
}

// record holds everything.
func (b Bought) record() any {
	s := b.Scenario
	r := boughtRecord{
		heading: headingOf("bought", s), File: s.File,
		Plan: b.Plan, Part: b.Part, Buy: purchases(b.Buy), Sell: purchases(b.Sell), Spend: b.Spend, Shipping: b.Shipping, Tax: b.Tax, Credit: b.Credit,
		Have: []ownedRecord{}, Sold: amountRecord{plan.Money(s.Sold), plan.Money(b.Owned.Sold)}, FromElsewhere: b.Short,
		Changes: []fileChangeRecord{}, Cautions: listed(b.Cautions),
	}
	if b.Plan == 0 && b.Part == "" {
		r.Month = &b.Month
	}
	for _, h := range b.Owned.Have {
		unit := "each"
		if h.ByLength {
			unit = "m"
		}
		r.Have = append(r.Have, ownedRecord{h.PartID, h.Count, unit, h.Ends})
	}
	if b.Owned.SavingsNow != nil {
		was := catalog.Cents(0)
		if s.Savings != nil {
			was = s.Savings.Now
		}
		r.SavingsNow = &amountRecord{plan.Money(was), plan.Money(*b.Owned.SavingsNow)}
	}
	for _, c := range b.Changes {
		r.Changes = append(r.Changes, fileChangeRecord{c.Line, listed(c.Old), listed(c.New)})
	}
	return r
}

// records holds a thing bought or sold a row.
func (b Bought) records() [][]string {
	rows := [][]string{{"action", "part", "kind", "name", "quantity", "unit", "vendor", "unit_price", "line", "currency"}}
	add := func(action string, list []next.Purchase) {
		for _, p := range list {
			rows = append(rows, []string{action, p.Part, p.Kind, b.describe(p), exact(p.Quantity), p.Unit, p.Vendor,
				exact(p.UnitPrice), money(p.Line), b.Scenario.Currency})
		}
	}
	add("buy", b.Buy)
	add("sell", b.Sell)
	return rows
}
