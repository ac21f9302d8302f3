package optimize_test

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/scenarios"
	"cartwright/scenarios/ratings"
)

// runs draws the cable paths. Lengths are whole eighths of a metre, which binary numbers hold exactly.
func (d *draft) runs() {
	for _, kind := range []scenarios.RunKind{scenarios.RunString, scenarios.RunMain, scenarios.RunFeeder} {
		if d.chance(6) {
			continue // not planned
		}
		r := scenarios.Run{Kind: kind, LengthM: d.between(0.25, 2, 0.125), AmbientC: 30, Bundled: 2,
			Drop: pick(d.dice, 0.01, 0.02, 0.03)}
		if d.chance(25) {
			r.AmbientC = pick(d.dice, 20.0, 35, 40)
		}
		if d.chance(10) {
			r.Bundled = 4
		}
		if d.chance(20) {
			r.TerminalC = pick(d.dice, 60.0, 75)
		}
		if kind == scenarios.RunFeeder && d.chance(35) || d.chance(5) {
			r.OwnBreakerA = pick(d.dice, 16.0, 20, 32, 40)
			if d.s.Rules == scenarios.NEC {
				r.OwnBreakerA = pick(d.dice, 15.0, 20, 30, 40)
			}
		}
		if kind == scenarios.RunString {
			r.OwnBreakerA, r.LinkM = 0, 0.25
		}
		d.s.Runs = append(d.s.Runs, r)
	}
}

// circuits draws the branch circuits behind the inverters.
func (d *draft) circuits() {
	n := pick(d.dice, 0, 0, 1, 1, 2)
	for i := range n {
		c := scenarios.Circuit{
			Name: fmt.Sprintf("circuit %d", i), Volts: 230, DeviceA: 16, LengthM: d.between(1, 4, 0.5),
			Neutral: true, AmbientC: 30, Bundled: 2, Drop: 0.03,
		}
		if d.s.Rules == scenarios.NEC {
			c.Volts, c.DeviceA = 120, pick(d.dice, 15.0, 20)
			if d.chance(10) {
				c.Volts, c.Neutral = 240, d.chance(50)
			}
		}
		if d.chance(60) {
			c.Receptacle = &scenarios.Receptacle{Role: "receptacle", RatingA: c.DeviceA, Count: d.from(1, 2)}
			if d.chance(30) {
				c.Receptacle.RatingA = 0
			}
		}
		d.s.Circuits = append(d.s.Circuits, c)
	}
}

// cables draws two or three sizes, mostly such as small carts take.
func (d *draft) cables() {
	sizes := []catalog.Size{"12 AWG", "10 AWG", "8 AWG", "6 AWG", "4 AWG", "2 AWG", "1/0 AWG", "2/0 AWG"}
	if d.s.Rules == scenarios.IEC {
		sizes = []catalog.Size{"2.5 mm2", "4 mm2", "6 mm2", "10 mm2", "16 mm2", "25 mm2", "50 mm2", "70 mm2"}
	}
	chosen := append(shuffled(d.dice, d.from(1, 2), sizes[:5]...), pick(d.dice, sizes[5:]...))
	for i, size := range chosen {
		area := size.AreaMM2()
		k := catalog.Cable{
			CentsPerM: math.Round((60+11*area)*d.between(0.8, 1.2, 0.01)*100) / 100,
			KgPerM:    math.Round(area*11+30) / 1000, Size: size, Material: "copper",
			InsulationC: pick(d.dice, 75.0, 90, 90, 105), EndPrice: catalog.Cents(d.from(0, 300)),
		}
		if d.s.Rules == scenarios.NEC && i > 0 && d.chance(12) {
			k.Material, k.CentsPerM, k.KgPerM = "aluminium", math.Round(k.CentsPerM*0.55), k.KgPerM*0.45
		}
		k.GroundOnly = i == 0 && len(chosen) > 2 && d.chance(25)
		k.ID, k.Name = fmt.Sprintf("cable-%d", i), "Cable "+string(size)
		d.c.Cables = append(d.c.Cables, k)
	}
}

// devices draws three to six fuses and breakers: some that fit the currents there are, some too weak.
func (d *draft) devices() {
	dcA, acA, acV := d.currents()
	var all []catalog.Device
	strength := pick(d.dice, 3000.0, 10000, 20000, 20000)
	for range d.from(1, 2) {
		all = append(all, d.direct(dcA*d.between(1, 1.6, 0.1), strength))
		strength = pick(d.dice, 1000.0, 3000, 20000)
	}
	if d.chance(50) {
		all = append(all, d.direct(pick(d.dice, 25.0, 40, 60, 80), 10000))
	}
	if run := d.s.Run(scenarios.RunFeeder); run != nil && run.OwnBreakerA == 0 || d.chance(20) {
		all = append(all, d.alternating(acA*d.between(1, 1.4, 0.1), acV))
	}
	for _, c := range d.s.Circuits {
		all = append(all, d.alternating(c.DeviceA, c.Volts))
	}
	if d.chance(20) {
		all = append(all, d.alternating(20, acV))
	}
	for i := range all {
		p := d.part("device", i, 5, 60, d.between(0.1, 0.8, 0.05))
		p.Price = catalog.Cents(float64(p.Price) * (1 + all[i].InterruptingDCA/20000))
		all[i].Part = p
	}
	d.c.Devices = all
}

// currents returns the largest direct and alternating currents to protect, and the ac volts.
func (d *draft) currents() (dcA, acA, acV float64) {
	for _, b := range d.c.Batteries {
		dcA = max(dcA, b.MaxDischargeA)
	}
	for _, inv := range d.c.Inverters {
		dcA = max(dcA, inv.ContinuousW/(inv.Efficiency*d.s.Bus.LowV))
		switch inv.ACV {
		case "120":
			acA, acV = max(acA, inv.ContinuousW/120), max(acV, 120)
		case "120/240":
			acA, acV = max(acA, inv.ContinuousW/240), 240
		default:
			acA, acV = max(acA, inv.ContinuousW/230), 230
		}
	}
	if d.s.Rules == scenarios.NEC {
		dcA, acA = 1.25*dcA, 1.25*acA
	}
	return dcA, acA, acV
}

// standard returns the standard rating next above some amperes.
func (d *draft) standard(kind string, amps float64) float64 {
	_, above := ratings.Around(ratings.Standard(string(d.s.Rules), kind), amps)
	return above
}

// direct draws a device for direct current.
func (d *draft) direct(amps, interruptingA float64) catalog.Device {
	dev := catalog.Device{Type: "fuse", Class: pick(d.dice, "T", "gG", ""), Poles: 1, TerminalC: 75,
		MaxDCV: pick(d.dice, 60.0, 80, 125), InterruptingDCA: interruptingA}
	if d.chance(30) {
		dev.Type, dev.Class = "breaker", ""
	}
	if d.chance(6) {
		dev.MaxDCV = 32
	}
	if d.chance(15) {
		dev.TerminalC = 60
	}
	dev.RatingA = d.standard(dev.Type, amps)
	return dev
}

// alternating draws a breaker for alternating current.
func (d *draft) alternating(amps, volts float64) catalog.Device {
	dev := catalog.Device{Type: "breaker", Poles: 1, TerminalC: 75, MaxACV: 240, InterruptingACA: 10000}
	if volts == 240 || d.chance(15) {
		dev.Poles = 2
	}
	if d.chance(5) {
		dev.InterruptingACA = 3000
	}
	dev.RatingA = d.standard(dev.Type, amps)
	return dev
}
