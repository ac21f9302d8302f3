package optimize_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
	"cartwright/scenarios"
)

// sunnyProblem draws a small problem with sun: light on the modules hour by hour, modules, inputs for them, and now and
// then a share of the year to be served. Without sun it has a plan, so that more than half of them have one with it. All
// of it is invented.
func sunnyProblem(t *testing.T, seed uint64) question.Problem {
	t.Helper()
	p := randomProblem(100 * seed)
	for i := uint64(1); ; i++ {
		found, err := search.Feasible(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		if found != nil {
			break
		}
		p = randomProblem(100*seed + i)
	}
	const apart = 11e9
	d := &draft{newDice(seed + apart), p.Scenario, p.Catalog}
	d.s.UseDays = 365 // of a sun the year itself says it
	d.plainWiring()
	d.sun()
	d.solar()
	d.solarInputs()
	d.solarPath()
	d.solarDeals()
	return p
}

// plainWiring takes the deals in cables, conduits and devices away: with arrays there are many times as many cores, and
// wiring of which every piece costs the same is enumerated in a fraction of the time.
func (d *draft) plainWiring() {
	wiring := func(id string) bool {
		e, _ := d.c.Find(id)
		return e.Kind == catalog.KindCable || e.Kind == catalog.KindDevice || e.Kind == catalog.KindConduit
	}
	d.s.Have = slices.DeleteFunc(d.s.Have, func(h scenarios.Holding) bool { return wiring(h.PartID) })
	d.c.Offers = slices.DeleteFunc(d.c.Offers, func(o catalog.Offer) bool { return wiring(o.PartID) })
}

// sun draws a place and its weather: some days clearer than others, and winters darker than summers.
func (d *draft) sun() {
	s := &scenarios.Sun{LatitudeDeg: 40, TiltDeg: 30, AzimuthDeg: 180, Losses: d.between(0, 0.2, 0.05),
		ColdestC: d.between(-25, 5, 5), HottestC: d.between(25, 45, 5), Most: d.from(2, 5)}
	if d.chance(30) {
		s.Most, s.Room = 0, &scenarios.Room{LengthM: d.between(1.5, 3.5, 0.25), WidthM: d.between(1, 2, 0.25)}
	}
	if d.chance(40) {
		s.OnCart, s.HeightM = true, d.between(0.5, 1.5, 0.25)
	}
	w := &scenarios.Weather{}
	clear, swing := 0.5, d.between(0, 0.6, 0.1)
	for h := range 8760 {
		if h%24 == 0 {
			clear = 0.5*clear + 0.5*d.Float64()
		}
		season := -math.Cos(2 * math.Pi * float64(h) / 8760)
		up := math.Sin(math.Pi * (float64(h%24) - 5.5) / 12)
		w.POA = append(w.POA, max(0, 1000*up*clear*(1+swing*season)))
		w.TempC = append(w.TempC, 12+10*season+5*up)
	}
	s.Hours = w
	d.s.Sun = s
	if d.chance(60) {
		d.s.Limits.Served = d.between(0.05, 0.6, 0.05)
	}
}

// solar draws one or two kinds of module.
func (d *draft) solar() {
	for i := range d.from(1, 2) {
		m := catalog.Solar{Watts: d.between(100, 450, 10), VmpV: d.between(26, 44, 1), VocTempPctPerC: -d.between(0.2, 0.35, 0.01),
			PowerTempPctPerC: -d.between(0.25, 0.45, 0.01), NOCTC: d.between(42, 48, 1), MaxSystemV: pick(d.dice, 80.0, 600, 600, 1000),
			LengthM: d.between(0.8, 2, 0.1), WidthM: d.between(0.5, 1.1, 0.1), MaxFuseA: pick(d.dice, 0.0, 10, 15, 20, 25)}
		m.VocV, m.ImpA = m.VmpV*1.2, m.Watts/m.VmpV
		m.IscA = m.ImpA * 1.06
		m.Part = d.part("sun", i, 40, 200, d.between(4, 22, 0.5))
		d.c.Solar = append(d.c.Solar, m)
	}
}

// solarInputs gives most inverters inputs for modules.
func (d *draft) solarInputs() {
	for i := range d.c.Inverters {
		if inv := &d.c.Inverters[i]; d.chance(85) {
			inv.SolarMaxW, inv.SolarMaxVocV = d.between(200, 2000, 100), d.between(100, 300, 10)
			inv.MPPTMinV, inv.MPPTMaxV = d.between(12, 40, 4), inv.SolarMaxVocV*0.9
			inv.MPPTMaxA, inv.MPPTInputs = d.between(10, 40, 1), pick(d.dice, 1, 1, 1, 2)
			if d.chance(5) {
				inv.MPPTMinV = 0 // not stated
			}
		}
	}
}

// solarPath draws the run from the modules, and devices for it.
func (d *draft) solarPath() {
	if d.chance(90) {
		d.s.Runs = append(d.s.Runs, scenarios.Run{Kind: scenarios.RunSolar, LengthM: d.between(2, 12, 0.5), AmbientC: 30, Bundled: 2,
			Drop: pick(d.dice, 0.02, 0.03, 0.05)})
	}
	for i := range d.from(2, 3) {
		isc := pick(d.dice, d.c.Solar...).IscA
		dev := catalog.Device{Type: "breaker", Poles: 2, TerminalC: 75, MaxDCV: pick(d.dice, 150.0, 500, 1000), InterruptingDCA: 10000}
		dev.RatingA = d.standard(dev.Type, isc*d.between(1.5, 2.5, 0.1))
		if i > 0 {
			dev.Type, dev.Poles, dev.Class = "fuse", d.from(1, 2), "gPV"
			dev.RatingA = d.standard(dev.Type, isc*d.between(1.5, 2, 0.1))
		}
		d.device(dev)
	}
	d.c.Cables = append(d.c.Cables, d.solarCable())
}

// solarCable draws a thin cable.
func (d *draft) solarCable() catalog.Cable {
	k := catalog.Cable{Size: "10 AWG", CentsPerM: float64(d.from(80, 150)), KgPerM: 0.08, Material: "copper", InsulationC: 90, EndPrice: catalog.Cents(d.from(0, 200))}
	if d.s.Rules == scenarios.IEC {
		k.Size = pick(d.dice, catalog.Size("4 mm2"), "6 mm2")
	}
	k.ID, k.Name = fmt.Sprintf("cable-%d", len(d.c.Cables)), "Cable "+string(k.Size)
	return k
}

// solarDeals draws owned modules, for sale or to be kept, and vendors of modules.
func (d *draft) solarDeals() {
	m := pick(d.dice, d.c.Solar...)
	if d.chance(25) {
		h := scenarios.Holding{PartID: m.ID, Count: float64(d.from(1, 4))}
		switch {
		case d.chance(30):
			price := d.cents(10, 100)
			h.Sell = &price
		case d.chance(25):
			h.Count, h.Keep = 1, true
		}
		d.s.Have = append(d.s.Have, h)
	}
	if d.chance(20) {
		o := catalog.Offer{PartID: m.ID, Vendor: "sunshop", Price: m.Price * catalog.Cents(d.from(60, 95)) / 100, MinQty: float64(d.from(1, 3))}
		d.c.Offers = append(d.c.Offers, o, catalog.Offer{PartID: m.ID, Vendor: "sunshop", Price: m.Price, MinQty: 1})
	}
}
