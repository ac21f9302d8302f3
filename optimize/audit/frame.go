package audit

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/scenarios"
)

// frame returns the frame as one body: as stated, or from the pieces it is cut from.
func (a *auditor) frame() scenarios.Mass {
	cart := &a.s.Cart
	if len(cart.Pieces) == 0 {
		return cart.Frame
	}
	whole, moment := scenarios.Mass{Name: cart.Frame.Name}, 0.0
	for _, piece := range cart.Pieces {
		x := a.stock.sections[piece.Section]
		if x == nil {
			continue
		}
		kg := float64(piece.Count) * piece.LengthM * x.KgPerM
		whole.MassKg += kg
		moment += kg * piece.HeightM
	}
	if whole.MassKg > 0 {
		whole.HeightM = moment / whole.MassKg
	}
	return whole
}

// strangeSections names the sections of frame and rails that are not in the catalogue.
func (a *auditor) strangeSections() (unknown []string) {
	want := func(id string) {
		if a.stock.sections[id] == nil {
			unknown = append(unknown, "cart: no section \""+id+"\"")
		}
	}
	for _, piece := range a.s.Cart.Pieces {
		want(piece.Section)
	}
	for _, sh := range a.s.Cart.Shelves {
		if sh.Rails != nil {
			want(sh.Rails.Section)
		}
	}
	return unknown
}

// How far rails may be loaded: EN 1993-1-1 has E; the shares of yield and span are common practice, no source.
const (
	elasticPa    = 210e9
	yieldShare   = 0.6
	spanPerSag   = 240
	bendingParts = 8.0       // M = w·L²/8: a beam on two supports under an even load
	saggingParts = 384.0 / 5 // f = 5·w·L⁴/(384·E·I)
)

// bearsKg returns the most mass in kg of a shelf's modules: the lesser of its max_mass and what its rails bear.
func (a *auditor) bearsKg(sh *scenarios.Shelf) float64 {
	if sh.Rails == nil {
		return sh.MaxMassKg
	}
	x := a.stock.sections[sh.Rails.Section]
	if x == nil {
		return 0
	}
	inertia, modulus := bending(x)
	span := sh.Rails.SpanM
	strength := bendingParts * modulus * yieldShare * x.YieldPa / (span * span)
	stiffness := saggingParts * elasticPa * inertia / (spanPerSag * span * span * span)
	newtons := math.Min(strength, stiffness) * span * float64(sh.Rails.Count)
	return math.Min(sh.MaxMassKg, newtons/chassis.StandardGravity)
}

// bending returns the second moment of area in m4 and the section modulus in m3 of a section that bends about
// its level axis: a flat on its edge, an angle by its weaker side. 0 for ply, which cannot be a rail.
func bending(x *catalog.Section) (inertia, modulus float64) {
	b, h, t := x.WidthM, x.HeightM, x.WallM
	switch x.Shape {
	case catalog.SquareTube:
		h = math.Max(h, b)
		inertia = (b*math.Pow(h, 3) - (b-2*t)*math.Pow(h-2*t, 3)) / 12
		return inertia, inertia / (h / 2)
	case catalog.Flat:
		b, h = math.Min(b, h), math.Max(b, h)
		inertia = b * math.Pow(h, 3) / 12
		return inertia, inertia / (h / 2)
	case catalog.Angle:
		// The whole level leg, and the upright leg above it; heights from the bottom.
		level, upright := b*t, t*(h-t)
		middle := (level*t/2 + upright*(t+h)/2) / (level + upright)
		inertia = b*math.Pow(t, 3)/12 + level*math.Pow(middle-t/2, 2) +
			t*math.Pow(h-t, 3)/12 + upright*math.Pow((t+h)/2-middle, 2)
		return inertia, inertia / math.Max(middle, h-middle)
	}
	return 0, 0
}
