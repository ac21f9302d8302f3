package optimize_test

import (
	"math"
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/optimize/why"
)

// census is an enumeration that keeps count of one part.
type census struct {
	*enumeration
	of *good
	// gift and dear are the same without owned parts and offers, where the part costs nothing and something:
	// what a fitting costs more in one than in the other tells how often it has the part.
	gift, dear *enumeration
	least      map[float64]float64
}

// dearCents is what the part costs where it does.
const dearCents = 100

// leastByQuantity returns, for each quantity of a part that some plan has installed, the least cents of such
// a plan, whatever the budget.
func leastByQuantity(t *testing.T, p question.Problem, id string) map[float64]float64 {
	t.Helper()
	s := *p.Scenario
	s.Limits.Budget = math.MaxInt64
	c := census{enumeration: newEnumeration(t, question.Problem{Scenario: &s, Catalog: p.Catalog}), least: map[float64]float64{}}
	bare := s
	bare.Have = nil
	gift, dear := p.Catalog.Clone(), p.Catalog.Clone()
	gift.Offers, dear.Offers = nil, nil
	for catalogue, cents := range map[*catalog.Catalog]catalog.Cents{gift: 0, dear: dearCents} {
		e, _ := catalogue.Find(id)
		e.Price = cents
	}
	c.gift = newEnumeration(t, question.Problem{Scenario: &bare, Catalog: gift})
	c.dear = newEnumeration(t, question.Problem{Scenario: &bare, Catalog: dear})
	// A hair of it is owned: that costs nothing and has the enumeration keep count of it in the wiring.
	const hairOfIt = 1e-12
	c.of = c.market.goods[id]
	c.of.have = max(c.of.have, hairOfIt)
	for _, n := range c.stringVectors() {
		for i := range c.c.Inverters {
			inv := &c.c.Inverters[i]
			for units := 1; units <= inv.MaxUnits; units++ {
				if paths, ok := c.paths(n, inv, units); ok && c.supplies(n, inv, units) {
					c.note(n, inv, units, paths)
				}
			}
		}
	}
	return c.least
}

// note notes the least cost of a core by how much of the part it has installed.
func (c *census) note(n []int, inv *catalog.Inverter, units int, paths [][]option) {
	inCore := 0.0
	if inv.ID == c.of.id {
		inCore = float64(units)
	}
	for b := range n {
		if c.c.Batteries[b].ID == c.of.id {
			inCore = float64(c.modules(n, b))
		}
	}
	h := c.heap(n, inv, units)
	gift, dear := c.gift.fittings(&h, n, inv, units, 0), c.dear.fittings(&h, n, inv, units, 0)
	for level := range c.market.levels {
		core := c.coreCost(n, inv, units, level)
		wirings := c.wirings(paths, pricing{level, h.lighterIsBetter()})
		for i, f := range c.fittings(&h, n, inv, units, level) {
			fitted := math.Round((dear[i].cost - gift[i].cost) / dearCents / (1 + c.s.Tax))
			for key, list := range wirings {
				if !key.fits(f.centre) || !key.bonded() {
					continue
				}
				quantity := inCore + fitted
				if i := slices.Index(c.bent, c.of); i >= 0 {
					quantity += float64(key.bent[i]) / eighths
				}
				for _, w := range list {
					cost := core + f.cost + w.cost
					if old, known := c.least[quantity]; known && old <= cost {
						continue
					}
					if _, stands := h.with(f.boardKg+w.massKg, f.casters); stands {
						c.least[quantity] = cost
					}
				}
			}
		}
	}
}

// checkObstacles opens one limit after the other, and then all, to see which keep a part out. It returns 1
// where some do.
func checkObstacles(t *testing.T, seed uint64, p question.Problem, got *why.PartAnswer) int {
	t.Helper()
	possible := func(open ...string) bool {
		s := *p.Scenario // the limits that stand in lists are lists of its own
		s.Runs, s.Circuits, s.Cart.Shelves = slices.Clone(s.Runs), slices.Clone(s.Circuits), slices.Clone(s.Cart.Shelves)
		if s.Recharge != nil {
			r := *s.Recharge
			s.Recharge = &r
		}
		all := knobs(&s)
		for _, name := range open {
			all[name].set(&s, all[name].open)
		}
		for q := range leastByQuantity(t, question.Problem{Scenario: &s, Catalog: p.Catalog}, got.Part) {
			if q > 0 {
				return true
			}
		}
		return false
	}
	var names, kept []string
	for name := range knobs(p.Scenario) {
		if names = append(names, name); name != "budget" && possible(name) {
			kept = append(kept, name)
		}
	}
	told := slices.Sorted(slices.Values(got.KeptOutBy))
	if slices.Sort(kept); !slices.Equal(told, kept) {
		t.Errorf("seed %d, %s: kept out by %q; in the enumeration by %q", seed, got.Part, told, kept)
	}
	if unfit := !possible(names...); unfit != got.Unfit {
		t.Errorf("seed %d, %s: unfit %v, in the enumeration %v", seed, got.Part, got.Unfit, unfit)
	}
	return min(1, len(kept))
}
