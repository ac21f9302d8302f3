package model

import (
	"cmp"
	"math"
	"slices"

	"cartwright/optimize/chassis"
	"cartwright/optimize/milp"
	"cartwright/scenarios"
)

// standModules puts every module on a shelf. The variables of the highest shelf come first: of plans that tie, the one
// whose variables are least in order is taken, so nothing stands high up that has room below.
func (p *program) standModules() {
	shelves := p.Bench.Scenario.Cart.Shelves
	fromAbove := make([]int, len(shelves))
	for s := range shelves {
		fromAbove[s] = s
	}
	slices.SortStableFunc(fromAbove, func(a, b int) int { return cmp.Compare(shelves[b].ElevationM, shelves[a].ElevationM) })
	for i, r := range p.Space.strings {
		k := p.stack(i)
		places := make([]milp.Var, len(shelves))
		for _, s := range fromAbove {
			most := min(k.Caps[s], r.hi*k.Series)
			places[s] = p.Model.Integer("stand "+k.Battery.ID+" on "+number(s), 0, float64(most))
		}
		p.stand = append(p.stand, places)
		p.Model.Row("all stand "+k.Battery.ID, minus(sum(places, one), milp.Sum(milp.T(float64(k.Series), p.strings[i]))), milp.Equal, 0)
	}
	for s, shelf := range shelves {
		var load milp.Expr
		for i := range p.Space.strings {
			if k := p.stack(i); k.Caps[s] > 0 {
				load.Add(k.Battery.MassKg, p.stand[i][s])
			}
		}
		if load.Len() == 0 {
			continue
		}
		p.setDown(s, &shelf)
		if most := p.Bench.ShelfKg[s]; !math.IsInf(most, 1) {
			p.Model.Row("mass on shelf "+number(s), load, milp.AtMost, most)
		}
	}
}

// setDown requires that the modules on a shelf stand in whole columns, each kind turned one way, and together within the
// length. With a single kind the bound on its number is enough.
func (p *program) setDown(s int, shelf *scenarios.Shelf) {
	kinds := 0
	for i := range p.Space.strings {
		if p.stack(i).Caps[s] > 0 {
			kinds++
		}
	}
	if kinds < 2 {
		return
	}
	var length milp.Expr
	for i := range p.Space.strings {
		k := p.stack(i)
		ways := k.Columns[s]
		if len(ways) == 0 {
			continue
		}
		held := milp.Sum(milp.T(-1, p.stand[i][s]))
		var turned milp.Expr
		for w, c := range ways {
			most := min(c.Most, (p.Space.strings[i].hi*k.Series+c.Modules()-1)/c.Modules())
			name := k.Battery.ID + " on " + number(s) + " way " + number(w)
			n := p.Model.Integer("columns "+name, 0, float64(most))
			held.Add(float64(c.Modules()), n)
			length.Add(c.AlongM+shelf.GapM, n)
			if len(ways) > 1 {
				z := p.Model.Binary("turned " + name)
				turned.Add(1, z)
				p.Model.Row("columns only if turned "+name, milp.Sum(milp.T(1, n), milp.T(-float64(most), z)), milp.AtMost, 0)
			}
		}
		if len(ways) > 1 {
			p.Model.Row("turned one way "+k.Battery.ID+" on "+number(s), turned, milp.AtMost, 1)
		}
		p.Model.Row("in columns "+k.Battery.ID+" on "+number(s), held, milp.AtLeast, 0)
	}
	p.Model.Row("room on shelf "+number(s), length, milp.AtMost, chassis.RoomM(shelf))
}
