// Package optimize answers what to buy next: given a catalogue and a scenario it ranks complete,
// buildable shopping plans by cost, mass, cost per lifetime kilowatt-hour or usable energy, and proves the
// ranking.
//
// This is the front door: Rank, and what checks or exports the same problem. The questions around a ranking
// have rooms of their own: why, frontier, next, value, compare and doubt.
package optimize

import (
	"context"

	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/rank"
)

// What is asked and answered; see package question.
type (
	Problem = question.Problem // a scenario and the catalogue it is planned from
	Options = question.Options // how to rank; the zero value will do
	Result  = question.Result  // ranked plans, or the reasons why there are none
	Plan    = plan.Plan        // one complete, audited plan
)

// Rank finds the best plans in their order, each audited. Where none is possible the result says so, with the limits that
// have to change; that is not an error. The context limits the time: what is known when it ends is returned.
func Rank(ctx context.Context, p Problem, o Options) (*Result, error) { return rank.Plans(ctx, p, o) }

// Again ranks plans repeatedly as limits change, in less time than Rank takes; see its method Plans.
type Again = rank.Again

// Check reports everything a scenario names that its catalogue lacks. Its error is a *problem.Error.
func Check(p Problem) error { return rank.Check(p) }

// Notices names owned batteries that may not share a bus with alike ones only because no parallel_group is stated.
func Notices(p Problem) []string { return bench.Ungrouped(p) }

// Cautions returns the cautions that go with every plan.
func Cautions() []string { return rank.Cautions() }
