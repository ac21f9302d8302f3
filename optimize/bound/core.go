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
func (o *Bounds) Of(c *bench.Core) Figures { return o.With(c, &Further{}) }

// With returns the least figures of all cores that have at least these strings and further ones that come to something:
// they count in mass, fault current, studs and floor. Their cost is not in yet.
func (o *Bounds) With(c *bench.Core, more *Further) Figures {
	f := o.with(c, more)
	if o.paid != nil {
		paid, saved := o.paid.with(c, more), o.saved(c)
		f.Cents = math.Max(f.Cents, paid.Cents-saved)
		f.OpenCents = math.Max(f.OpenCents, paid.OpenCents-saved)
	}
	return f
}

func (o *Bounds) with(c *bench.Core, more *Further) Figures {
	f := Figures{Cents: o.cents[c.Supply], Kg: o.kg[c.Supply] + more.Kg, Aged: true, room: more.room}
	v := &o.Bench.Supplies[c.Supply]
	members := o.Bench.Groups[c.Group]
	total, count := more.ShortA, more.Strings
	for _, h := range c.Strings {
		total += float64(h.N) * o.Bench.Stacks[members[h.Member]].ShortA
		count += h.N
	}
	further := 0.0 // of the batteries' cost, what further strings need not add to
	for _, h := range c.Strings {
		at := members[h.Member]
		k := &o.Bench.Stacks[at]
		x := float64(h.N)
		runCents, runKg := o.stringRun(c.Supply, at, count, wiring.StringFaultA(k.ShortA, total))
		modules, a := x*float64(k.Series), &o.Market.Articles[k.Article]
		least := a.LeastCents(modules, o.Market.Tax)
		further += least - a.LinearCents(modules, o.Market.Tax)
		f.Cents += least + x*runCents
		f.Kg += x * (k.Kg + runKg)
		f.UsableWh += x * k.UsableWh
		f.room += x * o.room[at]
	}
	least, studs := wiring.BusbarA(v.BusA), wiring.BusbarStuds(count, v.Units, o.Bench.DCCircuits)
	bars := func(x *market.Option) bool { return plan.AtLeast(x.RatingA, least) && x.Studs >= studs }
	f.Cents += cheapest(o.Bench.Busbars, o.busbarFloors, bars)
	f.Kg += market.LeastOf(o.Bench.Busbars, bars, market.MassOf)
	if v.Main != nil {
		cents, kg := o.mains[c.Supply].least(total)
		f.Cents += float64(v.Units) * cents
		f.Kg += float64(v.Units) * kg
	}
	// The casters carry at least all the rest and the lightest set.
	cents, kg := o.casters.least(chassis.CasterLoadKg(f.Kg+o.lightestCastersKg, o.Bench.Scenario.CasterFactor, o.Bench.Scenario.Cart.Casters))
	f.Cents += cents
	f.Kg += kg
	f.OpenCents = f.Cents - further
	f.LifeWh = o.lifetimeWh(c, f.UsableWh)
	f.Aged = f.LifeWh > 0 || len(c.Strings) == 0
	return f
}

// Hopeless reports that no plan with at least these strings is within mass, floor and budget.
func (o *Bounds) Hopeless(f Figures) bool {
	if f.Kg > o.most || !plan.AtMost(f.room, o.floorArea) {
		return true
	}
	return o.Dear(f.Cents)
}

// Dear reports that so many cents are above the budget for certain.
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
