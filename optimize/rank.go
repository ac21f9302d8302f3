package optimize

import (
	"container/heap"
	"context"
	"errors"
	"math"
	"runtime"
	"slices"
	"sort"
	"strings"
	"sync"
	"time"

	"cartwright/optimize/milp"
	"cartwright/optimize/plan"
)

// batch is how many cores are solved before the search looks again which is best. It is fixed, whatever
// the number of processors, so that the same input solves the same models.
const batch = 4

// Check reports everything in which a scenario does not fit its catalogue: parts and roles that are not
// there. Its error is a *problem.Error.
func Check(p Problem) error { return p.Scenario.Check(p.Catalog) }

// Rank finds the best plans in their order. Where none is possible the result says so, with what has to
// give; that is no error. A plan that fails its audit is a *DisagreementError.
func Rank(ctx context.Context, p Problem, o Options) (*Result, error) {
	start := time.Now()
	o = o.withDefaults(p)
	before := &laidBefore{}
	b, err := lay(p, o.Must, before)
	if err != nil {
		return nil, err
	}
	if o.TimeLimit > 0 {
		var cancel context.CancelFunc
		ctx, cancel = context.WithTimeout(ctx, o.TimeLimit)
		defer cancel()
	}
	r := &ranking{search: newSearch(b, o.By), o: o}
	if err := r.run(ctx); err != nil {
		return nil, err
	}
	result, err := r.result()
	if err != nil {
		return nil, err
	}
	if result.Solver.Status == Infeasible {
		result.Reasons = b.obstacles()
	}
	if result.Solver.Status == Infeasible && o.Must == "" {
		if result.Changes, err = changes(ctx, p, before); err != nil && !errors.Is(err, ErrUnknown) {
			return nil, err
		}
		result.ChangesUnknown = err != nil
		if len(result.Changes)+len(result.Reasons) == 0 && !result.ChangesUnknown {
			if result.Reasons, err = obstruct(ctx, p); err != nil {
				return nil, err
			}
		}
	}
	result.Cautions = b.cautions(result.Plans)
	result.Solver.Seconds = time.Since(start).Seconds()
	return result, nil
}

// withDefaults fills in what the options leave open from the scenario.
func (o Options) withDefaults(p Problem) Options {
	if o.Plans <= 0 {
		o.Plans = max(1, p.Scenario.Solver.Plans)
	}
	if o.By == "" {
		o.By = ByCost
	}
	if o.Distinct == "" {
		o.Distinct = DistinctCore
	}
	if o.TimeLimit == 0 {
		o.TimeLimit = time.Duration(p.Scenario.Solver.TimeLimitS * float64(time.Second))
	}
	if o.Workers <= 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	return o
}

// ranking is a search on its way through the ranks.
type ranking struct {
	*search
	o       Options
	ranked  []*found
	seen    map[string]bool       // cores and battery sets that are ranked
	best    map[string][2]float64 // by core: the scores of the best plan found for it
	scores  []float64             // of all plans found, the best first, as many as are asked for
	models  int
	retries []string
	anyPlan bool // the first plan met is enough, be it the best or not
	gaveUp  bool // some core could not be solved: nothing dearer than it is proved
	stopped bool
}

// run ranks plans until there are enough, none is left or time is up.
func (r *ranking) run(ctx context.Context) error {
	r.seen, r.best = map[string]bool{}, map[string][2]float64{}
	for len(r.ranked) < r.o.Plans && len(r.nodes) > 0 {
		if ctx.Err() != nil {
			r.stopped = true
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
		if len(r.nodes) == 0 || r.nodes[0].kind != planNode {
			continue
		}
		n := heap.Pop(&r.nodes).(*node)
		if r.skipped(&n.core) {
			continue
		}
		if !n.found.settled {
			if err := r.breakTies(ctx, n); err != nil {
				return err
			}
			heap.Push(&r.nodes, n)
			continue
		}
		n.found.plan.Proven = n.found.proved && !r.gaveUp
		r.rank(n.found, &n.core)
	}
	return nil
}

// rank takes a plan as the next in rank.
func (r *ranking) rank(f *found, c *core) {
	r.ranked = append(r.ranked, f)
	r.seen[r.batteries(c)], r.seen[c.key()] = true, true
}

// nextCores takes the best cores off the heap, as many as make a batch, expanding open nodes on the way;
// none where a plan comes first.
func (r *ranking) nextCores(ctx context.Context) []*node {
	var cores []*node
	for len(cores) < batch && len(r.nodes) > 0 && r.nodes[0].kind != planNode && ctx.Err() == nil {
		n := heap.Pop(&r.nodes).(*node)
		switch {
		case n.score > r.worst:
		case n.kind == openNode:
			r.cells++
			r.expand(n)
		case r.skipped(&n.core), r.outdone(n):
		case r.settle(n):
			cores = append(cores, n)
		}
	}
	return cores
}

// skipped reports whether a core is ranked already, or could only repeat a battery set that is, where that
// matters.
func (r *ranking) skipped(c *core) bool {
	return r.seen[c.key()] || r.o.Distinct == DistinctBattery && r.seen[r.batteries(c)]
}

// outdone reports whether a core has a plan already that its node cannot beat.
func (r *ranking) outdone(n *node) bool {
	known, ok := r.best[n.core.key()]
	return ok && n.score >= known[0]
}

// batteries names the set of batteries of a core.
func (r *ranking) batteries(c *core) string {
	var names []string
	for _, h := range c.strings {
		names = append(names, r.b.stacks[r.b.groups[c.group][h.member]].bat.ID)
	}
	return strings.Join(names, "\x00")
}

// solveAll solves cores side by side and puts the plans found among the nodes.
func (r *ranking) solveAll(ctx context.Context, cores []*node) error {
	answers := make([]answer, len(cores))
	var wait sync.WaitGroup
	gate := make(chan struct{}, r.o.Workers)
	for i, n := range cores {
		m := r.marketOf(n) // made here: the goroutines only read
		wait.Add(1)
		gate <- struct{}{}
		go func() {
			defer wait.Done()
			defer func() { <-gate }()
			answers[i] = r.solveNode(ctx, n, m)
		}()
	}
	wait.Wait()
	for i := range answers {
		if err := r.take(cores[i], &answers[i]); err != nil {
			return err
		}
	}
	if r.o.Progress != nil {
		r.o.Progress(r.cells, len(r.scores))
	}
	return nil
}

// solveNode solves a core. A plan whose finished bill is above the budget, by the rounding of its lines, is
// looked for once more with the budget held to the letter; not one that is above by shipping it still
// owes, since another order may owe less. By mass a point may cost more than its plan has to: then it is
// made as cheap as its mass allows.
func (r *ranking) solveNode(ctx context.Context, n *node, m *market) answer {
	var a answer
	for _, strict := range []bool{false, true} {
		k := ask{by: r.by, market: m, strict: strict}
		solves := a.solves
		a = r.b.solve(ctx, &n.core, k)
		a.solves += solves
		if !a.status.HasPoint() || !r.b.overBudget(&a.choice) {
			return a
		}
		if n.levels != nil && r.mostOwed(&a.choice, n.levels) != nobody {
			return a
		}
		if r.by != ByMass {
			continue
		}
		k.tied, k.first, k.below = true, a.first, r.b.cost(&a.choice).Units()
		cheaper := r.b.solve(ctx, &n.core, k)
		a.solves += cheaper.solves
		switch {
		case cheaper.status.HasPoint():
			a.choice = cheaper.choice
			if !r.b.overBudget(&a.choice) {
				return a
			}
		case cheaper.status != milp.Infeasible:
			a.status = milp.GaveUp // there may be a plan, and it is not known
			return a
		}
	}
	return a
}

// overBudget reports whether the bill of a choice is above what there is to spend.
func (b *bench) overBudget(c *choice) bool {
	if b.s.Limits.Budget == math.MaxInt64 {
		return false
	}
	return b.cost(c) > plan.Money(b.s.Limits.Budget+b.s.Sold)
}

// cost returns what the finished bill of a choice comes to.
func (b *bench) cost(c *choice) plan.Money {
	var p plan.Plan
	b.account(c, &p)
	return p.Cost
}

// breakTies finds, among the plans of a core that have the same first figure, the one with the least
// second figure.
func (r *ranking) breakTies(ctx context.Context, n *node) error {
	n.found.settled = true
	k := ask{by: r.by, market: r.marketOf(n), strict: true, tied: true, first: n.found.first, below: n.found.plan.MassKg}
	if r.by == ByMass {
		k.below = n.found.plan.Cost.Units()
	}
	a := r.b.solve(ctx, &n.core, k)
	r.models += a.solves
	if a.err != nil {
		return a.err
	}
	if !a.status.HasPoint() {
		return nil // there is none better, or none was found in time: the plan stands
	}
	better := r.b.finish(&a.choice)
	first, second := r.planScore(&better)
	if first < n.score || first == n.score && second < n.found.second {
		n.found.plan, n.found.choice = better, a.choice
		n.score, n.found.second = first, second
	}
	return nil
}

// marketOf returns the market a core node is solved at.
func (r *ranking) marketOf(n *node) *market {
	if n.levels == nil {
		return nil
	}
	return r.boundsAt(n.levels).market
}

// take notes the answer for a core.
func (r *ranking) take(n *node, a *answer) error {
	r.cells++
	r.models += a.solves
	r.retries = append(r.retries, a.retries...)
	if a.err != nil {
		return a.err
	}
	switch a.status {
	case milp.Infeasible:
		return nil
	case milp.Stopped:
		r.stopped = true
		r.add(n) // it is still open, and bounds what was not reached
		return nil
	case milp.GaveUp:
		r.gaveUp = true
		return nil
	case milp.Unbounded:
		return errors.New("internal error: a plan of unbounded worth")
	}
	f := &found{choice: a.choice, plan: r.b.finish(&a.choice), first: a.first, proved: a.status == milp.Proved}
	if n.levels != nil {
		if owed := r.mostOwed(&a.choice, n.levels); owed != nobody {
			// Its own cost, without what is owed, bounds what the levels of the vendor can bring.
			open := &node{kind: coreNode, core: n.core, levels: n.levels, owed: owed, found: f}
			open.score = math.Max(n.score, r.priced(open, 0))
			r.add(open)
		}
	}
	if r.b.overBudget(&a.choice) {
		return nil // with what is owed for shipping
	}
	first, second := r.planScore(&f.plan)
	f.second = second
	key := n.core.key()
	known, again := r.best[key]
	if again && (known[0] < first || known[0] == first && known[1] <= second) {
		return nil // at other orders the core has a plan that is as good
	}
	r.best[key] = [2]float64{first, second}
	r.add(&node{score: first, kind: planNode, core: n.core, levels: n.levels, found: f})
	if again {
		r.forget(known[0])
	}
	r.tighten(first)
	return nil
}

// forget takes a score out of those of the plans found: its core has a better one.
func (r *ranking) forget(score float64) {
	if at := sort.SearchFloat64s(r.scores, score); at < len(r.scores) && r.scores[at] == score {
		r.scores = slices.Delete(r.scores, at, at+1)
	}
}

// tighten lowers the score beyond which nothing is kept once enough plans are known.
func (r *ranking) tighten(score float64) {
	if r.o.Distinct != DistinctCore {
		return // several of the plans found may have the same batteries and count once
	}
	at := sort.SearchFloat64s(r.scores, score)
	r.scores = slices.Insert(r.scores, at, score)
	if len(r.scores) >= r.o.Plans {
		r.scores = r.scores[:r.o.Plans]
		r.worst = r.scores[r.o.Plans-1]
	}
}
