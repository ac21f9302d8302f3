package bench

import (
	"fmt"
	"slices"
	"strconv"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// layFixed lists what every plan has: branches, receptacles and needs.
func (b *Bench) layFixed() {
	add := func(name string, count int, options []market.Option, nothing string) {
		if count == 0 {
			return
		}
		if len(options) == 0 {
			b.Reasons = append(b.Reasons, nothing)
		}
		b.Fixed = append(b.Fixed, market.Slot{Name: name, Count: count, Options: b.Market.Prune(options, b.Tips.HeavyBoard)})
	}
	for i := range b.Scenario.Circuits {
		c := &b.Scenario.Circuits[i]
		options, _ := b.RunOptions(wiring.BranchDuty(b.Scenario, c))
		add("branch "+c.Name, 1, options, "no cable and device of the catalogue serve circuit \""+c.Name+"\" under the rules")
		if r := c.Receptacle; r != nil {
			add("receptacle "+c.Name, r.Count, b.Receptacles(r),
				"the catalogue has no "+r.Role+" for circuit \""+c.Name+"\" of the rating asked for")
		}
	}
	defer b.fitSpaces()
	for i, n := range b.Scenario.Needs {
		add("need "+n.Role+" "+strconv.Itoa(i+1), n.Count, b.Sundries(n.Role, AtLeast(n.RatingA)),
			"the catalogue has no "+n.Role+" of the rating asked for")
	}
}

// fitSpaces leaves out the load centres that have fewer spaces than the branch breakers take at the least,
// where it is a single one that has them all.
func (b *Bench) fitSpaces() {
	poles, centre := 0, -1
	for i := range b.Fixed {
		s := &b.Fixed[i]
		least := UncountedSpaces
		for j := range s.Options {
			least = min(least, s.Options[j].Poles)
			if s.Options[j].Spaces > 0 {
				if s.Count != 1 || centre >= 0 && centre != i {
					return
				}
				centre = i
			}
		}
		if len(s.Options) > 0 {
			poles += s.Count * least
		}
	}
	if centre >= 0 {
		s := &b.Fixed[centre]
		s.Options = slices.DeleteFunc(s.Options, func(o market.Option) bool { return o.Spaces < poles })
		if len(s.Options) == 0 {
			b.Reasons = append(b.Reasons, fmt.Sprintf("no load centre of the catalogue has spaces for the %d poles of the branch breakers", poles))
		}
	}
}

// Receptacles returns what a circuit may end in.
func (b *Bench) Receptacles(r *scenarios.Receptacle) []market.Option {
	return b.Sundries(r.Role, b.receptacleServes(r))
}

// receptacleServes says which ratings serve a circuit: exactly the one asked for, since a circuit's outlets are
// of its own rating (NEC 210.21(B), from memory); where the catalogue has none of that rating, those above it.
func (b *Bench) receptacleServes(r *scenarios.Receptacle) func(ratingA float64) bool {
	if catalog.HasRating(b.Catalog.Sundries, r.Role, r.RatingA) {
		return func(ratingA float64) bool { return ratingA == r.RatingA }
	}
	return AtLeast(r.RatingA)
}

// AtLeast admits ratings that are not below one.
func AtLeast(ratingA float64) func(float64) bool {
	return func(a float64) bool { return plan.AtLeast(a, ratingA) }
}

// Sundries returns the sundries of a role whose rating serves.
func (b *Bench) Sundries(role string, serves func(ratingA float64) bool) []market.Option {
	var options []market.Option
	for i := range b.Catalog.Sundries {
		x := &b.Catalog.Sundries[i]
		if x.Role != role || !serves(x.RatingA) {
			continue
		}
		o := b.Market.Single(x.ID)
		if role == roleLoadCentre {
			o.Spaces = x.Spaces
			if x.Spaces == 0 {
				o.Spaces = UncountedSpaces
			} else {
				b.SpacesTold = true
			}
		}
		if b.Market.CanHave(&o) {
			options = append(options, o)
		}
	}
	return options
}

const (
	roleLoadCentre = "load-centre"
	// UncountedSpaces stands for a load centre that states no spaces: more than any cart has circuits.
	UncountedSpaces = 1000
)

// ShareBus reports whether strings of two stacks may sit on the same bus.
func (b *Bench) ShareBus(a, c *Stack) bool { return energy.ShareBus(a.Battery, c.Battery) }

// RechargeA returns the current that puts the energy of the autonomy back into a battery in time.
func (b *Bench) RechargeA(v *Supply, k *Stack) float64 {
	return energy.RechargeA(v.NeedWh, b.Scenario.Bus.NominalV, b.Scenario.Recharge.WithinH, k.Battery.RoundTrip)
}

// layBusbars lists the bus bar pairs, layCasters the caster sets with the cart's number of wheels.
func (b *Bench) layBusbars() {
	for i := range b.Catalog.Busbars {
		x := &b.Catalog.Busbars[i]
		o := b.Market.Single(x.ID)
		o.RatingA, o.Studs = x.RatingA, x.Studs
		if b.Market.CanHave(&o) {
			b.Busbars = append(b.Busbars, o)
		}
	}
	b.Busbars = b.Market.Prune(b.Busbars, b.Tips.HeavyBoard)
	if len(b.Busbars) == 0 {
		b.Reasons = append(b.Reasons, "the catalogue has no bus bars")
	}
}

func (b *Bench) layCasters() {
	for i := range b.Catalog.Casters {
		x := &b.Catalog.Casters[i]
		if x.SetOf != b.Scenario.Cart.Casters {
			continue
		}
		o := b.Market.Single(x.ID)
		o.CarriesKg = x.RatingKg
		if b.Market.CanHave(&o) {
			b.Casters = append(b.Casters, o)
		}
	}
	b.Casters = b.Market.Prune(b.Casters, b.Tips.HeavyCasters)
	if len(b.Casters) == 0 {
		b.Reasons = append(b.Reasons, "the catalogue has no set of "+strconv.Itoa(b.Scenario.Cart.Casters)+" casters")
	}
}
