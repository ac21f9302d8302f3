package optimize_test

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// fittings draws bus bars, casters and sundries, and what is needed of these.
func (d *draft) fittings() {
	for i := range d.from(1, 2) {
		b := catalog.Busbar{RatingA: pick(d.dice, 80.0, 120, 150, 250), Studs: d.from(3, 7)}
		b.Part = d.part("bars", i, 20, 90, d.between(0.5, 2, 0.25))
		d.c.Busbars = append(d.c.Busbars, b)
	}
	for i := range d.from(1, 3) {
		k := catalog.Casters{SetOf: 4, Brakes: 2, RatingKg: d.between(45, 140, 5)}
		k.Part = d.part("casters", i, 30, 140, d.between(2, 8, 0.5))
		if i > 0 && d.chance(15) {
			k.SetOf = 3
		}
		d.c.Casters = append(d.c.Casters, k)
	}
	if d.chance(4) {
		return
	}
	for i := range d.from(1, 2) {
		x := catalog.Sundry{Role: "receptacle", RatingA: pick(d.dice, 15.0, 20, 20)}
		x.Part = d.part("outlet", i, 4, 25, d.between(0.1, 0.3, 0.05))
		d.c.Sundries = append(d.c.Sundries, x)
	}
	for i := range d.from(1, 2) {
		x := catalog.Sundry{Role: "load-centre", RatingA: pick(d.dice, 30.0, 60, 60, 100), Spaces: pick(d.dice, 0, 2, 3, 4, 6)}
		x.Part = d.part("panel", i, 30, 120, d.between(1, 4, 0.25))
		d.c.Sundries = append(d.c.Sundries, x)
	}
	if d.chance(40) {
		d.s.Needs = append(d.s.Needs, scenarios.Need{Role: "load-centre", Count: 1, RatingA: pick(d.dice, 0.0, 0, 30, 60)})
	}
	if d.chance(25) {
		d.s.Needs = append(d.s.Needs, scenarios.Need{Role: "receptacle", Count: d.from(1, 2), RatingA: pick(d.dice, 0.0, 15)})
	}
}

// cart draws the frame.
func (d *draft) cart() {
	d.s.Cart = scenarios.Cart{
		Casters: 4, WheelbaseM: d.between(0.6, 1, 0.05), TrackM: d.between(0.4, 0.7, 0.05), CasterMassHeightM: 0.08, Rolling: 0.02, Grip: 0.5,
		Frame:     scenarios.Mass{Name: "frame", MassKg: d.between(10, 30, 1), HeightM: d.between(0.3, 0.5, 0.05)},
		Backboard: scenarios.Backboard{ElevationM: d.between(0.3, 1.1, 0.05), OffsetM: d.between(-0.2, 0.2, 0.05)},
	}
	if d.chance(40) {
		d.s.Cart.DeckItems = []scenarios.Mass{{Name: "box", MassKg: d.between(1, 8, 0.5),
			HeightM: d.between(0.5, 1.3, 0.1), OffsetM: d.between(-0.2, 0.2, 0.05)}}
	}
	for i := range d.from(1, 2) {
		sh := scenarios.Shelf{Name: fmt.Sprintf("shelf %d", i), ElevationM: 0.12 + 0.35*float64(i),
			LengthM: d.between(0.5, 1, 0.05), DepthM: d.between(0.32, 0.5, 0.02), Stack: 1, ClearHeightM: 0.3,
			MaxMassKg: math.Inf(1), GapM: pick(d.dice, 0, 0.01, 0.02)}
		if d.chance(50) {
			sh.MaxMassKg = d.between(15, 60, 5)
		}
		if d.chance(20) {
			sh.ClearHeightM = 0.22
		}
		d.s.Cart.Shelves = append(d.s.Cart.Shelves, sh)
	}
	if d.chance(15) {
		d.threeWheels()
	}
}

// threeWheels makes a cart of three wheels, wide enough to stand now and then, and most sets fit it.
func (d *draft) threeWheels() {
	d.s.Cart.Casters = 3
	d.s.Cart.TrackM *= 1.5
	for i := range d.c.Casters {
		d.c.Casters[i].SetOf = 7 - d.c.Casters[i].SetOf
	}
}

// limits draws limits, many of which bind.
func (d *draft) limits() {
	d.s.Limits = scenarios.Limits{MassKg: math.Inf(1), Budget: math.MaxInt64, TiltDeg: 10}
	if d.chance(40) {
		d.s.Limits.MassKg = d.between(60, 170, 1)
	}
	if d.chance(40) {
		d.s.Limits.Budget = d.cents(1200, 5000)
	}
	if d.chance(35) {
		d.s.Limits.TiltDeg = d.between(11, 21, 1)
	}
	if d.chance(30) {
		d.s.Limits.Reserve = d.between(0.05, 0.3, 0.05)
	}
	if d.chance(30) {
		d.s.Limits.Slope = d.between(0, 0.1, 0.01)
		d.s.Limits.PushN = d.between(60, 180, 5)
	}
	if d.chance(40) {
		d.s.CasterFactor = d.between(1, 2, 0.1)
	}
	if d.chance(60) {
		d.s.Tax = pick(d.dice, 0.05, 0.0725, 0.19, 0.21)
	}
}

// owned draws what is there already, some of it for sale.
func (d *draft) owned() {
	if d.chance(25) {
		return
	}
	all := d.c.All()
	for _, i := range d.Perm(len(all))[:d.from(1, 4)] {
		h := scenarios.Holding{PartID: all[i].ID, Count: float64(d.from(1, 2))}
		price := all[i].Price
		if all[i].Kind == catalog.KindCable {
			h.ByLength, h.Count = true, d.between(0.5, 6, 0.25)
			if d.chance(25) {
				h.Ends = d.from(1, 12)
			}
			for _, k := range d.c.Cables {
				if k.ID == h.PartID {
					h.SellCentsPerM = k.CentsPerM * d.between(0.2, 0.8, 0.1)
				}
			}
		}
		if d.chance(50) {
			sell := catalog.Cents(float64(price) * d.between(0.2, 0.8, 0.01))
			if d.chance(5) {
				sell = price + 500 // better than new
			}
			h.Sell = &sell
		}
		d.s.Have = append(d.s.Have, h)
	}
	if d.chance(30) {
		d.s.Sold = d.cents(20, 300)
	}
}

// offers draws what two vendors ask, with quantity breaks and shipping.
func (d *draft) offers() {
	if d.chance(35) {
		return
	}
	all := d.c.All()
	for _, i := range d.Perm(len(all))[:d.from(1, 4)] {
		e := all[i]
		price := func() (catalog.Cents, float64) {
			part := d.between(0.75, 1.1, 0.01)
			for _, k := range d.c.Cables {
				if k.ID == e.ID {
					return 0, math.Round(k.CentsPerM * part)
				}
			}
			return catalog.Cents(float64(e.Price) * part), 0
		}
		for _, vendor := range shuffled(d.dice, d.from(1, 2), "north", "south") {
			o := catalog.Offer{PartID: e.ID, Vendor: vendor, MinQty: 1}
			o.Price, o.CentsPerM = price()
			if d.chance(50) {
				o.Shipping = catalog.Cents(500 * d.from(1, 8))
			}
			d.c.Offers = append(d.c.Offers, o)
			if d.chance(40) {
				o.MinQty = float64(d.from(2, 4))
				less := d.between(0.6, 0.95, 0.05)
				o.Price, o.CentsPerM = catalog.Cents(float64(o.Price)*less), math.Round(o.CentsPerM*less)
				d.c.Offers = append(d.c.Offers, o)
			}
		}
	}
}
