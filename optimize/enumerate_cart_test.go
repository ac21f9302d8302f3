package optimize_test

import (
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// pile is what a core puts on the cart before any wiring, bus bars, sundries and casters.
type pile struct {
	s       *scenarios.Scenario
	massKg  float64
	side    float64 // margins against tipping, kg·m
	length  float64
	casters []catalog.Casters
}

// body is a mass on the cart.
type body struct{ kg, heightM, offsetM float64 }

// standardGravity is in m/s2.
const standardGravity = 9.80665

// onBoard returns something of a mass on the backboard.
func (h *pile) onBoard(kg float64) body {
	return body{kg, h.s.Cart.Backboard.ElevationM, h.s.Cart.Backboard.OffsetM}
}

// onWheels returns a set of casters.
func (h *pile) onWheels(set *catalog.Casters) body {
	return body{set.MassKg, h.s.Cart.CasterMassHeightM, 0}
}

// heap returns the pile of a core, the modules standing as low as they can: how they stand matters to
// nothing but tipping, and the lower they stand the less the cart tips.
func (e *enumeration) heap(n []int, inv *catalog.Inverter, units int) pile {
	h := pile{s: e.s}
	for i := range e.c.Casters {
		x := &e.c.Casters[i]
		slope := math.Atan(e.s.Limits.Slope)
		holds := slope <= 0 || reaches(e.s.Cart.Grip*float64(x.Brakes)/float64(x.SetOf)*math.Cos(slope), math.Sin(slope))
		if x.SetOf == e.s.Cart.Casters && holds {
			h.casters = append(h.casters, *x)
		}
	}
	for _, m := range append([]scenarios.Mass{e.s.Cart.Frame}, e.s.Cart.DeckItems...) {
		h.add(body{m.MassKg, m.HeightM, m.OffsetM})
	}
	for _, x := range e.s.Cart.Pieces {
		h.add(body{float64(x.Count) * x.LengthM * e.section(x.Section).KgPerM, x.HeightM, 0})
	}
	h.add(h.onBoard(float64(units) * inv.MassKg))
	if e.field != nil && e.s.Sun.OnCart {
		h.add(body{float64(e.field.modules()) * e.field.module.MassKg, e.s.Sun.HeightM, 0})
	}
	modulesKg := 0.0
	for b := range n {
		modulesKg += float64(e.modules(n, b)) * e.c.Batteries[b].MassKg
	}
	if modulesKg > 0 {
		h.add(body{modulesKg, slices.Min(e.placings(n)) / modulesKg, 0})
	}
	return h
}

// margins returns what a body adds to the margins against tipping over the track and the wheelbase.
func (h *pile) margins(b body) (side, length float64) {
	slope := math.Tan(h.s.Limits.TiltDeg * math.Pi / 180)
	half, nearer := h.s.Cart.TrackM/2, 1.0
	if h.s.Cart.Casters == 3 { // halfway along a triangle it is half as wide, and its sides are askew
		half, nearer = half/2, math.Cos(math.Atan(h.s.Cart.TrackM/2/h.s.Cart.WheelbaseM))
	}
	side = b.kg * (nearer*(half-math.Abs(b.offsetM)) - slope*b.heightM)
	length = b.kg * (h.s.Cart.WheelbaseM/2 - slope*b.heightM)
	return side, length
}

func (h *pile) add(b body) {
	side, length := h.margins(b)
	h.massKg, h.side, h.length = h.massKg+b.kg, h.side+side, h.length+length
}

// with returns the mass of all with something on the backboard and a set of casters, and whether the cart
// then stands, rolls and is not too heavy.
func (h pile) with(boardKg float64, set *catalog.Casters) (massKg float64, ok bool) {
	h.add(h.onBoard(boardKg))
	h.add(h.onWheels(set))
	l := &h.s.Limits
	ok = reaches(l.MassKg, h.massKg) && h.side >= -near && h.length >= -near &&
		reaches(set.RatingKg, h.s.CasterFactor*h.massKg/float64(min(3, h.s.Cart.Casters-1))) &&
		(l.PushN == 0 || reaches(l.PushN, (h.s.Cart.Rolling+l.Slope)*h.massKg*standardGravity))
	return h.massKg, ok
}

// lighterIsBetter reports whether less on the backboard is never worse: mass there, or the cart without
// any of it, does not help against tipping. A kilogram helps where it stands low and far inside; then the
// cart must stand without it, with whatever casters.
func (h pile) lighterIsBetter() bool {
	sideEach, lengthEach := h.margins(h.onBoard(1))
	for i := range h.casters {
		side, length := h.margins(h.onWheels(&h.casters[i]))
		if sideEach > 0 && h.side+side < 0 || lengthEach > 0 && h.length+length < 0 {
			return false
		}
	}
	return true
}
