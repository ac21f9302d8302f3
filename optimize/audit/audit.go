package audit

import (
	"sync"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Plan recomputes a finished plan from its parts and returns every check that applies, in the order of
// Rules. Scenario and catalogue must have passed their readers' checks; the plan may be anything: what can't
// be checked fails, and nothing panics.
func Plan(s *scenarios.Scenario, c *catalog.Catalog, p *plan.Plan) plan.Audit {
	return For(s, c).Plan(p)
}

// An Auditor checks plans of one scenario and catalogue. The sun's year, which is the same for all plans, is worked out
// once. It may be used by several goroutines.
type Auditor struct {
	s     *scenarios.Scenario
	stock *stock
	light func() *light
	stand stander
}

// stander says where the modules of a shelf stand.
type stander func(*scenarios.Shelf, []chassis.Set) []chassis.Standing

// For returns an auditor of a scenario and a catalogue, which must not change from then on.
func For(s *scenarios.Scenario, c *catalog.Catalog) *Auditor {
	return &Auditor{s: s, stock: stockOf(c), light: sync.OnceValue(func() *light { return lightOf(s.Sun) }), stand: chassis.Stand}
}

// of returns an auditor of one plan.
func (x *Auditor) of(p *plan.Plan) *auditor {
	return &auditor{s: x.s, stock: x.stock, light: x.light, stand: x.stand, p: p}
}

// Plan audits a plan: see the function Plan.
func (x *Auditor) Plan(p *plan.Plan) plan.Audit {
	a := x.of(p)
	if !a.figures() {
		return a.audit()
	}
	a.recognise()
	a.installed()
	a.figuresOfSupply()
	a.figuresOfCircuits()
	a.figuresOfYear()
	a.figuresOfRuns()
	a.figuresOfShelves()
	a.figuresOfBalance()
	a.bill()
	a.prices()
	a.costs()
	a.limits()
	return a.audit()
}

// auditor holds the plan under audit, what was recognised of it, and what was found.
type auditor struct {
	findings
	s     *scenarios.Scenario
	stock *stock
	light func() *light
	stand stander
	p     *plan.Plan

	strings  []bank            // of known batteries
	inverter *catalog.Inverter // nil: not known
	units    float64
	array    *array       // nil: none
	demand   *demand      // with the legs as the plan states them; nil: no demand can be had
	hooked   hookup       // the circuits and legs on which the plan has the loads
	year     *year        // of the sun; nil: none
	truth    []plan.Limit // the limits as the plan should list them
}

// bank is a number of equal strings.
type bank struct {
	*catalog.Battery
	count  float64 // strings
	series float64 // modules in each
}

// modules returns the number of modules of a bank.
func (b bank) modules() float64 { return b.count * b.series }

// installed makes the checks of what is on the cart, whatever it cost and whatever figures the plan states.
func (a *auditor) installed() {
	a.core()
	a.circuits()
	a.supply()
	a.solar()
	a.sunYear()
	a.runs()
	a.roles()
	a.busbars()
	a.shelves()
	a.balance()
	a.needs()
}

// limited makes a check and notes it for the plan's own list of limits. Least says that the value must
// reach the limit; else it must not exceed it.
func (a *auditor) limited(rule, name string, value, limit float64, least bool, detail string) {
	if least {
		a.atLeast(rule, value, limit, detail)
	} else {
		a.atMost(rule, value, limit, detail)
	}
	a.note(name, allRules[ruleAt[rule]].Unit, value, limit, least)
}

// note notes a limit as the plan's own list should have it.
func (a *auditor) note(name, unit string, value, limit float64, least bool) {
	slack := limit - value
	if least {
		slack = value - limit
	}
	a.truth = append(a.truth, plan.Limit{Name: name, Value: value, Limit: limit, Unit: unit,
		Slack: slack, Binding: plan.Binds(slack, limit)})
}
