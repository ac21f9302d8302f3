package view

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"cartwright/optimize/value"
)

// valueRecord is the JSON of the value command, format 1:
//
//	{"format":1,"command":"value","scenario":"…","currency":"USD","rules":"nec","by":"landed",
//	 "batteries":[{"part":"…","name":"…","chemistry":"…","series":1,
//	   "price":0,"vendor":"","as_of":"2026-10-12","stale":false,
//	   "usable_kwh":0,"price_per_usable_kwh":0,"price_per_lifetime_kwh":0,"kg_per_usable_kwh":0,
//	   "litres_per_usable_kwh":0,
//	   "landed":{"modules":0,"wiring":0,"shipping":0,"tax":0,"cost":0,"cost_per_usable_kwh":0,
//	             "vendor":"","cable":"…","device":"…"},
//	   "fits":{"strings":0,"modules":0,"limits":["mass"],"jointly":true,"least":2},
//	   "owned":0,"for_sale":0}],
//	 "misfits":[{"part":"…","reason":"…"}],"reasons":["…"],
//	 "meanings":[{"name":"…","is":"…","source":"…"}],"cautions":["…"]}
//
// Batteries come in the order asked for. Series is modules in a string; price, usable_kwh and owned are of
// one module, landed is of one string. Where no cycle life is stated there is no price_per_lifetime_kwh; where
// no cable and device serve, no landed; where nothing is for sale, no for_sale. Limits stop one string more:
// each by itself, or where jointly, only all together; least is the fewest strings that carry the smallest
// inverter, where that is more than one. Reasons say what the catalogue has nothing for.
type valueRecord struct {
	Format    int             `json:"format"`
	Command   string          `json:"command"`
	Scenario  string          `json:"scenario"`
	Currency  string          `json:"currency"`
	Rules     string          `json:"rules"`
	By        string          `json:"by"`
	Batteries []batteryRecord `json:"batteries"`
	leftOut
	Meanings []meaning `json:"meanings"`
	Cautions []string  `json:"cautions"`
}

// leftOut is what of the catalogue has no figures.
type leftOut struct {
	Misfits []value.Misfit `json:"misfits"`
	Reasons []string       `json:"reasons"`
}

// batteryRecord is a battery in JSON.
type batteryRecord struct {
	value.BatteryValue
	AsOf  string `json:"as_of"` // "" where not stated
	Stale bool   `json:"stale"`
}

// dayText returns a date, or nothing where none is stated.
func dayText(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.DateOnly)
}

// record holds everything, unrounded.
func (v Value) record() any {
	r := valueRecord{
		Format: jsonFormat, Command: "value", Scenario: v.Scenario.Name, Currency: v.Scenario.Currency,
		Rules: string(v.Scenario.Rules), By: v.By, Batteries: []batteryRecord{},
		leftOut:  leftOut{listed(v.Table.Misfits), listed(v.Table.Reasons)},
		Meanings: valueMeanings, Cautions: listed(v.Cautions),
	}
	for _, b := range v.sorted() {
		b.Count.Limits = listed(b.Count.Limits)
		r.Batteries = append(r.Batteries, batteryRecord{b, dayText(b.AsOf), v.stale(&b)})
	}
	return r
}

// records holds a battery a row, those that do not fit the bus last and with the reason only.
func (v Value) records() [][]string {
	rows := [][]string{{"part", "name", "chemistry", "series", "price", "vendor", "as_of", "stale", "usable_kwh",
		"price_per_usable_kwh", "price_per_lifetime_kwh", "kg_per_usable_kwh", "litres_per_usable_kwh",
		"landed_modules", "landed_wiring", "landed_shipping", "landed_tax", "landed_cost", "landed_per_usable_kwh", "cable", "device",
		"fits_strings", "fits_modules", "limits", "jointly", "owned", "for_sale", "currency", "misfit"}}
	for _, b := range v.sorted() {
		life, sale := "", ""
		if b.CostPerLifetimeKWh != 0 {
			life = exact(b.CostPerLifetimeKWh)
		}
		if b.ForSale != nil {
			sale = money(*b.ForSale)
		}
		landed := []string{"", "", "", "", "", "", "", ""}
		if l := b.Landed; l != nil {
			landed = []string{money(l.Modules), money(l.Wiring), money(l.Shipping), money(l.Tax), money(l.Cost),
				exact(l.CostPerUsableKWh), l.Cable, l.Device}
		}
		row := []string{b.Part, b.Name, b.Chemistry, strconv.Itoa(b.Series), money(b.Price), b.Vendor, dayText(b.AsOf),
			fmt.Sprint(v.stale(&b)), exact(b.UsableKWh), exact(b.CostPerUsableKWh), life, exact(b.KgPerUsableKWh), exact(b.LitresPerUsableKWh)}
		row = append(append(row, landed...), strconv.Itoa(b.Count.Strings), strconv.Itoa(b.Count.Modules),
			strings.Join(b.Count.Limits, " + "), fmt.Sprint(b.Count.Jointly), exact(b.Owned), sale, v.Scenario.Currency, "")
		rows = append(rows, row)
	}
	for _, m := range v.Table.Misfits {
		row := make([]string, len(rows[0]))
		row[0], row[len(row)-1] = m.Part, m.Reason
		rows = append(rows, row)
	}
	return rows
}
