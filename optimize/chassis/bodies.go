package chassis

import (
	"cartwright/catalog"
	"cartwright/scenarios"
)

// Body is a mass on the cart: its centre's height above the floor, and its offset sideways from the
// middle, to either side.
type Body struct {
	MassKg, HeightM, OffsetM float64
}

// FixedBodies returns what is on the cart whatever is bought: the frame, its pieces by the mass of their sections, and
// the deck items.
func FixedBodies(s *scenarios.Scenario, c *catalog.Catalog) []Body {
	bodies := []Body{massBody(&s.Cart.Frame)}
	for _, p := range s.Cart.Pieces {
		for i := range c.Sections {
			if c.Sections[i].ID == p.Section {
				bodies = append(bodies, Body{MassKg: p.LengthM * float64(p.Count) * c.Sections[i].KgPerM, HeightM: p.HeightM})
			}
		}
	}
	for i := range s.Cart.DeckItems {
		bodies = append(bodies, massBody(&s.Cart.DeckItems[i]))
	}
	return bodies
}

func massBody(m *scenarios.Mass) Body {
	return Body{MassKg: m.MassKg, HeightM: m.HeightM, OffsetM: m.OffsetM}
}

// ModuleBody returns one battery module on a shelf, in the middle of the cart. Its centre counts at half the height of
// as many layers as may be stacked there, as if all of them were full: the safe side.
func ModuleBody(sh *scenarios.Shelf, b *catalog.Battery) Body {
	return Body{MassKg: b.MassKg, HeightM: sh.ElevationM + float64(max(1, Layers(sh, b)))*b.HeightM/2}
}

// BackboardBody returns a mass on the backboard: inverters, devices, bus bars, sundries, cable.
func BackboardBody(s *scenarios.Scenario, massKg float64) Body {
	return Body{MassKg: massKg, HeightM: s.Cart.Backboard.ElevationM, OffsetM: s.Cart.Backboard.OffsetM}
}

// ArrayBody returns a solar array that stands on the cart, of a mass in all, in the middle; a body without mass where
// the scenario has no sun.
func ArrayBody(s *scenarios.Scenario, massKg float64) Body {
	if s.Sun == nil {
		return Body{}
	}
	return Body{MassKg: massKg, HeightM: s.Sun.HeightM}
}

// CasterBody returns the set of casters, of a mass in all, in the middle of the cart.
func CasterBody(s *scenarios.Scenario, massKg float64) Body {
	return Body{MassKg: massKg, HeightM: s.Cart.CasterMassHeightM}
}

// MassKg returns the mass of some bodies together.
func MassKg(bodies []Body) float64 {
	mass := 0.0
	for _, b := range bodies {
		mass += b.MassKg
	}
	return mass
}
