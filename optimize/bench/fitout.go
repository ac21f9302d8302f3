package bench

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// layFixed lists what every plan has: circuits, the inlet, the bond, receptacles, needs and the frame's stock.
func (b *Bench) layFixed() {
	add := func(name string, purpose market.Purpose, count int, options []market.Option, nothing string) {
		if count == 0 {
			return
		}
		if len(options) == 0 {
			b.Reasons = append(b.Reasons, nothing)
		}
		b.Fixed = append(b.Fixed, market.Slot{Name: name, For: purpose, Count: count, Options: b.Market.Prune(options, b.Tips.HeavyBoard)})
	}
	for i := range b.Scenario.Circuits {
		c := &b.Scenario.Circuits[i]
		options, _ := b.RunOptions(wiring.BranchDuty(b.Scenario, c))
		purpose := market.Branch
		if c.DC {
			purpose = market.DC
		}
		add("branch "+c.Name, purpose, 1, options, "no cable and device of the catalogue serve circuit \""+c.Name+"\" under the rules")
		if r := c.Receptacle; r != nil {
			add("receptacle "+c.Name, market.Other, r.Count, b.Receptacles(r),
				"the catalogue has no "+r.Role+" for circuit \""+c.Name+"\" of the rating asked for")
		}
	}
	if d, listed := wiring.InletDuty(b.Scenario); listed {
		options, _ := b.RunOptions(d, true)
		add("inlet", market.Inlet, 1, options, "no cable and device of the catalogue serve the inlet under the rules")
	}
	if d, listed := wiring.BondDuty(b.Scenario); listed {
		options, _ := b.RunOptions(d, true)
		add("bond", market.Bond, 1, options, "no cable of the catalogue serves as the bond")
	}
	defer b.fitCentre()
	for i, n := range b.Scenario.Needs {
		purpose := market.Other
		switch n.Role {
		case wiring.RoleShunt, wiring.RoleDisconnect:
			purpose = market.Through
		case wiring.RoleLoadCentre:
			purpose = market.Centre
		}
		add("need "+n.Role+" "+strconv.Itoa(i+1), purpose, n.Count, b.Sundries(n.Role, AtLeast(b.NeedA(&n))),
			"the catalogue has no "+n.Role+" of the rating needed")
	}
	b.layFrame()
}

// NeedA returns the least rating in amperes that serves a need: the one it states, and for a shunt or a disconnect also
// what the bus current of the smallest supply needs. +Inf where no inverter serves.
func (b *Bench) NeedA(n *scenarios.Need) float64 {
	if n.Role == wiring.RoleShunt || n.Role == wiring.RoleDisconnect {
		return math.Max(n.RatingA, wiring.ThroughA(b.LeastBusA()))
	}
	return n.RatingA
}

// needsCentre reports whether a load centre is needed, and whether some load centre takes breakers of one mount only.
func (b *Bench) needsCentre() (needed, mounts bool) {
	for i := range b.Scenario.Needs {
		n := &b.Scenario.Needs[i]
		needed = needed || n.Role == wiring.RoleLoadCentre && n.Count > 0
	}
	for i := range b.Catalog.Sundries {
		x := &b.Catalog.Sundries[i]
		mounts = mounts || needed && x.Role == wiring.RoleLoadCentre && x.Mount != ""
	}
	return needed, mounts
}

// layFrame lists the stock for the frame's pieces that has a price: bought by length, its mass counted with the frame.
func (b *Bench) layFrame() {
	priced := map[string]bool{}
	for i := range b.Catalog.Sections {
		priced[b.Catalog.Sections[i].ID] = b.Catalog.Sections[i].CentsPerM > 0
	}
	var o market.Option
	for _, p := range b.Scenario.Cart.Pieces {
		if priced[p.Section] {
			b.Market.Use(&o, p.Section, p.LengthM*float64(p.Count))
		}
	}
	if len(o.Uses) == 0 {
		return
	}
	b.Market.Price(&o)
	b.Fixed = append(b.Fixed, market.Slot{Name: "frame", Count: 1, Options: []market.Option{o}})
}

// centre returns the slot of the load centre, and how many spaces the branch breakers take at least; nil where there is
// not just one load centre.
func (b *Bench) centre() (slot *market.Slot, poles int) {
	for i := range b.Fixed {
		s := &b.Fixed[i]
		switch {
		case s.For == market.Centre:
			if s.Count != 1 || slot != nil {
				return nil, 0
			}
			slot = s
		case s.For == market.Branch && len(s.Options) > 0:
			poles += int(market.LeastOf(s.Options, nil, func(o *market.Option) float64 { return float64(o.Poles) }))
		}
	}
	return slot, poles
}

// fitCentre leaves out the load centres that have too few spaces for the branch breakers, or that do not take the
// breakers of some branch.
func (b *Bench) fitCentre() {
	s, poles := b.centre()
	if s == nil || len(s.Options) == 0 {
		return
	}
	s.Options = slices.DeleteFunc(s.Options, func(o market.Option) bool { return o.Spaces > 0 && o.Spaces < poles })
	if len(s.Options) == 0 {
		b.Reasons = append(b.Reasons, fmt.Sprintf("no load centre of the catalogue has spaces for the %d poles of the branch breakers", poles))
		return
	}
	s.Options = slices.DeleteFunc(s.Options, func(o market.Option) bool { return o.Mount != "" && !b.takesBranches(o.Mount) })
	if len(s.Options) == 0 {
		b.Reasons = append(b.Reasons, "no load centre of the catalogue takes breakers of a mount (devices.csv, sundries.csv, mount) that serve every circuit")
	}
}

// takesBranches reports whether every branch has an option whose device may go with a load centre of a mount.
func (b *Bench) takesBranches(mount string) bool {
	for i := range b.Fixed {
		s := &b.Fixed[i]
		if s.For == market.Branch && !slices.ContainsFunc(s.Options, func(o market.Option) bool { return InCentre(&o, mount) }) {
			return false
		}
	}
	return true
}

// InCentre reports whether a branch's device may go with a load centre of a mount.
func InCentre(o *market.Option, mount string) bool { return wiring.FitsCentre(o.Wire.Device, mount) }

// Receptacles returns what a circuit may end in.
func (b *Bench) Receptacles(r *scenarios.Receptacle) []market.Option {
	return b.Sundries(r.Role, b.receptacleServes(r))
}

// receptacleServes returns which ratings serve a circuit: exactly the one asked for, since a circuit's outlets are
// of its own rating (NEC 210.21(B), from memory); where the catalogue has none of that rating, any above it.
func (b *Bench) receptacleServes(r *scenarios.Receptacle) func(ratingA float64) bool {
	if catalog.HasRating(b.Catalog.Sundries, r.Role, r.RatingA) {
		return func(ratingA float64) bool { return ratingA == r.RatingA }
	}
	return AtLeast(r.RatingA)
}

// AtLeast returns a test for ratings of at least ratingA.
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
		switch role {
		case wiring.RoleShunt, wiring.RoleDisconnect:
			o.RatingA = x.RatingA
		case wiring.RoleLoadCentre:
			o.RatingA, o.Spaces, o.Mount = x.RatingA, x.Spaces, x.Mount
		}
		if b.Market.CanHave(&o) {
			options = append(options, o)
		}
	}
	return options
}

// LosslessA returns the charging current in amperes that a supply's autonomy needs with a battery without losses.
func (b *Bench) LosslessA(v *Supply) float64 {
	return energy.RechargeA(v.NeedWh, b.Scenario.Bus.NominalV, b.Scenario.Recharge.WithinH, 1)
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
		if x.SetOf != b.Scenario.Cart.Casters || !b.holds(x) {
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
		b.Reasons = append(b.Reasons, "the catalogue has no set of "+strconv.Itoa(b.Scenario.Cart.Casters)+" casters that holds the cart on the slope")
	}
}

// holds reports whether the braked wheels of a set hold the cart on the slope it is rolled on.
func (b *Bench) holds(x *catalog.Casters) bool {
	s := b.Scenario
	return s.Limits.Slope <= 0 || plan.AtLeast(chassis.HeldSlope(s.Cart.Grip, x.Brakes, s.Cart.Casters), s.Limits.Slope)
}

// Bonds reports whether a bond is large enough for a supply's main that is built by an option.
func (b *Bench) Bonds(supply int, bond, main *market.Option) bool {
	d, _ := wiring.MainDuty(b.Scenario, b.Supplies[supply].UnitA)
	mm2, ok := wiring.BondMM2(b.Rules, d, main.Wire, bond.Wire.Ground.Material)
	return ok && plan.AtLeast(bond.Wire.Ground.Size.AreaMM2(), mm2)
}
