package audit

import (
	"fmt"
	"math"
	"sort"

	"cartwright/catalog"
	"cartwright/scenarios"
)

const (
	ruleNeeds    = "needs"
	ruleSundries = "sundries"
)

var needRules = []Rule{
	{ruleNeeds, "", "as many sundries of each role as needs and receptacles ask for: receptacles of the circuit's rating if the catalogue has such, all else of the rating or above",
		"the scenario's own limit; NEC 210.21(B), from memory"},
	{ruleSundries, "", "no more sundries of each role than asked for", fromScenario},
}

// want is a number of sundries of a role.
type want struct {
	scenarios.Need
	exact bool // of exactly this rating; else of it or above
}

// name says what is asked for.
func (d *want) name() string {
	if d.RatingA > 0 {
		return fmt.Sprintf("%s of %g A", d.Role, d.RatingA)
	}
	return d.Role
}

// wants returns the sundries the scenario asks for, its circuits' receptacles and its needs: first those that must have
// exactly their rating, then the others from the highest rating down. A receptacle is of its circuit's rating
// (NEC 210.21(B), from memory), unless the catalogue has none of it.
func wants(s *scenarios.Scenario, c *stock) []want {
	var exact, atLeast []want
	for i := range s.Circuits {
		r := s.Circuits[i].Receptacle
		if r == nil {
			continue
		}
		d := want{Need: scenarios.Need{Role: r.Role, Count: r.Count, RatingA: r.RatingA}}
		for _, x := range c.sundries {
			d.exact = d.exact || r.RatingA > 0 && x.Role == r.Role && x.RatingA == r.RatingA
		}
		if d.exact {
			exact = append(exact, d)
		} else {
			atLeast = append(atLeast, d)
		}
	}
	for _, n := range s.Needs {
		atLeast = append(atLeast, want{Need: n})
	}
	sort.SliceStable(atLeast, func(i, j int) bool { return atLeast[i].RatingA > atLeast[j].RatingA })
	return append(exact, atLeast...)
}

// kindOfSundry is a role and a rating.
type kindOfSundry struct {
	role    string
	ratingA float64
}

// needs checks whether the sundries on the bill are what is asked for. Those that must have exactly their rating are
// taken off first; for each rating of the others, what is left at that rating or above must be as many as are asked for
// there.
func (a *auditor) needs() {
	asked := wants(a.s, a.stock)
	left := a.sundriesInstalled()
	for i := range asked {
		if d := &asked[i]; d.exact {
			k := kindOfSundry{d.Role, d.RatingA}
			a.atLeast(ruleNeeds, math.Max(0, left[k]), float64(d.Count), d.name())
			left[k] -= float64(d.Count)
		}
	}
	for i := range asked {
		d := &asked[i]
		if d.exact {
			continue
		}
		sum, have := 0.0, 0.0
		for _, other := range asked {
			if !other.exact && other.Role == d.Role && other.RatingA >= d.RatingA {
				sum += float64(other.Count)
			}
		}
		for k, n := range left { // a sum of whole numbers is the same in any order
			if k.role == d.Role && k.ratingA >= d.RatingA {
				have += math.Max(0, n)
			}
		}
		a.atLeast(ruleNeeds, have, sum, d.name())
	}
	a.noMoreThan(asked)
}

// sundriesInstalled returns how many sundries of each role and rating are on the bill.
func (a *auditor) sundriesInstalled() map[kindOfSundry]float64 {
	installed := map[kindOfSundry]float64{}
	for _, l := range a.p.Bill {
		if x := a.stock.sundries[l.Part]; x != nil && l.Kind == string(catalog.KindSundry) {
			installed[kindOfSundry{x.Role, x.RatingA}] += l.Quantity
		}
	}
	return installed
}

// noMoreThan checks that no more sundries of a role are installed than asked for.
func (a *auditor) noMoreThan(asked []want) {
	installed, wanted := map[string]float64{}, map[string]float64{}
	for _, d := range asked {
		wanted[d.Role] += float64(d.Count)
	}
	for k, n := range a.sundriesInstalled() {
		installed[k.role] += n
	}
	for _, l := range a.p.Bill {
		if x := a.stock.sundries[l.Part]; x != nil {
			a.atMost(ruleSundries, installed[x.Role], wanted[x.Role], x.Role)
		}
	}
}
