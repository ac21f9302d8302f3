package view

import (
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// NoPlan says in sentences why there is no plan and what has to give for one: the same words as the screen's.
func NoPlan(s *scenarios.Scenario, r *question.Result) []string {
	p := Plans{Scenario: s, Result: r}
	if r.Solver.Status != question.Infeasible {
		return []string{"No plan for " + s.Name + " was found in the time given. That does not mean that there is none."}
	}
	var lines []string
	for _, part := range p.impossible() {
		if part.title != "Proof" && part.title != "" {
			lines = append(lines, part.title)
		}
		if part.title != "Proof" {
			lines = append(append(lines, part.prose...), part.bullets...)
		}
	}
	return lines
}
