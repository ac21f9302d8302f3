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
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/relax"
)

// Count is how many strings of a battery a cart takes when it has no other: a cart with that many can be built with some
// inverter, cables, devices, bus bars and casters of the catalogue so that it meets every limit except autonomy, the
// loads' peaks, recharge and budget; with any higher number none can, as sums or solving say. The cart with that many is
// found by solving, and passes the audit.
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
	// Known is false where the search was stopped before this was counted.
	Known bool
}

// counter finds out how many strings of each battery a cart takes.
type counter struct {
	p       question.Problem
	mu      sync.Mutex
	benches map[lifted]*bench.Bench
	bounds  map[*bench.Bench]*bound.Bounds
	auditor *audit.Auditor
	wired   map[bool]*bench.Before // by whether the fault current is lifted: the only limit that options depend on
}

// countAll counts the batteries at the given places of the catalogue, until the context ends.
func countAll(ctx context.Context, p question.Problem, batteries []int) ([]Count, []string, error) {
	p = Unloaded(p)
	c := &counter{p: p, auditor: audit.For(p.Scenario, p.Catalog), benches: map[lifted]*bench.Bench{}, bounds: map[*bench.Bench]*bound.Bounds{}, wired: map[bool]*bench.Before{}}
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
	for i, err := range errs {
		switch {
		case err == nil:
			counts[i].Known = true
		case !errors.Is(err, question.ErrUnknown) || ctx.Err() == nil: // one message is enough for a thousand batteries
			return nil, nil, err
		}
	}
	return counts, relax.Obstacles(b), nil
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
	if ok, err := c.possible(ctx, allLifted(), battery, n, false); err != nil || !ok {
		if err != nil {
			return nil, false, err
		}
		return c.hopeless(ctx, battery)
	}
	if limits, err = c.alone(ctx, battery, n); err != nil || len(limits) > 0 {
		return limits, false, err
	}
	for size := 2; size <= len(stops); size++ {
		for set := lifted(0); set <= allLifted(); set++ {
			if set.size() != size {
				continue
			}
			switch ok, err := c.possible(ctx, allLifted()&^set, battery, n, false); {
			case err != nil:
				return nil, false, err
			case !ok:
				return set.names(), true, nil
			}
		}
	}
	return nil, false, fmt.Errorf("internal error: nothing stops %d strings of %s", n, c.p.Catalog.Batteries[battery].ID)
}

// alone returns the limits each of which alone rules out n strings. First a cart is tried that meets all limits which
// bounds do not suspect: mostly there is one, and then none of those does.
func (c *counter) alone(ctx context.Context, battery, n int) ([]string, error) {
	var others lifted
	for i := range stops {
		b, err := c.bench(ctx, allLifted()&^(1<<i))
		if err != nil {
			return nil, err
		}
		if g := groupOf(b, battery); g >= 0 && fits(b, g, n) && !c.outOfBounds(b, g, n) {
			others |= 1 << i
		}
	}
	met, err := c.possible(ctx, allLifted()&^others, battery, n, false)
	if err != nil {
		return nil, err
	}
	var limits []string
	for i := range stops {
		limit := lifted(1 << i)
		if met && others&limit != 0 {
			continue
		}
		ok, err := c.possible(ctx, allLifted()&^limit, battery, n, false)
		if err != nil {
			return nil, err
		}
		if !ok {
			limits = append(limits, stops[i])
		}
	}
	return limits, nil
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
