package optimize_test

import (
	"cartwright/catalog"
	"cartwright/optimize/energy"
)

// rare draws what seldom tells two plans apart: stretches that begin in the middle of a step, a motor that starts
// instead of a larger load, breakers that are polarised, parts that are kept, and loads that name their circuit. It has dice of its own.
func (d *draft) rare(seed uint64) {
	const apart = 11e9
	d.dice = newDice(seed + apart)
	for _, draw := range []func(){d.rareHours, d.rareStarts, d.rareBreakers, d.rareKept, d.rareNames} {
		if d.chance(15) {
			draw()
		}
	}
}

// rareHours draws an autonomy that is no whole number of steps.
func (d *draft) rareHours() { d.s.AutonomyH = d.between(1, 6, 0.05) }

// rareStarts puts the first two loads on one list, where the smaller has the larger start.
func (d *draft) rareStarts() {
	if len(d.s.Loads) < 2 || len(d.s.OneAtATime) > 0 || d.s.Loads[0].DC || d.s.Loads[1].DC {
		return
	}
	d.s.OneAtATime = [][]int{{0, 1}}
	less, more := &d.s.Loads[0], &d.s.Loads[1]
	if less.Watts*float64(less.Count) > more.Watts*float64(more.Count) {
		less, more = more, less
	}
	less.Start, more.Start = d.between(3, 8, 0.5), 1
	for i := range d.s.Loads[:2] {
		d.s.Loads[i].AllDay = true
	}
}

// rareBreakers makes breakers for direct current, and polarises half of them.
func (d *draft) rareBreakers() {
	for i := range d.c.Devices {
		if dev := &d.c.Devices[i]; dev.MaxDCV > 0 && d.chance(60) {
			dev.Type, dev.Class, dev.Polarised = "breaker", "", pick(d.dice, catalog.Yes, catalog.No)
			dev.RatingA = d.standard(dev.Type, dev.RatingA)
		}
	}
}

// rareKept keeps some of what is owned and not for sale on the cart.
func (d *draft) rareKept() {
	for i := range d.s.Have {
		if h := &d.s.Have[i]; !h.ByLength && h.Sell == nil {
			h.Keep = d.chance(70)
		}
	}
}

// rareNames has loads name a circuit that holds them.
func (d *draft) rareNames() {
	for i := range d.s.Loads {
		if l := &d.s.Loads[i]; len(d.s.Circuits) > 0 {
			l.Circuit = pick(d.dice, d.s.Circuits...).Name
			if _, err := energy.DemandOf(d.s); err != nil {
				l.Circuit = ""
			}
		}
	}
}
