package view

import (
	"fmt"
	"time"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Plans shows a ranking of shopping plans, and one of them in full.
type Plans struct {
	Scenario *scenarios.Scenario
	Catalog  *catalog.Catalog
	Result   *question.Result
	By       question.By
	Distinct question.Distinct
	// Show is the rank of the plan to show in full. 0 is the first; then CSV holds the ranking, where
	// otherwise it holds that plan's bill.
	Show int
	// AsOf is the day that the age of prices is counted to; where it is zero no price is marked as old.
	AsOf time.Time
}

// shown returns the plan to show in full, nil where there is none of that rank.
func (p Plans) shown() *plan.Plan {
	rank := max(p.Show, 1)
	if rank > len(p.Result.Plans) {
		return nil
	}
	return &p.Result.Plans[rank-1]
}

// sheet shows the ranking, the plan in full, its proof and the cautions.
func (p Plans) sheet() sheet {
	if p.Result.Solver.Status == question.Infeasible {
		return append(p.impossible(), cautions(p.Result.Cautions))
	}
	one := p.shown()
	if one == nil {
		return sheet{{title: "No plan for " + p.Scenario.Name + " was found so far."}, p.proof(), cautions(p.Result.Cautions)}
	}
	s := sheet{p.ranking(), p.bill(one)}
	if len(p.Scenario.Have) > 0 {
		s = append(s, p.owned(one))
	}
	s = append(s, wiring(one), p.shelves(one), p.cart(one), p.limits(one), p.proof(), cautions(p.Result.Cautions))
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

// cautions lists what to keep in mind.
func cautions(list []string) section { return section{title: "Cautions", bullets: list} }
