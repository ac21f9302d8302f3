package symbol

import "cartwright/cmd/cartwright/picture/scene"

// Module is a photovoltaic module, its line to the right.
//
// Source: IEC 60617-6 06-18-06, photovoltaic generator: the box of a generator with its G, a cell below it, and two
// rays that fall on it; IEEE 315 clause 8.6, solar cell: a cell that two rays fall on, in a circle.
func Module(s Standard) Symbol {
	var rays []scene.Mark
	for _, x := range []float64{-19, -10} {
		rays = append(rays, line(x-6, -27, x+3, -18), line(x+3, -18, x-2, -19.5), line(x+3, -18, x+1.5, -23))
	}
	if s == IEC {
		letter := scene.Arc(scene.Point{Y: -7}, 4, 35, 320, pen())
		return Symbol{
			Name: "solar module", Source: "IEC 60617-6, 06-18-06",
			marks: append([]scene.Mark{
				box(14, 14), line(14, 0, Reach, 0), letter, line(3.5, -6, 3.5, -4), line(0.5, -6, 3.5, -6),
				line(-9, 6, -2.5, 6), line(-2.5, 2.5, -2.5, 9.5), line(2.5, -0.5, 2.5, 12.5), line(2.5, 6, 9, 6),
			}, rays...),
		}
	}
	return Symbol{
		Name: "solar module", Source: "IEEE 315, 8.6",
		marks: append([]scene.Mark{
			scene.Disc{R: 14, Pen: pen(), Fill: scene.Paper},
			line(-3, -6, -3, 6), line(3, -10, 3, 10), line(-14, 0, -3, 0), line(3, 0, Reach, 0),
		}, rays...),
	}
}
