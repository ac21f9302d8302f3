package symbol

import "cartwright/cmd/cartwright/picture/scene"

// Battery is a battery of cells; the long line is positive and faces right.
//
// Source: IEC 60617-6 06-15-01; IEEE 315 clause 2.5, multicell battery. Both the same.
func Battery(s Standard) Symbol {
	g := Symbol{Name: "battery", Source: "IEC 60617-6, 06-15-01"}
	if s == IEEE {
		g.Source = "IEEE 315, 2.5"
	}
	short, long := 6.0, 13.0
	g.marks = []scene.Mark{
		line(-13, -short, -13, short), line(-7, -long, -7, long),
		scene.Line(scene.Point{X: -7}, scene.Point{X: 5}, scene.Pen{Ink: pen().Ink, Width: pen().Width, Dash: 3}),
		line(5, -short, 5, short), line(11, -long, 11, long),
		line(11, 0, Reach, 0), line(-Reach, 0, -13, 0),
		line(15, -9, 21, -9), line(18, -12, 18, -6), // the plus
	}
	return g
}
