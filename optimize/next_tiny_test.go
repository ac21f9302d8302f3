package optimize_test

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// A tiny problem is so small that everything that can be owned, in every number, can be written down: one
// shelf, strings and main of one metre with two conductors each, no circuits, nothing that is needed beside
// the cart itself. Prices are whole units and the tax is nothing or a tenth, so that no cent is rounded.

// pathM is the length of every path, and pieceM what its two conductors take of cable.
const (
	pathM  = 1
	pieceM = 2 * pathM
)

// tinyProblem draws a tiny problem without savings.
func tinyProblem(seed uint64) question.Problem {
	d := &draft{dice: newDice(seed), c: &catalog.Catalog{}, s: &scenarios.Scenario{
		Name: fmt.Sprintf("tiny %d", seed), Currency: "USD", Rules: scenarios.NEC, UseDays: 365, CasterFactor: 1.25, ACFaultA: 5000,
		Bus:    scenarios.Bus{NominalV: 48, LowV: 44, HighV: 60},
		Limits: scenarios.Limits{MassKg: math.Inf(1), Budget: math.MaxInt64, TiltDeg: 10},
		Cart: scenarios.Cart{
			Casters: 4, WheelbaseM: 0.8, TrackM: 0.6, CasterMassHeightM: 0.08, Rolling: 0.02, Grip: 0.5,
			Frame:     scenarios.Mass{Name: "frame", MassKg: 20, HeightM: 0.4},
			Backboard: scenarios.Backboard{ElevationM: 0.7, OffsetM: 0.1},
			Shelves:   []scenarios.Shelf{{Name: "shelf", ElevationM: 0.2, LengthM: 0.95, DepthM: 0.4, Stack: 1, ClearHeightM: 0.3, MaxMassKg: math.Inf(1)}},
		},
		Solver: scenarios.Solver{TimeLimitS: 60, Plans: 1},
	}}
	d.tinyLoads()
	d.tinyPower()
	d.tinyRest()
	d.tinyOwned()
	d.tinyOffers()
	return question.Problem{Scenario: d.s, Catalog: d.c}
}

// units draws a price of whole units.
func (d *draft) units(low, high int) catalog.Cents { return catalog.Cents(100 * d.from(low, high)) }

// made returns what every part has.
func (d *draft) made(kind string, i int, price catalog.Cents, massKg float64) catalog.Part {
	id := fmt.Sprintf("%s-%d", kind, i)
	return catalog.Part{ID: id, Name: id, Price: price, MassKg: massKg}
}

func (d *draft) tinyLoads() {
	d.s.Loads = []scenarios.Load{{Name: "lamp", Watts: d.between(100, 300, 50), Count: 1, Leg: scenarios.LegAuto, AllDay: true, Duty: 1, PowerFactor: 1, Start: 1}}
	if d.chance(40) {
		d.s.Loads = append(d.s.Loads, scenarios.Load{Name: "pump", Watts: 150, Count: 1, Leg: scenarios.LegAuto,
			FromMin: 480, ToMin: 720, Duty: 0.5, PowerFactor: 1, Start: 2})
	}
	d.s.AutonomyH = d.between(4, 14, 0.5)
	if d.chance(30) {
		d.s.Recharge = &scenarios.Recharge{WithinH: d.between(3, 12, 1), From: "grid"}
	}
	if d.chance(30) {
		d.s.Limits.MassKg = d.between(60, 100, 1)
	}
	if d.chance(30) {
		d.s.Tax = 0.1
	}
}

// tinyPower draws batteries and inverters.
func (d *draft) tinyPower() {
	for i := range pick(d.dice, 1, 2, 2) {
		b := catalog.Battery{
			Part:      d.made("battery", i, d.units(150, 500), d.between(6, 14, 1)),
			Chemistry: "LFP", Group: "g", NominalV: 51.2, MinV: 44, MaxV: 58, MaxSeries: 1, MaxParallel: pick(d.dice, 1, 2, 2, 3),
			CapacityWh: d.between(500, 1600, 100), UsableFraction: 1, RoundTrip: 1,
			MaxDischargeA: pick(d.dice, 15.0, 25, 30), MaxChargeA: pick(d.dice, 10.0, 20, 40),
			ResistanceOhm: d.between(0.02, 0.06, 0.01), LengthM: 0.3, WidthM: 0.3, HeightM: 0.2,
		}
		b.PeakDischargeA, b.ShortCircuitA = b.MaxDischargeA, d.between(800, 2400, 200)
		d.c.Batteries = append(d.c.Batteries, b)
	}
	for i := range pick(d.dice, 1, 2) {
		v := catalog.Inverter{
			Part:   d.made("inverter", i, d.units(50, 250), d.between(4, 9, 1)),
			DCMinV: 40, DCMaxV: 64, ACV: "120", ContinuousW: pick(d.dice, 200.0, 400, 400, 800), Efficiency: 0.9,
			IdleW: d.between(5, 25, 5), ChargerA: pick(d.dice, 10.0, 25, 40), MaxUnits: 1,
		}
		v.SurgeW, v.LegW, v.LegSurgeW, v.ChargerACV = 2*v.ContinuousW, v.ContinuousW, 2*v.ContinuousW, v.ACV
		d.c.Inverters = append(d.c.Inverters, v)
	}
}

// tinyRest draws paths, cables, fuses, bus bars and casters.
func (d *draft) tinyRest() {
	for _, kind := range []scenarios.RunKind{scenarios.RunString, scenarios.RunMain} {
		if kind == scenarios.RunString || d.chance(60) {
			d.s.Runs = append(d.s.Runs, scenarios.Run{Kind: kind, LengthM: pathM, AmbientC: 30, Bundled: 2, Drop: 0.03})
		}
	}
	sizes := shuffled(d.dice, d.from(1, 2), catalog.Size("10 AWG"), "8 AWG", "6 AWG")
	for i, size := range sizes {
		k := catalog.Cable{Part: d.made("cable", i, 0, 0), CentsPerM: 100 * float64(d.from(2, 9)), KgPerM: 0.1,
			Size: size, Material: "copper", InsulationC: 90, EndPrice: 100 * catalog.Cents(d.from(0, 1))}
		d.c.Cables = append(d.c.Cables, k)
	}
	for i := range d.from(1, 3) {
		f := catalog.Device{Part: d.made("fuse", i, d.units(8, 40), 0.2), Type: "fuse", Class: "T",
			RatingA: pick(d.dice, 30.0, 40, 50), Poles: 1, MaxDCV: 80, InterruptingDCA: pick(d.dice, 2000.0, 5000, 20000), TerminalC: 75}
		d.c.Devices = append(d.c.Devices, f)
	}
	d.c.Busbars = []catalog.Busbar{{Part: d.made("bars", 0, d.units(10, 50), 1), RatingA: 150, Studs: d.from(3, 6)}}
	for i := range pick(d.dice, 1, 1, 2) {
		d.c.Casters = append(d.c.Casters, catalog.Casters{Part: d.made("casters", i, d.units(20, 60), 3),
			SetOf: 4, RatingKg: d.between(30, 55, 5)})
	}
}

// tinyOwned draws what is owned, most of it for sale. Cable is owned only where its ends cost nothing: then
// what it takes to use a piece does not depend on where it came from.
func (d *draft) tinyOwned() {
	all := d.c.All()
	for _, i := range d.Perm(len(all))[:d.from(0, 3)] {
		e := all[i]
		h := scenarios.Holding{PartID: e.ID, Count: float64(pick(d.dice, 1, 1, 2))}
		// Odd cents, so that nothing is sold for just what it can be bought back for.
		sell := 37 + catalog.Cents(100*math.Round(float64(e.Price)*d.between(0.2, 0.7, 0.1)/100))
		if e.Kind == catalog.KindCable {
			for _, k := range d.c.Cables {
				if k.ID == e.ID && k.EndPrice == 0 {
					h.ByLength, h.Count, h.SellCentsPerM = true, pieceM*h.Count, 100*math.Ceil(k.CentsPerM/200)+1
				}
			}
			if !h.ByLength {
				continue
			}
		}
		if d.chance(70) {
			h.Sell = &sell
		}
		d.s.Have = append(d.s.Have, h)
	}
}

// tinyOffers draws what vendors ask: one that ships for money or for nothing, and one with a quantity break.
func (d *draft) tinyOffers() {
	all := d.c.All()
	offer := func(e catalog.Entry, vendor string, share, minQty float64, shipping catalog.Cents) {
		o := catalog.Offer{PartID: e.ID, Vendor: vendor, MinQty: minQty, Shipping: shipping,
			Price: catalog.Cents(100 * math.Ceil(float64(e.Price)*share/100))}
		d.c.Offers = append(d.c.Offers, o)
	}
	if d.chance(45) {
		shipping := 100 * catalog.Cents(d.from(5, 40))
		for _, i := range d.Perm(len(all))[:d.from(1, 3)] {
			if all[i].Kind == catalog.KindCable {
				continue
			}
			if offer(all[i], "north", d.between(0.7, 1.1, 0.1), 1, shipping); d.chance(30) {
				d.c.Offers[len(d.c.Offers)-1].Shipping = 0
			}
			if d.chance(30) {
				offer(all[i], "south", d.between(1, 1.3, 0.1), 1, 0)
			}
		}
	}
	if d.chance(35) {
		e := all[d.IntN(len(d.c.Batteries))]
		if d.chance(40) {
			e, _ = d.c.Find(d.c.Devices[0].ID)
		}
		if len(d.c.OffersFor(e.ID)) == 0 {
			offer(e, "east", 1, 1, 0)
			offer(e, "east", d.between(0.6, 0.9, 0.1), 2, 0)
		}
	}
}
