package view

import (
	"fmt"
	"math"
	"strings"

	"cartwright/optimize/plan"
)

// shelves shows what stands where.
func (p Plans) shelves(one *plan.Plan) section {
	t := &table{columns: []column{text("shelf"), text("carries"), number("mass\nkg"), number("at most\nkg")}}
	for _, s := range one.Shelves {
		var carries []string
		for _, b := range s.Batteries {
			carries = append(carries, fmt.Sprintf("%d x %s", b.Modules, b.Part))
		}
		if len(carries) == 0 {
			carries = []string{"nothing"}
		}
		most := none
		for _, have := range p.Scenario.Cart.Shelves {
			if have.Name == s.Shelf && !math.IsInf(have.MaxMassKg, 1) {
				most = fixed(have.MaxMassKg, 1)
			}
		}
		t.row(s.Shelf, strings.Join(carries, "\n"), fixed(s.MassKg, 1), most)
	}
	return section{title: detailTitle(one, "shelves"), table: t}
}

// cart says what it rolls on, where its weight is and on which leg its loads hang.
func (p Plans) cart(one *plan.Plan) section {
	c, b := one.Casters, one.Balance
	// A cart does not stand on two wheels; the load of three is reckoned as if two carried all.
	carrying := "one wheel off the floor"
	if c.Count == 3 {
		carrying = "as if two wheels carried all"
	}
	lines := []string{
		fmt.Sprintf("Casters: %d x %s; %s kg on each, rated %s kg (factor %s, %s).",
			c.Count, c.Part, fixed(c.LoadEachKg, 1), fixed(c.RatingEachKg, 1), short(p.Scenario.CasterFactor, 2), carrying),
		fmt.Sprintf("Balance: centre of gravity %s mm above the floor; tips at %s deg, must stand %s deg.",
			fixed(b.CGHeightMM, 0), fixed(b.TiltDeg, 1), fixed(b.RequiredDeg, 1)),
	}
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
	return section{title: detailTitle(one, "casters and balance"), prose: lines}
}
