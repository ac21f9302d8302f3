package view

import (
	"strings"
	"testing"

	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// someSequence is a hand-made sequence: bought and sold now, nothing for two months, a cart that is short of
// power, the target. Its figures are chosen to be told apart, not computed.
func someSequence() Next {
	s := sample()
	s.Scenario.Savings = &scenarios.Savings{Now: 90000, PerMonth: 12345}
	s.Scenario.Sold = 10000
	target, early := first(), second()
	early.Rank = 0
	early.Limits = []plan.Limit{{Name: plan.LimitPower, Value: 2000, Limit: 2750, Unit: "W", Slack: -750},
		{Name: plan.LimitMass, Value: 199.9, Limit: 211, Unit: "kg", Slack: 11.1}}
	return Next{
		Scenario: s.Scenario, Catalog: s.Catalog, Show: -1, Cautions: []string{"Arcs can kill."},
		Sequence: &next.Sequence{
			Target: &target, Complete: true, Reached: 4, Horizon: 24, Within: true, EnergyOnTheWay: 36.3,
			Months: []next.Month{
				{Month: 0, Cash: 100000, Left: 4321, Outlay: 95679, Shipping: 4000, Tax: 5500, Cart: &early, CostPerUsableKWh: 79.07, CostPerExtraKWh: 140.71,
					Buy: []next.Purchase{
						{Part: "slate-48-100", Kind: "battery", Quantity: 1, Unit: "each", Vendor: "Kestrel Supply", UnitPrice: 900, Line: 90000},
						{Part: "cu-4-0", Kind: "cable", Quantity: 3.658, Unit: "m", UnitPrice: 14.125, Line: 5167},
						{Part: "cu-4-0", Kind: "cable-end", Quantity: 8, Unit: "each", UnitPrice: 1.25, Line: 1000},
					},
					Sell: []next.Purchase{{Part: "cu-10", Kind: "cable", Quantity: 2.5, Unit: "m", UnitPrice: 2, Line: 500}}},
				{Month: 1, Cash: 16666, Left: 16666, Outlay: 95679, Cart: &early, CostPerUsableKWh: 79.07, CostPerExtraKWh: 140.71},
				{Month: 2, Cash: 29011, Left: 29011, Outlay: 95679, Cart: &early, CostPerUsableKWh: 79.07, CostPerExtraKWh: 140.71},
				{Month: 3, Cash: 41356, Left: 49269, Outlay: 87766, Cart: &early, CostPerUsableKWh: 72.53,
					Sell: []next.Purchase{{Part: "slate-48-100", Kind: "battery", Quantity: 1, Unit: "each", UnitPrice: 79.13, Line: 7913}}},
				{Month: 4, Cash: 61614, Left: 5000, Outlay: 144380, Tax: 4000, Cart: &target, CostPerUsableKWh: 147.33, CostPerExtraKWh: 320.84,
					Buy: []next.Purchase{{Part: "fuse-t-175", Kind: "device", Quantity: 2, Unit: "each", UnitPrice: 263.07, Line: 52614}}},
			},
		},
	}
}

func TestNextInEveryFormat(t *testing.T) {
	shown, list := someSequence(), someSequence()
	shown.Show, list.Show = 4, 0
	late := someSequence()
	q := *late.Sequence
	q.Horizon, q.Within = 2, false
	late.Sequence, late.PerMonth = &q, 22222
	never := someSequence()
	never.Scenario.Savings.PerMonth = 0
	never.Sequence, never.PerMonth = &next.Sequence{Target: never.Sequence.Target, Complete: true, Never: true, Horizon: 24}, 5607
	none := someSequence()
	none.Sequence = &next.Sequence{Complete: true, Horizon: 24}
	owned := someSequence()
	whole := first()
	owned.Sequence = &next.Sequence{Target: &whole, Complete: true, Horizon: 24, Within: true, Months: []next.Month{{Cash: 100000, Left: 100000, Cart: &whole}}}
	waits := someSequence()
	w := *waits.Sequence
	w.Months = append([]next.Month(nil), w.Months...)
	for i := range w.Months[:3] {
		w.Months[i] = next.Month{Month: i, Cash: plan.Money(100000 + 12345*i), Left: plan.Money(100000 + 12345*i)}
	}
	early := second()
	w.Bar = &next.Bar{Until: 3, Least: early.Core, Cost: 131035, Short: 31035,
		Reasons: []string{"2 x slate-48-100 with 1 x gust-5k-split: the batteries give 100 A, the inverter may draw 121.5 A (batteries.csv, max_discharge_a)"}}
	waits.Sequence, waits.Notices = &w, []string{"slate-48-100 and slate-48-50 state no common group, so they never share a bus"}
	whole2 := waits
	w2 := w
	w2.Bar = &next.Bar{Until: 3, Least: first().Core, Cost: 234567}
	whole2.Sequence = &w2
	unsure, unordered := someSequence(), someSequence()
	u := *unsure.Sequence
	u.Complete = false
	unsure.Sequence = &u
	v := u
	v.Months, v.EnergyOnTheWay = nil, 0
	unordered.Sequence = &v
	open, openSecond, openLate := unordered, unordered, unordered
	found := first()
	found.Proven = false
	o := v
	o.Target = &found
	open.Sequence = &o
	other := found
	other.Rank = 2
	o2 := o
	o2.Target = &other
	openSecond.Sequence = &o2
	o3 := o
	o3.Horizon, o3.Within = 2, false
	openLate.Sequence, openLate.PerMonth = &o3, 22222
	for _, c := range []struct {
		file   string
		answer Next
		format Format
	}{
		{"next.txt", someSequence(), Table},
		{"next.md", someSequence(), Markdown},
		{"next.csv", someSequence(), CSV},
		{"next.json", someSequence(), JSON},
		{"next-show.txt", shown, Table},
		{"next-list.csv", list, CSV},
		{"next-late.txt", late, Table},
		{"next-late.json", late, JSON},
		{"next-never.txt", never, Table},
		{"next-none.txt", none, Table},
		{"next-none.json", none, JSON},
		{"next-owned.txt", owned, Table},
		{"next-owned.csv", owned, CSV},
		{"next-waits.txt", waits, Table},
		{"next-waits.md", waits, Markdown},
		{"next-waits.json", waits, JSON},
		{"next-waits-whole.txt", whole2, Table},
		{"next-stopped.txt", unsure, Table},
		{"next-stopped.json", unsure, JSON},
		{"next-unordered.txt", unordered, Table},
		{"next-unordered.md", unordered, Markdown},
		{"next-unordered.csv", unordered, CSV},
		{"next-unordered.json", unordered, JSON},
		{"next-open.txt", open, Table},
		{"next-open-second.txt", openSecond, Table},
		{"next-open-late.txt", openLate, Table},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}

// Names as long as a file allows, and large sums, stay within the width of a screen.
func TestNextWithLongNames(t *testing.T) {
	n := someSequence()
	long := strings.Repeat("very-long-name-", 8)
	n.Scenario.Name, n.Scenario.Currency = long, "QQQ"
	n.Show = 0
	for i := range n.Sequence.Months {
		m := &n.Sequence.Months[i]
		m.Left, m.CostPerUsableKWh = 99999999999, 12345678.9
		for _, list := range [][]next.Purchase{m.Buy, m.Sell} {
			for j := range list {
				list[j].Part, list[j].Vendor = long+"\x1b[2J", long
			}
		}
	}
	got, err := Render(n, Table, Width)
	if err != nil {
		t.Fatal(err)
	}
	fits(t, string(got))
	if strings.ContainsRune(string(got), '\x1b') {
		t.Error("a control character of a name reached the screen")
	}
}

func TestMainParts(t *testing.T) {
	battery := next.Purchase{Part: "slate", Kind: "battery", Quantity: 2, Unit: "each", Line: 100}
	fuse := next.Purchase{Part: "fuse", Kind: "device", Quantity: 3, Unit: "each", Line: 50}
	cable := next.Purchase{Part: "cu", Kind: "cable", Quantity: 2.5, Unit: "m", Line: 60}
	ends := next.Purchase{Part: "cu", Kind: "cable-end", Quantity: 4, Unit: "each", Line: 900}
	for _, c := range []struct {
		name   string
		list   []next.Purchase
		want   string
		others int
	}{
		{"nothing", nil, "", 0},
		{"a battery names the list", []next.Purchase{fuse, cable, ends, battery}, "2 x slate", 2},
		{"else what costs most", []next.Purchase{fuse, cable}, "2.5 m cu", 1},
		{"ends go with their cable, or name a list of their own", []next.Purchase{ends}, "4 ends cu", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, others := units{}.mainParts(c.list)
			if strings.Join(got, ", ") != c.want || others != c.others {
				t.Errorf("mainParts = %q and %d others, want %q and %d", got, others, c.want, c.others)
			}
		})
	}
}
