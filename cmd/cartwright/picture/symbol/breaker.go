package symbol

import "cartwright/cmd/cartwright/picture/scene"

// Breaker is a circuit breaker.
//
// Source: IEC 60617-7 07-13-05, a contact with a cross; IEEE 315 clause 9.4, air circuit breaker up to
// 1500 V and for all direct current, an arc above two contacts.
func Breaker(s Standard) Symbol {
	if s == IEC {
		return Symbol{
			Name: "circuit breaker", Source: "IEC 60617-7, 07-13-05",
			marks: append(leads(11), line(11, 0, -11, -12), line(-15, -4, -7, 4), line(-15, 4, -7, -4)),
		}
	}
	return Symbol{
		Name: "circuit breaker", Source: "IEEE 315, 9.4",
		marks: append(leads(12), ring(-12, 0), ring(12, 0), scene.Arc(scene.Point{Y: 6}, 18, 220, 320, pen())),
	}
}

func ring(x, y float64) scene.Disc {
	return scene.Disc{At: scene.Point{X: x, Y: y}, R: 2.5, Pen: pen(), Fill: scene.Paper}
}
