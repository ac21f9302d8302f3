package symbol

import "cartwright/cmd/cartwright/picture/scene"

// Module is a photovoltaic module, its line to the right.
//
// Source: IEC 60617-6 06-18-06, photovoltaic generator; IEEE 315 clause 8.6, solar cell: a cell that two rays
// fall on, in a box or a circle.
func Module(s Standard) Symbol {
	cell := []scene.Mark{
		line(-3, -6, -3, 6), line(3, -10, 3, 10), line(-14, 0, -3, 0), line(3, 0, Reach, 0),
	}
	for _, x := range []float64{-19, -10} {
		cell = append(cell, line(x-6, -27, x+3, -18), line(x+3, -18, x-2, -19.5), line(x+3, -18, x+1.5, -23))
	}
	g := Symbol{Name: "solar module", Source: "IEEE 315, 8.6"}
	if s == IEC {
		g.Source = "IEC 60617-6, 06-18-06"
		g.marks = append([]scene.Mark{box(14, 14)}, cell...)
		return g
	}
	g.marks = append([]scene.Mark{scene.Disc{R: 14, Pen: pen(), Fill: scene.Paper}}, cell...)
	return g
}
