package symbol

import "cartwright/cmd/cartwright/picture/scene"

// Ground is the protective ground, hanging below its place.
//
// Source: IEC 60617-2 02-15-03, protective earth, in a circle; IEEE 315 clause 3.9.1.
func Ground(s Standard) Symbol {
	bars := []scene.Mark{line(0, 0, 0, 10), line(-9, 10, 9, 10), line(-6, 14, 6, 14), line(-3, 18, 3, 18)}
	if s == IEC {
		circle := scene.Disc{At: scene.Point{Y: 12}, R: 12.5, Pen: pen(), Fill: scene.Paper}
		return Symbol{Name: "protective earth", Source: "IEC 60617-2, 02-15-03", marks: append([]scene.Mark{circle}, bars...)}
	}
	return Symbol{Name: "ground", Source: "IEEE 315, 3.9.1", marks: bars}
}

// Frame is the bond to the cart's frame, hanging below its place.
//
// Source: IEC 60617-2 02-15-04; IEEE 315 clause 3.9.2, chassis or frame connection.
func Frame(s Standard) Symbol {
	g := Symbol{Name: "frame", Source: "IEEE 315, 3.9.2"}
	if s == IEC {
		g.Source = "IEC 60617-2, 02-15-04"
	}
	g.marks = []scene.Mark{line(0, 0, 0, 10), line(-10, 10, 10, 10), line(-10, 10, -14, 17), line(0, 10, -4, 17), line(10, 10, 6, 17)}
	return g
}
