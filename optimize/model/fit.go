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

// fit leaves out, of a single core, what nothing else that there is to choose goes with: casters that do not carry even
// the lightest cart, bonds and mains that fit no other, load centres and feeders likewise. The rows ask for as much; with
// less to choose sums say more of what the core costs.
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

// spareSpaces returns how many spaces a load centre has beyond what the branches take at the least; less than none
// where some branch has no breaker that goes into it.
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

// fed tells what a load centre has to stand of feeders.
type fed struct {
	others float64 // the rating of all feeders but one, as small as can be
}

// fedBy works out what the feeders are at the least, before options are left out.
func (p *program) fedBy(v *slotVars) fed {
	return fed{float64(v.slot.Count-1) * market.LeastOf(v.slot.Options, nil, func(o *market.Option) float64 { return o.FeedsA })}
}

// by reports whether a load centre stands as many feeders of an option as there are units, or the others as small as
// can be, and has room for its breaker beside those of the branches.
func (x fed) by(f, c *market.Option, spare int) bool {
	if !plan.AtLeast(c.RatingA, f.FeedsA+x.others) {
		return false
	}
	inside := c.Mount != "" && f.Wire.Device != nil && f.Wire.Device.Mount == c.Mount
	return !inside || f.Poles <= spare
}

// apart calls with for each set of casters and each load centre there is to choose, with what goes with them and the
// mass that the rest of the cart can have, its modules and inverters left aside.
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

// byCentre calls with for each load centre there is to choose, with the feeders that go with it; once for all where
// there is none.
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
