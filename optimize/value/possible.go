package value

import (
	"context"
	"fmt"

	"cartwright/optimize/bench"
	"cartwright/optimize/bound"
	"cartwright/optimize/choice"
	"cartwright/optimize/milp"
	"cartwright/optimize/model"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// possible reports whether a cart can be built with so many strings of a battery and no other, with some
// limits lifted. Supplies are tried one after the other, but for those with which sums say that none can; audited says that the cart found has to pass its
// audit.
func (c *counter) possible(ctx context.Context, l lifted, battery, n int, audited bool) (bool, error) {
	b, err := c.bench(ctx, l)
	if err != nil || len(b.Supplies) == 0 || len(b.Reasons) > 0 {
		return false, err
	}
	g := groupOf(b, battery)
	if g < 0 || !fits(b, g, n) {
		return false, nil
	}
	for v := range b.Supplies {
		if !c.open(b, v, g, n) {
			continue
		}
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
	p.Audit = c.auditor.Plan(&p)
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

// fits reports whether the shelves carry so many strings of a battery and the maker allows them: else no cart has them.
func fits(b *bench.Bench, group, n int) bool {
	k := &b.Stacks[group]
	carried := 0.0
	for _, kg := range b.ShelfKg {
		carried += plan.Floor(kg / k.Battery.MassKg)
	}
	return carried >= float64(n*k.Series) && (k.Battery.MaxParallel == 0 || n <= k.Battery.MaxParallel)
}

// outOfBounds reports whether the least mass of a cart with so many strings, or the room they take, is too
// much with any supply.
func (c *counter) outOfBounds(b *bench.Bench, group, n int) bool {
	for v := range b.Supplies {
		if c.open(b, v, group, n) {
			return false
		}
	}
	return true
}

// open reports whether they are not too much with one supply.
func (c *counter) open(b *bench.Bench, supply, group, n int) bool {
	c.mu.Lock() // bounds are worked out on first use, and remembered
	defer c.mu.Unlock()
	bounds := c.bounds[b]
	if bounds == nil {
		bounds = bound.New(b)
		c.bounds[b] = bounds
	}
	core := bench.CoreOf(supply, group, []int{n})
	return !bounds.Hopeless(bounds.Of(&core))
}
