package picture

import (
	"fmt"
	"math"

	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/symbol"
)

// onBus is a part that all current between the strings and the rest of the bus passes.
type onBus struct {
	symbol symbol.Symbol
	words  string
}

// link returns the battery switch and the shunt of a plan, in the order in which the current of the strings meets
// them; none where the plan has neither.
func (w *wires) link() []onBus {
	var list []onBus
	for _, role := range []string{"disconnect", "shunt"} {
		for _, l := range w.Plan.Bill {
			x, ok := w.sundry(l.Part)
			if !ok || l.Quantity == 0 || x.Role != role {
				continue
			}
			one := onBus{symbol.Disconnect(w.standard), "in the positive"}
			if role == "shunt" {
				one = onBus{symbol.Shunt(w.standard), "in the negative"}
			}
			one.words = fmt.Sprintf("%s: %s, %s", l.Part, x.Name, one.words)
			list = append(list, one)
		}
	}
	return list
}

// Places of the link between strings and bus bars.
const (
	linkApart = 24.0 // from the line that the strings join in to the bus bars
	linkX     = 150.0
)

// joinX returns where the strings' lines end: at the bus bars, or before what is between.
func (w *wires) joinX() float64 {
	if len(w.link()) == 0 {
		return dcBarX
	}
	return dcBarX - linkApart
}

// drawLink draws what is between the strings and the bus bars, from where the strings join: to the left and back,
// until it meets the bars. Top is where the first string joins, y is below the strings. It returns the Y below.
func (w *wires) drawLink(top, y float64) float64 {
	join, parts := w.joinX(), w.link()
	const left = margin + 16
	y += 18
	w.s.Add(scene.Line(scene.Point{X: join, Y: top}, scene.Point{X: join, Y: y}, wire()))
	legs := len(parts) + len(parts)%2 // the last one runs to the right
	for k := range legs {
		far := join // the end of this leg at the right
		if k == legs-1 {
			far = dcBarX
		}
		low := y
		if k < len(parts) {
			w.line(left, linkX-symbol.Reach, y)
			parts[k].symbol.Put(w.s, scene.Point{X: linkX, Y: y})
			w.line(linkX+symbol.Reach, far, y)
			low = y + 18
			for _, l := range scene.Wrap(parts[k].words, smallSize, false, join-linkX-34, 3) {
				w.s.Write(scene.Text{At: scene.Point{X: linkX + 26, Y: low}, Words: l, Size: smallSize})
				low += scene.Leading(smallSize)
			}
		} else {
			w.line(left, far, y)
		}
		if k == legs-1 {
			w.s.Write(scene.Text{At: scene.Point{X: left, Y: math.Max(low, y+18)}, Words: "The links at switch and shunt are not in the cut list.", Size: smallSize})
			return math.Max(low, y+18) + scene.Leading(smallSize)
		}
		turn := left
		if k%2 == 1 {
			turn = join
		}
		next := low + 6
		w.s.Add(scene.Line(scene.Point{X: turn, Y: y}, scene.Point{X: turn, Y: next}, wire()))
		y = next
	}
	return y
}
