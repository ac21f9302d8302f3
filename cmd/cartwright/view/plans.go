package view

import (
	"fmt"
	"time"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Plans shows a ranking of shopping plans, and one of them at length.
type Plans struct {
	Scenario *scenarios.Scenario
	Catalog  *catalog.Catalog
	Result   *question.Result
	By       question.By
	Distinct question.Distinct
	// Show is the rank of the plan to show. 0 is the first; then CSV holds the ranking, where otherwise it
	// holds that plan's bill.
	Show int
	// Full shows everything of a plan and the ranking; otherwise what is needed to decide and to shop.
	Full bool
	// Asked says that the number of ranks was asked for: all of them are shown.
	Asked bool
	// AsOf is the day by which the age of prices is judged; where it is zero no price is marked as old.
	AsOf time.Time
	// Notices says which batteries never share a bus only because the catalogue states no common group.
	Notices []string
}

// units returns the units the answer is told in.
func (p Plans) units() units { return unitsOf(p.Scenario) }

// shown returns the plan to show, nil where there is none of that rank.
func (p Plans) shown() *plan.Plan {
	rank := max(p.Show, 1)
	if rank > len(p.Result.Plans) {
		return nil
	}
	return &p.Result.Plans[rank-1]
}

// sheet answers first, then shows the ranking, the plan, its proof and the cautions.
func (p Plans) sheet() sheet {
	if p.Result.Solver.Status == question.Infeasible {
		return append(noticed(p.impossible(), p.Notices), cautions(p.Result.Cautions)...)
	}
	one := p.shown()
	if one == nil {
		none := sheet{{title: "No plan for " + p.Scenario.Name + " was found so far."}, p.proof()}
		return append(none, cautions(p.Result.Cautions)...)
	}
	top := p.headline(one)
	top.bullets = sentences(p.Notices)
	s := sheet{top, p.ranking(), p.bill(one)}
	if len(p.Scenario.Have) > 0 {
		s = append(s, p.owned(one))
	}
	s = append(s, p.built(one)...)
	return append(append(s, p.proof()), cautions(p.Result.Cautions)...)
}

// built shows how a plan is put together: its wiring and its year; at length also what is connected, where
// things stand and the limits.
func (p Plans) built(one *plan.Plan) sheet {
	s := sheet{p.wiring(one)}
	if p.Full {
		if len(one.Circuits) > 0 {
			s = append(s, p.circuits(one))
		}
		s = append(s, p.stands(one)...)
	}
	if one.Year != nil {
		s = append(s, p.year(one))
	}
	if p.Full {
		s = append(s, p.limits(one))
	}
	return s
}

// name returns the name of a part, or its id where the catalogue has no name for it.
func (p Plans) name(id string) string {
	if e, ok := p.Catalog.Find(id); ok && e.Name != "" {
		return e.Name
	}
	return id
}

// detailTitle returns the title of a section about one plan.
func detailTitle(one *plan.Plan, about string) string {
	return fmt.Sprintf("Plan %d: %s", one.Rank, about)
}
