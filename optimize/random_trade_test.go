package optimize_test

import (
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/scenarios"
)

// trade draws what else the trade knows, each of it now and then. It has dice of its own.
func (d *draft) trade(seed uint64) {
	const apart = 7e9
	d.dice = newDice(seed + apart)
	for _, draw := range []func(){d.tradeLoads, d.tradeCircuits, d.tradeBatteries, d.tradeRecharge, d.tradeRuns, d.tradeParts, d.tradeCart} {
		if d.chance(35) {
			draw()
		}
	}
	d.onCircuits()
	d.rare(seed)
}

// tradeLoads draws power factors, and loads that are never on together.
func (d *draft) tradeLoads() {
	for i := range d.s.Loads {
		if l := &d.s.Loads[i]; !l.DC && d.chance(20) {
			l.PowerFactor = d.between(0.6, 0.95, 0.05)
		}
	}
	if len(d.s.Loads) > 1 && d.chance(25) {
		d.s.OneAtATime = [][]int{{0, len(d.s.Loads) - 1}}
	}
	d.s.UseDays = pick(d.dice, 365.0, 365, 50)
}

// tradeCircuits draws circuits on the bus, and makes the others such as the loads ask for.
func (d *draft) tradeCircuits() {
	dc, both, single, ac := false, false, 0, len(d.s.Circuits) > 0
	for _, l := range d.s.Loads {
		dc = dc || l.DC
		both = both || !l.DC && l.Leg == scenarios.LegBoth
	}
	add := func(c scenarios.Circuit) {
		c.Name, c.LengthM, c.AmbientC, c.Bundled, c.Drop = fmt.Sprintf("circuit %d", len(d.s.Circuits)), d.between(1, 3, 0.5), 30, 2, 0.03
		d.s.Circuits = append(d.s.Circuits, c)
	}
	for i := range d.s.Circuits {
		both = both && d.s.Circuits[i].Volts != 240
		if d.s.Circuits[i].Volts != 240 {
			single++
		}
	}
	if ac && both {
		add(scenarios.Circuit{Volts: 240, DeviceA: 20, Neutral: true})
	}
	if ac && single < 2 && d.s.Rules == scenarios.NEC {
		add(scenarios.Circuit{Volts: 120, DeviceA: 20, Neutral: true})
	}
	if dc && d.chance(60) {
		add(scenarios.Circuit{DC: true, Volts: d.s.Bus.NominalV, DeviceA: pick(d.dice, 20.0, 40), Neutral: true})
	}
	for i := len(d.s.Circuits) - 1; i >= 0; i-- {
		if c := &d.s.Circuits[i]; c.DC {
			d.device(d.direct(c.DeviceA, d.between(2000, 9000, 500)))
		} else if d.chance(70) {
			d.device(d.alternating(c.DeviceA, c.Volts))
		}
	}
}

// device adds a device to the catalogue.
func (d *draft) device(dev catalog.Device) {
	dev.Part = d.part("device", len(d.c.Devices), 5, 60, d.between(0.1, 0.8, 0.05))
	d.c.Devices = append(d.c.Devices, dev)
}

// onCircuits leaves the circuits out where they cannot hold the loads, which is a mistake of a scenario.
func (d *draft) onCircuits() {
	if _, err := energy.DemandOf(d.s); err != nil {
		d.s.Circuits = nil
	}
}

// tradeBatteries draws peaks, calendars, devices of the batteries' own, and what their makers allow.
func (d *draft) tradeBatteries() {
	for i := range d.c.Batteries {
		b := &d.c.Batteries[i]
		b.PeakDischargeA = b.MaxDischargeA * pick(d.dice, 1, 1, 1.5, 2)
		if d.chance(30) {
			b.CalendarYears = float64(d.from(2, 15))
			if d.chance(30) {
				b.CycleLife = 0
			}
		}
		if d.chance(15) {
			b.MaxFuseA = d.standard("fuse", b.MaxDischargeA*pick(d.dice, 1, 1.3, 2))
		}
		if d.chance(25) {
			b.OwnDeviceA = d.standard("breaker", b.MaxDischargeA*pick(d.dice, 0.9, 1.25, 1.25))
			b.OwnInterruptingA = pick(d.dice, 2000.0, 10000, 10000)
		}
		b.Protocols = pick(d.dice, []string{"can"}, []string{"can", "rs485"}, nil)
	}
	for i := range d.c.Inverters {
		d.c.Inverters[i].Protocols = pick(d.dice, []string{"can"}, []string{"rs485"}, []string{"can", "rs485"})
		if d.c.Inverters[i].ACV == "120/240" {
			d.c.Inverters[i].LegSurgeW *= pick(d.dice, 0.8, 1, 1)
		}
	}
	d.s.Limits.SharedProtocols = d.chance(20)
}

// tradeRecharge draws what the cart is charged from, and the path to it.
func (d *draft) tradeRecharge() {
	if d.s.Recharge == nil || d.chance(60) {
		return
	}
	x := &scenarios.Supply{Volts: 230, DeviceA: 16}
	if d.s.Rules == scenarios.NEC {
		x = &scenarios.Supply{Volts: pick(d.dice, 120.0, 120, 240), DeviceA: pick(d.dice, 15.0, 20, 30)}
	}
	d.s.Recharge.Supply = x
	for i := range d.c.Inverters {
		if x.Volts == 240 && d.chance(70) {
			d.c.Inverters[i].ChargerACV = "120/240"
		}
	}
	if d.chance(60) {
		d.s.Runs = append(d.s.Runs, scenarios.Run{Kind: scenarios.RunInlet, LengthM: d.between(1, 3, 0.25), AmbientC: 30, Bundled: 2, Drop: 0.03})
		d.device(d.alternating(x.DeviceA, x.Volts))
	}
}

// tradeRuns draws links, long strings, a bond, conduit, strand and lengths as bought.
func (d *draft) tradeRuns() {
	if d.chance(15) && len(d.s.Runs) > 0 {
		d.s.Runs = append(d.s.Runs, scenarios.Run{Kind: scenarios.RunBond, LengthM: d.between(0.5, 1.5, 0.25), AmbientC: 30, Bundled: 2})
		if d.s.Run(scenarios.RunMain) == nil && d.s.Rules == scenarios.IEC { // which is a mistake
			d.s.Runs = d.s.Runs[:len(d.s.Runs)-1]
		}
	}
	for i := range d.s.Runs {
		r := &d.s.Runs[i]
		switch r.Kind {
		case scenarios.RunString:
			if d.chance(20) {
				r.LengthM = 3.5
			}
		case scenarios.RunInlet:
			r.OwnBreakerA = 0
		}
		if d.chance(8) {
			r.Conduit = "emt"
		}
	}
	for i := range d.s.Circuits {
		if d.chance(15) {
			d.s.Circuits[i].Conduit = "emt"
		}
	}
	for i, mm2 := range []float64{120, 350} {
		k := catalog.Conduit{TradeSize: fmt.Sprint(i), Type: "emt", InsideMM2: mm2, CentsPerM: d.between(100, 400, 1), KgPerM: mm2 / 500, EndPrice: catalog.Cents(d.from(0, 200))}
		k.ID, k.Name = fmt.Sprintf("conduit-%d", i), "Conduit"
		d.c.Conduits = append(d.c.Conduits, k)
	}
	d.s.Cable.Fine = d.chance(15)
	for i := range d.c.Cables {
		k := &d.c.Cables[i]
		k.Fine = d.chance(60)
		if d.s.Rules == scenarios.IEC || d.chance(20) {
			k.OuterM = 0.003 + 0.0002*k.Size.AreaMM2()
		}
	}
	if d.chance(25) {
		d.s.Cable.Slack, d.s.Cable.StepM = d.between(0, 0.2, 0.05), pick(d.dice, 0.125, 0.25, 0.5)
	}
}

// tradeParts draws mounts, poles that matter, listings, classes, shunts and disconnects.
func (d *draft) tradeParts() {
	for i := range d.c.Devices {
		dev := &d.c.Devices[i]
		dev.Mount = pick(d.dice, "", "rail", "rail", "plug-in")
		if d.chance(5) {
			dev.Listed = catalog.No
		}
		if dev.Type == "breaker" && d.chance(15) {
			dev.Polarised = catalog.Yes
		}
		if dev.Type == "fuse" && d.chance(8) {
			dev.Class = pick(d.dice, "aR", "gPV")
		}
	}
	for i := range d.c.Sundries {
		if x := &d.c.Sundries[i]; x.Role == "load-centre" && d.chance(35) {
			x.Mount = pick(d.dice, "rail", "plug-in")
		}
	}
	for _, role := range []string{"shunt", "disconnect"} {
		if !d.chance(20) {
			continue
		}
		d.s.Needs = append(d.s.Needs, scenarios.Need{Role: role, Count: 1, RatingA: pick(d.dice, 0.0, 50)})
		for i := range 2 {
			x := catalog.Sundry{Role: role, RatingA: pick(d.dice, 60.0, 100, 175, 300)}
			x.Part = d.part(role, i, 10, 80, d.between(0.1, 1, 0.1))
			d.c.Sundries = append(d.c.Sundries, x)
		}
	}
}

// tradeCart draws brakes, six wheels, rough ground, stacks, rails and a frame of pieces.
func (d *draft) tradeCart() {
	for i := range d.c.Casters {
		d.c.Casters[i].Brakes = pick(d.dice, 0, 2, 2, d.c.Casters[i].SetOf)
	}
	if d.s.Cart.Casters == 4 && d.chance(8) {
		d.s.Cart.Casters = 6
		for i := range d.c.Casters {
			if d.c.Casters[i].SetOf == 4 {
				d.c.Casters[i].SetOf = 6
			}
		}
	}
	d.s.Cart.Rolling = pick(d.dice, 0.02, 0.02, 0.04)
	d.s.Cart.Grip = pick(d.dice, 0.3, 0.5, 0.7)
	tube := catalog.Section{Shape: catalog.SquareTube, WidthM: 0.03, HeightM: 0.03, WallM: 0.002, KgPerM: 1.76, YieldPa: 235e6}
	flat := catalog.Section{Shape: catalog.Flat, WidthM: 0.003, HeightM: 0.015, KgPerM: 0.35, YieldPa: 235e6}
	tube.ID, tube.Name, flat.ID, flat.Name = "tube", "Tube", "flat", "Flat"
	if d.chance(50) {
		tube.CentsPerM = d.between(100, 600, 1)
	}
	d.c.Sections = []catalog.Section{tube, flat}
	for i := range d.s.Cart.Shelves {
		sh := &d.s.Cart.Shelves[i]
		if d.chance(15) {
			sh.Stack = 2
		}
		if d.chance(15) {
			sh.Rails = &scenarios.Rails{Section: pick(d.dice, "tube", "flat"), SpanM: sh.LengthM, Count: 2}
		}
	}
	if d.chance(15) {
		d.s.Cart.Frame = scenarios.Mass{Name: "frame"}
		d.s.Cart.Pieces = []scenarios.Piece{
			{Section: "tube", LengthM: d.between(0.5, 1, 0.125), Count: d.from(4, 8), HeightM: 0.3},
			{Section: "flat", LengthM: d.between(0.5, 1, 0.125), Count: 2, HeightM: 0.5},
		}
	}
}
