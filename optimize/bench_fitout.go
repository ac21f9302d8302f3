package optimize

import (
	"fmt"
	"slices"
	"strconv"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// layFixed lists what every plan has: branches, receptacles and needs.
func (b *bench) layFixed() {
	add := func(name string, count int, options []option, nothing string) {
		if count == 0 {
			return
		}
		if len(options) == 0 {
			b.reasons = append(b.reasons, nothing)
		}
		b.fixed = append(b.fixed, slot{name, count, b.market.prune(options, b.tips.heavyBoard)})
	}
	for i := range b.s.Circuits {
		c := &b.s.Circuits[i]
		options, _ := b.runOptions(wiring.BranchDuty(b.s, c))
		add("branch "+c.Name, 1, options, "no cable and device of the catalogue serve circuit \""+c.Name+"\" under the rules")
		if r := c.Receptacle; r != nil {
			add("receptacle "+c.Name, r.Count, b.receptacles(r),
				"the catalogue has no "+r.Role+" for circuit \""+c.Name+"\" of the rating asked for")
		}
	}
	defer b.fitSpaces()
	for i, n := range b.s.Needs {
		add("need "+n.Role+" "+strconv.Itoa(i+1), n.Count, b.sundries(n.Role, atLeast(n.RatingA)),
			"the catalogue has no "+n.Role+" of the rating asked for")
	}
}

// fitSpaces leaves out the load centres that have fewer spaces than the branch breakers take at the least,
// where it is a single one that has them all.
func (b *bench) fitSpaces() {
	poles, centre := 0, -1
	for i := range b.fixed {
		s := &b.fixed[i]
		least := uncountedSpaces
		for j := range s.options {
			least = min(least, s.options[j].poles)
			if s.options[j].spaces > 0 {
				if s.count != 1 || centre >= 0 && centre != i {
					return
				}
				centre = i
			}
		}
		if len(s.options) > 0 {
			poles += s.count * least
		}
	}
	if centre >= 0 {
		s := &b.fixed[centre]
		s.options = slices.DeleteFunc(s.options, func(o option) bool { return o.spaces < poles })
		if len(s.options) == 0 {
			b.reasons = append(b.reasons, fmt.Sprintf("no load centre of the catalogue has spaces for the %d poles of the branch breakers", poles))
		}
	}
}

// receptacles returns what a circuit may end in: the receptacles of exactly the rating asked for, since a
// circuit's outlets are of its own rating (NEC 210.21(B), from memory); where the catalogue has none of
// that rating, those above it.
func (b *bench) receptacles(r *scenarios.Receptacle) []option {
	if catalog.HasRating(b.c.Sundries, r.Role, r.RatingA) {
		return b.sundries(r.Role, func(ratingA float64) bool { return ratingA == r.RatingA })
	}
	return b.sundries(r.Role, atLeast(r.RatingA))
}

// atLeast admits ratings that are not below one.
func atLeast(ratingA float64) func(float64) bool {
	return func(a float64) bool { return a >= ratingA }
}

// sundries returns the sundries of a role whose rating serves.
func (b *bench) sundries(role string, serves func(ratingA float64) bool) []option {
	var options []option
	for i := range b.c.Sundries {
		x := &b.c.Sundries[i]
		if x.Role != role || !serves(x.RatingA) {
			continue
		}
		o := b.market.single(x.ID)
		if role == roleLoadCentre {
			o.spaces = x.Spaces
			if x.Spaces == 0 {
				o.spaces = uncountedSpaces
			} else {
				b.spacesTold = true
			}
		}
		if b.market.canHave(&o) {
			options = append(options, o)
		}
	}
	return options
}

const (
	roleLoadCentre = "load-centre"
	// uncountedSpaces stands for a load centre that states no spaces: more than any cart has circuits.
	uncountedSpaces = 1000
)

// shareBus reports whether strings of two stacks may sit on the same bus.
func (b *bench) shareBus(a, c *stack) bool { return energy.ShareBus(a.bat, c.bat) }

// rechargeA returns the current that puts the energy of the autonomy back into a battery in time.
func (b *bench) rechargeA(v *supply, k *stack) float64 {
	return energy.RechargeA(v.needWh, b.s.Bus.NominalV, b.s.Recharge.WithinH, k.bat.RoundTrip)
}

// layBusbars lists the bus bar pairs, layCasters the caster sets with the cart's number of wheels.
func (b *bench) layBusbars() {
	for i := range b.c.Busbars {
		x := &b.c.Busbars[i]
		o := b.market.single(x.ID)
		o.ratingA, o.studs = x.RatingA, x.Studs
		if b.market.canHave(&o) {
			b.busbars = append(b.busbars, o)
		}
	}
	b.busbars = b.market.prune(b.busbars, b.tips.heavyBoard)
	if len(b.busbars) == 0 {
		b.reasons = append(b.reasons, "the catalogue has no bus bars")
	}
}

func (b *bench) layCasters() {
	for i := range b.c.Casters {
		x := &b.c.Casters[i]
		if x.SetOf != b.s.Cart.Casters {
			continue
		}
		o := b.market.single(x.ID)
		o.carriesKg = x.RatingKg
		if b.market.canHave(&o) {
			b.casters = append(b.casters, o)
		}
	}
	b.casters = b.market.prune(b.casters, b.tips.heavyCasters)
	if len(b.casters) == 0 {
		b.reasons = append(b.reasons, "the catalogue has no set of "+strconv.Itoa(b.s.Cart.Casters)+" casters")
	}
}
