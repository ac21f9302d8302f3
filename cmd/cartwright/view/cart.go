package view

import (
	"fmt"
	"math"
	"strings"

	"cartwright/optimize/plan"
)

// stands shows where the modules stand, on what it all rolls and on which leg loads were put.
func (p Plans) stands(one *plan.Plan) sheet {
	if p.Full {
		return sheet{p.shelves(one), {title: detailTitle(one, "casters and balance"), prose: append(p.rolls(one), p.legs(one)...)}}
	}
	var lines []string
	for _, s := range one.Shelves {
		if len(s.Batteries) == 0 {
			continue
		}
		line := fmt.Sprintf("Shelf %s: %s, %s", s.Shelf, joined(stood(s)), p.units().with(s.MassKg, "kg"))
		if most, ok := p.shelfMost(s.Shelf); ok {
			line += " of " + p.units().with(most, "kg")
		}
		lines = append(lines, line+".")
	}
	return sheet{{title: detailTitle(one, "shelves, casters and balance"), prose: append(append(lines, p.rolls(one)...), p.legs(one)...)}}
}

// stood lists the modules on a shelf.
func stood(s plan.Shelf) string {
	var carries []string
	for _, b := range s.Batteries {
		carries = append(carries, fmt.Sprintf("%d x %s", b.Modules, b.Part))
	}
	return items(carries...)
}

// shelfMost returns the most a shelf may carry, where that is stated.
func (p Plans) shelfMost(name string) (kg float64, stated bool) {
	for _, s := range p.Scenario.Cart.Shelves {
		if s.Name == name && !math.IsInf(s.MaxMassKg, 1) {
			return s.MaxMassKg, true
		}
	}
	return 0, false
}

// shelves shows what stands where.
func (p Plans) shelves(one *plan.Plan) section {
	u := p.units()
	t := &table{columns: []column{
		text("shelf"), text("carries"), number("mass\n" + u.unit("kg")), number("at most\n" + u.unit("kg")),
	}}
	for _, s := range one.Shelves {
		carries := stood(s)
		if carries == "" {
			carries = "nothing"
		}
		most := none
		if kg, ok := p.shelfMost(s.Shelf); ok {
			most = u.fixed(kg, "kg")
		}
		t.row(s.Shelf, carries, u.fixed(s.MassKg, "kg"), most)
	}
	return section{title: detailTitle(one, "shelves"), table: t}
}

// rolls says what it rolls on and where its weight is.
func (p Plans) rolls(one *plan.Plan) []string {
	c, b, u := one.Casters, one.Balance, p.units()
	// A cart does not stand on two wheels; the load of three is reckoned as if two carried all.
	carrying := "one wheel off the floor"
	if c.Count == 3 {
		carrying = "as if two wheels carried all"
	}
	return []string{
		fmt.Sprintf("Casters: %d x %s; %s on each, rated %s (factor %s, %s).", c.Count, c.Part,
			u.with(c.LoadEachKg, "kg"), u.with(c.RatingEachKg, "kg"), short(p.Scenario.CasterFactor, 2), carrying),
		fmt.Sprintf("Balance: centre of gravity %s above the floor; tips at %s deg, must stand %s deg.",
			u.with(b.CGHeightMM, "mm"), fixed(b.TiltDeg, 1), fixed(b.RequiredDeg, 1)),
	}
}

// legs says on which leg the loads left to the program were put, where there are no circuits that tell.
func (p Plans) legs(one *plan.Plan) []string {
	var lines []string
	for _, leg := range []string{"A", "B"} {
		var loads []string
		for _, l := range one.Legs {
			if l.Leg == leg {
				loads = append(loads, l.Load)
			}
		}
		if len(loads) > 0 {
			lines = append(lines, "Put on leg "+leg+": "+strings.Join(loads, ", ")+".")
		}
	}
	return lines
}
