// Package symbol draws the graphic symbols of electrical diagrams, one file a symbol: those of IEC 60617
// and those of IEEE 315. Numbers of symbols and clauses stand beside each; they and the shapes are from
// memory, for neither standard was at hand.
//
// A symbol lies along a line that runs from left to right through its middle: it begins Reach left of its
// place and ends Reach right of it, so that a cable drawn between symbols joins them.
package symbol

import (
	"cartwright/cmd/cartwright/picture/scene"
)

// Standard says whose symbols are drawn.
type Standard string

// The two standards.
const (
	IEC  Standard = "IEC 60617"
	IEEE Standard = "IEEE 315"
)

// Reach is how far a symbol's line goes to each side of its place.
const Reach = 20.0

// pen draws a symbol.
func pen() scene.Pen { return scene.Pen{Ink: scene.Black, Width: 1.5} }

// A Symbol is ready to be put into a scene.
type Symbol struct {
	Name   string // "fuse"
	Source string // standard and number
	marks  []scene.Mark
}

// Put draws the symbol with its middle at a place.
func (g Symbol) Put(s *scene.Scene, at scene.Point) {
	s.Put(&scene.Scene{Paths: g.marks}, at)
}

// All returns every symbol of a standard, for legends and tests.
func All(s Standard) []Symbol {
	return []Symbol{
		Battery(s), Fuse(s), Breaker(s), Disconnect(s), Shunt(s), Inverter(s), Outlet(s), Inlet(s), Module(s), Ground(s), Frame(s),
	}
}

func line(x0, y0, x1, y1 float64) scene.Path {
	return scene.Line(scene.Point{X: x0, Y: y0}, scene.Point{X: x1, Y: y1}, pen())
}

// leads returns the line to the left and to the right of a body that is so wide.
func leads(half float64) []scene.Mark {
	return []scene.Mark{line(-Reach, 0, -half, 0), line(half, 0, Reach, 0)}
}

// box returns an upright rectangle around the middle, filled with paper.
func box(halfW, halfH float64) scene.Path {
	return scene.Rect(scene.Box{X: -halfW, Y: -halfH, W: 2 * halfW, H: 2 * halfH}, pen(), scene.Paper)
}
