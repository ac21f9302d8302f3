package search

import (
	"container/heap"
	"context"
	"math"
	"strings"

	"cartwright/optimize/bench"
	"cartwright/optimize/market"
	"cartwright/optimize/question"
)

// batch is how many cores are solved before the search looks again which node is best. It does not depend on the
// number of processors, so the same input solves the same models.
const batch = 4

// ranking is a search with the plans ranked so far.
type ranking struct {
	*search
	o       question.Options
	ranked  []*found
	seen    map[string]bool       // cores and battery sets that are ranked
	best    map[string][2]float64 // by core: the scores of the best plan found for it
	scores  []float64             // of the plans found, one for each core, the best first, at most as many as are asked for
	models  int
	proofs  int // certificates that passed the checker
	retries []string
	anyPlan bool                     // any plan is enough
	most    Work                     // 0: not limited
	gaveUp  bool                     // some core could not be solved, so no later rank is proved
	stopped bool                     // the context ended
	full    bool                     // nodes were dropped that may have held a better plan
	closed  map[string][]market.Open // by core: what may be open while it has no plan for want of offers
	aside   []*node                  // of a series: what is of no more interest now, but may be under tighter limits
}

func newRanking(s *search, o question.Options) *ranking {
	return &ranking{search: s, o: o, best: map[string][2]float64{}, closed: map[string][]market.Open{}}
}

// run ranks plans until there are enough, none is left or time is up.
func (r *ranking) run(ctx context.Context) error {
	r.seen = map[string]bool{}
	if ctx.Err() != nil { // not all supplies may have been opened, so an empty heap would prove nothing
		r.stopped = true
		return nil
	}
	for len(r.ranked) < r.o.Plans && len(r.nodes) > 0 {
		if ctx.Err() != nil {
			r.stopped = true
			return nil
		}
		if r.most > 0 && r.work() >= r.most {
			r.gaveUp = true
			return nil
		}
		cores := r.nextCores(ctx)
		if len(cores) > 0 {
			if err := r.solveAll(ctx, cores); err != nil {
				return err
			}
			if r.anyPlan && len(r.scores) > 0 {
				r.takeRest()
				return nil
			}
			continue
		}
		if len(r.nodes) == 0 || r.nodes[0].kind != planNode || r.nodes[0].round != r.round { // the last: the context has ended
			continue
		}
		n := heap.Pop(&r.nodes).(*node)
		if r.skipped(&n.core) {
			continue
		}
		if !n.found.tieBroken {
			if err := r.breakTies(ctx, n); err != nil {
				return err
			}
			heap.Push(&r.nodes, n)
			continue
		}
		r.full = r.full || r.lost(n.score)
		n.found.plan.Proven = n.found.proved && !r.gaveUp && !r.full
		r.rank(n.found, &n.core)
		r.setAside(n)
		if err := r.tellFirst(); err != nil {
			return err
		}
	}
	r.full = r.full || len(r.ranked) < r.o.Plans && r.lost(math.Inf(1))
	return nil
}

// tellFirst passes the best plan to Options.First, which does not wait for the others.
func (r *ranking) tellFirst() error {
	if r.o.First == nil || len(r.ranked) != 1 {
		return nil
	}
	first, err := r.result()
	if err == nil {
		r.o.First(first)
	}
	return err
}

// rank adds a plan as the next in rank.
func (r *ranking) rank(f *found, c *bench.Core) {
	r.ranked = append(r.ranked, f)
	r.seen[r.batteries(c)], r.seen[c.Key()] = true, true
}

// nextCores takes the best cores off the heap, at most a batch, expanding open nodes on the way. It stops at a plan
// node.
func (r *ranking) nextCores(ctx context.Context) []*node {
	var cores []*node
	for len(cores) == 0 && r.looksOn(ctx) {
		var dull []*node // nodes whose scores are to be raised by sharpened
		for len(cores)+len(dull) < batch && r.looksOn(ctx) {
			n := heap.Pop(&r.nodes).(*node)
			switch {
			case n.score > r.worst:
			case n.kind == supplyNode:
				r.openGroups(ctx, n)
			case n.kind == openNode:
				r.cells++
				r.expand(n)
			case r.outdone(n):
				r.setAside(n)
			case r.wanting(&n.core, n.orders), r.skipped(&n.core), !r.decideShipping(n):
			case n.sharp, r.anyPlan, r.leavesOrders(): // where any plan will do, solving takes no longer than the bound
				cores = append(cores, n)
			default:
				dull = append(dull, n)
			}
		}
		cores = append(cores, r.sharpened(dull)...)
	}
	return cores
}

// looksOn reports whether some other node comes before the best plan found, and there is time and work left to look at it.
func (r *ranking) looksOn(ctx context.Context) bool {
	r.renewTop(ctx)
	return len(r.nodes) > 0 && r.nodes[0].kind != planNode && ctx.Err() == nil && (r.most == 0 || r.work() < r.most)
}

// skipped reports whether a core is ranked already, or could only repeat a battery set that is, where that
// matters.
func (r *ranking) skipped(c *bench.Core) bool {
	return r.seen[c.Key()] || r.o.Distinct == question.DistinctBattery && r.seen[r.batteries(c)]
}

// outdone reports whether a core already has a plan that its node cannot beat.
func (r *ranking) outdone(n *node) bool {
	known, ok := r.best[n.core.Key()]
	return ok && n.score >= known[0]
}

// batteries names the set of batteries of a core.
func (r *ranking) batteries(c *bench.Core) string {
	var names []string
	for _, h := range c.Strings {
		names = append(names, r.b.Stacks[r.b.Groups[c.Group][h.Member]].Battery.ID)
	}
	return strings.Join(names, "\x00")
}
