package audit

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// OwnedWh returns the usable energy in Wh of the batteries owned, as the audit counts it.
func OwnedWh(s *scenarios.Scenario, c *catalog.Catalog) float64 {
	return For(s, c).OwnedWh(s.Have)
}

// OwnedWh is the function OwnedWh of other holdings than the scenario's.
func (x *Auditor) OwnedWh(have []scenarios.Holding) float64 {
	s := *x.s
	s.Have = have
	y := *x
	y.s = &s
	return y.of(&plan.Plan{}).ownedWh()
}

// Extra checks a cost of each usable kWh beyond those owned that is stated outside a plan: stated is the figure, in
// currency units, of a cart that costs costUnits and has usableWh.
func Extra(s *scenarios.Scenario, c *catalog.Catalog, stated, costUnits, usableWh float64) plan.Check {
	return For(s, c).Extra(stated, costUnits, usableWh)
}

// Extra is the function Extra of the scenario and the catalogue.
func (x *Auditor) Extra(stated, costUnits, usableWh float64) plan.Check {
	a := x.of(&plan.Plan{})
	a.truly(rulePerKWh, stated, perExtra(costUnits, usableWh-a.ownedWh()), "beyond what is owned")
	return a.worst[rulePerKWh].check
}
