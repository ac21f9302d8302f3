package optimize_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/question"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// near is the relative difference up to which two computed figures are the same: far above the rounding of
// a few hundred sums and products, far below what any part states.
const near = 1e-9

// reaches reports whether have is at least want, but for rounding.
func reaches(have, want float64) bool { return have >= want-near*max(1, math.Abs(want)) }

// enumeration writes down every plan of a small problem, one by one, with no more thought than it takes to
// end in time. It shares the formulas of the trade with the engine and nothing else.
type enumeration struct {
	s      *scenarios.Scenario
	c      *catalog.Catalog
	demand *energy.Demand
	rules  wiring.Rules
	market *stall

	lists         map[listKey][]option // options of paths, by path and fault
	bent          []*good              // parts of the wiring whose pieces do not all cost the same
	branchWirings map[pricing]wirings
}

// total is the best way to build one core.
type total struct {
	batteries []int // strings of each battery of the catalogue
	inverter  int
	units     int

	cost   float64 // cents, unrounded
	massKg float64
	lifeWh float64
}

// enumerate returns the best plan of every core that has one, in no order: the cheapest by cost and by
// life, of equally cheap ones the lightest; by mass the other way round.
func enumerate(t *testing.T, p question.Problem, by question.By) []total {
	t.Helper()
	e := newEnumeration(t, p)
	var all []total
	for _, n := range e.stringVectors() {
		for i := range e.c.Inverters {
			for units := 1; units <= e.c.Inverters[i].MaxUnits; units++ {
				if !e.supplies(n, &e.c.Inverters[i], units) {
					continue
				}
				plan := total{batteries: n, inverter: i, units: units}
				if e.support(&plan, by) {
					all = append(all, plan)
				}
			}
		}
	}
	return all
}

// newEnumeration prepares to write down the plans of a problem.
func newEnumeration(t *testing.T, p question.Problem) *enumeration {
	t.Helper()
	demand, err := energy.DemandOf(p.Scenario)
	if err != nil {
		t.Fatal(err)
	}
	return &enumeration{
		s: p.Scenario, c: p.Catalog, demand: demand, rules: wiring.For(p.Scenario.Rules),
		market: newStall(p), lists: map[listKey][]option{}, branchWirings: map[pricing]wirings{},
	}
}

// stringVectors returns every number of strings of every battery that belong on the bus together and find
// room on the shelves, room being all that ends the count where the maker sets no limit.
func (e *enumeration) stringVectors() [][]int {
	var all [][]int
	n := make([]int, len(e.c.Batteries))
	var next func(k int)
	next = func(k int) {
		if !e.together(n) || len(e.placings(n)) == 0 {
			return // more strings only make it worse
		}
		if k == len(n) {
			if sum(n) > 0 {
				all = append(all, append([]int(nil), n...))
			}
			return
		}
		b := &e.c.Batteries[k]
		_, fits := energy.Fits(e.s.Bus, b)
		for n[k] = 0; n[k] == 0 || fits && (b.MaxParallel == 0 || n[k] <= b.MaxParallel); n[k]++ {
			if !e.together(n) || len(e.placings(n)) == 0 {
				break
			}
			next(k + 1)
		}
		n[k] = 0
	}
	next(0)
	return all
}

// together reports whether all batteries of which there are strings may share a bus.
func (e *enumeration) together(n []int) bool {
	for a := range n {
		for b := range n {
			if n[a] > 0 && n[b] > 0 && !energy.ShareBus(&e.c.Batteries[a], &e.c.Batteries[b]) {
				return false
			}
		}
	}
	return true
}

// modules returns how many modules there are of a battery.
func (e *enumeration) modules(n []int, b int) int {
	series, _ := energy.Fits(e.s.Bus, &e.c.Batteries[b])
	return n[b] * series
}

// strings returns the strings as package energy wants them.
func (e *enumeration) strings(n []int) []energy.Strings {
	var all []energy.Strings
	for b := range n {
		if n[b] > 0 {
			series, _ := energy.Fits(e.s.Bus, &e.c.Batteries[b])
			all = append(all, energy.Strings{Battery: &e.c.Batteries[b], Series: series, Count: n[b]})
		}
	}
	return all
}

// usableWh returns what all modules give.
func (e *enumeration) usableWh(n []int) float64 {
	usable := 0.0
	for b := range n {
		usable += float64(e.modules(n, b)) * energy.UsableWh(&e.c.Batteries[b], e.s.Limits.Reserve)
	}
	return usable
}

// lifeWh returns what all modules give in all their life, of cycles or of years, whichever ends first; 0 where one
// of them states neither.
func (e *enumeration) lifeWh(n []int, inv *catalog.Inverter, units int) float64 {
	day := 0.0 // Wh
	for t, watts := range e.demand.ACW {
		day += e.demand.StepH * (watts/inv.Efficiency + float64(units)*inv.IdleW + e.demand.DCW[t])
	}
	cyclesAYear := day / (e.demand.RecordH() / 24) * e.s.UseDays / e.usableWh(n)
	life := 0.0
	for b := range n {
		bat, cycles := &e.c.Batteries[b], math.Inf(1)
		if bat.CycleLife > 0 {
			cycles = bat.CycleLife
		}
		if bat.CalendarYears > 0 {
			cycles = min(cycles, bat.CalendarYears*cyclesAYear)
		}
		if n[b] == 0 {
			continue
		}
		if math.IsInf(cycles, 1) {
			return 0
		}
		life += float64(e.modules(n, b)) * energy.UsableWh(bat, e.s.Limits.Reserve) * cycles
	}
	return life
}

// busA returns what flows to or from all inverters at the most, direct-current loads included.
func (e *enumeration) busA(inv *catalog.Inverter, units int) float64 {
	return float64(units)*wiring.UnitA(e.s, inv, 0) + e.demand.PeakBusDCW()/e.s.Bus.LowV
}

// supplies reports whether a core meets what is asked of its energy and power.
func (e *enumeration) supplies(n []int, inv *catalog.Inverter, units int) bool {
	u := float64(units)
	if !energy.InverterFits(e.s, e.demand, inv) ||
		!reaches(u*inv.ContinuousW, e.demand.PeakTotalVA()) ||
		!reaches(u*inv.SurgeW, e.demand.PeakSurgeVA()) ||
		inv.ACV == energy.ACVThree && !(reaches(u*inv.LegW, e.demand.PeakLegVA()) && reaches(u*inv.LegSurgeW, e.demand.PeakLegSurgeVA())) {
		return false
	}
	for b := range n {
		if n[b] > 0 && e.s.Limits.SharedProtocols && !e.c.Batteries[b].SharesProtocol(inv) {
			return false
		}
	}
	want := e.demand.WindowWh(inv.Efficiency, u*inv.IdleW, e.s.AutonomyH)
	dcA := e.demand.PeakBusDCW() / e.s.Bus.LowV
	peakA := e.demand.PeakSurgeVA()/(inv.Efficiency*e.s.Bus.LowV) + dcA
	if !reaches(e.usableWh(n), want) || !energy.Carries(e.strings(n), u*energy.BusA(inv, e.s.Bus)+dcA) || !reaches(energy.PeakA(e.strings(n)), peakA) {
		return false
	}
	return e.recharges(n, inv, u, want)
}

// recharges reports whether chargers, supply and strings put an energy back in time.
func (e *enumeration) recharges(n []int, inv *catalog.Inverter, units, wantWh float64) bool {
	r := e.s.Recharge
	if r == nil {
		return true
	}
	chargeA := energy.GridRechargeA(e.strings(n), wantWh, e.s.Bus.NominalV, r.WithinH)
	if r.Supply != nil && (!inv.ChargesFrom(r.Supply.Volts) ||
		!reaches(0.8*r.Supply.DeviceA*r.Supply.Volts*inv.Efficiency, chargeA*e.s.Bus.NominalV)) {
		return false
	}
	return reaches(units*inv.ChargerA, chargeA) && reaches(energy.ChargeA(e.strings(n)), chargeA)
}

// sum adds up.
func sum(n []int) int {
	all := 0
	for _, k := range n {
		all += k
	}
	return all
}
