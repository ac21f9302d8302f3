package view

import (
	"math"
	"strconv"
	"strings"

	"cartwright/optimize/compare"
	"cartwright/optimize/plan"
)

// compareRecord is the JSON of the compare command, format 1:
//
//	{"format":1,"command":"compare","scenario":"…","currency":"USD","rules":"nec","complete":true,"owned_kwh":0,
//	 "choices":[{"buy":[{"part":"…","count":2}],"possible":true,"kept":[…],
//	   "left":[{"part":"…","count":1,"reason":"…"}],"cost":0,"usable_kwh":0,"autonomy_h":0,"mass_kg":0,"mass_left_kg":0,
//	   "cost_per_extra_kwh":0,"cost_per_lifetime_kwh":0,"month":0,"binding":["mass"],"plan":{…},
//	   "reasons":["…"],"changes":[{"limits":[…]}]}],"notices":["…"],"cautions":["…"]}
//
// Nothing bought comes first. A choice that is not possible has reasons or changes and no figures; month is absent
// where savings never reach the cost, mass_left_kg where no limit of mass is given.
type compareRecord struct {
	heading
	Complete bool           `json:"complete"` // false: stopped before every choice was worked out
	OwnedKWh float64        `json:"owned_kwh"`
	Choices  []choiceRecord `json:"choices"`
	Notices  []string       `json:"notices"` // what keeps batteries apart that could stand together
	Cautions []string       `json:"cautions"`
}

type choiceRecord struct {
	Buy                []countRecord  `json:"buy"`
	Possible           bool           `json:"possible"`
	Kept               []countRecord  `json:"kept"`
	Left               []leftRecord   `json:"left"`
	Cost               *plan.Money    `json:"cost,omitempty"`
	UsableKWh          float64        `json:"usable_kwh,omitempty"`
	AutonomyH          float64        `json:"autonomy_h,omitempty"`
	MassKg             float64        `json:"mass_kg,omitempty"`
	MassLeftKg         *float64       `json:"mass_left_kg,omitempty"`
	CostPerUsableKWh   float64        `json:"cost_per_usable_kwh,omitempty"`
	CostPerExtraKWh    float64        `json:"cost_per_extra_kwh,omitempty"`
	CostPerLifetimeKWh float64        `json:"cost_per_lifetime_kwh,omitempty"`
	Month              *int           `json:"month,omitempty"`
	Binding            []string       `json:"binding"`
	Plan               *planRecord    `json:"plan,omitempty"`
	Reasons            []string       `json:"reasons"`
	Changes            []changeRecord `json:"changes"`
}

type countRecord struct {
	Part  string `json:"part"`
	Count int    `json:"count"`
}

type leftRecord struct {
	Part   string `json:"part"`
	Count  int    `json:"count"`
	Reason string `json:"reason"`
}

// record holds everything, unrounded.
func (c Compare) record() any {
	return compareRecord{heading: headingOf("compare", c.Scenario), Complete: c.Table.Complete, OwnedKWh: c.Table.OwnedKWh,
		Choices: each(c.Table.Outcomes, c.choiceOf), Cautions: listed(c.Cautions), Notices: listed(c.Notices)}
}

func (c Compare) choiceOf(o compare.Outcome) choiceRecord {
	counts := func(l compare.Line) countRecord { return countRecord(l) }
	r := choiceRecord{Buy: each(o.Buy, counts), Possible: o.Plan != nil, Kept: each(o.Kept, counts),
		Left: each(o.Left, func(l compare.Left) leftRecord { return leftRecord(l) }), Binding: []string{},
		Plan: whole(o.Plan), Reasons: listed(o.Reasons), Changes: each(o.Changes, changeOf)}
	p := o.Plan
	if p == nil {
		return r
	}
	r.Cost, r.UsableKWh, r.AutonomyH, r.MassKg = &p.Cost, p.UsableKWh, p.AutonomyH, p.MassKg
	r.CostPerUsableKWh, r.CostPerExtraKWh, r.CostPerLifetimeKWh = p.CostPerUsableKWh, p.CostPerExtraKWh, p.CostPerLifetimeKWh
	r.Binding = binds(p)
	if kg := c.spareKg(p); !math.IsInf(kg, 1) {
		r.MassLeftKg = &kg
	}
	if o.Reached {
		r.Month = &o.Month
	}
	return r
}

// records holds a choice a row.
func (c Compare) records() [][]string {
	rows := [][]string{{"buy", "possible", "usable_kwh", "autonomy_h", "mass_kg", "mass_left_kg", "cost", "currency",
		"cost_per_extra_kwh", "month", "cost_per_lifetime_kwh", "binding", "batteries", "inverter", "left", "reasons"}}
	for i := range c.Table.Outcomes {
		o := &c.Table.Outcomes[i]
		row := make([]string, len(rows[0]))
		row[0], row[1], row[7] = label(o), strconv.FormatBool(o.Plan != nil), c.Scenario.Currency
		if p := o.Plan; p == nil {
			row[15] = strings.Join(c.reasons(o), "; ")
		} else {
			row[2], row[3], row[4], row[6] = exact(p.UsableKWh), exact(p.AutonomyH), exact(p.MassKg), money(p.Cost)
			if kg := c.spareKg(p); !math.IsInf(kg, 1) {
				row[5] = exact(kg)
			}
			if p.CostPerExtraKWh != 0 {
				row[8] = exact(p.CostPerExtraKWh)
			}
			if o.Reached {
				row[9] = strconv.Itoa(o.Month)
			}
			if p.CostPerLifetimeKWh != 0 {
				row[10] = exact(p.CostPerLifetimeKWh)
			}
			row[11], row[12], row[13] = strings.Join(binds(p), " + "), batteries(p.Core), inverter(p.Core)
			var left []string
			for _, l := range o.Left {
				left = append(left, strconv.Itoa(l.Count)+" x "+l.Part+": "+l.Reason)
			}
			row[14] = strings.Join(left, "; ")
		}
		rows = append(rows, row)
	}
	return rows
}
