package view

import "cartwright/optimize/plan"

// briefRecord is what a plan amounts to, in the JSON of answers that compare many plans:
//
//	{"cost":0,"usable_kwh":0,"autonomy_h":0,"mass_kg":0,"cost_per_usable_kwh":0,"core":{…}}
//
// Its keys mean what they mean in a whole plan.
type briefRecord struct {
	Cost             plan.Money `json:"cost"`
	UsableKWh        float64    `json:"usable_kwh"`
	AutonomyH        float64    `json:"autonomy_h"`
	MassKg           float64    `json:"mass_kg"`
	CostPerUsableKWh float64    `json:"cost_per_usable_kwh"`
	Core             plan.Core  `json:"core"`
}

// brief returns what a plan amounts to, nil for no plan.
func brief(p *plan.Plan) *briefRecord {
	if p == nil {
		return nil
	}
	core := p.Core
	core.Batteries, core.Solar = listed(core.Batteries), listed(core.Solar)
	return &briefRecord{p.Cost, p.UsableKWh, p.AutonomyH, p.MassKg, p.CostPerUsableKWh, core}
}

// whole returns a plan for JSON, where a list without entries is [] and never null; nil for no plan.
func whole(p *plan.Plan) *plan.Plan {
	if p == nil {
		return nil
	}
	q := *p
	q.Core.Batteries, q.Core.Solar = listed(q.Core.Batteries), listed(q.Core.Solar)
	q.Bill, q.Runs, q.Limits = listed(q.Bill), listed(q.Runs), listed(q.Limits)
	q.Audit.Checks = listed(q.Audit.Checks)
	shelves := make([]plan.Shelf, len(q.Shelves))
	for i, s := range q.Shelves {
		s.Batteries = listed(s.Batteries)
		shelves[i] = s
	}
	q.Shelves = shelves
	return &q
}
