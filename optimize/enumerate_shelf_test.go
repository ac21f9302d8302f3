package optimize_test

import (
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// placings returns every way to stand the modules on the shelves, as the sum of mass times height; none if
// there is no room.
func (e *enumeration) placings(n []int) []float64 {
	shelves := e.s.Cart.Shelves
	var moments []float64
	var place func(b, sh, left int, load []shelfLoad, moment float64)
	place = func(b, sh, left int, load []shelfLoad, moment float64) {
		if sh == len(shelves) {
			switch {
			case left > 0: // some module stands nowhere
			case b+1 == len(n):
				moments = append(moments, moment)
			default:
				place(b+1, 0, e.modules(n, b+1), load, moment)
			}
			return
		}
		bat, shelf := &e.c.Batteries[b], &shelves[sh]
		heightM := shelf.ElevationM + max(1, layersOf(shelf, bat))*bat.HeightM/2
		for k := 0; k <= left; k++ {
			next := slices.Clone(load)
			if k > 0 {
				next[sh].lengthM += columnsM(shelf, bat, k)
				next[sh].massKg += float64(k) * bat.MassKg
			}
			if !reaches(shelf.LengthM+shelf.GapM, next[sh].lengthM) || !reaches(e.bearsKg(shelf), next[sh].massKg) {
				return
			}
			place(b, sh+1, left-k, next, moment+float64(k)*bat.MassKg*heightM)
		}
	}
	place(0, 0, e.modules(n, 0), make([]shelfLoad, len(shelves)), 0)
	return moments
}

// shelfLoad is the length of a shelf that columns take, a gap after each, and the mass on it.
type shelfLoad struct{ lengthM, massKg float64 }

// columnsM returns the length that some modules take in whole columns across a shelf's depth, turned the better way.
func columnsM(sh *scenarios.Shelf, b *catalog.Battery, modules int) float64 {
	layers := layersOf(sh, b)
	least := math.Inf(1)
	for _, way := range [][2]float64{{b.LengthM, b.WidthM}, {b.WidthM, b.LengthM}} {
		rows := math.Floor((sh.DepthM+sh.GapM)/(way[1]+sh.GapM) + near)
		if rows*layers > 0 {
			least = min(least, math.Ceil(float64(modules)/(rows*layers))*(way[0]+sh.GapM))
		}
	}
	return least
}

// layersOf returns how many modules stand on each other.
func layersOf(sh *scenarios.Shelf, b *catalog.Battery) float64 {
	return min(float64(sh.Stack), math.Floor(sh.ClearHeightM/b.HeightM+near))
}

// section returns the section of an id.
func (e *enumeration) section(id string) *catalog.Section {
	return &e.c.Sections[slices.IndexFunc(e.c.Sections, func(x catalog.Section) bool { return x.ID == id })]
}

// bearsKg returns what a shelf carries, of its own limit and its rails': each of these is a beam on two supports with
// its part of the weight spread evenly. A tube is a square less the square inside it; a flat stands on its edge.
func (e *enumeration) bearsKg(sh *scenarios.Shelf) float64 {
	if sh.Rails == nil {
		return sh.MaxMassKg
	}
	x, span := e.section(sh.Rails.Section), sh.Rails.SpanM
	width, height := x.WidthM, x.HeightM
	inertia := width * height * height * height / 12
	if x.Shape == catalog.SquareTube {
		height = width
		inertia = (math.Pow(width, 4) - math.Pow(width-2*x.WallM, 4)) / 12
	}
	// Newtons a metre at which the outermost fibre has 0.6 of the yield stress, and at which the middle sags by a
	// 240th of the span: w L^2 / 8 = stress * I / (h / 2), and 5 w L^4 / (384 E I) = L / 240.
	const youngPa = 210e9
	byStress := 8 * 0.6 * x.YieldPa * inertia / (height / 2) / (span * span)
	bySag := 384 * youngPa * inertia / (5 * 240 * span * span * span)
	return min(sh.MaxMassKg, float64(sh.Rails.Count)*min(byStress, bySag)*span/standardGravity)
}
