package symbol

import "cartwright/cmd/cartwright/picture/scene"

// Fuse is a fuse.
//
// Source: IEC 60617-7 07-21-01, a box with the line through it; IEEE 315 clause 9.1, the wave.
func Fuse(s Standard) Symbol {
	if s == IEC {
		return Symbol{
			Name: "fuse", Source: "IEC 60617-7, 07-21-01",
			marks: append(leads(13), box(13, 5.5), line(-13, 0, 13, 0)),
		}
	}
	return Symbol{
		Name: "fuse", Source: "IEEE 315, 9.1",
		marks: append(leads(14),
			scene.Arc(scene.Point{X: -7}, 7, 180, 360, pen()), scene.Arc(scene.Point{X: 7}, 7, 180, 0, pen()),
			dot(-14, 0), dot(14, 0)),
	}
}

func dot(x, y float64) scene.Disc {
	return scene.Disc{At: scene.Point{X: x, Y: y}, R: 2, Fill: scene.Black}
}
