package optimize

import (
	"fmt"

	"cartwright/scenarios"
)

// Cautions are the usual ones: they go with every plan.
var Cautions = []string{
	"Stored energy does not switch off: a battery bus can burn, and a direct-current arc can blind and kill. Take off jewellery, insulate tools, fit the main fuse last.",
	"Local code and a licensed electrician decide. A figure from a table is a check, not a permission.",
	"Follow each maker's manual: it outranks this plan in torque, terminals, clearances, ventilation and parallel or series use.",
	"Lifting and rolling a heavy cart can crush. Strap the modules down, block the casters, and stay off slopes steeper than the plan's.",
}

// cautions returns the usual ones and those of this scenario.
func (b *bench) cautions() []string {
	out := append([]string(nil), Cautions...)
	for _, kind := range []scenarios.RunKind{scenarios.RunString, scenarios.RunMain, scenarios.RunFeeder} {
		r := b.s.Run(kind)
		switch {
		case r == nil:
			out = append(out, fmt.Sprintf("The scenario lists no %s run: its cable and protection are neither planned nor checked.", kind))
		case r.OwnBreakerA > 0:
			out = append(out, fmt.Sprintf("The %s relies on a %g A breaker of the inverter's own: see that it has one and that its interrupting rating will do.", kind, r.OwnBreakerA))
		}
	}
	if b.s.Cart.Casters == 3 {
		out = append(out, "Three wheels stand on a triangle: two of them are taken to be a track apart at one end, the third in the middle of the other.")
	}
	if !b.demand.LegsProven {
		out = append(out, "The loads left to the program were too many to find the very best split between the legs; theirs is a good one, and the plan was checked with it.")
	}
	return out
}
