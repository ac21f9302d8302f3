package chassis

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/chassis/frame"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Column is one way to place a kind of module on a shelf: in columns across the depth, each of so many rows and
// layers, all turned the same way.
type Column struct {
	AlongM, DepthM float64 // of a module, as it is turned
	Rows, Layers   int
	Most           int // columns that the shelf's length holds of this kind alone
}

// Modules returns how many modules a column holds.
func (c Column) Modules() int { return c.Rows * c.Layers }

// LengthM returns the length that some modules take along the shelf, a gap after each column included.
//
//	ceil(n / (rows * layers)) * (l + gap)
func (c Column) LengthM(modules int, gapM float64) float64 {
	return float64((modules+c.Modules()-1)/c.Modules()) * (c.AlongM + gapM)
}

// Columns returns the ways in which a module can stand upright on a shelf: its length along the shelf, or its width. A
// way that is never shorter than the other, whatever the number of modules, is left out. None where the module is
// taller than the clear height or fits neither way.
//
//	rows = floor((D + gap) / (w + gap))      layers = min(stack, floor(clear height / height))
func Columns(sh *scenarios.Shelf, b *catalog.Battery) []Column {
	layers := Layers(sh, b)
	if layers == 0 || !(b.LengthM > 0) || !(b.WidthM > 0) {
		return nil
	}
	var ways []Column
	for _, turned := range [][2]float64{{b.LengthM, b.WidthM}, {b.WidthM, b.LengthM}} {
		c := Column{AlongM: turned[0], DepthM: turned[1], Layers: layers,
			Rows: abreast(sh.DepthM, turned[1], sh.GapM), Most: abreast(sh.LengthM, turned[0], sh.GapM)}
		if c.Rows > 0 && c.Most > 0 {
			ways = append(ways, c)
		}
	}
	if len(ways) == 2 {
		if never(ways[1], ways[0], sh.GapM) {
			return ways[:1]
		}
		if never(ways[0], ways[1], sh.GapM) {
			return ways[1:]
		}
	}
	return ways
}

// never reports whether way a is never shorter than way b, whatever the number of modules. It is enough to look at full
// columns of a: with a module fewer a takes as much length, and b no more.
func never(a, b Column, gapM float64) bool {
	for columns := 1; columns <= a.Most; columns++ {
		n := columns * a.Modules()
		if n > b.Most*b.Modules() || !plan.AtLeast(a.LengthM(n, gapM), b.LengthM(n, gapM)) {
			return false
		}
	}
	return true
}

// Layers returns how many modules may be stacked on a shelf; 0 where one is too tall.
func Layers(sh *scenarios.Shelf, b *catalog.Battery) int {
	if !(b.HeightM > 0) {
		return 0
	}
	if fit := plan.Floor(sh.ClearHeightM / b.HeightM); fit < float64(sh.Stack) {
		return int(fit)
	}
	return sh.Stack
}

// ShelfCapacity returns how many modules of one battery fit on a shelf that holds nothing else.
func ShelfCapacity(sh *scenarios.Shelf, b *catalog.Battery) int {
	most := 0
	for _, c := range Columns(sh, b) {
		most = max(most, c.Most*c.Modules())
	}
	return most
}

// TakenM returns the length that some modules of a battery take along a shelf, turned the better way; +Inf where they
// do not fit at all.
func TakenM(sh *scenarios.Shelf, b *catalog.Battery, modules int) float64 {
	if modules == 0 {
		return 0
	}
	least := math.Inf(1)
	for _, c := range Columns(sh, b) {
		least = math.Min(least, c.LengthM(modules, sh.GapM))
	}
	return least
}

// RoomM returns the length in metres that columns, each with its gap, may fill: the last column needs no gap, so the
// shelf's length and one gap.
func RoomM(sh *scenarios.Shelf) float64 { return sh.LengthM + sh.GapM }

// ShelfMaxKg returns the mass in kg a shelf may carry: the lesser of its max_mass and what its rails carry; +Inf where
// neither is given.
func ShelfMaxKg(sh *scenarios.Shelf, c *catalog.Catalog) float64 {
	if sh.Rails == nil {
		return sh.MaxMassKg
	}
	for i := range c.Sections {
		if c.Sections[i].ID == sh.Rails.Section {
			return math.Min(sh.MaxMassKg, frame.RailsCarryKg(&c.Sections[i], sh.Rails.SpanM, sh.Rails.Count))
		}
	}
	return sh.MaxMassKg // Check has reported it
}

// abreast returns how many things of a size fit into a space with a gap between neighbours.
func abreast(spaceM, sizeM, gapM float64) int {
	return int(plan.Floor((spaceM + gapM) / (sizeM + gapM)))
}
