package bench

import (
	"slices"

	"cartwright/optimize/plan"
)

// mayBeShort are the limits that a cart on the way to a plan need not meet yet.
var mayBeShort = []string{plan.LimitPower, plan.LimitLeg, plan.LimitSurge, plan.LimitLegSurge, plan.LimitPeakCurrent, plan.LimitServed}

// Short reports whether a limit of that name need not be met by a cart on the way to a plan.
func Short(name string) bool {
	return slices.Contains(mayBeShort, name)
}
