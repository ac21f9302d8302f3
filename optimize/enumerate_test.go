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
// end in time. Energy, currents, counts, lengths, masses and money are worked out here anew. With the engine it shares
// what its tests hold to the outside world: whether a rule set passes one option of a path, how much a conduit holds,
// the area of a bond, and the legs of the loads.
type enumeration struct {
	s      *scenarios.Scenario
	c      *catalog.Catalog
	house  *house
	demand *energy.Demand // for the legs
	rules  wiring.Rules
	market *stall
	field  *field // the modules of the core that is looked at; nil: none

	lists         map[listKey][]option // options of paths, by path and fault
	bent          []*good              // parts of the wiring whose pieces do not all cost the same
	branchWirings map[pricing]wirings
}

// total is the best way to build one core.
type total struct {
	batteries []int // strings of each battery of the catalogue
	inverter  int
	units     int
	field     *field // of solar modules; nil: none

	cost   float64 // cents, unrounded
	massKg float64
	lifeWh float64
	wh     float64 // usable
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
				for _, e.field = range e.fields(&e.c.Inverters[i], units) {
					plan := total{batteries: n, inverter: i, units: units, field: e.field, wh: e.usableWh(n)}
					if e.sunServes(n, &e.c.Inverters[i], units) && e.support(&plan, by) {
						all = append(all, plan)
					}
				}
				e.field = nil
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
		s: p.Scenario, c: p.Catalog, house: newHouse(t, p.Scenario), demand: demand, rules: wiring.For(p.Scenario.Rules),
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
		_, fits := e.series(b)
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

// supplies reports whether a core meets what is asked of its energy and power.
func (e *enumeration) supplies(n []int, inv *catalog.Inverter, units int) bool {
	wantWh := e.house.windowWh(inv.Efficiency, float64(units)*inv.IdleW, e.s.AutonomyH)
	return reaches(e.usableWh(n), wantWh) && e.powers(n, inv, units, wantWh)
}

// powers reports whether a core carries the loads, and puts an energy back.
func (e *enumeration) powers(n []int, inv *catalog.Inverter, units int, backWh float64) bool {
	u := float64(units)
	if !e.serves(inv) || !e.talks(n, inv) || !e.keepsCore(n, inv, units) || !reaches(u*inv.ContinuousW, e.house.peakVA) || !reaches(u*inv.SurgeW, e.house.surgeVA) {
		return false
	}
	if inv.ACV == "120/240" && !(reaches(u*inv.LegW, e.demand.PeakLegVA()) && reaches(u*inv.LegSurgeW, e.demand.PeakLegSurgeVA())) {
		return false
	}
	return e.carries(n, inv, units) && e.surges(n, inv) && e.recharges(n, inv, units, backWh)
}

// keepsCore reports whether a core has the batteries and inverters that are to be kept.
func (e *enumeration) keepsCore(n []int, inv *catalog.Inverter, units int) bool {
	for b := range n {
		if float64(e.modules(n, b)) < e.market.goods[e.c.Batteries[b].ID].kept {
			return false
		}
	}
	for i := range e.c.Inverters {
		has := 0.0
		if e.c.Inverters[i].ID == inv.ID {
			has = float64(units)
		}
		if has < e.market.goods[e.c.Inverters[i].ID].kept {
			return false
		}
	}
	return true
}

// sum adds up.
func sum(n []int) int {
	all := 0
	for _, k := range n {
		all += k
	}
	return all
}
