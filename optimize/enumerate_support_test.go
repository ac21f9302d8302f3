package optimize_test

import (
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// fitting is one choice of bus bars, casters and sundries.
type fitting struct {
	cost    float64 // cents
	boardKg float64 // on the backboard
	casters *catalog.Casters
	centre  *catalog.Sundry // nil: none
}

// support finds the best of all ways to build a core. There is none where it returns false.
func (e *enumeration) support(p *total, by question.By) bool {
	inv := &e.c.Inverters[p.inverter]
	paths, ok := e.paths(p.batteries, inv, p.units)
	if !ok {
		return false
	}
	h := e.heap(p.batteries, inv, p.units)
	lighter := h.lighterIsBetter()
	found := false
	for level := range e.market.levels {
		fittings := e.fittings(&h, p.batteries, inv, p.units, level)
		if len(fittings) == 0 {
			return false // at whatever level
		}
		core := e.coreCost(p.batteries, inv, p.units, level)
		wirings := e.wirings(paths, pricing{level, lighter})
		for _, f := range fittings {
			for key, list := range wirings {
				if !key.fits(f.centre) || !key.bonded() || !e.keeps(&key) {
					continue
				}
				for _, w := range list {
					cost := core + f.cost + w.cost
					massKg, stands := h.with(f.boardKg+w.massKg, f.casters)
					if !stands || !e.affordable(cost) || found && !better(by, cost, massKg, p) {
						continue
					}
					found, p.cost, p.massKg = true, cost, massKg
				}
			}
		}
	}
	p.lifeWh = e.lifeWh(p.batteries, inv, p.units)
	return found
}

// hair is the difference in cents and kilograms below which a difference is rounding.
const hair = 1e-6

// better reports whether a cost and mass are better than a plan's.
func better(by question.By, cost, massKg float64, p *total) bool {
	first, second, haveFirst, haveSecond := cost, massKg, p.cost, p.massKg
	if by == question.ByMass {
		first, second, haveFirst, haveSecond = massKg, cost, p.massKg, p.cost
	}
	return first < haveFirst-hair || first < haveFirst+hair && second < haveSecond
}

// affordable reports whether the money in hand is enough.
func (e *enumeration) affordable(cost float64) bool {
	if e.s.Limits.Budget == math.MaxInt64 {
		return true
	}
	return cost <= float64(e.s.Limits.Budget+e.s.Sold)+hair
}

// coreCost returns what batteries, inverters and shipping cost, less what all other parts sell for.
func (e *enumeration) coreCost(n []int, inv *catalog.Inverter, units, level int) float64 {
	used := map[string]int{inv.ID: units}
	for b := range n {
		used[e.c.Batteries[b].ID] = e.modules(n, b)
	}
	if e.field != nil {
		used[e.field.module.ID] = e.field.modules()
	}
	cost := e.market.shipping(level)
	for _, g := range e.market.order {
		cost += e.market.cost(g, float64(used[g.id]), level)
	}
	return cost
}

// extra returns what some pieces of a part add to the cost.
func (e *enumeration) extra(id string, pieces, level int) float64 {
	g := e.market.goods[id]
	return e.market.cost(g, float64(pieces), level) - e.market.cost(g, 0, level)
}

// fittings returns every choice of bus bars, casters and sundries for a core, but for the casters' load.
func (e *enumeration) fittings(h *pile, n []int, inv *catalog.Inverter, units, level int) []fitting {
	throughA := 1.25 * e.busA(inv, units)
	dcCircuits := 0
	for i := range e.s.Circuits {
		if e.s.Circuits[i].DC {
			dcCircuits++
		}
	}
	var all []fitting
	for _, counts := range e.sundries(throughA) {
		base := fitting{}
		for i, k := range counts {
			x := &e.c.Sundries[i]
			base.cost += e.extra(x.ID, k, level)
			base.boardKg += float64(k) * x.MassKg
			if x.Role == "load-centre" && k > 0 {
				base.centre = x
			}
		}
		for i := range e.c.Busbars {
			bars := &e.c.Busbars[i]
			if !reaches(bars.RatingA, throughA) || bars.Studs < sum(n)+units+dcCircuits {
				continue
			}
			for k := range h.casters {
				set := &h.casters[k]
				if !e.keepsFittings(counts, bars.ID, set.ID) {
					continue
				}
				f := base
				f.cost += e.extra(bars.ID, 1, level) + e.extra(set.ID, 1, level)
				f.boardKg += bars.MassKg
				f.casters = set
				all = append(all, f)
			}
		}
	}
	return all
}

// keepsFittings reports whether bus bars, casters and sundries are such as are to be kept.
func (e *enumeration) keepsFittings(sundries []int, bars, casters string) bool {
	has := map[string]float64{bars: 1, casters: 1}
	for i, k := range sundries {
		has[e.c.Sundries[i].ID] = float64(k)
	}
	for _, x := range e.c.All() {
		switch x.Kind {
		case catalog.KindBusbar, catalog.KindCasters, catalog.KindSundry:
			if has[x.ID] < e.market.goods[x.ID].kept {
				return false
			}
		}
	}
	return true
}

// sundries returns every number of every sundry that answers what is needed, each need by itself; shunts and
// disconnects stand what flows through them.
func (e *enumeration) sundries(throughA float64) [][]int {
	all := [][]int{make([]int, len(e.c.Sundries))}
	for _, need := range e.s.Needs {
		all = e.answered(all, need, func(x *catalog.Sundry) bool {
			return x.RatingA >= need.RatingA && (need.Role != "shunt" && need.Role != "disconnect" || reaches(x.RatingA, throughA))
		})
	}
	for i := range e.s.Circuits {
		r := e.s.Circuits[i].Receptacle
		if r == nil {
			continue
		}
		// A receptacle is of its circuit's rating where there is one, else of a higher one.
		exact := slices.ContainsFunc(e.c.Sundries, func(x catalog.Sundry) bool {
			return x.Role == r.Role && x.RatingA == r.RatingA && r.RatingA > 0
		})
		all = e.answered(all, scenarios.Need{Role: r.Role, Count: r.Count}, func(x *catalog.Sundry) bool {
			return x.RatingA == r.RatingA || !exact && x.RatingA > r.RatingA
		})
	}
	return all
}

// answered returns numbers of sundries, each longer by what answers one more need.
func (e *enumeration) answered(all [][]int, need scenarios.Need, serves func(*catalog.Sundry) bool) [][]int {
	for range need.Count {
		var more [][]int
		for _, counts := range all {
			for i := range e.c.Sundries {
				if x := &e.c.Sundries[i]; x.Role != need.Role || !serves(x) {
					continue
				}
				next := slices.Clone(counts)
				next[i]++
				if !slices.ContainsFunc(more, func(c []int) bool { return slices.Equal(c, next) }) {
					more = append(more, next)
				}
			}
		}
		all = more
	}
	return all
}
