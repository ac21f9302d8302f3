package symbol

import "cartwright/cmd/cartwright/picture/scene"

// Inlet is a plug: the contacts that the supply's cord is put over, at the beginning of a line to the right.
//
// Source: IEC 60617-3 03-03-03, male contact, a filled bar; IEEE 315 clause 5.3, male contact, an arrow.
func Inlet(s Standard) Symbol {
	if s == IEC {
		bar := scene.Rect(scene.Box{X: -14, Y: -3, W: 18, H: 6}, pen(), scene.Black)
		return Symbol{Name: "plug", Source: "IEC 60617-3, 03-03-03", marks: []scene.Mark{bar, line(4, 0, Reach, 0)}}
	}
	return Symbol{
		Name: "plug", Source: "IEEE 315, 5.3",
		marks: []scene.Mark{line(-14, 0, Reach, 0), line(-14, 0, -6, -6), line(-14, 0, -6, 6)},
	}
}
