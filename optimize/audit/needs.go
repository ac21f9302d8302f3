package audit

import (
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

const (
	ruleNeeds    = "needs"
	ruleSundries = "sundries"
	ruleSpaces   = "load-centre spaces"
)

var needRules = []Rule{
	{ruleNeeds, "", "of each role at least as many sundries as needs and receptacles ask for, of the ratings they ask for", fromScenario},
	{ruleSundries, "", "of each role no more sundries than asked for", fromScenario},
	{ruleSpaces, "each", "poles of the branch breakers <= spaces of the load centres, where all of them state spaces", fromMaker},
}

// roleLoadCentre is the role of a sundry whose spaces the branch breakers take.
const roleLoadCentre = "load-centre"

// demands returns what the scenario asks of sundries: its needs and its circuits' receptacles.
func (a *auditor) demands() []scenarios.Need {
	demands := append([]scenarios.Need(nil), a.s.Needs...)
	for i := range a.s.Circuits {
		if r := a.s.Circuits[i].Receptacle; r != nil {
			demands = append(demands, scenarios.Need{Role: r.Role, Count: r.Count, RatingA: r.RatingA})
		}
	}
	return demands
}

// needs tells whether the sundries on the bill are what is asked for. Sundries of a role serve by rating:
// those asked for at a rating or above must be met by those that have it.
func (a *auditor) needs() {
	demands := a.demands()
	for _, d := range demands {
		asked := 0.0
		for _, other := range demands {
			if other.Role == d.Role && other.RatingA >= d.RatingA {
				asked += float64(other.Count)
			}
		}
		detail := d.Role
		if d.RatingA > 0 {
			detail = fmt.Sprintf("%s of %g A", d.Role, d.RatingA)
		}
		a.atLeast(ruleNeeds, a.sundriesOf(d.Role, d.RatingA), asked, detail)
	}
	for _, l := range a.p.Bill {
		x := a.stock.sundries[l.Part]
		if x == nil || l.Kind != string(catalog.KindSundry) {
			continue
		}
		asked := 0.0
		for _, d := range demands {
			if d.Role == x.Role {
				asked += float64(d.Count)
			}
		}
		a.atMost(ruleSundries, a.sundriesOf(x.Role, 0), asked, x.Role)
	}
	a.spaces()
}

// sundriesOf returns how many sundries of a role and at least a rating are installed.
func (a *auditor) sundriesOf(role string, ratingA float64) float64 {
	sum := 0.0
	for _, l := range a.p.Bill {
		x := a.stock.sundries[l.Part]
		if x != nil && l.Kind == string(catalog.KindSundry) && x.Role == role && x.RatingA >= ratingA {
			sum += l.Quantity
		}
	}
	return sum
}

// spaces tells whether the branch breakers fit into the load centres. Not told where there is no load
// centre, or one that states no spaces.
func (a *auditor) spaces() {
	spaces, centres := 0.0, 0.0
	for _, l := range a.p.Bill {
		x := a.stock.sundries[l.Part]
		if x == nil || x.Role != roleLoadCentre || l.Quantity == 0 {
			continue
		}
		if x.Spaces == 0 {
			return
		}
		spaces += l.Quantity * float64(x.Spaces)
		centres += l.Quantity
	}
	if centres == 0 {
		return
	}
	poles := 0.0
	for _, r := range a.p.Runs {
		d := a.stock.devices[r.Device]
		if r.Run == string(scenarios.RunBranch) && d != nil && d.Type == "breaker" {
			poles += float64(r.Count) * float64(d.Poles)
		}
	}
	a.limited(ruleSpaces, plan.LimitSpaces, poles, spaces, false, "")
}
