package search

import (
	"container/heap"
	"context"
	"math"

	"cartwright/optimize/audit"
	"cartwright/optimize/bench"
	"cartwright/optimize/milp"
	"cartwright/optimize/question"
)

// Run ranks the plans of a bench and audits them.
func Run(ctx context.Context, b *bench.Bench, o question.Options) (*question.Result, error) {
	r := &ranking{search: newSearch(b, o.By), o: o}
	if err := r.run(ctx); err != nil {
		return nil, err
	}
	return r.result()
}

// result makes the outcome: plans in rank, each audited.
func (r *ranking) result() (*question.Result, error) {
	finder := milp.Finder()
	out := &question.Result{Solver: question.Solver{
		Name: finder.Name(), Version: finder.Version(), Status: question.Optimal, Models: r.models, Proofs: r.proofs,
		Cells: r.cells, Retries: r.retries,
	}}
	proved := len(r.ranked)
	bound := math.Inf(1)
	if r.stopped {
		out.Solver.Status = question.TimeLimit
		for _, n := range r.nodes {
			bound = math.Min(bound, n.score)
		}
		r.takeRest()
	}
	if r.gaveUp {
		out.Solver.Status = question.GaveUp
	}
	auditor := audit.For(r.b.Scenario, r.b.Catalog)
	for i, f := range r.ranked {
		f.plan.Rank = i + 1
		if i >= proved {
			f.plan.Proven = false
		}
		f.plan.Audit = auditor.Plan(&f.plan)
		if !f.plan.Audit.Passed {
			return nil, question.Disagreement(f.plan)
		}
		out.Plans = append(out.Plans, f.plan)
	}
	if len(r.ranked) > 0 && proved == 0 {
		if first, _ := r.planScore(&r.ranked[0].plan); first > 0 && bound < first {
			out.Solver.Gap = (first - bound) / first
		}
	}
	if len(r.ranked) == 0 && !r.stopped && !r.gaveUp {
		out.Solver.Status = question.Infeasible
	}
	return out, nil
}

// takeRest ranks, after the time is up, the plans that are known but not proved to be next.
func (r *ranking) takeRest() {
	for len(r.ranked) < r.o.Plans && len(r.nodes) > 0 {
		n := heap.Pop(&r.nodes).(*node)
		if n.kind == planNode && !r.skipped(&n.core) {
			r.rank(n.found, &n.core)
		}
	}
}
