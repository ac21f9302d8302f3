package relax

import (
	"fmt"
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
)

// noSupply says which condition no inverter meets; "" where there are no inverters, which emptyFiles says.
func noSupply(b *bench.Bench) string {
	var all []bench.Serving
	for i := range b.Catalog.Inverters {
		all = append(all, bench.Servings(&b.Catalog.Inverters[i])...)
	}
	if c, left := bench.Blame(b.InverterConditions(), all); c != nil {
		return c.None(left)
	}
	return ""
}

// noStack says which condition no battery meets; "" where there are no batteries, which emptyFiles says.
func noStack(b *bench.Bench) string {
	var all []*bench.Standing
	for i := range b.Catalog.Batteries {
		all = append(all, b.StandingOf(&b.Catalog.Batteries[i]))
	}
	if c, left := bench.Blame(b.BatteryConditions(), all); c != nil {
		return c.None(left)
	}
	return ""
}

// noCasters says that there is no set of the cart's number of wheels, or that none holds it on the slope.
func noCasters(b *bench.Bench) string {
	s := b.Scenario
	held, known := 0.0, false
	for i := range b.Catalog.Casters {
		if x := &b.Catalog.Casters[i]; x.SetOf == s.Cart.Casters {
			held, known = math.Max(held, chassis.HeldSlope(s.Cart.Grip, x.Brakes, s.Cart.Casters)), true
		}
	}
	if !known {
		return fmt.Sprintf("the catalogue has no set of %d casters, as cart.casters asks for", s.Cart.Casters)
	}
	return fmt.Sprintf("no set of %d casters of the catalogue holds the cart on a slope of %s %%: at a grip of %s the one with most brakes holds it on %s %%",
		s.Cart.Casters, bench.Figure(100*s.Limits.Slope), bench.Figure(s.Cart.Grip), bench.Figure(math.Floor(1e4*held)/100))
}
