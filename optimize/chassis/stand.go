package chassis

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Standing is where one module stands on its shelf, in metres: its near lower left corner from that of the shelf, along
// it, across it and upwards, and its size in those directions as it is turned.
type Standing struct {
	Battery                *catalog.Battery
	AlongM, AcrossM, UpM   float64
	LengthM, DepthM, HighM float64
}

// Set is a number of equal modules.
type Set struct {
	Battery *catalog.Battery
	Modules int
}

// Stand places the modules on a shelf: each kind in whole columns across the depth, turned the way that takes the
// least of the shelf's length. Columns stand in the middle of the depth and, as far as there is room, with their weight
// in the middle of the length, as the balance assumes. Modules that do not fit, which no plan has, reach beyond the
// shelf.
//
//	rows = floor((D + gap) / (w + gap))      layers = min(stack, floor(clear height / height))
//	columns = ceil(modules / (rows * layers))
func Stand(sh *scenarios.Shelf, sets []Set) []Standing {
	var list []Standing
	x, kg, moment := 0.0, 0.0, 0.0
	for _, set := range sets {
		b := set.Battery
		if b == nil || set.Modules <= 0 {
			continue
		}
		l, w, rows, columns := columnsOf(b, sh, set.Modules)
		below := min(set.Modules, columns*rows) // modules on the shelf itself; the others are stacked on them
		for n := range set.Modules {
			layer, place := n/(columns*rows), n%(columns*rows)
			column, row := place/rows, place%rows
			full := min(rows, below-column*rows) // places in this column
			deep := float64(full)*(w+sh.GapM) - sh.GapM
			one := Standing{
				Battery: b, AlongM: x + float64(column)*(l+sh.GapM), AcrossM: (sh.DepthM-deep)/2 + float64(row)*(w+sh.GapM),
				UpM: float64(layer) * b.HeightM, LengthM: l, DepthM: w, HighM: b.HeightM,
			}
			kg, moment = kg+b.MassKg, moment+b.MassKg*(one.AlongM+l/2)
			list = append(list, one)
		}
		x += float64(columns) * (l + sh.GapM)
	}
	if kg > 0 {
		shift := math.Max(0, math.Min(sh.LengthM/2-moment/kg, sh.LengthM-(x-sh.GapM)))
		for i := range list {
			list[i].AlongM += shift
		}
	}
	return list
}

// columnsOf returns how a number of modules stand: the length and depth of each as turned, the rows across the depth,
// and the number of columns.
func columnsOf(b *catalog.Battery, sh *scenarios.Shelf, modules int) (l, w float64, rows, columns int) {
	ways := Columns(sh, b)
	if len(ways) == 0 {
		return b.LengthM, b.WidthM, 1, modules
	}
	best := ways[0]
	for _, c := range ways[1:] {
		if !plan.AtLeast(c.LengthM(modules, sh.GapM), best.LengthM(modules, sh.GapM)) {
			best = c
		}
	}
	return best.AlongM, best.DepthM, best.Rows, (modules + best.Modules() - 1) / best.Modules()
}
