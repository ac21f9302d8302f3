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

// demand is a number of sundries of a role.
type demand struct {
	scenarios.Need
	exact bool // of just this rating; else of it or above
}

// serves reports whether a sundry of the role and of a rating meets the demand.
func (d *demand) serves(ratingA float64) bool {
	return ratingA == d.RatingA || ratingA > d.RatingA && !d.exact
}

// demands returns what the scenario asks of sundries: its needs, and its circuits' receptacles. A
// receptacle is of its circuit's rating (NEC 210.21(B), from memory), unless the catalogue has none of it.
func (a *auditor) demands() []demand {
	var demands []demand
	for _, n := range a.s.Needs {
		demands = append(demands, demand{Need: n})
	}
	for i := range a.s.Circuits {
		if r := a.s.Circuits[i].Receptacle; r != nil {
			exact := false
			for _, x := range a.stock.sundries {
				exact = exact || r.RatingA > 0 && x.Role == r.Role && x.RatingA == r.RatingA
			}
			demands = append(demands, demand{scenarios.Need{Role: r.Role, Count: r.Count, RatingA: r.RatingA}, exact})
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
			if other.Role == d.Role && d.serves(other.RatingA) {
				asked += float64(other.Count)
			}
		}
		detail := d.Role
		if d.RatingA > 0 {
			detail = fmt.Sprintf("%s of %g A", d.Role, d.RatingA)
		}
		a.atLeast(ruleNeeds, a.sundriesOf(d.Role, d.serves), asked, detail)
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
		a.atMost(ruleSundries, a.sundriesOf(x.Role, func(float64) bool { return true }), asked, x.Role)
	}
	a.spaces()
}

// sundriesOf returns how many sundries of a role whose rating serves are installed.
func (a *auditor) sundriesOf(role string, serves func(ratingA float64) bool) float64 {
	sum := 0.0
	for _, l := range a.p.Bill {
		x := a.stock.sundries[l.Part]
		if x != nil && l.Kind == string(catalog.KindSundry) && x.Role == role && serves(x.RatingA) {
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
