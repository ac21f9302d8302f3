package optimize

import (
	"container/heap"
	"math"

	"cartwright/optimize/audit"
	"cartwright/optimize/milp"
	"cartwright/optimize/plan"
)

// result makes the outcome: plans in rank, each audited.
func (r *ranking) result() (*Result, error) {
	out := &Result{Solver: Solver{
		Name: "lp_solve", Version: milp.Version(), Status: Optimal, Models: r.models, Cells: r.cells,
		Retries: r.retries,
	}}
	proved := len(r.ranked)
	bound := math.Inf(1)
	if r.stopped {
		out.Solver.Status = TimeLimit
		for _, n := range r.nodes {
			bound = math.Min(bound, n.score)
		}
		r.takeRest()
	}
	if r.gaveUp {
		out.Solver.Status = GaveUp
	}
	for i, f := range r.ranked {
		f.plan.Rank = i + 1
		if i >= proved {
			f.plan.Proven = false
		}
		f.plan.Audit = audit.Plan(r.b.s, r.b.c, &f.plan)
		if !f.plan.Audit.Passed {
			return nil, disagreement(f.plan)
		}
		out.Plans = append(out.Plans, f.plan)
	}
	if len(r.ranked) > 0 && proved == 0 {
		if first, _ := r.planScore(&r.ranked[0].plan); first > 0 && bound < first {
			out.Solver.Gap = (first - bound) / first
		}
	}
	if len(r.ranked) == 0 && !r.stopped && !r.gaveUp {
		out.Solver.Status = Infeasible
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

// disagreement is the error of a plan that failed its audit.
func disagreement(p plan.Plan) error {
	e := &DisagreementError{Plan: p}
	for _, c := range p.Audit.Checks {
		if !c.Passed {
			e.Failed = append(e.Failed, c)
		}
	}
	return e
}
