package optimize_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/question"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// tinyCart is a cart that may stand: what it is made of, by the order of the catalogue, cable in pieces.
type tinyCart struct {
	parts    []int
	usableWh float64
	whole    bool // it also meets autonomy, power and recharge
}

// tinyCarts writes down the carts of a tiny problem.
type tinyCarts struct {
	s      *scenarios.Scenario
	c      *catalog.Catalog
	demand *energy.Demand
	rules  wiring.Rules
	at     map[string]int // index of a part
	seen   map[string]bool
	all    []tinyCart
}

// everyCart returns every cart of a tiny problem that passes all limits of safety: voltages, sharing of the
// bus current, wiring, faults, mass, casters, tilt and shelves.
func everyCart(t *testing.T, p question.Problem) []tinyCart {
	t.Helper()
	demand, err := energy.DemandOf(p.Scenario)
	if err != nil {
		t.Fatal(err)
	}
	c := &tinyCarts{s: p.Scenario, c: p.Catalog, demand: demand, rules: wiring.For(p.Scenario.Rules),
		at: map[string]int{}, seen: map[string]bool{}}
	for i, e := range p.Catalog.All() {
		c.at[e.ID] = i
	}
	most := [2]int{c.c.Batteries[0].MaxParallel, 0}
	if len(c.c.Batteries) > 1 {
		most[1] = c.c.Batteries[1].MaxParallel
	}
	for a := 0; a <= most[0]; a++ {
		for b := 0; b <= most[1]; b++ {
			for i := range c.c.Inverters {
				c.core([]int{a, b}[:len(c.c.Batteries)], &c.c.Inverters[i])
			}
		}
	}
	return c.all
}

// core writes down the carts of some strings and an inverter.
func (c *tinyCarts) core(n []int, inv *catalog.Inverter) {
	var strings []energy.Strings
	parts := make([]int, len(c.at))
	usableWh, faultA, modules := 0.0, 0.0, 0
	for b, k := range n {
		bat := &c.c.Batteries[b]
		if k > 0 {
			strings = append(strings, energy.Strings{Battery: bat, Series: 1, Count: k})
		}
		parts[c.at[bat.ID]] = k
		modules += k
		usableWh += float64(k) * energy.UsableWh(bat, c.s.Limits.Reserve)
		faultA += float64(k) * bat.ShortCircuitA
	}
	// All modules are of one size, so the shelf holds so many of any of them.
	if modules == 0 || modules > chassis.ShelfCapacity(&c.s.Cart.Shelves[0], &c.c.Batteries[0]) ||
		!energy.InverterFits(c.s, c.demand, inv) || !energy.Carries(strings, energy.BusA(inv, c.s.Bus)) {
		return
	}
	parts[c.at[inv.ID]]++
	whole := c.serves(strings, inv, usableWh)
	ways := [][]int{parts}
	for b, k := range n {
		bat := &c.c.Batteries[b]
		d, _ := wiring.StringDuty(c.s, bat, wiring.UnitA(c.s, inv, 0), modules)
		if k > 0 {
			ways = c.wire(ways, d, k, math.Max(bat.ShortCircuitA, faultA-bat.ShortCircuitA))
		}
	}
	if d, planned := wiring.MainDuty(c.s, wiring.UnitA(c.s, inv, 0)); planned {
		ways = c.wire(ways, d, 1, faultA)
	}
	bars := &c.c.Busbars[0]
	if bars.RatingA < wiring.BusbarA(wiring.UnitA(c.s, inv, 0)) || bars.Studs < wiring.BusbarStuds(modules, 1, 0) {
		return
	}
	for _, way := range ways {
		for i := range c.c.Casters {
			cart := append([]int(nil), way...)
			cart[c.at[bars.ID]]++
			cart[c.at[c.c.Casters[i].ID]]++
			if key := string(bytesOf(cart)); !c.seen[key] && c.stands(cart, &c.c.Casters[i]) {
				c.seen[key] = true
				c.all = append(c.all, tinyCart{cart, usableWh, whole})
			}
		}
	}
}

// bytesOf returns small numbers as bytes.
func bytesOf(n []int) []byte {
	b := make([]byte, len(n))
	for i := range n {
		b[i] = byte(n[i])
	}
	return b
}

// serves reports whether a core meets what may be short on the way.
func (c *tinyCarts) serves(strings []energy.Strings, inv *catalog.Inverter, usableWh float64) bool {
	want := c.demand.WindowWh(inv.Efficiency, inv.IdleW, c.s.AutonomyH)
	if !reaches(usableWh, want) || !reaches(inv.ContinuousW, c.demand.PeakTotalVA()) || !reaches(inv.SurgeW, c.demand.PeakSurgeVA()) {
		return false
	}
	peakA := c.demand.PeakSurgeVA()/(inv.Efficiency*c.s.Bus.LowV) + c.demand.PeakBusDCW()/c.s.Bus.LowV
	if !reaches(energy.PeakA(strings), peakA) {
		return false
	}
	if c.s.Recharge == nil {
		return true
	}
	needA := energy.GridRechargeA(strings, want, c.s.Bus.NominalV, c.s.Recharge.WithinH)
	return reaches(inv.ChargerA, needA) && reaches(energy.ChargeA(strings), needA)
}

// wire adds some paths, built alike, to each of some ways, by every cable and fuse that the rules pass.
func (c *tinyCarts) wire(ways [][]int, d wiring.Duty, count int, faultA float64) [][]int {
	var longer [][]int
	seen := map[string]bool{}
	for i := range c.c.Cables {
		for j := range c.c.Devices {
			o := wiring.Option{Cable: &c.c.Cables[i], Sets: 1, Device: &c.c.Devices[j], Devices: 1}
			if !c.rules.Check(d, o, faultA).OK() {
				continue
			}
			for _, way := range ways {
				next := append([]int(nil), way...)
				next[c.at[o.Cable.ID]] += count
				next[c.at[o.Device.ID]] += count
				if key := string(bytesOf(next)); !seen[key] {
					seen[key] = true
					longer = append(longer, next)
				}
			}
		}
	}
	return longer
}

// stands reports whether a cart is light enough for its limit and its casters, and does not tip.
func (c *tinyCarts) stands(cart []int, set *catalog.Casters) bool {
	bodies := append(chassis.FixedBodies(c.s, c.c), chassis.CasterBody(c.s, set.MassKg))
	boardKg := 0.0
	for _, e := range c.c.All() {
		n := float64(cart[c.at[e.ID]])
		switch e.Kind {
		case catalog.KindBattery:
			body := chassis.ModuleBody(&c.s.Cart.Shelves[0], &c.c.Batteries[c.at[e.ID]])
			body.MassKg *= n
			bodies = append(bodies, body)
		case catalog.KindCable:
			boardKg += n * pieceM * cableOf(c.c, e.ID).KgPerM
		case catalog.KindCasters:
		default:
			boardKg += n * e.MassKg
		}
	}
	bodies = append(bodies, chassis.BackboardBody(c.s, boardKg))
	massKg := chassis.MassKg(bodies)
	_, tilt := chassis.Tilt(bodies, chassis.BaseOf(&c.s.Cart))
	return reaches(c.s.Limits.MassKg, massKg) && reaches(tilt, c.s.Limits.TiltDeg) &&
		reaches(set.RatingKg, chassis.CasterLoadKg(massKg, c.s.CasterFactor, c.s.Cart.Casters))
}
