package optimize

import (
	"math"

	"cartwright/optimize/chassis"
)

// tipsAnyhow reports that every cart tips at the tilt it must stand, whatever is bought: not even the one that
// stands best could stand. It may be false although every cart tips; that is for the search to find out.
func (b *bench) tipsAnyhow() bool {
	side, length := 0.0, 0.0
	for _, body := range b.fixedBodies {
		y, x := b.margins(body)
		side += y
		length += x
	}
	for i := range b.s.Cart.Shelves {
		y, x := b.bestShelf(i)
		side += y
		length += x
	}
	y, x := b.margins(chassis.BackboardBody(b.s, 1))
	side += math.Max(0, y) * b.mostBoardKg()
	length += math.Max(0, x) * b.mostBoardKg()
	if y < 0 || x < 0 {
		least := math.Inf(1) // an inverter hangs there at the least
		for i := range b.supplies {
			least = math.Min(least, float64(b.supplies[i].units)*b.supplies[i].inv.MassKg)
		}
		if !math.IsInf(least, 1) {
			side += math.Min(0, y) * least
			length += math.Min(0, x) * least
		}
	}
	y, x = b.margins(chassis.CasterBody(b.s, 1))
	heaviest := heaviestOf(b.casters)
	side += math.Max(0, y) * heaviest
	length += math.Max(0, x) * heaviest
	const hair = 1e-6 // kg m, against the rounding of sums
	return side < -hair || length < -hair
}

// bestShelf returns the most that the modules on a shelf can add to the balance: nothing, or the shelf full
// of the battery that helps most.
func (b *bench) bestShelf(shelf int) (side, length float64) {
	sh := &b.s.Cart.Shelves[shelf]
	for i := range b.stacks {
		body := chassis.ModuleBody(sh, b.stacks[i].bat)
		body.MassKg = math.Min(body.MassKg*float64(b.stacks[i].caps[shelf]), sh.MaxMassKg)
		y, x := b.margins(body)
		side, length = math.Max(side, y), math.Max(length, x)
	}
	return side, length
}

// mostBoardKg returns more than can hang on the backboard of any cart.
func (b *bench) mostBoardKg() float64 {
	kg := heaviestOf(b.busbars)
	for i := range b.fixed {
		kg += float64(b.fixed[i].count) * heaviestOf(b.fixed[i].options)
	}
	for i := range b.stacks {
		kg += float64(b.stacks[i].most) * heaviestOf(b.stacks[i].options)
	}
	supply := 0.0
	for i := range b.supplies {
		v := &b.supplies[i]
		supply = math.Max(supply, float64(v.units)*(v.inv.MassKg+heaviestOf(v.main))+heaviestOf(v.feeder))
	}
	return kg + supply
}

// heaviestOf returns the mass of the heaviest of some options, 0 of none.
func heaviestOf(options []option) float64 {
	heaviest := 0.0
	for i := range options {
		heaviest = math.Max(heaviest, options[i].kg)
	}
	return heaviest
}
