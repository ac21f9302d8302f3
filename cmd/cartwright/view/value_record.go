package view

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"cartwright/optimize/plan"
	"cartwright/optimize/value"
)

// valueRecord is the JSON of the value command, format 1:
//
//	{"format":1,"command":"value","scenario":"…","currency":"USD","rules":"nec","by":"landed","complete":true,
//	 "batteries":[{"part":"…","name":"…","chemistry":"…","series":1,
//	   "price":0,"vendor":"","as_of":"2026-10-12","stale":false,
//	   "usable_kwh":0,"price_per_usable_kwh":0,"landed_per_extra_kwh":0,"price_per_lifetime_kwh":0,"kg_per_usable_kwh":0,
//	   "litres_per_usable_kwh":0,
//	   "landed":{"modules":0,"wiring":0,"shipping":0,"tax":0,"cost":0,"cost_per_usable_kwh":0,
//	             "vendor":"","cable":"…","device":"…"},
//	   "fits":{"strings":0,"modules":0,"limits":["mass"],"jointly":true,"least":2},
//	   "owned":0,"for_sale":0}],
//	 "misfits":[{"part":"…","reason":"…"}],"reasons":["…"],
//	 "meanings":[{"name":"…","is":"…","source":"…"}],"notices":["…"],"cautions":["…"]}
//
// Batteries come in the order asked for. Series is modules in a string; price, usable_kwh and owned are of
// one module, landed is of one string. Complete is false where it was stopped before every battery was counted; those
// that were not have no fits. Where neither cycle life nor calendar years are stated there is no price_per_lifetime_kwh;
// where no cable and device serve, no landed; where nothing is for sale, no for_sale. Limits stop one more string:
// each by itself, or where jointly, only all together; least is the fewest strings that carry the smallest
// inverter, where that is more than one. Reasons say what the catalogue has nothing for.
type valueRecord struct {
	heading
	By        string          `json:"by"`
	Complete  bool            `json:"complete"`
	Batteries []batteryRecord `json:"batteries"`
	Misfits   []misfitRecord  `json:"misfits"`
	Reasons   []string        `json:"reasons"`
	Meanings  []meaning       `json:"meanings"`
	Notices   []string        `json:"notices"` // what keeps batteries apart that could stand together
	Cautions  []string        `json:"cautions"`
}

// batteryRecord is a battery that fits the bus.
type batteryRecord struct {
	Part               string        `json:"part"`
	Name               string        `json:"name"`
	Chemistry          string        `json:"chemistry"`
	Series             int           `json:"series"`
	Price              plan.Money    `json:"price"`
	Vendor             string        `json:"vendor"`
	UsableKWh          float64       `json:"usable_kwh"`
	CostPerUsableKWh   float64       `json:"price_per_usable_kwh"`
	CostPerExtraKWh    float64       `json:"landed_per_extra_kwh,omitempty"` // beyond what is owned today
	CostPerLifetimeKWh float64       `json:"price_per_lifetime_kwh,omitempty"`
	KgPerUsableKWh     float64       `json:"kg_per_usable_kwh"`
	LitresPerUsableKWh float64       `json:"litres_per_usable_kwh"`
	Landed             *landedRecord `json:"landed,omitempty"`
	Fits               *fitsRecord   `json:"fits,omitempty"`
	Owned              float64       `json:"owned"`
	ForSale            *plan.Money   `json:"for_sale,omitempty"`
	AsOf               string        `json:"as_of"` // "" where not stated
	Stale              bool          `json:"stale"`
}

// landedRecord is what a string costs ready on the bus.
type landedRecord struct {
	Modules          plan.Money `json:"modules"`
	Wiring           plan.Money `json:"wiring"`
	Shipping         plan.Money `json:"shipping"`
	Tax              plan.Money `json:"tax"`
	Cost             plan.Money `json:"cost"`
	CostPerUsableKWh float64    `json:"cost_per_usable_kwh"`
	Vendor           string     `json:"vendor"`
	Cable            string     `json:"cable,omitempty"`
	Device           string     `json:"device,omitempty"`
}

// fitsRecord is how many of a battery the cart takes, and what stops one more.
type fitsRecord struct {
	Strings int      `json:"strings"`
	Modules int      `json:"modules"`
	Limits  []string `json:"limits"`
	Jointly bool     `json:"jointly,omitempty"`
	Least   int      `json:"least,omitempty"`
}

// misfitRecord is a battery that does not fit the bus.
type misfitRecord struct {
	Part   string `json:"part"`
	Reason string `json:"reason"`
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
	return valueRecord{
		heading: headingOf("value", v.Scenario), By: v.By, Complete: v.Table.Complete, Batteries: each(v.sorted(), v.batteryOf),
		Misfits: each(v.Table.Misfits, func(m value.Misfit) misfitRecord { return misfitRecord(m) }), Reasons: listed(v.Table.Reasons),
		Meanings: valueMeanings, Cautions: listed(v.Cautions), Notices: listed(v.Notices),
	}
}

func (v Value) batteryOf(b value.BatteryValue) batteryRecord {
	r := batteryRecord{
		Part: b.Part, Name: b.Name, Chemistry: b.Chemistry, Series: b.Series, Price: b.Price, Vendor: b.Vendor,
		UsableKWh: b.UsableKWh, CostPerUsableKWh: b.CostPerUsableKWh, CostPerExtraKWh: b.CostPerExtraKWh, CostPerLifetimeKWh: b.CostPerLifetimeKWh,
		KgPerUsableKWh: b.KgPerUsableKWh, LitresPerUsableKWh: b.LitresPerUsableKWh,
		Owned: b.Owned, ForSale: b.ForSale, AsOf: dayText(b.AsOf), Stale: v.stale(&b),
	}
	if n := b.Count; n.Known {
		r.Fits = &fitsRecord{Strings: n.Strings, Modules: n.Modules, Limits: listed(n.Limits), Jointly: n.Jointly, Least: n.Least}
	}
	if b.Landed != nil {
		landed := landedRecord(*b.Landed)
		r.Landed = &landed
	}
	return r
}

// records holds a battery a row, those that do not fit the bus last and with the reason only.
func (v Value) records() [][]string {
	rows := [][]string{{"part", "name", "chemistry", "series", "price", "vendor", "as_of", "stale", "usable_kwh",
		"price_per_usable_kwh", "price_per_lifetime_kwh", "kg_per_usable_kwh", "litres_per_usable_kwh",
		"landed_modules", "landed_wiring", "landed_shipping", "landed_tax", "landed_cost", "landed_per_usable_kwh", "cable", "device",
		"fits_strings", "fits_modules", "limits", "jointly", "owned", "for_sale", "currency", "misfit", "landed_per_extra_kwh"}}
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
		fits := []string{"", "", "", ""}
		if n := b.Count; n.Known {
			fits = []string{strconv.Itoa(n.Strings), strconv.Itoa(n.Modules), strings.Join(n.Limits, " + "), fmt.Sprint(n.Jointly)}
		}
		row = append(append(append(row, landed...), fits...), exact(b.Owned), sale, v.Scenario.Currency, "", orEmpty(b.CostPerExtraKWh))
		rows = append(rows, row)
	}
	for _, m := range v.Table.Misfits {
		row := make([]string, len(rows[0]))
		row[0], row[len(row)-2] = m.Part, m.Reason
		rows = append(rows, row)
	}
	return rows
}
