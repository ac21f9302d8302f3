package value

import (
	"math"

	"cartwright/optimize/question"
	"cartwright/optimize/relax"
)

// The limits that can end a count, in the order in which they are listed.
const (
	StopsRoom      = "shelf room"    // floor and clear height of the shelves
	StopsShelfMass = "shelf mass"    // what the shelves carry
	StopsMass      = "mass"          // of the whole cart
	StopsPush      = "push"          // the force to move it
	StopsCasters   = "casters"       // the strongest of the catalogue
	StopsTilt      = "tilt"          // the slope it has to stand on
	StopsParallel  = "max parallel"  // strings the maker allows in parallel
	StopsFault     = "fault current" // what the strongest device breaks
	StopsStuds     = "studs"         // of the bus bars with the most
	StopsWiring    = "string wiring" // a condition of the bench: no cable and device of the catalogue serve a string
	StopsProtocols = "protocols"     // a condition of the bench: no protocol in common with an inverter, where that is required
	StopsAll       = "no cart"       // none of the above
)

// stops lists the limits that can be lifted.
var stops = []string{StopsRoom, StopsShelfMass, StopsMass, StopsPush, StopsCasters, StopsTilt, StopsParallel, StopsFault, StopsStuds}

// lifted is a set of limits that do not count, a bit for each of stops.
type lifted uint

// allLifted is the set of all of them.
func allLifted() lifted { return 1<<len(stops) - 1 }

// has reports whether a limit is in the set.
func (l lifted) has(stop string) bool {
	for i, s := range stops {
		if s == stop {
			return l&(1<<i) != 0
		}
	}
	return false
}

// size returns how many limits are in a set, names which.
func (l lifted) size() int { return len(l.names()) }

func (l lifted) names() []string {
	names := []string{}
	for _, s := range stops {
		if l.has(s) {
			names = append(names, s)
		}
	}
	return names
}

// Unloaded returns the problem of a cart that need not run anything: no autonomy, recharge or budget; nothing owned or
// offered, which does not matter to what can be built; and no solar modules, which only add mass and current.
func Unloaded(p question.Problem) question.Problem {
	s, c := *p.Scenario, *p.Catalog
	s.Have, s.AutonomyH, s.Recharge, s.Limits.Budget = nil, 0, nil, math.MaxInt64
	s.Sun, s.Limits.Served = nil, 0
	c.Offers = nil
	return question.Problem{Scenario: &s, Catalog: &c}
}

// without returns a copy of a problem with some limits lifted.
func without(p question.Problem, l lifted) question.Problem {
	s, c := *p.Scenario, p.Catalog.Clone()
	if l.has(StopsMass) {
		s.Limits.MassKg = math.Inf(1)
	}
	if l.has(StopsPush) {
		s.Limits.PushN = 0
	}
	s.Cart.Shelves = append(s.Cart.Shelves[:0:0], s.Cart.Shelves...)
	for i := range s.Cart.Shelves {
		if l.has(StopsRoom) {
			s.Cart.Shelves[i].LengthM, s.Cart.Shelves[i].DepthM, s.Cart.Shelves[i].ClearHeightM = relax.EndlessM, relax.EndlessM, relax.EndlessM
		}
		if l.has(StopsShelfMass) {
			s.Cart.Shelves[i].MaxMassKg = math.Inf(1)
		}
	}
	for i := range c.Casters {
		if l.has(StopsCasters) {
			c.Casters[i].RatingKg = relax.AnyMassKg
		}
	}
	for i := range c.Devices {
		if l.has(StopsFault) {
			c.Devices[i].InterruptingDCA = relax.EndlessA
		}
	}
	for i := range c.Busbars {
		if l.has(StopsStuds) {
			c.Busbars[i].Studs = relax.EndlessStuds
		}
	}
	for i := range c.Batteries {
		if l.has(StopsParallel) {
			c.Batteries[i].MaxParallel = 0
		}
	}
	return question.Problem{Scenario: &s, Catalog: c}
}

// Held returns a copy of a problem in which, of the limits that can end a count, only the given ones hold. It is for
// callers that count by other means.
func Held(p question.Problem, limits ...string) question.Problem {
	held := lifted(0)
	for i, s := range stops {
		for _, name := range limits {
			if s == name {
				held |= 1 << i
			}
		}
	}
	q := without(p, allLifted()&^held)
	if (allLifted() &^ held).has(StopsTilt) {
		q.Scenario.Limits.TiltDeg = 0
	}
	return q
}
