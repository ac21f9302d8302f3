package view

import (
	"fmt"
	"strings"

	"cartwright/optimize/question"
)

// aims says in what no other plan is better than a proven first one.
var aims = map[question.By]string{
	question.ByCost:   "costs less",
	question.ByMass:   "is lighter",
	question.ByLife:   "costs less per lifetime kWh",
	question.ByEnergy: "has more usable energy",
}

// differences names what another plan has to differ in.
var differences = map[question.Distinct]string{
	question.DistinctCore:    "choice of batteries and inverter",
	question.DistinctBattery: "choice of kinds of battery",
}

// stops says why the search ended without a proof.
var stops = map[question.Status]string{
	question.TimeLimit:   "the search was stopped by the time limit or by hand",
	question.MemoryLimit: "more choices were open at once than memory is kept for, and the least likely were dropped",
	question.GaveUp:      "the solver gave up",
}

// Work says who searched, and how many certificates were checked.
func Work(s question.Solver) string {
	return fmt.Sprintf("Found by %s %s: %s, each checked in exact arithmetic.", s.Name, s.Version,
		count(s.Proofs, "proof", "proofs"))
}

// Besides says what a ranking rests on besides its proofs.
const Besides = "Choices left out unsolved rest on bounds in ordinary arithmetic, which tests hold against solved programs."

// Proved says in sentences how far a ranking is proved.
func Proved(r *question.Result) []string {
	by := Work(r.Solver) + " " + Besides
	if r.Solver.Status == question.Optimal {
		return []string{"Proven: no other plan costs less than the first, and each rank is the next best choice of batteries and inverter.", by}
	}
	return []string{"Not proven: the search was stopped. Ranks so marked are the best found so far.", by}
}

// proven returns up to which rank the plans are proved.
func (p Plans) proven() int {
	n := 0
	for n < len(p.Result.Plans) && p.Result.Plans[n].Proven {
		n++
	}
	return n
}

// ranks returns "rank" or "3 ranks", to follow "the first".
func ranks(n int) string {
	if n == 1 {
		return "rank"
	}
	return fmt.Sprintf("%d ranks", n)
}

// proof says how far the ranking is proven, and which engine found it.
func (p Plans) proof() section {
	s := p.Result.Solver
	work := Work(s)
	var lines []string
	switch {
	case s.Status == question.Optimal && len(p.Result.Plans) == 1:
		lines = []string{"Proven: no other plan " + aims[p.By] + "."}
	case s.Status == question.Optimal:
		lines = []string{"Proven: no other plan " + aims[p.By] + " than the first, and each rank is the next best " +
			differences[p.Distinct] + "."}
	case len(p.Result.Plans) == 0:
		lines = []string{"No plan was found: " + stops[s.Status] + ". That does not mean that there is none."}
	case p.proven() > 0:
		lines = []string{
			fmt.Sprintf("Proven: the first %s; no other plan %s than the first.", ranks(p.proven()), aims[p.By]),
			"NOT PROVEN: the rest; " + stops[s.Status] + ". Those marked are the best found so far.",
		}
		if p.proven() == len(p.Result.Plans) {
			lines[1] = "Further ranks were not reached: " + stops[s.Status] + "."
		}
	default:
		lines = []string{"NOT PROVEN: " + stops[s.Status] + ". These are the best plans found so far."}
	}
	if s.Status != question.Optimal && s.Gap > 0 {
		lines = append(lines, fmt.Sprintf("A plan better by up to %s %% may exist.", fixed(100*s.Gap, 1)))
	}
	lines = append(lines, work)
	if p.Full {
		lines = append(lines, Besides)
	}
	for _, r := range s.Retries {
		lines = append(lines, "Solver trouble: "+r+".")
	}
	if one := p.shown(); one != nil {
		passed := 0
		for _, c := range one.Audit.Checks {
			if c.Passed {
				passed++
			}
		}
		checks := fmt.Sprintf("Audit of plan %d: %d of %d checks passed", one.Rank, passed, len(one.Audit.Checks))
		if p.Full {
			checks += ", without the solver"
		}
		lines = append(lines, checks+".")
	}
	if !p.Full {
		lines = []string{strings.Join(lines, " ")}
	}
	return section{title: "Proof", prose: lines}
}
