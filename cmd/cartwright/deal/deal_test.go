package deal

import (
	"reflect"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// What is paid comes from the sale first, then from what was sold before, then from savings; savings are
// left alone where they were not enough.
func TestMoneyInHand(t *testing.T) {
	cents := func(c catalog.Cents) *catalog.Cents { return &c }
	for _, c := range []struct {
		name         string
		sold         catalog.Cents
		savings      *scenarios.Savings
		paid, credit plan.Money
		month        int
		wantSold     catalog.Cents
		wantNow      *catalog.Cents
		short        plan.Money
	}{
		{"from the sale alone", 100, &scenarios.Savings{Now: 500}, 300, 350, 0, 150, cents(500), 0},
		{"from what was sold before", 100, &scenarios.Savings{Now: 500}, 300, 250, 0, 50, cents(500), 0},
		{"from savings", 100, &scenarios.Savings{Now: 500}, 900, 350, 0, 0, cents(50), 0},
		{"to the last cent", 100, &scenarios.Savings{Now: 500}, 950, 350, 0, 0, cents(0), 0},
		{"from elsewhere", 100, &scenarios.Savings{Now: 500}, 951, 350, 0, 0, nil, 501},
		{"with what is put aside in three months", 0, &scenarios.Savings{Now: 500, PerMonth: 100}, 700, 0, 3, 0, cents(100), 0},
		{"no savings", 100, nil, 300, 50, 0, 0, nil, 150},
		{"no savings needed", 400, nil, 300, 50, 0, 150, nil, 0},
		{"only sold", 0, &scenarios.Savings{Now: 500}, 0, 50, 0, 50, cents(500), 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := &scenarios.Scenario{Sold: c.sold, Savings: c.savings}
			b := Deal{Month: c.month, Spend: c.paid - 7, Shipping: 5, Tax: 2, Credit: c.credit}.Answer(question.Problem{Scenario: s})
			if b.Owned.Sold != c.wantSold || b.Short != c.short || !reflect.DeepEqual(b.Owned.SavingsNow, c.wantNow) {
				t.Errorf("sold %d, savings %v, short %s; want %d, %v, %s", b.Owned.Sold, b.Owned.SavingsNow, b.Short, c.wantSold, c.wantNow, c.short)
			}
		})
	}
}

// Purchases and sales change counts, lengths and ends; what is gone is owned no more, and what is there
// but unused stays.
func TestHoldingsAfterDeal(t *testing.T) {
	price := catalog.Cents(500)
	before := []scenarios.Holding{
		{PartID: "used", Count: 2, Sell: &price},
		{PartID: "sold", Count: 2, Sell: &price},
		{PartID: "thinned", Count: 5, Sell: &price},
		{PartID: "rope", Count: 3, ByLength: true, Ends: 2},
		{PartID: "rope-gone", Count: 2.4, ByLength: true, Ends: 4},
		{PartID: "rope-all-gone", Count: 1.1, ByLength: true},
		{PartID: "none", Count: 0},
	}
	buy := func(part, kind, unit string, n float64) next.Purchase {
		return next.Purchase{Part: part, Kind: kind, Unit: unit, Quantity: n}
	}
	d := Deal{
		Buy: []next.Purchase{buy("used", "battery", "each", 1), buy("rope", "cable", "m", 1.5), buy("rope", plan.KindCableEnd, "each", 6),
			buy("new", "device", "each", 3), buy("new-rope", plan.KindCableEnd, "each", 4), buy("new-rope", "cable", "m", 2), buy("new", "device", "each", 2)},
		Sell: []next.Purchase{buy("sold", "battery", "each", 2), buy("thinned", "battery", "each", 3),
			buy("rope-gone", "cable", "m", 2.4), buy("rope-all-gone", "cable", "m", 1.1)},
	}
	want := []scenarios.Holding{
		{PartID: "used", Count: 3, Sell: &price},
		{PartID: "thinned", Count: 2, Sell: &price},
		{PartID: "rope", Count: 4.5, ByLength: true, Ends: 8},
		{PartID: "rope-gone", Count: 0, ByLength: true, Ends: 4},
		{PartID: "none", Count: 0},
		{PartID: "new", Count: 5},
		{PartID: "new-rope", Count: 2, ByLength: true, Ends: 4},
	}
	if got := d.holdings(before); !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
	if before[0].Count != 2 || before[1].Count != 2 {
		t.Error("the scenario's own holdings have changed")
	}
}

// Months are added up, the same part at the same price to one purchase.
func TestOfMonths(t *testing.T) {
	one := next.Purchase{Part: "slab", Kind: "battery", Quantity: 1, Unit: "each", UnitPrice: 9, Line: 900}
	dear := one
	dear.UnitPrice, dear.Line = 10, 1000
	old := next.Purchase{Part: "old", Kind: "battery", Quantity: 1, Unit: "each", Line: 300}
	d := OfMonths([]next.Month{
		{Month: 0, Buy: []next.Purchase{one}, Sell: []next.Purchase{old}, Shipping: 50, Tax: 60},
		{Month: 1},
		{Month: 2, Buy: []next.Purchase{one, dear}, Shipping: 10, Tax: 20},
	}, nil)
	twice := one
	twice.Quantity, twice.Line = 2, 1800
	want := Deal{Month: 2, Buy: []next.Purchase{twice, dear}, Sell: []next.Purchase{old}, Spend: 2800, Shipping: 60, Tax: 80, Credit: 300}
	if !reflect.DeepEqual(d, want) {
		t.Errorf("got  %+v\nwant %+v", d, want)
	}
}
