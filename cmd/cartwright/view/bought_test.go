package view

import (
	"math"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/next"
	"cartwright/scenarios"
)

// somePurchases is a hand-made answer of a plan that is bought from savings.
func somePurchases() Bought {
	s := *sample().Scenario
	s.File, s.Sold, s.Savings = "barn/scenario.yaml", 115000, &scenarios.Savings{Now: 90000, PerMonth: 5000}
	s.Limits.Budget = 450000
	now := catalog.Cents(12345)
	return Bought{
		Scenario: &s, Catalog: sample().Catalog, Plan: 1,
		Buy: []next.Purchase{
			{Part: "slate-48-100", Kind: "battery", Quantity: 2, Unit: "each", Vendor: "yard", UnitPrice: 900, Line: 180000},
			{Part: "cu-4-0", Kind: "cable", Quantity: 3.6576, Unit: "m", UnitPrice: 14.125, Line: 5166},
			{Part: "cu-4-0", Kind: "cable-end", Quantity: 8, Unit: "each", UnitPrice: 1.25, Line: 1000},
		},
		Sell:  []next.Purchase{{Part: "slate-48-50", Kind: "battery", Quantity: 1, Unit: "each", UnitPrice: 79.13, Line: 7913}},
		Spend: 186166, Shipping: 4000, Tax: 15689, Credit: 7913,
		Owned: scenarios.Owned{Have: []scenarios.Holding{{PartID: "slate-48-100", Count: 4}, {PartID: "cu-4-0", Count: 11.1576, ByLength: true, Ends: 8}},
			SavingsNow: &now},
		Changes: []scenarios.LineChange{
			{Line: 9, Old: []string{"  - {part: slate-48-100, count: 2, sell: 120}   # the first two of a pack that grew a line which is longer than any screen"},
				New: []string{"  - {part: slate-48-100, count: 4, sell: 120}   # the first two of a pack that grew a line which is longer than any screen"}},
			{Line: 10, Old: []string{"  - {part: slate-48-50, count: 1, sell: 79.13}", ""}, New: []string{}},
			{Line: 14, Old: []string{}, New: []string{"  - {part: \"odd\tname\", count: 1}"}},
		},
		Cautions: []string{"Arcs can kill."},
	}
}

func TestBoughtInEveryFormat(t *testing.T) {
	elsewhere := somePurchases()
	elsewhere.Owned.SavingsNow, elsewhere.Short, elsewhere.Writes = nil, 95000, true
	months := somePurchases()
	months.Plan, months.Month, months.Income = 0, 3, 15000
	months.Scenario.Limits.Budget = math.MaxInt64
	first := somePurchases()
	first.Plan, first.Scenario.Savings, first.Owned.SavingsNow, first.Short = 0, nil, nil, 82942
	nothing := somePurchases()
	nothing.Buy, nothing.Sell, nothing.Changes = nil, nil, nil
	for _, c := range []struct {
		file   string
		answer Bought
		format Format
	}{
		{"bought.txt", somePurchases(), Table},
		{"bought.md", somePurchases(), Markdown},
		{"bought.csv", somePurchases(), CSV},
		{"bought.json", somePurchases(), JSON},
		{"bought-elsewhere.txt", elsewhere, Table},
		{"bought-months.txt", months, Table},
		{"bought-months.json", months, JSON},
		{"bought-first.txt", first, Table},
		{"bought-nothing.txt", nothing, Table},
		{"bought-nothing.json", nothing, JSON},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}

// All but the file's own lines fits the screen, and no control character of a file reaches it.
func TestBoughtFits(t *testing.T) {
	b := somePurchases()
	b.Changes[2].New = []string{"  - {part: \x1b[2J, count: 1}"}
	got, err := Render(b, Table, Width)
	if err != nil {
		t.Fatal(err)
	}
	if strings.ContainsRune(string(got), '\x1b') {
		t.Error("a control character of the file reached the screen")
	}
	long := 0
	for line := range strings.Lines(string(got)) {
		if len(strings.TrimRight(line, "\n")) > Width {
			long++
		}
	}
	if long != 2 {
		t.Errorf("%d lines are wider than the screen, want the file's own 2:\n%s", long, got)
	}
}
