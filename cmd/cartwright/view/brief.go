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
	CostPerExtraKWh  float64    `json:"cost_per_extra_kwh,omitempty"`
	Core             coreRecord `json:"core"`
}

// brief returns what a plan amounts to, nil for no plan.
func brief(p *plan.Plan) *briefRecord {
	if p == nil {
		return nil
	}
	return &briefRecord{p.Cost, p.UsableKWh, p.AutonomyH, p.MassKg, p.CostPerUsableKWh, p.CostPerExtraKWh, coreOf(p.Core)}
}
