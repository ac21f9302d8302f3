package chassis

import (
	"math"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// fitTolM in metres guards sizes that are the same in two units against rounding: 20 in is 508 mm, two
// modules of 10 in fill it. A micrometre is no room a person could measure.
const fitTolM = 1e-6

// ShelfCapacity returns how many modules of one battery stand on a shelf, upright, in rows and columns
// all turned the same way, with the shelf's gap between them: the better of the two ways to turn them.
// 0 where the module is taller than the shelf's clear height, or has no length or width.
//
//	floor((L+gap)/(l+gap)) * floor((D+gap)/(w+gap))      plane geometry
//
// Turning some modules one way and some the other may place more now and then; not looked for here, as
// such shelves are hard to wire.
func ShelfCapacity(sh *scenarios.Shelf, b *catalog.Battery) int {
	if b.HeightM > sh.ClearHeightM+fitTolM || !(b.LengthM > 0) || !(b.WidthM > 0) {
		return 0
	}
	along := abreast(sh.LengthM, b.LengthM, sh.GapM) * abreast(sh.DepthM, b.WidthM, sh.GapM)
	across := abreast(sh.LengthM, b.WidthM, sh.GapM) * abreast(sh.DepthM, b.LengthM, sh.GapM)
	return max(along, across)
}

// abreast returns how many things of a size fit into a space with a gap between neighbours.
func abreast(spaceM, sizeM, gapM float64) int {
	return int(math.Floor((spaceM + gapM + fitTolM) / (sizeM + gapM)))
}
