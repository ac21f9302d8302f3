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

// Figures are lower bounds for a number of strings with a supply.
type Figures struct {
	Cents, Kg float64 // least, with these strings only
	// OpenCents is the least cost that these strings contribute where further ones are added. It is below Cents where a
	// quantity break makes one piece as dear as several.
	OpenCents float64
	UsableWh  float64
	LifeWh    float64
	Aged      bool    // there are no strings, or every battery states its life and some energy is used
	room      float64 // m2
}

// Of returns the least figures of a core, which hold for all cores that have at least these strings: the fault
// current only grows with more strings, so a device that is too weak for these is too weak for more.
func (o *Bounds) Of(c *bench.Core) Figures { return o.With(c, &Further{}) }

// With returns the least figures of all cores that have at least these strings and at least the further ones, which
// count in mass, fault current, studs and floor. The cost of the further ones is not included.
func (o *Bounds) With(c *bench.Core, more *Further) Figures {
	f, load := o.weigh(c, more)
	f.Cents, f.OpenCents, _ = o.full.of(c, load)
	return f
}

// load is what the support of a core has to carry.
type load struct {
	strings int
	faultA  float64 // of the bus
	kg      float64 // of each caster
}

// weigh returns the figures of a core with further strings, except the costs, and the load of its support.
func (o *Bounds) weigh(c *bench.Core, more *Further) (f Figures, l load) {
	f, l = Figures{Kg: o.kg[c.Supply] + more.Kg, room: more.room}, load{strings: more.Strings, faultA: more.ShortA}
	v := &o.Bench.Supplies[c.Supply]
	members := o.Bench.Groups[c.Group]
	for _, h := range c.Strings {
		l.faultA += float64(h.N) * o.Bench.Stacks[members[h.Member]].ShortA
		l.strings += h.N
	}
	for _, h := range c.Strings {
		at, x := members[h.Member], float64(h.N)
		k := &o.Bench.Stacks[at]
		f.Kg += x * k.Kg
		if run, _, listed := o.runOf(c.Supply, at, l.strings); listed {
			f.Kg += x * run.leastKg(wiring.StringFaultA(k.ShortA, l.faultA))
		}
		f.UsableWh += x * k.UsableWh
		f.room += x * o.room[at]
	}
	f.Kg += market.LeastOf(o.Bench.Busbars, o.bars(c.Supply, l.strings), market.MassOf)
	if v.Main != nil {
		f.Kg += float64(v.Units) * o.mains[c.Supply].leastKg(l.faultA)
	}
	// The casters carry at least everything else and the lightest set of casters.
	l.kg = chassis.CasterLoadKg(f.Kg+o.lightestCastersKg, o.Bench.Scenario.CasterFactor, o.Bench.Scenario.Cart.Casters)
	carry := func(x *market.Option) bool { return plan.AtLeast(x.CarriesKg, l.kg) }
	f.Kg += market.LeastOf(o.Bench.Casters, carry, market.MassOf)
	f.LifeWh = o.lifetimeWh(c, f.UsableWh)
	f.Aged = f.LifeWh > 0 || len(c.Strings) == 0
	return f, l
}

// RoomKg returns the mass in kg that figures leave.
func (o *Bounds) RoomKg(f Figures) float64 { return o.most - f.Kg }

// bars returns a test for bus bars that carry the current of a supply and have a stud for every connection.
func (o *Bounds) bars(supply, strings int) func(*market.Option) bool {
	v := &o.Bench.Supplies[supply]
	least, studs := wiring.BusbarA(v.BusA), wiring.BusbarStuds(strings, v.Units, o.Bench.DCCircuits)
	return func(x *market.Option) bool { return plan.AtLeast(x.RatingA, least) && x.Studs >= studs }
}

// Hopeless reports whether it is certain that no plan with at least these strings is within mass, floor and budget.
func (o *Bounds) Hopeless(f Figures) bool {
	if f.Kg > o.most || !plan.AtMost(f.room, o.floorArea) {
		return true
	}
	return o.Dear(f.Cents)
}

// Dear reports whether a cost in cents is above the budget for certain, whatever the rounding of bills.
func (o *Bounds) Dear(cents float64) bool {
	l := &o.Bench.Scenario.Limits
	return math.IsInf(cents, 1) || l.Budget != math.MaxInt64 && cents > float64(l.Budget+o.Bench.Scenario.Sold)+o.Bench.RoundingCents
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
	if !o.Bench.Paired(c) {
		return false
	}
	if r := o.Bench.Scenario.Recharge; r != nil &&
		!plan.AtLeast(energy.ChargeA(strings), energy.GridRechargeA(strings, v.NeedWh, o.Bench.Scenario.Bus.NominalV, r.WithinH)) {
		return false
	}
	served := o.Bench.Scenario.Limits.Served
	return served <= 0 || v.Sun == nil || o.Bench.Partial || plan.AtLeast(o.Bench.YearOf(c.Supply, strings).Served, served)
}
