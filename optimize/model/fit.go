package model

import (
	"math"
	"slices"

	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
)

// fit leaves out of a single core the options that no other slot's options go with: casters that do not carry even the
// lightest cart, bonds that fit no main and mains that fit no bond, load centres and feeders likewise. The rows require
// the same, but with fewer options bounds made of sums are closer to what the core costs.
func (p *program) fit() {
	_, kg := p.core()
	for i := range p.slots {
		kg += float64(p.slots[i].slot.Count) * market.LeastOf(p.slots[i].slot.Options, nil, market.MassOf)
	}
	s := p.Bench.Scenario
	load := chassis.CasterLoadKg(kg, s.CasterFactor, s.Cart.Casters)
	casters := p.casters()
	casters.slot.Options = slices.DeleteFunc(casters.slot.Options, func(o market.Option) bool { return !plan.AtLeast(o.CarriesKg, load) })
	main, bond := p.slotOf(choice.SlotMain, market.Other), p.slotOf(choice.SlotFixed, market.Bond)
	if main != nil && bond != nil {
		fits := func(b, m *market.Option) bool { return p.Bench.Bonds(p.Space.supplies[main.of], b, m) }
		bond.slot.Options = slices.DeleteFunc(bond.slot.Options, func(b market.Option) bool {
			return !slices.ContainsFunc(main.slot.Options, func(m market.Option) bool { return fits(&b, &m) })
		})
		main.slot.Options = slices.DeleteFunc(main.slot.Options, func(m market.Option) bool {
			return !slices.ContainsFunc(bond.slot.Options, func(b market.Option) bool { return fits(&b, &m) })
		})
	}
	centre, feeder := p.slotOf(choice.SlotFixed, market.Centre), p.slotOf(choice.SlotFeeder, market.Other)
	if centre == nil || centre.most > 1 {
		return
	}
	centre.slot.Options = slices.DeleteFunc(centre.slot.Options, func(c market.Option) bool { return p.spareSpaces(&c) < 0 })
	if feeder == nil {
		return
	}
	fed := p.fedBy(feeder)
	spare := map[string]int{}
	for i := range centre.slot.Options {
		c := &centre.slot.Options[i]
		spare[c.Part] = p.spareSpaces(c)
	}
	centre.slot.Options = slices.DeleteFunc(centre.slot.Options, func(c market.Option) bool {
		return !slices.ContainsFunc(feeder.slot.Options, func(f market.Option) bool { return fed.by(&f, &c, spare[c.Part]) })
	})
	feeder.slot.Options = slices.DeleteFunc(feeder.slot.Options, func(f market.Option) bool {
		return !slices.ContainsFunc(centre.slot.Options, func(c market.Option) bool { return fed.by(&f, &c, spare[c.Part]) })
	})
}

// slotOf returns the slot of a kind and purpose; nil where there is none.
func (p *program) slotOf(kind choice.SlotKind, purpose market.Purpose) *slotVars {
	for i := range p.slots {
		if v := &p.slots[i]; v.kind == kind && v.slot.For == purpose {
			return v
		}
	}
	return nil
}

// uncounted is the spaces of a load centre that are not limited.
const uncounted = 1 << 30

// spareSpaces returns how many spaces a load centre has beyond the least that the branches take; negative where some
// branch has no breaker for it.
func (p *program) spareSpaces(c *market.Option) int {
	spaces := c.Spaces
	if spaces == 0 {
		spaces = uncounted
	}
	for i := range p.slots {
		v := &p.slots[i]
		if v.slot.For != market.Branch {
			continue
		}
		least := uncounted + 1
		for j := range v.slot.Options {
			if o := &v.slot.Options[j]; bench.InCentre(o, c.Mount) {
				least = min(least, o.Poles)
			}
		}
		spaces -= least
	}
	return spaces
}

// fed is what feeders ask of a load centre.
type fed struct {
	others float64 // least rating in amperes of all feeders but one together
}

// fedBy works out the least that the feeders ask for, before options are left out.
func (p *program) fedBy(v *slotVars) fed {
	return fed{float64(v.slot.Count-1) * market.LeastOf(v.slot.Options, nil, func(o *market.Option) float64 { return o.FeedsA })}
}

// by reports whether a load centre goes with a feeder's option: its rating is enough for that and the smallest other
// feeders, and it has spaces for the breaker beside those of the branches.
func (x fed) by(f, c *market.Option, spare int) bool {
	if !plan.AtLeast(c.RatingA, f.FeedsA+x.others) {
		return false
	}
	inside := c.Mount != "" && f.Wire.Device != nil && f.Wire.Device.Mount == c.Mount
	return !inside || f.Poles <= spare
}

// apart calls with for each set of casters and each load centre there is to choose, with the slots that go with them and
// the most mass in kg that everything but the core and the fixed mass may have.
func (p *program) apart(with func(slots []slotVars, mostKg float64)) {
	s := p.Bench.Scenario
	_, coreKg := p.core()
	perKg := chassis.CasterLoadKg(1, s.CasterFactor, s.Cart.Casters)
	p.byCentre(func(slots []slotVars) {
		for _, c := range p.casters().slot.Options {
			some := slices.Clone(slots)
			for i := range some {
				if some[i].kind == choice.SlotCasters {
					some[i].slot.Options = []market.Option{c}
				}
			}
			most := c.CarriesKg / perKg * (1 + plan.Tolerance)
			with(some, math.Min(most, s.Limits.MassKg*(1+plan.Tolerance))-coreKg)
		}
	})
}

// byCentre calls with for each load centre there is to choose, with the feeders and branches that go with it; once, with
// all slots, where there is none.
func (p *program) byCentre(with func(slots []slotVars)) {
	centre, feeder := p.slotOf(choice.SlotFixed, market.Centre), p.slotOf(choice.SlotFeeder, market.Other)
	if centre == nil || feeder == nil || centre.most > 1 {
		with(p.slots)
		return
	}
	fed := p.fedBy(feeder)
	for j := range centre.slot.Options {
		c := centre.slot.Options[j]
		spare := p.spareSpaces(&c)
		slots := slices.Clone(p.slots)
		for i := range slots {
			switch v := &slots[i]; {
			case v.kind == choice.SlotFixed && v.slot.For == market.Centre:
				v.slot.Options = []market.Option{c}
			case v.kind == choice.SlotFeeder:
				v.slot.Options = slices.DeleteFunc(slices.Clone(v.slot.Options), func(f market.Option) bool { return !fed.by(&f, &c, spare) })
			case v.slot.For == market.Branch:
				v.slot.Options = slices.DeleteFunc(slices.Clone(v.slot.Options), func(b market.Option) bool { return !bench.InCentre(&b, c.Mount) })
			}
		}
		with(slots)
	}
}
