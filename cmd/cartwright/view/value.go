package view

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"cartwright/catalog"
	"cartwright/optimize/value"
	"cartwright/scenarios"
)

// Value shows what a usable kWh of each battery costs and how many of it the cart takes.
type Value struct {
	Scenario *scenarios.Scenario
	Table    *value.Table
	By       string    // one of ValueColumns
	AsOf     time.Time // day by which the age of prices is judged
	Cautions []string
	// Notices says which batteries never share a bus only because the catalogue states no common group.
	Notices []string
}

// valueColumn is something batteries can be sorted by. Without a figure a battery comes last.
type valueColumn struct {
	name   string
	figure func(*value.BatteryValue) (v float64, stated bool)
	most   bool // more is better and comes first
}

// of makes the figure of a column that every battery has.
func of(figure func(*value.BatteryValue) float64) func(*value.BatteryValue) (float64, bool) {
	return func(b *value.BatteryValue) (float64, bool) { return figure(b), true }
}

// valueColumns lists what batteries can be sorted by, the usual one first.
var valueColumns = []valueColumn{
	{"landed", func(b *value.BatteryValue) (float64, bool) {
		if b.Landed == nil {
			return 0, false
		}
		return b.Landed.CostPerUsableKWh, true
	}, false},
	{"extra", func(b *value.BatteryValue) (float64, bool) { return b.CostPerExtraKWh, b.CostPerExtraKWh != 0 }, false},
	{"usable", of(func(b *value.BatteryValue) float64 { return b.CostPerUsableKWh }), false},
	{"life", func(b *value.BatteryValue) (float64, bool) { return b.CostPerLifetimeKWh, b.CostPerLifetimeKWh != 0 }, false},
	{"price", of(func(b *value.BatteryValue) float64 { return b.Price.Units() }), false},
	{"kwh", of(func(b *value.BatteryValue) float64 { return b.UsableKWh }), true},
	{"kg", of(func(b *value.BatteryValue) float64 { return b.KgPerUsableKWh }), false},
	{"litres", of(func(b *value.BatteryValue) float64 { return b.LitresPerUsableKWh }), false},
	{"strings", of(func(b *value.BatteryValue) float64 { return float64(b.Count.Strings) }), true},
	{"modules", of(func(b *value.BatteryValue) float64 { return float64(b.Count.Modules) }), true},
	{"energy", of(energyThatFits), true},
	{"owned", of(func(b *value.BatteryValue) float64 { return b.Owned }), true},
	{"part", nil, false},
}

// ValueColumns returns the names of what batteries can be sorted by.
func ValueColumns() []string {
	var names []string
	for _, c := range valueColumns {
		names = append(names, c.name)
	}
	return names
}

// energyThatFits returns the usable kWh of all modules that fit.
func energyThatFits(b *value.BatteryValue) float64 { return float64(b.Count.Modules) * b.UsableKWh }

// sorted returns the batteries in the order asked for; equal ones stay in the order of the catalogue.
func (v Value) sorted() []value.BatteryValue {
	list := slices.Clone(v.Table.Batteries)
	at := slices.IndexFunc(valueColumns, func(c valueColumn) bool { return c.name == v.By })
	if at < 0 {
		return list
	}
	c := valueColumns[at]
	slices.SortStableFunc(list, func(a, b value.BatteryValue) int {
		if c.figure == nil {
			return strings.Compare(a.Part, b.Part)
		}
		x, has := c.figure(&a)
		y, too := c.figure(&b)
		switch {
		case has != too:
			return map[bool]int{true: -1, false: 1}[has]
		case x == y:
			return 0
		case (x < y) != c.most:
			return -1
		}
		return 1
	})
	return list
}

// sheet shows what energy costs, how much fits, what the landed price consists of, what fits no bus, and
// what the figures mean.
func (v Value) sheet() sheet {
	list := v.sorted()
	if len(list) == 0 {
		none := section{title: "No battery of the catalogue fits the bus of " + v.Scenario.Name + ".", bullets: v.Table.Reasons}
		return append(sheet{none}, v.misfits()...)
	}
	s := append(noticed(sheet{v.answer()}, v.Notices), v.costs(list), v.counts(list), v.landed(list))
	return append(append(append(s, v.misfits()...), v.meanings()), cautions(v.Cautions)...)
}

// costs is the table of what a kWh costs, weighs and takes up.
func (v Value) costs(list []value.BatteryValue) section {
	currency, u := v.Scenario.Currency, unitsOf(v.Scenario)
	t := &table{columns: []column{
		text("battery"), number("price of\none\n" + currency), number("usable\nof one\nkWh"), number("price\n" + currency + "/kWh"),
		number("landed\n" + currency + "/kWh"), number("extra\n" + currency + "/kWh"), number(v.lifeHead() + "\n" + currency + "/kWh"),
		number("mass\n" + u.unit("kg/kWh")), text("owned"),
	}}
	stale := 0
	for i := range list {
		b := &list[i]
		landed := none
		if b.Landed != nil {
			landed = fixed(b.Landed.CostPerUsableKWh, 2)
		}
		life := none
		if b.CostPerLifetimeKWh != 0 {
			life = fixed(b.CostPerLifetimeKWh, lifeDecimals)
		}
		if v.stale(b) {
			stale++
		}
		t.row(b.Part, price(money(b.Price), v.stale(b)), fixed(b.UsableKWh, 2), fixed(b.CostPerUsableKWh, 2), landed, extraText(b.CostPerExtraKWh), life,
			u.fixed(b.KgPerUsableKWh, "kg/kWh"), ownedText(b))
	}
	t.notes = append(t.notes, "Landed: one string ready on the bus. Extra: its cost for each usable kWh beyond the batteries owned today.")
	if stale > 0 {
		t.notes = append(t.notes, staleNote(v.AsOf))
	}
	t.notes = append(t.notes, v.servedNote()...)
	title := fmt.Sprintf("What a usable kWh costs: %s for %s, by %s", count(len(list), "battery", "batteries"), v.Scenario.Name, v.By)
	return section{title: title, table: t}
}

// lifeHead is the heading of what a kWh costs over a battery's life.
func (v Value) lifeHead() string {
	if v.Scenario.Sun != nil {
		return "served"
	}
	return "lifetime"
}

// servedNote says what a served kWh is, of a scenario with sun.
func (v Value) servedNote() []string {
	switch {
	case v.Scenario.Sun == nil:
		return nil
	case v.Table.Beside == nil:
		return []string{"Served: not shown, since no plan meets all limits."}
	}
	return []string{"Served: the price divided by the kWh that a bank with just the energy of the autonomy serves in its life, " +
		"with the inverter and the modules of the cheapest plan."}
}

// stale reports whether the price shown of a battery is too old.
func (v Value) stale(b *value.BatteryValue) bool { return catalog.Part{AsOf: b.AsOf}.Stale(v.AsOf) }

// ownedText says how many are owned and what they may be sold for.
func ownedText(b *value.BatteryValue) string {
	switch {
	case b.Owned == 0:
		return ""
	case b.ForSale == nil:
		return short(b.Owned, 0)
	}
	return short(b.Owned, 0) + ", for sale"
}

// counts is the table of how many fit.
func (v Value) counts(list []value.BatteryValue) section {
	t := &table{columns: []column{
		text("battery"), number("modules\na string"), number("strings\nthat fit"), number("modules\nthat fit"),
		number("usable\nkWh"), number("room\n" + unitsOf(v.Scenario).unit("l/kWh")), text("what leaves no room for one more"),
	}}
	for i := range list {
		b := &list[i]
		if !b.Count.Known {
			t.row(b.Part, strconv.Itoa(b.Series), none, none, none, none, "not counted")
			continue
		}
		t.row(b.Part, strconv.Itoa(b.Series), strconv.Itoa(b.Count.Strings), strconv.Itoa(b.Count.Modules),
			fixed(energyThatFits(b), 2), unitsOf(v.Scenario).fixed(b.LitresPerUsableKWh, "l/kWh"), stopText(b.Count))
	}
	t.notes = []string{
		"The most of each battery, alone on the cart, that meet every limit but autonomy, peak power, recharge and budget, found by " +
			"solving. Of several limits that are named each alone stops one more string, unless it says together.",
	}
	if !v.Table.Complete {
		t.notes = append(t.notes, "NOT COMPLETE: stopped before every battery was counted.")
	}
	return section{title: "How many fit", table: t, bullets: v.Table.Reasons}
}

// stopText says what stops one more string.
func stopText(c value.Count) string {
	words := strings.Join(c.Limits, ", ")
	if c.Jointly {
		words = strings.Join(c.Limits, " and ") + " together"
	}
	if c.Strings == 0 && c.Least > 1 {
		words += fmt.Sprintf(" (fewer than %d do not carry the smallest inverter)", c.Least)
	}
	return words
}

// landed is the table of what the landed price of a string consists of.
func (v Value) landed(list []value.BatteryValue) section {
	t := &table{columns: []column{
		text("battery"), number("modules"), number("wiring"), number("shipping"), number("tax"), number("landed"), text("cable"), text("device"),
	}}
	for i := range list {
		b := &list[i]
		l := b.Landed
		if l == nil {
			t.row(b.Part, none, none, none, none, none, none, none)
			continue
		}
		t.row(b.Part, money(l.Modules), money(l.Wiring), money(l.Shipping), money(l.Tax), money(l.Cost), l.Cable, l.Device)
	}
	return section{title: "What a landed string consists of, in " + v.Scenario.Currency, table: t}
}

// misfits lists the batteries that do not fit the bus.
func (v Value) misfits() sheet {
	if len(v.Table.Misfits) == 0 {
		return nil
	}
	t := &table{columns: []column{text("battery"), text("why it does not fit the bus")}}
	for _, m := range v.Table.Misfits {
		t.row(m.Part, m.Reason)
	}
	return sheet{{title: "What does not fit", table: t}}
}

// meaning says what a figure of the value table is and who says so.
type meaning struct {
	Name   string `json:"name"`
	Is     string `json:"is"`
	Source string `json:"source"`
}

// valueMeanings lists what the figures mean.
var valueMeanings = []meaning{
	{"usable kWh", "capacity x usable fraction x square root of the round trip x (1 - reserve)",
		"Maini and Agrawal, Satellite Technology, Example 4.6; the square root and the reserve: common practice, no source"},
	{"price of a usable kWh", "the least that buys one module, before shipping and tax, / its usable kWh", "common practice, no source"},
	{"landed price of a usable kWh", "one string bought new: modules, its cable and device at the cheapest, shipping, tax, / its usable kWh",
		"common practice, no source"},
	{"price of an extra kWh", "one string bought new, landed, / the usable kWh that are then on one bus beyond those owned today; batteries of no common group do not add up",
		"common practice, no source"},
	{"price of a lifetime kWh", "price of one / (usable kWh x cycle life, or x the cycles used in its calendar years where those are fewer), the throughput cost", "North American Clean Energy, \"Measuring the true costs\", part 2"},
	{"levelised cost of storage", "discounted lifetime cost / discounted lifetime energy, with replacement, operation, charging and the end of life; " +
		"the fuller measure, not computed: what charging costs and how often a cart is cycled is not known",
		"Schmidt, Melchior, Hawkes, Staffell, Joule 3 (2019) 81-100"},
}

// meanings says what the figures mean.
func (v Value) meanings() section {
	var lines []string
	for _, m := range valueMeanings {
		lines = append(lines, fmt.Sprintf("%s: %s. Source: %s.", strings.ToUpper(m.Name[:1])+m.Name[1:], m.Is, m.Source))
	}
	return section{title: "What the figures mean", bullets: lines}
}
