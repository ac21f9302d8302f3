package bound

import (
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/market"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
)

// Figures are what a number of strings amounts to with a supply.
type Figures struct {
	Cents, Kg float64 // least, of just these strings
	// openCents are the least of these and any further strings, before what the further ones add. It is
	// below cents where a quantity break makes one piece as dear as several.
	OpenCents float64
	UsableWh  float64
	LifeWh    float64
	Aged      bool    // every battery states how long it lives, and some of it is used
	room      float64 // m2
}

// Of returns the least figures of a core, or of all cores that have at least these strings: a fault
// current only grows with more strings, so no device that breaks less will do for them either.
func (o *Bounds) Of(c *bench.Core) Figures {
	f, totalA, loadKg := o.weigh(c)
	f.Cents, f.OpenCents, _ = o.full.of(c, totalA, loadKg)
	return f
}

// weigh returns the figures of a core but for its costs, the fault current of its bus and what its casters carry.
func (o *Bounds) weigh(c *bench.Core) (f Figures, totalA, loadKg float64) {
	f = Figures{Kg: o.kg[c.Supply]}
	v := &o.Bench.Supplies[c.Supply]
	members := o.Bench.Groups[c.Group]
	for _, h := range c.Strings {
		totalA += float64(h.N) * o.Bench.Stacks[members[h.Member]].ShortA
	}
	for _, h := range c.Strings {
		at, x := members[h.Member], float64(h.N)
		k := &o.Bench.Stacks[at]
		f.Kg += x * k.Kg
		if run, _, listed := o.runOf(c.Supply, at, c.Total()); listed {
			f.Kg += x * run.leastKg(wiring.StringFaultA(k.ShortA, totalA))
		}
		f.UsableWh += x * k.UsableWh
		f.room += x * o.room[at]
	}
	f.Kg += market.LeastOf(o.Bench.Busbars, o.bars(c), market.MassOf)
	if v.Main != nil {
		f.Kg += float64(v.Units) * o.mains[c.Supply].leastKg(totalA)
	}
	// The casters carry at least all the rest and the lightest set.
	loadKg = chassis.CasterLoadKg(f.Kg+o.lightestCastersKg, o.Bench.Scenario.CasterFactor, o.Bench.Scenario.Cart.Casters)
	carry := func(x *market.Option) bool { return plan.AtLeast(x.CarriesKg, loadKg) }
	f.Kg += market.LeastOf(o.Bench.Casters, carry, market.MassOf)
	f.LifeWh = o.lifetimeWh(c, f.UsableWh)
	f.Aged = f.LifeWh > 0 || len(c.Strings) == 0
	return f, totalA, loadKg
}

// bars says which bus bars carry the current of a core's supply and have a stud for everything.
func (o *Bounds) bars(c *bench.Core) func(*market.Option) bool {
	v := &o.Bench.Supplies[c.Supply]
	least, studs := wiring.BusbarA(v.BusA), wiring.BusbarStuds(c.Total(), v.Units, o.Bench.DCCircuits)
	return func(x *market.Option) bool { return plan.AtLeast(x.RatingA, least) && x.Studs >= studs }
}

// Hopeless reports that no plan with at least these strings is within mass, floor and budget.
func (o *Bounds) Hopeless(f Figures) bool {
	if f.Kg > o.most || !plan.AtMost(f.room, o.floorArea) {
		return true
	}
	l := &o.Bench.Scenario.Limits
	return math.IsInf(f.Cents, 1) ||
		(l.Budget != math.MaxInt64 && f.Cents > float64(l.Budget+o.Bench.Scenario.Sold)+o.Bench.RoundingCents)
}

// Serves reports whether a core carries the loads and can be recharged.
func (o *Bounds) Serves(c *bench.Core, f Figures) bool {
	v := &o.Bench.Supplies[c.Supply]
	if !plan.AtLeast(f.UsableWh, o.Bench.StoreWh(c.Supply)) {
		return false
	}
	strings := o.Bench.StringsOf(c)
	if len(strings) == 0 || !energy.Carries(strings, v.DrawA) || !o.Bench.Partial && !plan.AtLeast(energy.PeakA(strings), v.PeakA) {
		return false
	}
	if o.Bench.Scenario.Limits.SharedProtocols {
		for _, s := range strings {
			if !s.Battery.SharesProtocol(v.Inverter) {
				return false
			}
		}
	}
	if r := o.Bench.Scenario.Recharge; r != nil {
		need := energy.GridRechargeA(strings, v.NeedWh, o.Bench.Scenario.Bus.NominalV, r.WithinH)
		if !plan.AtLeast(v.ChargerA, need) || !plan.AtLeast(energy.ChargeA(strings), need) {
			return false
		}
	}
	served := o.Bench.Scenario.Limits.Served
	return served <= 0 || v.Sun == nil || o.Bench.Partial || plan.AtLeast(o.Bench.YearOf(c.Supply, strings).Served, served)
}

// Missing bounds from below what the energy still missing adds for strings of the members from last on.
// Owned modules come first where they are cheaper; beyond them the cheapest energy is bought.
func (o *Bounds) Missing(c *bench.Core, last int, wh float64) (cents, kg float64) {
	if wh <= 0 {
		return 0, 0
	}
	members := o.Bench.Groups[c.Group]
	perCent := o.perUsableCents.from(o, c, last) // for a Wh
	kg = wh * o.perUsableKg.from(o, c, last)
	for _, j := range o.ownedMembers[c.Group] {
		if j < last {
			continue
		}
		at := members[j]
		left := math.Min(o.ownedStrings[at], float64(o.Bench.Stacks[at].Most)) - float64(c.Count(j))
		u := o.Bench.Stacks[at].UsableWh
		if left <= 0 || o.ownedCents[at]/u >= perCent {
			continue
		}
		// Each owned string saves at the most what its energy would cost bought.
		taken := math.Min(wh, left*u)
		cents += taken * (o.ownedCents[at]/u - perCent)
	}
	return math.Max(0, cents+wh*perCent), kg
}
