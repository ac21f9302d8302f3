package optimize

import (
	"math"

	"cartwright/optimize/chassis"
)

// tipping says what of the cart's balance needs watching.
type tipping struct {
	// sideways and lengthways: some body that could be on the cart lowers its balance that way. Where none
	// does, no cart of these parts can tip that way.
	sideways, lengthways bool
	// heavyBoard and heavyCasters: more mass there helps the cart stand some way that it could tip, so that
	// a heavier option may be the better one.
	heavyBoard, heavyCasters bool
}

// matter reports whether the cart can tip at all.
func (t tipping) matter() bool { return t.sideways || t.lengthways }

// whatTips adds up the balance of the worst cart there could be: everything that is on every cart, the
// shelves full of whatever tips it most, and of the rest only what tips it too, as heavy as can be.
func (b *bench) whatTips() tipping {
	var side, length float64
	for _, body := range b.fixedBodies {
		y, x := b.margins(body)
		side += y
		length += x
	}
	for i := range b.s.Cart.Shelves {
		y, x := b.worstShelf(i)
		side += y
		length += x
	}
	board, casters := chassis.BackboardBody(b.s, 1), chassis.CasterBody(b.s, 1)
	var t tipping
	boardSide, boardLength := b.margins(board)
	casterSide, casterLength := b.margins(casters)
	t.sideways = side < 0 || boardSide < 0 || casterSide < 0
	t.lengthways = length < 0 || boardLength < 0 || casterLength < 0
	t.heavyBoard = t.sideways && boardSide > 0 || t.lengthways && boardLength > 0
	t.heavyCasters = t.sideways && casterSide > 0 || t.lengthways && casterLength > 0
	return t
}

// worstShelf returns the least that the modules on a shelf can add to the balance: nothing, or the shelf
// full of the battery that tips the cart most.
func (b *bench) worstShelf(shelf int) (side, length float64) {
	sh := &b.s.Cart.Shelves[shelf]
	for i := range b.c.Batteries {
		body := chassis.ModuleBody(sh, &b.c.Batteries[i])
		body.MassKg = math.Min(body.MassKg*float64(chassis.ShelfCapacity(sh, &b.c.Batteries[i])), sh.MaxMassKg)
		y, x := b.margins(body)
		side, length = math.Min(side, y), math.Min(length, x)
	}
	return side, length
}

// margins returns what a body adds to the balance sideways and lengthways, in kg m: negative where it
// would tip by itself at the tilt the cart must stand.
func (b *bench) margins(body chassis.Body) (side, length float64) {
	base, tilt := chassis.BaseOf(&b.s.Cart), b.s.Limits.TiltDeg
	return chassis.TiltMargin(body, base.Side, tilt), chassis.TiltMargin(body, base.End, tilt)
}

// cannotTip reports whether a core's cart stands however its modules are placed and whatever its
// support weighs.
func (b *bench) cannotTip(c *core) bool {
	var side, length float64
	add := func(y, x float64) {
		side += y
		length += x
	}
	for _, body := range b.fixedBodies {
		add(b.margins(body))
	}
	for j, n := range c.counts {
		if n == 0 {
			continue
		}
		k := &b.stacks[b.groups[c.group][j]]
		y, x := math.Inf(1), math.Inf(1)
		for s := range b.s.Cart.Shelves {
			if k.caps[s] > 0 {
				my, mx := b.margins(chassis.ModuleBody(&b.s.Cart.Shelves[s], k.bat))
				y, x = math.Min(y, my), math.Min(x, mx)
			}
		}
		add(float64(n*k.series)*y, float64(n*k.series)*x)
	}
	least, most := b.boardMass(c)
	y, x := b.margins(chassis.BackboardBody(b.s, 1))
	add(worstMargin(y, x, least, most))
	lightest := leastOf(b.casters, nil, massOf)
	heaviest := -leastOf(b.casters, nil, func(o *option) float64 { return -o.kg })
	y, x = b.margins(chassis.CasterBody(b.s, 1))
	add(worstMargin(y, x, lightest, heaviest))
	return side >= 0 && length >= 0
}

// worstMargin returns what a mass between least and most adds to the balance at the worst, given what
// one kg of it adds.
func worstMargin(side, length, least, most float64) (y, x float64) {
	return math.Min(side*least, side*most), math.Min(length*least, length*most)
}

// boardMass returns the least and the most that can hang on the backboard with a core.
func (b *bench) boardMass(c *core) (least, most float64) {
	v := &b.supplies[c.supply]
	add := func(count int, options []option) {
		if len(options) == 0 {
			return
		}
		least += float64(count) * leastOf(options, nil, massOf)
		most -= float64(count) * leastOf(options, nil, func(o *option) float64 { return -o.kg })
	}
	for j, n := range c.counts {
		if n > 0 {
			add(n, b.stacks[b.groups[c.group][j]].options)
		}
	}
	add(v.units, v.main)
	add(1, v.feeder)
	add(1, b.busbars)
	for _, s := range b.fixed {
		add(s.count, s.options)
	}
	own := float64(v.units) * v.inv.MassKg
	return least + own, most + own
}
