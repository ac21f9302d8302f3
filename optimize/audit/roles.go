package audit

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

const (
	ruleThrough    = "shunt and disconnect"
	ruleOneCentre  = "load centre"
	ruleCentreA    = "load-centre rating"
	ruleCentreFits = "load-centre mount"
	ruleSpaces     = "load-centre spaces"
)

var roleRules = []Rule{
	{ruleThrough, "A", "rating of shunt and disconnect >= 1.25 * what flows through the bus bars", "by analogy with NEC 215.3; " + practice},
	{ruleOneCentre, "", "one load centre at most", practice},
	{ruleCentreA, "A", "rating of the load centre >= the feeders' devices together, an inverter's own breaker counted", "NEC 408.36, from memory"},
	{ruleCentreFits, "", "branch breakers are of the mount that the load centre states", fromMaker},
	{ruleSpaces, "each", "poles of the branch breakers, and of feeder breakers of its mount, <= spaces of the load centre, where it states spaces", fromMaker},
}

// The roles of sundries whose rating depends on the current through them.
const (
	roleShunt      = "shunt"
	roleDisconnect = "disconnect"
	roleLoadCentre = "load-centre"
)

// roles checks whether the ratings of shunt, disconnect and load centre are enough for the current through them, and
// whether the load centre takes its breakers.
func (a *auditor) roles() {
	centres := 0.0
	for i := range a.p.Bill {
		l := &a.p.Bill[i]
		x := a.stock.sundries[l.Part]
		if x == nil || l.Kind != string(catalog.KindSundry) || l.Quantity == 0 {
			continue
		}
		switch x.Role {
		case roleShunt, roleDisconnect:
			if a.inverter != nil {
				a.atLeast(ruleThrough, x.RatingA, a.throughA(), x.ID)
			}
		case roleLoadCentre:
			centres += l.Quantity
			a.loadCentre(x)
		}
	}
	if centres > 0 {
		a.atMost(ruleOneCentre, centres, 1, "")
	}
}

// throughA returns the least rating in amperes of what carries the whole bus current.
func (a *auditor) throughA() float64 { return continuous * a.busA() }

// loadCentre checks whether a load centre's rating is enough for the feeders, and whether it takes the breakers.
func (a *auditor) loadCentre(x *catalog.Sundry) {
	fed, poles := 0.0, 0.0
	var strangers []string
	for i := range a.p.Runs {
		r := &a.p.Runs[i]
		d := a.stock.devices[r.Device]
		breaker := d != nil && d.Type == breakerType
		switch scenarios.RunKind(r.Run) {
		case scenarios.RunFeeder:
			rating := 0.0
			if run := a.s.Run(scenarios.RunFeeder); run != nil {
				rating = run.OwnBreakerA
			}
			if d != nil {
				rating = max(rating, d.RatingA)
			}
			fed += float64(r.Count) * rating
			if breaker && x.Mount != "" && d.Mount == x.Mount {
				poles += float64(r.Count * d.Poles)
			}
		case scenarios.RunBranch:
			if !breaker {
				continue
			}
			poles += float64(r.Count * d.Poles)
			if x.Mount != "" && d.Mount != x.Mount {
				strangers = append(strangers, d.ID+" in "+x.ID)
			}
		}
	}
	a.atLeast(ruleCentreA, x.RatingA, fed, x.ID)
	a.none(ruleCentreFits, strangers)
	if x.Spaces > 0 {
		a.limited(ruleSpaces, plan.LimitSpaces, poles, float64(x.Spaces), false, x.ID)
	}
}
