package symbol

import "cartwright/cmd/cartwright/picture/scene"

// Outlet is a socket outlet with a ground, at the end of a line from the left.
//
// Source: IEC 60617-11 11-13-04, socket outlet with protective contact; ANSI Y32.9 (IEEE 315 has no wall
// outlet), receptacle: a circle with two bars.
func Outlet(s Standard) Symbol {
	if s == IEC {
		return Symbol{
			Name: "socket outlet", Source: "IEC 60617-11, 11-13-04",
			marks: []scene.Mark{
				line(-Reach, 0, 0, 0), line(0, -11, 0, 11), scene.Arc(scene.Point{X: 11}, 11, 90, 270, pen()),
			},
		}
	}
	return Symbol{
		Name: "receptacle", Source: "ANSI Y32.9",
		marks: []scene.Mark{
			line(-Reach, 0, -8, 0), scene.Disc{R: 8, Pen: pen(), Fill: scene.Paper},
			line(-3, -12, -3, 12), line(3, -12, 3, 12),
		},
	}
}
