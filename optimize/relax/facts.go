package relax

import (
	"context"
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
	"cartwright/scenarios"
)

// A safety factor and a fact about the floor are not levers: the program never proposes to lower the one or to have
// another of the other. But it says so where one of them alone keeps every plan out.

// Facts says which of them alone keep every plan out, for a problem that has none. What takes too long to find out is
// left out.
func Facts(ctx context.Context, p question.Problem, before *bench.Before) ([]string, error) {
	list := []hurdle{weakCasters(p)}
	if p.Scenario.Limits.PushN > 0 {
		list = append(list, roughFloor(p))
	}
	var words []string
	for i := range list {
		found, _, err := search.Reachable(ctx, lift(p, list[i:i+1]), before.OtherParts(), hurdleWork)
		if err := unlessUnknown(err); err != nil {
			return nil, err
		}
		if found {
			words = append(words, list[i].words)
		}
	}
	return words, nil
}

// weakCasters is the hurdle of what the casters carry, at the scenario's caster_factor.
func weakCasters(p question.Problem) hurdle {
	s := p.Scenario
	wheels := 0.0
	for i := range p.Catalog.Casters {
		if x := &p.Catalog.Casters[i]; x.SetOf == s.Cart.Casters {
			wheels = math.Max(wheels, x.RatingKg)
		}
	}
	return hurdle{fmt.Sprintf("no set of %d casters of the catalogue carries such a cart: the strongest are rated %s kg each, which is %s kg in all at a caster_factor of %s and one wheel in the air",
		s.Cart.Casters, bench.Figure(wheels), bench.Figure(math.Floor(wheels/chassis.CasterLoadKg(1, s.CasterFactor, s.Cart.Casters))), bench.Figure(s.CasterFactor)),
		func(_ *scenarios.Scenario, c *catalog.Catalog) {
			for i := range c.Casters {
				c.Casters[i].RatingKg = 100 * AnyMassKg
			}
		}}
}

// smoothest is a rolling resistance below that of any wheel on any floor.
const smoothest = 1e-4

// roughFloor is the hurdle of the rolling resistance.
func roughFloor(p question.Problem) hurdle {
	s := p.Scenario
	return hurdle{fmt.Sprintf("the floor is too rough for such a cart: at a rolling of %s %% and a slope of %s %%, %s N push %s kg at the most",
		bench.Figure(100*s.Cart.Rolling), bench.Figure(100*s.Limits.Slope), bench.Figure(s.Limits.PushN),
		bench.Figure(math.Floor(s.Limits.PushN/chassis.PushN(1, s.Cart.Rolling, s.Limits.Slope)))),
		func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Cart.Rolling = math.Min(s.Cart.Rolling, smoothest) }}
}
