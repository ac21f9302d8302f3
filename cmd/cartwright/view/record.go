package view

import (
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// plansRecord is the JSON of the plan command, format 1.
type plansRecord struct {
	Format   int               `json:"format"`
	Command  string            `json:"command"`
	Scenario string            `json:"scenario"`
	Currency string            `json:"currency"`
	Rules    string            `json:"rules"`
	Solver   question.Solver   `json:"solver"`
	Plans    []plan.Plan       `json:"plans"`
	Changes  []question.Change `json:"changes,omitempty"` // only where no plan is possible
	// ChangesUnknown: the search was stopped before every change was looked into.
	ChangesUnknown bool     `json:"changes_unknown,omitempty"`
	Reasons        []string `json:"reasons,omitempty"` // where no plan is possible: what stands in the way
	Cautions       []string `json:"cautions"`
}

// record holds everything, unrounded. A list without entries is [], never null.
func (p Plans) record() any {
	r := plansRecord{
		Format:   jsonFormat,
		Command:  "plan",
		Scenario: p.Scenario.Name,
		Currency: p.Scenario.Currency,
		Rules:    string(p.Scenario.Rules),
		Solver:   p.Result.Solver,
		Plans:    []plan.Plan{},
		Changes:  p.Result.Changes,
		Reasons:  p.Result.Reasons,

		ChangesUnknown: p.Result.ChangesUnknown,
		Cautions:       listed(p.Result.Cautions),
	}
	for _, one := range p.Result.Plans {
		one.Core.Batteries = listed(one.Core.Batteries)
		one.Core.Solar = listed(one.Core.Solar)
		one.Bill = listed(one.Bill)
		one.Runs = listed(one.Runs)
		one.Limits = listed(one.Limits)
		one.Audit.Checks = listed(one.Audit.Checks)
		shelves := make([]plan.Shelf, len(one.Shelves))
		for i, s := range one.Shelves {
			s.Batteries = listed(s.Batteries)
			shelves[i] = s
		}
		one.Shelves = shelves
		r.Plans = append(r.Plans, one)
	}
	return r
}

// listed returns the list, or an empty one for nil.
func listed[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}
