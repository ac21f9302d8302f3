package optimize_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// dice draws small problems: the same seed gives the same problem for ever.
type dice struct{ *rand.Rand }

// newDice returns the dice of a seed.
func newDice(seed uint64) dice {
	const stream = 0x5eed // any fixed number: a second half of the generator's seed
	return dice{rand.New(rand.NewPCG(seed, stream))}
}

// chance is true in so many of a hundred cases.
func (d dice) chance(percent int) bool { return d.IntN(100) < percent }

// from draws a whole number from low to high.
func (d dice) from(low, high int) int { return low + d.IntN(high-low+1) }

// between draws a number from low to high in whole steps.
func (d dice) between(low, high, step float64) float64 {
	n := int(math.Round((high - low) / step))
	return low + step*float64(d.IntN(n+1))
}

// pick draws one of some values.
func pick[T any](d dice, of ...T) T { return of[d.IntN(len(of))] }

// shuffled returns n of some values in the order they are given, each at most once.
func shuffled[T any](d dice, n int, of ...T) []T {
	keep := make([]bool, len(of))
	for _, i := range d.Perm(len(of))[:min(n, len(of))] {
		keep[i] = true
	}
	var some []T
	for i, v := range of {
		if keep[i] {
			some = append(some, v)
		}
	}
	return some
}

// cents draws a price in whole cents, of units from low to high.
func (d dice) cents(low, high int) catalog.Cents { return catalog.Cents(d.from(100*low, 100*high)) }

// draft is a problem on its way.
type draft struct {
	dice
	s *scenarios.Scenario
	c *catalog.Catalog
}

// randomProblem draws a catalogue and a scenario, small enough that every plan there is can be written
// down, in which each limit of the model binds now and then. About two of three have a plan. All of it is
// invented.
func randomProblem(seed uint64) question.Problem {
	d := drafted(seed)
	d.trade(seed)
	return question.Problem{Scenario: d.s, Catalog: d.c}
}

// drafted draws a problem without circuits on the bus, conduits, frames and what else trade adds.
func drafted(seed uint64) *draft {
	d := &draft{dice: newDice(seed), c: &catalog.Catalog{}, s: &scenarios.Scenario{
		Name: fmt.Sprintf("random %d", seed), Currency: "USD", Rules: scenarios.NEC,
		UseDays: 365, CasterFactor: 1.25, ACFaultA: 5000,
		Solver: scenarios.Solver{TimeLimitS: 60, Plans: 10},
	}}
	if d.chance(40) {
		d.s.Rules = scenarios.IEC
	}
	d.bus()
	d.loads()
	d.batteries()
	d.circuits()
	d.inverters()
	d.runs()
	d.cables()
	d.devices()
	d.fittings()
	d.cart()
	d.limits()
	d.owned()
	d.offers()
	return d
}

// bus draws a 24 V or a 48 V bus.
func (d *draft) bus() {
	d.s.Bus = scenarios.Bus{NominalV: 48, LowV: 44, HighV: 60}
	if d.chance(35) {
		d.s.Bus = scenarios.Bus{NominalV: 24, LowV: 22, HighV: 30}
	}
}

// loads draws what is to be run, and for how long.
func (d *draft) loads() {
	for i := range d.from(1, 4) {
		l := scenarios.Load{
			Name: fmt.Sprintf("load %d", i), Watts: d.between(20, 320, 10), Count: 1,
			Leg: scenarios.LegAuto, AllDay: true, Duty: 1, PowerFactor: 1, Start: 1,
		}
		if d.chance(25) {
			l.Count = 2
		}
		if d.chance(70) {
			l.AllDay = false
			l.FromMin = 30 * d.from(0, 47)
			l.ToMin = 30 * d.from(0, 48)
			if l.FromMin == l.ToMin {
				l.AllDay = true
			}
		}
		if d.chance(40) {
			l.Duty = d.between(0.1, 0.9, 0.05)
		}
		if d.chance(30) {
			l.Start = d.between(1.5, 4, 0.5)
		}
		switch {
		case i > 0 && d.chance(15):
			l.DC, l.Start = true, 1
		case d.s.Rules == scenarios.NEC && d.chance(40):
			l.Leg = pick(d.dice, scenarios.LegA, scenarios.LegB)
		case d.s.Rules == scenarios.NEC && d.chance(8):
			l.Leg = scenarios.LegBoth
		}
		d.s.Loads = append(d.s.Loads, l)
	}
	d.s.AutonomyH = d.between(1, 6, 0.25)
	if d.chance(35) {
		d.s.Recharge = &scenarios.Recharge{WithinH: d.between(2, 12, 0.5), From: "grid"}
	}
}

// part returns what every part has.
func (d *draft) part(kind string, i int, priceLow, priceHigh int, massKg float64) catalog.Part {
	return catalog.Part{
		ID: fmt.Sprintf("%s-%d", kind, i), Name: fmt.Sprintf("%s %d", kind, i),
		Price: d.cents(priceLow, priceHigh), MassKg: massKg,
	}
}

// batteries draws modules of the bus voltage, of half of it, and now and then of a wrong one.
func (d *draft) batteries() {
	whole, half := 51.2, 25.6
	if d.s.Bus.NominalV == 24 {
		whole, half = 25.6, 12.8
	}
	for i := range d.from(2, 4) {
		b := catalog.Battery{
			Chemistry: "LFP", NominalV: whole, MaxSeries: 1, MaxParallel: d.from(1, 3),
			CapacityWh:     d.between(600, 3400, 50),
			UsableFraction: d.between(0.75, 1, 0.05), RoundTrip: pick(d.dice, 1, 0.95, 0.9, 0.85),
			MaxDischargeA: pick(d.dice, 20.0, 30, 40, 60), MaxChargeA: pick(d.dice, 10.0, 20, 30, 50),
			ResistanceOhm: d.between(0.012, 0.06, 0.002), CycleLife: d.between(500, 6000, 250),
			LengthM: d.between(0.26, 0.44, 0.02), WidthM: d.between(0.16, 0.3, 0.02), HeightM: d.between(0.12, 0.28, 0.02),
		}
		b.Part = d.part("bat", i, 1, 3, d.between(4, 22, 0.5))
		// Energy has its price, more or less.
		b.Price = catalog.Cents(b.CapacityWh * d.between(10, 30, 0.1))
		if d.chance(20) {
			b.NominalV, b.MaxSeries, b.CapacityWh, b.MassKg = half, 2, b.CapacityWh/2, b.MassKg/2
			b.Price /= 2
		}
		b.MinV, b.MaxV = b.NominalV*0.85, b.NominalV*1.14
		if d.chance(5) {
			b.MaxV = b.NominalV * 1.25 // above the bus
		}
		b.PeakDischargeA = b.MaxDischargeA
		b.ShortCircuitA = b.MaxV / b.ResistanceOhm
		if d.chance(30) {
			b.ShortCircuitA = d.between(500, 6000, 250)
		}
		if d.chance(60) {
			b.Group = pick(d.dice, "red", "red", "blue")
		}
		if d.chance(15) {
			b.MaxParallel = 0
		}
		d.c.Batteries = append(d.c.Batteries, b)
	}
}

// inverters draws inverters that can run the loads more often than not.
func (d *draft) inverters() {
	peak, legs := 0.0, false // legs: something needs 240 V
	for _, l := range d.s.Loads {
		if !l.DC {
			peak += l.Watts * float64(l.Count)
		}
		legs = legs || l.Leg == scenarios.LegBoth
	}
	for _, c := range d.s.Circuits {
		legs = legs || c.Volts == 240
	}
	for i := range d.from(1, 3) {
		inv := catalog.Inverter{
			DCMinV: d.s.Bus.LowV - 2, DCMaxV: d.s.Bus.HighV + 2, ACV: "230",
			ContinuousW: 50 * math.Ceil(peak*d.between(0.8, 2.4, 0.1)/50),
			Efficiency:  d.between(0.85, 0.95, 0.01), IdleW: d.between(4, 30, 1),
			ChargerA: pick(d.dice, 0.0, 20, 30, 30, 40, 40, 60, 60), MaxUnits: d.from(1, 2),
		}
		inv.Part = d.part("inv", i, 100, 900, d.between(3, 14, 0.25))
		inv.SurgeW = inv.ContinuousW * d.between(1.25, 3, 0.25)
		inv.LegW = inv.ContinuousW
		if d.s.Rules == scenarios.NEC {
			if inv.ACV = "120"; legs && d.chance(90) || d.chance(45) {
				inv.ACV, inv.LegW = "120/240", inv.ContinuousW/2
				if d.chance(30) {
					inv.LegW = inv.ContinuousW * 0.75
				}
			}
		}
		if inv.ChargerACV, inv.LegSurgeW = inv.ACV, inv.SurgeW; inv.ACV == "120/240" {
			inv.LegSurgeW = inv.SurgeW / 2
		}
		if d.chance(6) {
			inv.DCMaxV = d.s.Bus.HighV - 1
		}
		d.c.Inverters = append(d.c.Inverters, inv)
	}
}
