package picture

import (
	"fmt"
	"math"
	"strings"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/harness"
	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/symbol"
)

func (w *wires) sundry(id string) (*catalog.Sundry, bool) {
	for i := range w.Catalog.Sundries {
		if w.Catalog.Sundries[i].ID == id {
			return &w.Catalog.Sundries[i], true
		}
	}
	return nil, false
}

// ac draws the load centre, with what feeds it at its left and its circuits at its right, and returns the Y
// below.
func (w *wires) ac(y float64, feeder, inlet, branch []int) float64 {
	if len(inlet)+len(feeder)+len(branch) == 0 {
		return y
	}
	w.s.Write(scene.Text{At: scene.Point{X: acBarX, Y: y + 10}, Words: w.centreWords(), Size: smallSize, Bold: true, Align: scene.Middle})
	top := y + 16
	left, right := y+14, y+14
	for _, i := range feeder {
		left = w.feed(i, left, "from the inverter", acBarX) + rowGap
	}
	middle := left
	for _, i := range inlet {
		left = w.feed(i, left, "", acBarX-24) + rowGap
	}
	for _, i := range branch {
		right = w.branch(i, right) + rowGap
	}
	low := math.Max(middle, right)
	w.s.Add(scene.Line(scene.Point{X: acBarX, Y: top}, scene.Point{X: acBarX, Y: low}, bar()))
	at := scene.Point{X: acBarX, Y: low}
	symbol.Ground(w.standard).Put(w.s, at)
	w.s.Write(scene.Text{At: scene.Point{X: at.X + 22, Y: at.Y + 16}, Words: fmt.Sprintf(
		"every %s joins the ground bar here, and the frame", harness.Ground(w.Scenario)), Size: smallSize})
	return math.Max(left, low+30)
}

// centreWords names the load centre.
func (w *wires) centreWords() string {
	for _, l := range w.Plan.Bill {
		if x, ok := w.sundry(l.Part); ok && l.Quantity > 0 && x.Role == "load-centre" {
			return scene.Cut("load centre: "+l.Part, smallSize, true, 2*(acBarX-margin))
		}
	}
	return "load centre"
}

// feed draws a path into the load centre, or from the inlet to the charger.
func (w *wires) feed(i int, y float64, from string, end float64) float64 {
	r := &w.Plan.Runs[i]
	y += math.Max(22, w.above(i)+2*scene.Leading(smallSize))
	x := margin + 2*symbol.Reach
	if from == "" {
		symbol.Inlet(w.standard).Put(w.s, scene.Point{X: margin + 14, Y: y})
		w.s.Write(scene.Text{At: scene.Point{X: margin, Y: y - 12}, Words: "inlet", Size: smallSize})
		x += 16
		w.line(margin+14+symbol.Reach, x-symbol.Reach, y)
	} else {
		w.s.Add(scene.Path{Points: []scene.Point{{X: margin, Y: y - 4}, {X: margin + 8, Y: y}, {X: margin, Y: y + 4}}, Closed: true, Fill: scene.Black})
		w.line(margin, x-symbol.Reach, y)
		w.s.Write(scene.Text{At: scene.Point{X: margin, Y: y - w.above(i) - 10}, Words: from, Size: smallSize})
	}
	low := w.protect(x, y, r, 92)
	low = math.Max(low, w.label(i, x+22, x+80, acBarX-12, y))
	w.line(x+symbol.Reach, end, y)
	if from == "" {
		w.s.Add(scene.Path{Points: []scene.Point{{X: end, Y: y - 4}, {X: end + 8, Y: y}, {X: end, Y: y + 4}}, Closed: true, Fill: scene.Black})
		w.s.Write(scene.Text{At: scene.Point{X: margin, Y: low}, Words: "to the inverter's charger", Size: smallSize})
		low += scene.Leading(smallSize)
	}
	return low
}

// branch draws a circuit behind the load centre.
func (w *wires) branch(i int, y float64) float64 {
	r := &w.Plan.Runs[i]
	y += math.Max(22, w.above(i))
	w.line(acBarX, acBarX+24, y)
	low := w.protect(acBarX+44, y, r, 156)
	low = math.Max(low, w.label(i, acBarX+70, acBarX+186, outletX-26, y))
	w.line(acBarX+64, outletX-symbol.Reach, y)
	if w.hasOutlet(r.Name) {
		symbol.Outlet(w.standard).Put(w.s, scene.Point{X: outletX, Y: y})
	} else {
		w.arrow(outletX-symbol.Reach, y, "")
	}
	return math.Max(low, w.served(r.Name, outletX+20, y))
}

func (w *wires) hasOutlet(circuit string) bool {
	for i := range w.Scenario.Circuits {
		if c := &w.Scenario.Circuits[i]; c.Name == circuit {
			return c.Receptacle != nil
		}
	}
	return false
}

// served writes a circuit's name, its voltage and what is connected to it, right of a place.
func (w *wires) served(circuit string, x, y float64) float64 {
	width := w.s.W - margin - x
	at := y - 8
	for _, l := range scene.Wrap(circuit, textSize, true, width, 2) {
		w.s.Write(scene.Text{At: scene.Point{X: x, Y: at}, Words: l, Size: textSize, Bold: true})
		at += scene.Leading(textSize)
	}
	var facts []string
	for i := range w.Scenario.Circuits {
		c := &w.Scenario.Circuits[i]
		if c.Name != circuit {
			continue
		}
		if c.Volts > 0 {
			facts = append(facts, number(c.Volts, 0)+" V")
		}
		if c.Receptacle != nil {
			facts = append(facts, fmt.Sprintf("%d x %s", c.Receptacle.Count, c.Receptacle.Role))
		}
	}
	for _, c := range w.Plan.Circuits {
		if c.Circuit != circuit {
			continue
		}
		if c.Leg == "A" || c.Leg == "B" {
			facts = append(facts, "leg "+c.Leg)
		}
		if len(c.Loads) > 0 {
			facts = append(facts, strings.Join(c.Loads, ", "))
		}
	}
	for _, l := range scene.Wrap(strings.Join(facts, ", "), smallSize, false, width, 6) {
		w.s.Write(scene.Text{At: scene.Point{X: x, Y: at}, Words: l, Size: smallSize})
		at += scene.Leading(smallSize)
	}
	return at
}
