package optimize

// Unloaded and Held let tests outside the package count on carts of their own.

// Unloaded returns the problem of a cart that need not run anything.
func (p Problem) Unloaded() Problem { return p.unloaded() }

// Held returns a copy of a problem in which of the limits that can stop a count only the given ones hold.
func (p Problem) Held(limits ...string) Problem {
	held := lifted(0)
	for i, s := range stops {
		for _, name := range limits {
			if s == name {
				held |= 1 << i
			}
		}
	}
	q := p.without(allLifted() &^ held)
	if (allLifted() &^ held).has(StopsTilt) {
		q.Scenario.Limits.TiltDeg = 0
	}
	return q
}
