package search

import (
	"container/heap"
	"context"
	"math"
	"slices"
	"time"

	"cartwright/optimize/audit"
	"cartwright/optimize/bench"
	"cartwright/optimize/milp"
	"cartwright/optimize/question"
)

// Run ranks the plans of a bench and audits them.
func Run(ctx context.Context, b *bench.Bench, o question.Options) (*question.Result, error) {
	r := newRanking(newSearch(ctx, b, o.By, o.Plans), o)
	if err := r.run(ctx); err != nil {
		return nil, err
	}
	return r.result()
}

// result returns the outcome: the plans in rank, each audited.
func (r *ranking) result() (*question.Result, error) {
	out := &question.Result{Solver: solver(question.Optimal)}
	out.Solver.Models, out.Solver.Proofs = r.models, r.proofs
	out.Solver.Cells, out.Solver.Retries = r.cells, r.retries
	proved := len(r.ranked)
	bound := r.dropped
	for _, n := range r.nodes {
		bound = math.Min(bound, n.score)
	}
	if r.full {
		out.Solver.Status = question.MemoryLimit
	}
	if r.stopped {
		out.Solver.Status = question.TimeLimit
		r.takeRest()
	}
	if r.gaveUp {
		out.Solver.Status = question.GaveUp
	}
	auditor, since := audit.For(r.b.Scenario, r.b.Catalog), time.Now()
	for i, f := range r.ranked {
		if r.stopped && i > 0 && time.Since(since) > windUp {
			break // who stops a search does not want to wait for the audit of hundreds of plans
		}
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
	if len(r.ranked) > 0 && (proved == 0 || r.full && !out.Plans[0].Proven) {
		if first, _ := r.planScore(&r.ranked[0].plan); first > 0 && bound < first {
			out.Solver.Gap = math.Min(1, (first-bound)/first) // 1: nothing is known
		}
	}
	if len(r.ranked) == 0 && !r.stopped && !r.gaveUp && !r.full {
		out.Solver.Status = question.Infeasible
	}
	return out, nil
}

// windUp is how long the audits of a search that was stopped may take: a signal ends the program after a second.
const windUp = 200 * time.Millisecond

// Stopped is the outcome of a search that was stopped before it began.
func Stopped() *question.Result { return &question.Result{Solver: solver(question.TimeLimit)} }

func solver(s question.Status) question.Solver {
	finder := milp.Finder()
	return question.Solver{Name: finder.Name(), Version: finder.Version(), Status: s}
}

// takeRest ranks, when time is up, the plans that are known but not proved to be next. All other nodes are dropped at
// once: popping hundreds of thousands one by one would take long.
func (r *ranking) takeRest() {
	r.nodes = slices.DeleteFunc(r.nodes, func(n *node) bool { return n.kind != planNode })
	heap.Init(&r.nodes)
	for len(r.ranked) < r.o.Plans && len(r.nodes) > 0 {
		n := heap.Pop(&r.nodes).(*node)
		if !r.skipped(&n.core) {
			r.rank(n.found, &n.core)
		}
	}
}
