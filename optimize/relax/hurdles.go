package relax

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
	"cartwright/scenarios"
)

// hurdle is something that is not a limit of the scenario but can keep every plan out. Lifting it changes
// a copy of the problem.
type hurdle struct {
	words string
	lift  func(s *scenarios.Scenario, c *catalog.Catalog)
}

// particulars lists the hurdles of a scenario's own, for a problem for which there are parts of every kind.
func particulars(p question.Problem) []hurdle {
	var list []hurdle
	cart := &p.Scenario.Cart
	if y := cart.Backboard.OffsetM; y != 0 {
		list = append(list, hurdle{fmt.Sprintf("cart.backboard.offset is %s m: with all that is mounted there the cart tips over, whatever is bought", bench.Figure(y)),
			func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Cart.Backboard.OffsetM = 0 }})
	}
	for i := range cart.DeckItems {
		if item := &cart.DeckItems[i]; item.OffsetM != 0 {
			list = append(list, hurdle{fmt.Sprintf("the deck item %q of %s kg is %s m off the middle: the cart tips over, whatever is bought", item.Name, bench.Figure(item.MassKg), bench.Figure(item.OffsetM)),
				func(s *scenarios.Scenario, _ *catalog.Catalog) {
					s.Cart.DeckItems = slices.Clone(s.Cart.DeckItems)
					s.Cart.DeckItems[i].OffsetM = 0
				}})
		}
	}
	for i := range p.Scenario.Needs {
		if n := &p.Scenario.Needs[i]; n.Count > 1 {
			list = append(list, hurdle{fmt.Sprintf("%d x %s are needed: what they weigh or cost is more than any plan has room for", n.Count, n.Role),
				func(s *scenarios.Scenario, _ *catalog.Catalog) {
					s.Needs = slices.Clone(s.Needs)
					s.Needs[i].Count = 1
				}})
		}
	}
	return append(list, receptacleHurdles(p.Scenario)...)
}

// receptacleHurdles are the circuits with more than one receptacle.
func receptacleHurdles(s *scenarios.Scenario) []hurdle {
	var list []hurdle
	for i := range s.Circuits {
		if r := s.Circuits[i].Receptacle; r != nil && r.Count > 1 {
			list = append(list, hurdle{fmt.Sprintf("circuit %q has %d x %s: what they weigh or cost is more than any plan has room for", s.Circuits[i].Name, r.Count, r.Role),
				func(s *scenarios.Scenario, _ *catalog.Catalog) {
					s.Circuits = slices.Clone(s.Circuits)
					one := *r
					one.Count = 1
					s.Circuits[i].Receptacle = &one
				}})
		}
	}
	return list
}

// given reports whether a problem's batteries are given, each in its number.
func given(p question.Problem) bool { return p.Idle != nil }

// generals lists the hurdles that any problem may have: the size of the cart, and the most that the catalogue's parts
// can do.
func generals(p question.Problem) []hurdle {
	s := p.Scenario
	breaks := 0.0
	for i := range p.Catalog.Devices {
		breaks = math.Max(breaks, p.Catalog.Devices[i].InterruptingDCA)
	}
	delivers := "no battery, in the number of strings its maker allows, delivers the current of inverters and direct-current loads, or takes up the charge"
	room := "the shelves have no room for as many modules as the current of inverters and direct-current loads takes"
	if given(p) {
		delivers = "these batteries do not deliver the current of inverters and direct-current loads, or do not take up the charge"
		room = "the shelves have no room for so many modules"
	}
	return []hurdle{
		{fmt.Sprintf("the cart tips over, whatever is bought: the track is %s m, the wheelbase %s m", bench.Figure(s.Cart.TrackM), bench.Figure(s.Cart.WheelbaseM)),
			func(s *scenarios.Scenario, _ *catalog.Catalog) {
				s.Cart.TrackM, s.Cart.WheelbaseM = EndlessM, EndlessM
			}},
		weakCasters(p),
		{"no bus bars of the catalogue carry the current of inverters and direct-current loads, or have enough studs for the strings",
			func(_ *scenarios.Scenario, c *catalog.Catalog) {
				for i := range c.Busbars {
					c.Busbars[i].RatingA, c.Busbars[i].Studs = EndlessA, EndlessStuds
				}
			}},
		{fmt.Sprintf("no fuse or breaker of the catalogue breaks the short-circuit current of the strings that are needed; the best breaks %s A of direct current", bench.Figure(breaks)),
			func(_ *scenarios.Scenario, c *catalog.Catalog) {
				for i := range c.Devices {
					c.Devices[i].InterruptingDCA = EndlessA
				}
			}},
		{delivers,
			func(_ *scenarios.Scenario, c *catalog.Catalog) {
				for i := range c.Batteries {
					c.Batteries[i].MaxParallel = 0
				}
			}},
		{room,
			func(s *scenarios.Scenario, _ *catalog.Catalog) {
				s.Cart.Shelves = slices.Clone(s.Cart.Shelves)
				for i := range s.Cart.Shelves {
					sh := &s.Cart.Shelves[i]
					sh.LengthM, sh.DepthM, sh.ClearHeightM = EndlessM, EndlessM, EndlessM
				}
			}},
		{"no load centre of the catalogue has enough spaces for the breakers of all circuits",
			func(_ *scenarios.Scenario, c *catalog.Catalog) {
				for i := range c.Sundries {
					c.Sundries[i].Spaces = 0
				}
			}},
		{"no charger of the catalogue's inverters gives enough current",
			func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Recharge = nil }},
	}
}

// Whether lifting a hurdle is enough is mostly known in milliseconds. Finding a reason must not take longer than the
// answer it explains.
const (
	hurdleWork search.Work = 2_500  // for one hurdle: at most a second or so
	reasonWork search.Work = 10_000 // for all
)

// Obstruct says what keeps every plan out of a problem that has none however far its limits give: the first hurdle that
// is enough to lift, those of the scenario's own before the others; else a set of hurdles all of which have to be
// lifted; nothing where lifting all is not enough, or where it takes too long to know.
func Obstruct(ctx context.Context, p question.Problem) ([]string, error) {
	open := Opened(p, Levers(p.Scenario))
	before := &bench.Before{}
	b, err := bench.Lay(ctx, open, "", before)
	if err != nil {
		return nil, err
	}
	if short := fallsShort(b, given(p)); len(short) > 0 {
		return short, nil
	}
	left := reasonWork
	possible := func(lifted []hurdle) (bool, error) {
		if left <= 0 {
			return false, question.ErrUnknown
		}
		found, work, err := search.Reachable(ctx, lift(open, lifted), before.OtherParts(), min(left, hurdleWork))
		left -= work
		return found, err
	}
	own, others := particulars(p), generals(p)
	kept := append(own, others...)
	for i := range kept {
		switch ok, err := possible(kept[i : i+1]); {
		case errors.Is(err, question.ErrUnknown): // another may be enough, and known sooner
		case err != nil:
			return nil, err
		case ok:
			return []string{kept[i].words}, nil
		}
	}
	if ok, err := possible(kept); !ok {
		return nil, unlessUnknown(err)
	}
	for i := len(kept) - 1; i >= 0; i-- {
		rest := slices.Delete(slices.Clone(kept), i, i+1)
		switch ok, err := possible(rest); {
		case err != nil:
			return nil, unlessUnknown(err)
		case ok:
			kept = rest
		}
	}
	var words []string
	for i := range kept {
		words = append(words, kept[i].words)
	}
	return words, nil
}

// unlessUnknown returns an error, but nil for one that only says that time ran out.
func unlessUnknown(err error) error {
	if errors.Is(err, question.ErrUnknown) {
		return nil
	}
	return err
}

// lift returns a copy of a problem with some hurdles lifted.
func lift(p question.Problem, list []hurdle) question.Problem {
	s, c := *p.Scenario, p.Catalog.Clone()
	for i := range list {
		list[i].lift(&s, c)
	}
	return question.Problem{Scenario: &s, Catalog: c, Stand: p.Stand, Idle: p.Idle}
}

// Sizes that limit nothing: beyond any cart, and small enough for exact arithmetic.
const (
	EndlessM     = 100.0 // of a shelf, track or wheelbase
	EndlessA     = 1e9   // that a device breaks or bus bars carry
	EndlessStuds = 10000
)
