package search

import (
	"context"
	"math"
	"sync"

	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/milp"
	"cartwright/optimize/model"
	"cartwright/optimize/question"
)

// solveAll solves cores in parallel and adds the plans found to the nodes.
func (r *ranking) solveAll(ctx context.Context, cores []*node) error {
	answers := make([]model.Answer, len(cores))
	var wait sync.WaitGroup
	gate := make(chan struct{}, r.o.Workers)
	for i, n := range cores {
		m, most := r.marketOf(n), r.mostOf(n) // made here: the goroutines only read
		wait.Add(1)
		gate <- struct{}{}
		go func() {
			defer wait.Done()
			defer func() { <-gate }()
			answers[i] = r.solveNode(ctx, n, m, most)
		}()
	}
	wait.Wait()
	for i := range answers {
		if err := r.take(cores[i], &answers[i]); err != nil {
			return err
		}
		if answers[i].Status == milp.Infeasible {
			if err := r.wants(ctx, cores[i]); err != nil {
				return err
			}
		}
	}
	r.o.Watch.Tell(r.cells, len(r.best))
	return nil
}

// mostOf returns the cost in currency units beyond which a plan of a core is of no interest: the cost of the best plan
// known of that core, or of the last plan asked for. 0: any plan is of interest.
func (r *ranking) mostOf(n *node) float64 {
	if r.by != question.ByCost {
		return 0
	}
	cents := r.worst
	if known, ok := r.best[n.core.Key()]; ok {
		cents = math.Min(cents, known[0])
	}
	if math.IsInf(cents, 1) {
		return 0
	}
	return math.Max(0.01, (cents+r.b.RoundingCents)/100)
}

// solveNode solves a core. If the finished bill is above the budget, by the rounding of its lines, it solves once more
// with the unrounded cost held to the budget; but not if the bill is above by shipping it still owes, since other orders
// may owe less. By mass, a solution may cost more than it has to, so it is first made as cheap as its mass allows. If the
// bill is still above the budget, it is not known whether some dearer solution rounds to less.
func (r *ranking) solveNode(ctx context.Context, n *node, m *market.Market, most float64) model.Answer {
	var a model.Answer
	solve := func(k model.Ask) model.Answer {
		b := model.Solve(ctx, r.b, &n.core, k)
		b.Solves += a.Solves
		b.Checked += a.Checked
		b.Retries = append(a.Retries, b.Retries...)
		b.Evidence = append(a.Evidence, b.Evidence...)
		return b
	}
	for _, strict := range []bool{false, true} {
		k := model.Ask{By: r.by, Market: m, Strict: strict, Most: most, Keep: r.o.Witness != nil}
		if r.most > 0 {
			k.Work = coreLimit
		}
		a = solve(k)
		if !a.Status.HasPoint() || !choice.OverBudget(r.b, &a.Choice) {
			return a
		}
		if n.orders != nil && r.owes(&a.Choice, n.orders) {
			return a
		}
		if r.by != question.ByMass {
			continue
		}
		k.Tied, k.Patient, k.First, k.Below = true, true, a.First, choice.Cost(r.b, &a.Choice).Units()
		cheaper := solve(k)
		switch {
		case cheaper.Err != nil:
			return cheaper
		case cheaper.Status.HasPoint():
			status := a.Status // what is proved of the mass
			a = cheaper
			a.Status, a.First, a.Second = status, k.First, cheaper.First
			if !choice.OverBudget(r.b, &a.Choice) {
				return a
			}
		case cheaper.Status != milp.Infeasible:
			a = cheaper
			a.Status = unknown(cheaper.Status)
			return a
		default:
			a.Solves, a.Checked, a.Retries, a.Evidence = cheaper.Solves, cheaper.Checked, cheaper.Retries, cheaper.Evidence
		}
	}
	if a.Status = milp.GaveUp; a.Ended {
		a.Status = milp.Stopped
	}
	return a
}

// unknown returns the status of a core for which it is not known whether it has a plan: stopped, or given up.
func unknown(s milp.Status) milp.Status {
	if s == milp.Stopped {
		return milp.Stopped
	}
	return milp.GaveUp
}

// breakTies finds, among the plans of a core that have the same first figure, the one with the least second figure. By
// energy, which does not depend on the support, it finds the least mass at the least cost. Of plans that still tie it
// takes the one whose variables come first, so that every engine gives the same one.
func (r *ranking) breakTies(ctx context.Context, n *node) error {
	n.found.tieBroken = true
	k := model.Ask{By: r.by, Market: r.marketOf(n), Strict: true, Tied: true, First: n.found.first,
		Keep: r.o.Witness != nil}
	if k.Below = n.found.plan.MassKg; r.by == question.ByMass {
		k.Below = n.found.plan.Cost.Units()
	}
	for _, k.Settle = range []bool{false, true} {
		if k.Settle {
			k.Below = n.found.other
		}
		a := model.Solve(ctx, r.b, &n.core, k)
		r.count(&n.core, &a)
		if a.Err != nil {
			return a.Err
		}
		if a.Status.HasPoint() { // else there is none better, or none was found, and the plan is kept
			r.replace(n, &a, k.Settle)
			if !k.Settle {
				n.found.other = math.Min(n.found.other, a.First)
			}
		}
	}
	return nil
}

// replace gives a node another plan of the same core if that is better or, with equal, no worse.
func (r *ranking) replace(n *node, a *model.Answer, equal bool) {
	other := choice.Finish(r.b, &a.Choice)
	first, second := r.planScore(&other)
	lighter := r.by == question.ByEnergy && second == n.found.second && other.MassKg < n.found.plan.MassKg
	if first < n.score || first == n.score && (second < n.found.second || lighter || equal && second == n.found.second) {
		n.found.plan, n.found.choice = other, a.Choice
		n.score, n.found.second = first, second
	}
}
