package value

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime"
	"sync"

	"cartwright/catalog"
	"cartwright/optimize/audit"
	"cartwright/optimize/bench"
	"cartwright/optimize/bound"
	"cartwright/optimize/choice"
	"cartwright/optimize/energy"
	"cartwright/optimize/milp"
	"cartwright/optimize/model"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/relax"
)

// Count is how many strings of a battery a cart takes when it has no other: a cart with that many can be built with some
// inverter, cables, devices, bus bars and casters of the catalogue so that it meets every limit except autonomy, the
// loads' peaks, recharge and budget; with any higher number none can. Both are found by solving, and the cart with that
// many passes the audit.
type Count struct {
	Strings int
	Modules int
	// Limits names what leaves no room for one more string: each alone, or where Jointly, all of them together though
	// none of them alone. Where no cart can be built even without all of these limits, it names the condition that the
	// battery does not meet, such as "string wiring" or "protocols", or else "no cart".
	Limits  []string
	Jointly bool
	// Least is the fewest strings that carry the smallest inverter, where that is more than one.
	Least int
}

// counter finds out how many strings of each battery a cart takes.
type counter struct {
	p       question.Problem
	mu      sync.Mutex
	benches map[lifted]*bench.Bench
	bounds  *bound.Bounds          // with no limit lifted
	wired   map[bool]*bench.Before // by whether the fault current is lifted: the only limit that options depend on
}

// countAll counts the batteries at the given places of the catalogue.
func countAll(ctx context.Context, p question.Problem, batteries []int) ([]Count, []string, error) {
	c := &counter{p: Unloaded(p), benches: map[lifted]*bench.Bench{}, wired: map[bool]*bench.Before{}}
	b, err := c.bench(ctx, 0)
	if err != nil {
		return nil, nil, err
	}
	counts := make([]Count, len(batteries))
	errs := make([]error, len(batteries))
	gate := make(chan struct{}, runtime.GOMAXPROCS(0))
	var wait sync.WaitGroup
	for i, at := range batteries {
		wait.Add(1)
		gate <- struct{}{}
		go func() {
			defer wait.Done()
			defer func() { <-gate }()
			counts[i], errs[i] = c.count(ctx, at)
		}()
	}
	wait.Wait()
	return counts, relax.Obstacles(b), errors.Join(errs...)
}

// bench lays out the catalogue with some limits lifted. Every battery is a group of its own.
func (c *counter) bench(ctx context.Context, l lifted) (*bench.Bench, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if ctx.Err() != nil {
		return nil, question.ErrUnknown
	}
	if b := c.benches[l]; b != nil {
		return b, nil
	}
	fault := l.has(StopsFault)
	if c.wired[fault] == nil {
		c.wired[fault] = &bench.Before{}
	}
	b, err := bench.New(without(c.p, l), c.wired[fault])
	if err != nil {
		return nil, err
	}
	b.Partial = true
	if err := b.LayAll(ctx); err != nil {
		return nil, err
	}
	b.Groups = nil
	for i := range b.Stacks {
		b.Groups = append(b.Groups, []int{i})
	}
	c.benches[l] = b
	return b, nil
}

// groupOf returns the group of the battery at a place of the catalogue; -1 where the bench has no stack of it, for want
// of room for a string, of a cable or device, or of another condition.
func groupOf(b *bench.Bench, battery int) int {
	for i := range b.Stacks {
		if b.Stacks[i].Position == battery {
			return i
		}
	}
	return -1
}

// count counts the strings of one battery, from the most that the shelves and the maker allow downward.
func (c *counter) count(ctx context.Context, battery int) (Count, error) {
	b, err := c.bench(ctx, 0)
	if err != nil {
		return Count{}, err
	}
	bat := &c.p.Catalog.Batteries[battery]
	series, _ := energy.Fits(c.p.Scenario.Bus, bat)
	var out Count
	least := max(1, fewest(b, bat))
	if least > 1 {
		out.Least = least
	}
	if g := groupOf(b, battery); g >= 0 {
		for n := b.Stacks[g].Most; n >= least && out.Strings == 0; n-- {
			if ctx.Err() != nil {
				return Count{}, question.ErrUnknown
			}
			if c.outOfBounds(b, g, n) {
				continue // too heavy or too large; explain confirms the least such number by solving
			}
			ok, err := c.possible(ctx, 0, battery, n, true)
			if err != nil {
				return Count{}, err
			}
			if ok {
				out.Strings, out.Modules = n, n*series
			}
		}
	}
	out.Limits, out.Jointly, err = c.explain(ctx, battery, max(out.Strings+1, least))
	return out, err
}

// outOfBounds reports whether the least mass of a cart with so many strings, or the room they take, is too
// much with any supply.
func (c *counter) outOfBounds(b *bench.Bench, group, n int) bool {
	c.mu.Lock() // bounds are worked out on first use, and remembered
	defer c.mu.Unlock()
	if c.bounds == nil {
		c.bounds = bound.New(b)
	}
	for v := range b.Supplies {
		trial := bench.CoreOf(v, group, []int{n})
		if !c.bounds.Hopeless(c.bounds.Of(&trial)) {
			return false
		}
	}
	return true
}

// fewest returns how many strings of a battery it takes to carry the inverter that draws least; 0 without inverters.
func fewest(b *bench.Bench, bat *catalog.Battery) int {
	least := math.Inf(1)
	for i := range b.Supplies {
		least = math.Min(least, b.Supplies[i].DrawA)
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return int(plan.Ceil(least / bat.MaxDischargeA))
}

// explain finds the limits that rule out n strings: each that does so alone, else a smallest set that does so together.
func (c *counter) explain(ctx context.Context, battery, n int) (limits []string, jointly bool, err error) {
	stopped := func(held lifted) (bool, error) {
		ok, err := c.possible(ctx, allLifted()&^held, battery, n, false)
		return !ok, err
	}
	for size := 0; size <= len(stops); size++ {
		for set := lifted(0); set <= allLifted(); set++ {
			if set.size() != size {
				continue
			}
			is, err := stopped(set)
			if err != nil {
				return nil, false, err
			}
			switch {
			case is && size == 0:
				return c.hopeless(ctx, battery)
			case is && size == 1:
				limits = append(limits, set.names()...)
			case is:
				return set.names(), true, nil
			}
		}
		if len(limits) > 0 {
			return limits, false, nil
		}
	}
	return nil, false, fmt.Errorf("internal error: nothing stops %d strings of %s", n, c.p.Catalog.Batteries[battery].ID)
}

// hopeless says why there is no cart with a battery even with all limits lifted.
func (c *counter) hopeless(ctx context.Context, battery int) (limits []string, jointly bool, err error) {
	b, err := c.bench(ctx, allLifted())
	if err != nil {
		return nil, false, err
	}
	if groupOf(b, battery) < 0 {
		if c := bench.Unmet(b.BatteryConditions(), b.StandingOf(&b.Catalog.Batteries[battery])); c != nil {
			return []string{c.Name}, false, nil // "string wiring", "protocols", "usable energy" ...
		}
	}
	return []string{StopsAll}, false, nil
}

// possible reports whether a cart can be built with so many strings of a battery and no other, with some
// limits lifted. Supplies are tried one after the other; audited says that the cart found has to pass its
// audit.
func (c *counter) possible(ctx context.Context, l lifted, battery, n int, audited bool) (bool, error) {
	b, err := c.bench(ctx, l)
	if err != nil || len(b.Supplies) == 0 || len(b.Reasons) > 0 {
		return false, err
	}
	bat := &b.Catalog.Batteries[battery]
	g := groupOf(b, battery)
	if g < 0 || !l.has(StopsParallel) && bat.MaxParallel > 0 && n > bat.MaxParallel {
		return false, nil
	}
	for v := range b.Supplies {
		trial := bench.CoreOf(v, g, []int{n})
		sp := model.CoreSpace(b, &trial)
		sp.CannotTip = sp.CannotTip || l.has(StopsTilt)
		p := model.Write(b, "count", sp)
		s, err := p.Model.Solve(ctx, milp.Options{})
		if err != nil {
			return false, fmt.Errorf("internal error: %w", err)
		}
		switch s.Status {
		case milp.Infeasible:
			continue
		case milp.Best, milp.Proved:
			if audited {
				chosen := p.Read(s)
				return true, c.audit(choice.Finish(b, &chosen))
			}
			return true, nil
		default:
			return false, question.ErrUnknown
		}
	}
	return false, nil
}

// audit audits a cart that only has to stand, roll and be safe.
func (c *counter) audit(p plan.Plan) error {
	p.Audit = audit.Plan(c.p.Scenario, c.p.Catalog, &p)
	var failed []plan.Check
	for _, check := range p.Audit.Checks {
		if !check.Passed && !bench.Short(check.Name) {
			failed = append(failed, check)
		}
	}
	if len(failed) > 0 {
		return &question.DisagreementError{Plan: p, Failed: failed}
	}
	return nil
}
