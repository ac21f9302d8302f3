package optimize

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime"
	"sync"

	"cartwright/catalog"
	"cartwright/optimize/audit"
	"cartwright/optimize/energy"
	"cartwright/optimize/milp"
	"cartwright/optimize/plan"
)

// Count is how many strings of a battery a cart takes when it has no other: so many can be built with some
// inverter, cables, devices, bus bars and casters of the catalogue that meet every limit but autonomy, the
// loads' peaks, recharge and budget; of one more, or any higher number, no such cart can be built. Both are
// found by solving, and the cart of that many passes the audit.
type Count struct {
	Strings int `json:"strings"`
	Modules int `json:"modules"`
	// Limits names what stops the next string: each alone, or where Jointly, all of them together though
	// none of them alone. "no cart" says that not even without all of these limits a cart can be built.
	Limits  []string `json:"limits"`
	Jointly bool     `json:"jointly,omitempty"`
	// Least is the fewest strings that carry the smallest inverter, where that is more than one.
	Least int `json:"least,omitempty"`
}

// The limits that can stop a count, in the order they are told.
const (
	StopsRoom      = "shelf room"    // floor and clear height of the shelves
	StopsShelfMass = "shelf mass"    // what the shelves carry
	StopsMass      = "mass"          // of the whole cart
	StopsPush      = "push"          // the force to move it
	StopsCasters   = "casters"       // the strongest of the catalogue
	StopsTilt      = "tilt"          // the slope it has to stand on
	StopsParallel  = "max parallel"  // strings the maker allows side by side
	StopsFault     = "fault current" // what the strongest device breaks
	StopsStuds     = "studs"         // of the bus bars with the most
	StopsAll       = "no cart"       // nothing of the above
)

// stops lists the limits that can be lifted.
var stops = []string{StopsRoom, StopsShelfMass, StopsMass, StopsPush, StopsCasters, StopsTilt, StopsParallel, StopsFault, StopsStuds}

// lifted is a set of limits that do not count, a bit for each of stops.
type lifted uint

// allLifted is the set of all of them.
func allLifted() lifted { return 1<<len(stops) - 1 }

// has reports whether a limit is in the set.
func (l lifted) has(stop string) bool {
	for i, s := range stops {
		if s == stop {
			return l&(1<<i) != 0
		}
	}
	return false
}

// counter finds out how many strings of each battery a cart takes.
type counter struct {
	p       Problem
	mu      sync.Mutex
	benches map[lifted]*bench
}

// countAll counts the batteries at the given places of the catalogue.
func countAll(ctx context.Context, p Problem, batteries []int) ([]Count, []string, error) {
	c := &counter{p: p.unloaded(), benches: map[lifted]*bench{}}
	b, err := c.bench(0)
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
	return counts, b.reasons, errors.Join(errs...)
}

// unloaded returns the problem of a cart that need not run anything: no autonomy, recharge or budget, and
// nothing owned or offered, which has no part in what can be built.
func (p Problem) unloaded() Problem {
	s, c := *p.Scenario, *p.Catalog
	s.Have, s.AutonomyH, s.Recharge, s.Limits.Budget = nil, 0, nil, math.MaxInt64
	c.Offers = nil
	return Problem{&s, &c}
}

// without returns a copy of a problem in which some limits hold back nothing.
func (p Problem) without(l lifted) Problem {
	s, c := *p.Scenario, p.Catalog.Clone()
	if l.has(StopsMass) {
		s.Limits.MassKg = math.Inf(1)
	}
	if l.has(StopsPush) {
		s.Limits.PushN = 0
	}
	s.Cart.Shelves = append(s.Cart.Shelves[:0:0], s.Cart.Shelves...)
	for i := range s.Cart.Shelves {
		if l.has(StopsRoom) {
			s.Cart.Shelves[i].LengthM, s.Cart.Shelves[i].DepthM, s.Cart.Shelves[i].ClearHeightM = endlessM, endlessM, endlessM
		}
		if l.has(StopsShelfMass) {
			s.Cart.Shelves[i].MaxMassKg = math.Inf(1)
		}
	}
	for i := range c.Casters {
		if l.has(StopsCasters) {
			c.Casters[i].RatingKg = anyMassKg
		}
	}
	for i := range c.Devices {
		if l.has(StopsFault) {
			c.Devices[i].InterruptingDCA = endlessA
		}
	}
	for i := range c.Busbars {
		if l.has(StopsStuds) {
			c.Busbars[i].Studs = endlessStuds
		}
	}
	for i := range c.Batteries {
		if l.has(StopsParallel) {
			c.Batteries[i].MaxParallel = 0
		}
	}
	return Problem{&s, c}
}

// Sizes that hold back nothing: beyond any cart, and small enough to be reckoned with exactly.
const (
	endlessM     = 100.0 // of a shelf
	endlessA     = 1e9   // that a device breaks
	endlessStuds = 10000
)

// bench lays out the catalogue with some limits lifted. Every battery that fits the bus and can be wired is
// a group of its own, however few of it there is room for.
func (c *counter) bench(l lifted) (*bench, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if b := c.benches[l]; b != nil {
		return b, nil
	}
	b, err := newBench(c.p.without(l), wiredOptions{})
	if err != nil {
		return nil, err
	}
	b.partial = true
	b.layAll()
	b.stacks, b.groups = nil, nil
	for i := range b.c.Batteries {
		if k, ok := b.stackOf(i); ok {
			b.groups = append(b.groups, []int{len(b.stacks)})
			b.stacks = append(b.stacks, k)
		}
	}
	c.benches[l] = b
	return b, nil
}

// group returns which group of a bench the battery at a place of the catalogue is, -1 for none.
func (b *bench) groupOf(battery int) int {
	for i := range b.stacks {
		if b.stacks[i].position == battery {
			return i
		}
	}
	return -1
}

// count counts the strings of one battery, from the most that the shelves and the maker allow downward.
func (c *counter) count(ctx context.Context, battery int) (Count, error) {
	b, err := c.bench(0)
	if err != nil {
		return Count{}, err
	}
	bat := &c.p.Catalog.Batteries[battery]
	series, _ := energy.Fits(c.p.Scenario.Bus, bat)
	out := Count{Limits: []string{}}
	least := 1
	if out.Least = b.fewest(bat); out.Least > 1 {
		least = out.Least
	}
	if g := b.groupOf(battery); g >= 0 {
		for n := b.stacks[g].most; n >= least && out.Strings == 0; n-- {
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

// fewest returns how many strings of a battery carry the inverter that draws least; 0 where there is none.
func (b *bench) fewest(bat *catalog.Battery) int {
	least := math.Inf(1)
	for i := range b.supplies {
		least = math.Min(least, b.supplies[i].drawA)
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return int(math.Ceil(least/bat.MaxDischargeA - energyTie))
}

// explain finds what stops so many strings: each limit that does so by itself, else a smallest set of limits
// that do so together.
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
				return []string{StopsAll}, false, nil
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

// size returns how many limits are in a set, names which.
func (l lifted) size() int { return len(l.names()) }

func (l lifted) names() []string {
	names := []string{}
	for _, s := range stops {
		if l.has(s) {
			names = append(names, s)
		}
	}
	return names
}

// possible reports whether a cart can be built with so many strings of a battery and no other, with some
// limits lifted. Supplies are tried one after the other, the lightest cart's first; audited says that the
// cart found has to pass its audit.
func (c *counter) possible(ctx context.Context, l lifted, battery, n int, audited bool) (bool, error) {
	b, err := c.bench(l)
	if err != nil || len(b.supplies) == 0 || len(b.reasons) > 0 {
		return false, err
	}
	bat := &c.p.Catalog.Batteries[battery]
	g := b.groupOf(battery)
	if g < 0 || !l.has(StopsParallel) && bat.MaxParallel > 0 && n > bat.MaxParallel {
		return false, nil
	}
	for v := range b.supplies {
		trial := core{supply: v, group: g, counts: []int{n}}
		sp := b.coreSpace(&trial)
		sp.settled = sp.settled || l.has(StopsTilt)
		p := b.writeProgram("count", sp)
		s, err := p.m.Solve(ctx, milp.Options{})
		if err != nil {
			return false, fmt.Errorf("internal error: %w", err)
		}
		switch s.Status {
		case milp.Infeasible:
			continue
		case milp.Best, milp.Proved:
			if audited {
				choice := p.read(s)
				return true, c.audit(b.finish(&choice))
			}
			return true, nil
		default:
			return false, ErrUnknown
		}
	}
	return false, nil
}

// audit recomputes a cart that only has to stand, roll and be safe.
func (c *counter) audit(p plan.Plan) error {
	p.Audit = audit.Plan(c.p.Scenario, c.p.Catalog, &p)
	var failed []plan.Check
	for _, check := range p.Audit.Checks {
		if !check.Passed && !short(check.Name) {
			failed = append(failed, check)
		}
	}
	if len(failed) > 0 {
		return &DisagreementError{Plan: p, Failed: failed}
	}
	return nil
}
