package symbol

import "cartwright/cmd/cartwright/picture/scene"

// Shunt is a resistor with taps of its own for the meter.
//
// Source: IEC 60617-4 04-01-10, a box; IEEE 315 clause 2.1, the zigzag.
func Shunt(s Standard) Symbol {
	taps := []scene.Mark{line(-9, 5, -9, 13), line(9, 5, 9, 13)}
	if s == IEC {
		return Symbol{
			Name: "shunt", Source: "IEC 60617-4, 04-01-10",
			marks: append(append(leads(14), box(14, 5)), taps...),
		}
	}
	zigzag := scene.Path{Pen: pen(), Points: []scene.Point{
		{X: -14}, {X: -11.5, Y: -6}, {X: -7, Y: 6}, {X: -2.5, Y: -6}, {X: 2, Y: 6}, {X: 6.5, Y: -6}, {X: 11, Y: 6}, {X: 14},
	}}
	taps = []scene.Mark{line(-16, 0, -16, 13), line(16, 0, 16, 13)}
	return Symbol{
		Name: "shunt", Source: "IEEE 315, 2.1",
		marks: append(append(leads(14), zigzag), taps...),
	}
}
