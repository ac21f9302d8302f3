package view

import (
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// heading is what the JSON of every answer about a scenario begins with.
type heading struct {
	Format   int    `json:"format"`
	Command  string `json:"command"`
	Scenario string `json:"scenario"`
	Currency string `json:"currency"`
	Rules    string `json:"rules"`
}

func headingOf(command string, s *scenarios.Scenario) heading {
	return heading{jsonFormat, command, s.Name, s.Currency, string(s.Rules)}
}

// plansRecord is the JSON of the plan command, format 1.
type plansRecord struct {
	heading
	Solver  solverRecord   `json:"solver"`
	Plans   []planRecord   `json:"plans"`
	Changes []changeRecord `json:"changes,omitempty"` // only where no plan is possible
	// ChangesUnknown: the search was stopped before every change was looked into.
	ChangesUnknown bool     `json:"changes_unknown,omitempty"`
	Reasons        []string `json:"reasons,omitempty"` // where no plan is possible: what stands in the way
	Notices        []string `json:"notices"`           // what keeps batteries apart that could stand together
	Cautions       []string `json:"cautions"`
}

// solverRecord is what was solved, by what, in which time.
type solverRecord struct {
	Name    string          `json:"name"`
	Version string          `json:"version"`
	Status  question.Status `json:"status"`
	Seconds float64         `json:"seconds"`
	Models  int             `json:"models"`
	Proofs  int             `json:"proofs"` // certificates that were checked and passed
	Cells   int             `json:"cells"`
	Gap     float64         `json:"gap,omitempty"`
	Retries []string        `json:"retries,omitempty"`
}

// changeRecord is a change of limits that makes a plan possible: of one, or of several together.
type changeRecord struct {
	Limits []limitChangeRecord `json:"limits"`
}

type limitChangeRecord struct {
	Name string  `json:"name"`
	From float64 `json:"from"`
	To   float64 `json:"to"`
	Unit string  `json:"unit"`
}

func changeOf(c question.Change) changeRecord { return changeRecord{limitChanges(c.Limits)} }

func limitChanges(list []question.LimitChange) []limitChangeRecord {
	return each(list, func(l question.LimitChange) limitChangeRecord { return limitChangeRecord(l) })
}

// purchaseRecord is one thing bought or sold.
type purchaseRecord struct {
	Part      string     `json:"part"`
	Kind      string     `json:"kind"`
	Quantity  float64    `json:"quantity"`
	Unit      string     `json:"unit"`
	Vendor    string     `json:"vendor"`
	UnitPrice float64    `json:"unit_price"`
	Line      plan.Money `json:"line"`
}

func purchases(list []next.Purchase) []purchaseRecord {
	return each(list, func(p next.Purchase) purchaseRecord { return purchaseRecord(p) })
}

// record holds everything, unrounded.
func (p Plans) record() any {
	r := p.Result
	return plansRecord{
		heading: headingOf("plan", p.Scenario), Solver: solverRecord(r.Solver),
		Plans:   each(r.Plans, func(one plan.Plan) planRecord { return *whole(&one) }),
		Changes: each(r.Changes, changeOf), ChangesUnknown: r.ChangesUnknown, Reasons: r.Reasons, Cautions: listed(r.Cautions), Notices: listed(p.Notices),
	}
}

// listed returns the list, or an empty one for nil.
func listed[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}
