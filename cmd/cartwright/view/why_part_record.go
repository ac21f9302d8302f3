package view

import (
	"cartwright/optimize/plan"
)

// whyPartRecord is the JSON of why --part, format 1:
//
//	{"format":1,"command":"why","scenario":"…","currency":"USD","rules":"nec",
//	 "part":"…","unit":"each","in_best":false,"possible":true,"costs_more":0,"over_budget":0,"price":0,
//	 "enters_at":0,"quantity_then":1,"stays_out":false,
//	 "kept_out_by":[],"unfit":false,"best":{…},"with":{…},"at":{…},"cautions":["…"]}
//
// Plans are brief: cost, usable_kwh, autonomy_h, mass_kg, cost_per_usable_kwh, core; best is the cheapest
// plan, with the cheapest that has the part, by over_budget dearer than the budget allows, at the cheapest
// that has it at the price enters_at. A plan that there is not is left out, and so are enters_at and
// quantity_then (how much of the part is bought then) where no price makes the part enter or none has to;
// stays_out tells that it stays out even as a gift. Where no plan has the part, kept_out_by names the limits
// without any one of which some plan could, unfit that none could whatever the limits, and reasons which conditions the part does not meet. Prices are of one, or of a metre of cable.
type whyPartRecord struct {
	heading
	Part         string       `json:"part"`
	Unit         string       `json:"unit"`
	InBest       bool         `json:"in_best"`
	Possible     bool         `json:"possible"`
	CostsMore    float64      `json:"costs_more"`
	OverBudget   plan.Money   `json:"over_budget"`
	Price        float64      `json:"price"`
	EntersAt     *float64     `json:"enters_at,omitempty"`
	QuantityThen *float64     `json:"quantity_then,omitempty"`
	StaysOut     bool         `json:"stays_out"`
	KeptOutBy    []string     `json:"kept_out_by"`
	Unfit        bool         `json:"unfit"`
	Reasons      []string     `json:"reasons,omitempty"`
	Best         *briefRecord `json:"best,omitempty"`
	With         *briefRecord `json:"with,omitempty"`
	At           *briefRecord `json:"at,omitempty"`
	Cautions     []string     `json:"cautions"`
}

// record holds everything, unrounded.
func (w WhyPart) record() any {
	a := w.Answer
	r := whyPartRecord{
		heading: headingOf("why", w.Scenario), Part: a.Part, Unit: w.unit(), InBest: a.InBest, Possible: a.With != nil,
		CostsMore: a.Costs, Price: a.Price, StaysOut: a.StaysOut,
		KeptOutBy: listed(a.KeptOutBy), Unfit: a.Unfit, Reasons: a.Reasons, Best: brief(a.Best), With: brief(a.With), Cautions: listed(w.Cautions),
	}
	if a.With != nil {
		r.OverBudget = max(0, w.overBudget())
	}
	if a.Priced {
		_, buys := w.quantities(a.At)
		r.EntersAt, r.QuantityThen, r.At = &a.EntersAt, &buys, brief(a.At)
	}
	return r
}

// records holds one compared plan a row.
func (w WhyPart) records() [][]string {
	rows := [][]string{{"plan", "part", "quantity", "unit", "price", "cost", "currency", "usable_kwh", "autonomy_h", "mass_kg",
		"batteries", "inverter"}}
	for _, c := range w.plans() {
		has, _ := w.quantities(c.plan)
		price := w.Answer.Price
		if c.plan == w.Answer.At {
			price = w.Answer.EntersAt
		}
		rows = append(rows, []string{c.label, w.Answer.Part, exact(has), w.unit(), exact(price), money(c.plan.Cost),
			w.Scenario.Currency, exact(c.plan.UsableKWh), exact(c.plan.AutonomyH), exact(c.plan.MassKg),
			batteries(c.plan.Core), inverter(c.plan.Core)})
	}
	return rows
}
