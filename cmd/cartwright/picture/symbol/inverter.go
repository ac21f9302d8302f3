package symbol

import "cartwright/cmd/cartwright/picture/scene"

// InverterHalf is half the width and height of an inverter's box, which is larger than other symbols.
const InverterHalf = 24.0

// Inverter turns direct current at its left into alternating current at its right.
//
// Source: IEC 60617-6 06-14-05, and IEEE 315A the same: a box parted by a diagonal, each half with the sign
// of its kind of current (IEC 60417 5031 and 5032).
func Inverter(s Standard) Symbol {
	g := Symbol{Name: "inverter", Source: "IEC 60617-6, 06-14-05"}
	if s == IEEE {
		g.Source = "IEEE 315A"
	}
	h := InverterHalf
	wave := scene.Path{Pen: pen()}
	for _, half := range []scene.Path{
		scene.Arc(scene.Point{X: 5, Y: 11}, 4, 180, 360, pen()), scene.Arc(scene.Point{X: 13, Y: 11}, 4, 180, 0, pen()),
	} {
		wave.Points = append(wave.Points, half.Points...)
	}
	g.marks = []scene.Mark{
		box(h, h), line(-h, h, h, -h),
		line(-19, -14, -5, -14),
		line(-19, -9, -16, -9), line(-13.5, -9, -10.5, -9), line(-8, -9, -5, -9),
		wave,
	}
	return g
}
