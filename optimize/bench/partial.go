package bench

import (
	"slices"

	"cartwright/optimize/plan"
)

// mayBeShort are the limits that a cart on the way need not meet yet.
var mayBeShort = []string{plan.LimitPower, plan.LimitLeg, plan.LimitSurge, plan.LimitLegSurge, plan.LimitPeakCurrent, plan.LimitServed}

// Short reports whether a check is of a limit that may still be short.
func Short(name string) bool {
	return slices.Contains(mayBeShort, name)
}
