package bench

import (
	"math"

	"cartwright/optimize/chassis"
	"cartwright/optimize/energy/array"
)

// tipping says which ways a cart of these parts could tip.
type tipping struct {
	// sideways and lengthways say that the cart could tip that way: the worst there could be does, or mass on the
	// backboard or at the casters makes it worse.
	sideways, lengthways bool
	// HeavyBoard and HeavyCasters say that more mass there helps against tipping a way that the cart could tip, so a
	// heavier option may be the better one.
	HeavyBoard, HeavyCasters bool
}

// Matter reports whether the cart can tip at all.
func (t tipping) Matter() bool { return t.sideways || t.lengthways }

// whatTips adds up the balance of the worst cart there could be: everything that is on every cart, the shelves full of
// whatever tips it most, and the array if it tips it. Mass on the backboard and at the casters, of which the most is
// not known yet, counts as enough to tip the cart if it makes the balance worse at all.
func (b *Bench) whatTips() tipping {
	var side, length float64
	for _, body := range b.FixedBodies {
		y, x := b.Margins(body)
		side += y
		length += x
	}
	for i := range b.Scenario.Cart.Shelves {
		y, x := b.worstShelf(i)
		side += y
		length += x
	}
	y, x := b.worstArray()
	side += y
	length += x
	board, casters := chassis.BackboardBody(b.Scenario, 1), chassis.CasterBody(b.Scenario, 1)
	var t tipping
	boardSide, boardLength := b.Margins(board)
	casterSide, casterLength := b.Margins(casters)
	t.sideways = side < 0 || boardSide < 0 || casterSide < 0
	t.lengthways = length < 0 || boardLength < 0 || casterLength < 0
	t.HeavyBoard = t.sideways && boardSide > 0 || t.lengthways && boardLength > 0
	t.HeavyCasters = t.sideways && casterSide > 0 || t.lengthways && casterLength > 0
	return t
}

// worstShelf returns the least that the modules on a shelf can add to the balance: nothing, or the shelf
// full of the battery that tips the cart most.
func (b *Bench) worstShelf(shelf int) (side, length float64) {
	sh := &b.Scenario.Cart.Shelves[shelf]
	for i := range b.Catalog.Batteries {
		body := chassis.ModuleBody(sh, &b.Catalog.Batteries[i])
		body.MassKg = math.Min(body.MassKg*float64(chassis.ShelfCapacity(sh, &b.Catalog.Batteries[i])), b.ShelfKg[shelf])
		y, x := b.Margins(body)
		side, length = math.Min(side, y), math.Min(length, x)
	}
	return side, length
}

// Margins returns what a body adds to the balance sideways and lengthways, in kg m: negative where it
// would tip by itself at the tilt the cart must stand.
func (b *Bench) Margins(body chassis.Body) (side, length float64) {
	base, tilt := chassis.BaseOf(&b.Scenario.Cart), b.Scenario.Limits.TiltDeg
	return chassis.TiltMargin(body, base.Side, tilt), chassis.TiltMargin(body, base.End, tilt)
}

// worstArray returns the least that solar modules on the cart can add to the balance: nothing, or as many as there is
// room for of those that tip the cart most.
func (b *Bench) worstArray() (side, length float64) {
	s := b.Scenario.Sun
	if s == nil || !s.OnCart {
		return 0, 0
	}
	for i := range b.Catalog.Solar {
		m := &b.Catalog.Solar[i]
		y, x := b.Margins(chassis.ArrayBody(b.Scenario, float64(array.Room(s, m))*m.MassKg))
		side, length = math.Min(side, y), math.Min(length, x)
	}
	return side, length
}
