package optimize

import (
	"math"

	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/wiring"
)

// figures are what a number of strings amounts to with a supply.
type figures struct {
	cents, kg float64 // least, of just these strings
	// openCents are the least of these and any further strings, before what the further ones add. It is
	// below cents where a quantity break makes one piece as dear as several.
	openCents float64
	usableWh  float64
	lifeWh    float64
	aged      bool    // every battery states a cycle life
	room      float64 // m2
}

// of returns the least figures of a core, or of all cores that have at least these strings: a fault
// current only grows with more strings, so no device that breaks less will do for them either.
func (o *bounds) of(c *core) (f figures) {
	f = figures{cents: o.cents[c.supply], kg: o.kg[c.supply], aged: true}
	v := &o.b.supplies[c.supply]
	members := o.b.groups[c.group]
	total := 0.0
	for _, h := range c.strings {
		total += float64(h.n) * o.b.stacks[members[h.member]].shortA
	}
	if o.paid != nil {
		defer func() {
			paid, saved := o.paid.of(c), o.saved(c)
			f.cents = math.Max(f.cents, paid.cents-saved)
			f.openCents = math.Max(f.openCents, paid.openCents-saved)
		}()
	}
	further := 0.0 // of the batteries' cost, what further strings need not add to
	for _, h := range c.strings {
		at := members[h.member]
		k := &o.b.stacks[at]
		x := float64(h.n)
		runCents, runKg := o.stringRun(at, wiring.StringFaultA(k.shortA, total))
		modules, a := x*float64(k.series), o.market.part(k.bat.ID)
		least := a.leastCents(modules, o.market.tax)
		further += least - a.linearCents(modules, o.market.tax)
		f.cents += least + x*runCents
		f.kg += x * (k.kg + runKg)
		f.usableWh += x * k.usableWh
		f.lifeWh += x * o.lifeWh[at]
		f.aged = f.aged && o.lifeWh[at] > 0
		f.room += x * o.room[at]
	}
	least, studs := wiring.BusbarA(v.busA, o.b.dcA), wiring.BusbarStuds(c.total(), v.units, 0)
	bars := func(x *option) bool { return x.ratingA >= least && x.studs >= studs }
	f.cents += cheapest(o.b.busbars, o.busbarFloors, bars)
	f.kg += leastOf(o.b.busbars, bars, massOf)
	if v.main != nil {
		serves := func(x *option) bool { return x.interruptingA >= total }
		f.cents += float64(v.units) * cheapest(v.main, o.mainFloors[c.supply], serves)
		f.kg += float64(v.units) * leastOf(v.main, serves, massOf)
	}
	// The casters carry at least all the rest and the lightest set.
	need := chassis.CasterLoadKg(f.kg+o.lightestCastersKg, o.b.s.CasterFactor, o.b.s.Cart.Casters)
	carry := func(x *option) bool { return x.carriesKg >= need*(1-energyTie) }
	f.cents += cheapest(o.b.casters, o.casterFloors, carry)
	f.kg += leastOf(o.b.casters, carry, massOf)
	f.openCents = f.cents - further
	return f
}

// hopeless reports that no plan with at least these strings is within mass, floor and budget.
func (o *bounds) hopeless(f figures) bool {
	if f.kg > o.most || f.room > o.floorArea*(1+areaTie) {
		return true
	}
	l := &o.b.s.Limits
	return math.IsInf(f.cents, 1) ||
		(l.Budget != math.MaxInt64 && f.cents > float64(l.Budget+o.b.s.Sold)+o.b.roundingCents())
}

// roundingCents bounds how far a cost that is rounded line by line to whole cents can be from the
// unrounded one: half a cent for each line of cable bought or sold, and for the tax.
func (b *bench) roundingCents() float64 {
	lines := 2*(len(b.s.Runs)+len(b.s.Circuits)) + len(b.s.Have) + 1
	return 0.5 * float64(lines)
}

// serves reports whether a core carries the loads and can be recharged.
func (o *bounds) serves(c *core, f figures) bool {
	v := &o.b.supplies[c.supply]
	if f.usableWh < v.needWh*(1-energyTie) {
		return false
	}
	var strings []energy.Strings
	for _, h := range c.strings {
		k := &o.b.stacks[o.b.groups[c.group][h.member]]
		strings = append(strings, energy.Strings{Battery: k.bat, Series: k.series, Count: h.n})
	}
	if len(strings) == 0 || !energy.Carries(strings, v.drawA) {
		return false
	}
	if r := o.b.s.Recharge; r != nil {
		need := energy.GridRechargeA(strings, v.needWh, o.b.s.Bus.NominalV, r.WithinH) * (1 - energyTie)
		return v.chargerA >= need && energy.ChargeA(strings) >= need
	}
	return true
}

// areaTie is the relative excess of floor taken that is the rounding of sums.
const areaTie = 1e-9

// energyTie is the relative shortfall of energy or current that is rounding, not a lack.
const energyTie = 1e-9

// missing bounds from below what the energy still missing adds for strings of the members from last on.
// Owned modules come first where they are cheaper; beyond them the cheapest energy is bought.
func (o *bounds) missing(c *core, last int, wh float64) (cents, kg float64) {
	if wh <= 0 {
		return 0, 0
	}
	members := o.b.groups[c.group]
	perCent := o.perUsableCents.from(o, c, last) // for a Wh
	kg = wh * o.perUsableKg.from(o, c, last)
	for _, j := range o.ownedMembers[c.group] {
		if j < last {
			continue
		}
		at := members[j]
		left := math.Min(o.ownedStrings[at], float64(o.b.stacks[at].most)) - float64(c.count(j))
		u := o.b.stacks[at].usableWh
		if left <= 0 || o.ownedCents[at]/u >= perCent {
			continue
		}
		// Each owned string saves at the most what its energy would cost bought.
		taken := math.Min(wh, left*u)
		cents += taken * (o.ownedCents[at]/u - perCent)
	}
	return math.Max(0, cents+wh*perCent), kg
}
