package search

import (
	"errors"
	"math"
	"slices"
	"sort"

	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/milp"
	"cartwright/optimize/model"
	"cartwright/optimize/question"
)

// take takes in the answer for a core.
func (r *ranking) take(n *node, a *model.Answer) error {
	r.cells++
	r.count(&n.core, a)
	if a.Err != nil {
		return a.Err
	}
	switch a.Status {
	case milp.Infeasible:
		if known, ok := r.best[n.core.Key()]; ok {
			n.score = math.Max(n.score, known[0])
			r.setAside(n) // it was only asked for what is cheaper
		}
		return nil
	case milp.Stopped:
		r.stopped = true
		r.add(n) // it stays open and bounds what was not reached
		return nil
	case milp.GaveUp:
		r.gaveUp = true
		return nil
	case milp.Unbounded:
		return errors.New("internal error: a plan of unbounded worth")
	}
	proved := a.Status == milp.Proved
	switch { // the core may have a better plan: no later rank is proved
	case !proved && a.Ended:
		r.stopped = true
		r.add(n)
	case !proved:
		r.gaveUp = true
	}
	f := &found{choice: a.Choice, plan: choice.Finish(r.b, &a.Choice), first: a.First, other: a.Second, proved: proved}
	if n.orders != nil {
		if owed, level := r.mostOwed(&a.Choice, n.orders); owed != market.Nobodys {
			// Its cost without what is owed bounds the plans of both cases.
			open := &node{kind: coreNode, core: n.core, orders: n.orders, owed: owed, level: level, found: f}
			open.score = n.score
			if proved {
				open.score = math.Max(n.score, r.priced(open, 0))
			}
			r.add(open)
		}
	}
	if choice.OverBudget(r.b, &a.Choice) {
		return nil // with the shipping that is owed
	}
	first, second := r.planScore(&f.plan)
	f.second = second
	key := n.core.Key()
	known, again := r.best[key]
	made := &node{score: first, kind: planNode, core: n.core, orders: n.orders, found: f}
	if again && (known[0] < first || known[0] == first && known[1] <= second) {
		r.setAside(made) // with other orders the core already has a plan that is as good
		return nil
	}
	r.best[key] = [2]float64{first, second}
	r.add(made)
	if again {
		r.forget(known[0])
	}
	r.tighten(first)
	return nil
}

// forget removes a score from those of the plans found: its core has a better plan now.
func (r *ranking) forget(score float64) {
	if at := sort.SearchFloat64s(r.scores, score); at < len(r.scores) && r.scores[at] == score {
		r.scores = slices.Delete(r.scores, at, at+1)
	}
}

// tighten lowers the score beyond which nothing is kept once enough plans are known.
func (r *ranking) tighten(score float64) {
	if r.o.Distinct != question.DistinctCore || r.round > 0 {
		return // several of the plans found may have the same batteries and count once; a series needs the others later
	}
	at := sort.SearchFloat64s(r.scores, score)
	r.scores = slices.Insert(r.scores, at, score)
	if len(r.scores) >= r.o.Plans {
		r.scores = r.scores[:r.o.Plans]
		r.worst = r.scores[r.o.Plans-1]
	}
}
