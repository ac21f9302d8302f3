package cli

import (
	"context"
	"fmt"

	"cartwright/cmd/cartwright/deal"
	"cartwright/optimize/next"
	"cartwright/optimize/question"
)

// dealOfPlan ranks plans and takes the one of a rank.
func (a *app) dealOfPlan(ctx context.Context, p question.Problem, rank int) (deal.Deal, error) {
	r, err := a.rank(ctx, p, question.Options{Plans: rank})
	if err != nil {
		return deal.Deal{}, err
	}
	if r.Solver.Status == question.Infeasible {
		return deal.Deal{}, &outcome{code: codeNo, err: fmt.Errorf("no plan for %s meets all limits", p.Scenario.Name),
			hint: "\"cartwright plan\" says which change of a limit makes one possible"}
	}
	if err := ending(p, r); err != nil {
		return deal.Deal{}, err
	}
	if rank > len(r.Plans) {
		return deal.Deal{}, wrong(fmt.Sprintf("give --plan a rank from 1 to %d", len(r.Plans)), "there is no plan %d", rank)
	}
	return deal.OfPlan(&r.Plans[rank-1], r.Cautions), nil
}

// dealOfMonth finds the purchase sequence and takes its months up to one.
func dealOfMonth(ctx context.Context, p question.Problem, month int) (deal.Deal, error) {
	q, err := sequence(ctx, p, next.Options{Months: max(month, next.DefaultMonths)})
	if err != nil {
		return deal.Deal{}, err
	}
	if !q.Complete || len(q.Months) == 0 { // what was bought is not guessed from an order that may be another
		return deal.Deal{}, sequenceEnding(p, q, 0)
	}
	if last := len(q.Months) - 1; month > last {
		return deal.Deal{}, wrong(fmt.Sprintf("give --month a month from 0 to %d", last), "there is no month %d: everything is bought by month %d", month, last)
	}
	return deal.OfMonths(q.Months[:month+1], q.Cautions), nil
}
