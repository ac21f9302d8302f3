package picture

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"cartwright/cmd/cartwright/picture/harness"
	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/symbol"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Places across the one-line diagram.
const (
	sourceX   = margin + 34 // battery, solar modules
	dcBarX    = 396.0
	inverterX = 668.0
	acBarX    = 250.0
	outletX   = 566.0
)

// wires is a one-line diagram being drawn.
type wires struct {
	*Subject
	s        *scene.Scene
	standard symbol.Standard
	tags     [][]string
	top      float64 // Y below the heading
}

// wire is the pen of cables, bar that of bus bars.
func wire() scene.Pen { return scene.Pen{Ink: scene.Black, Width: 1.5} }
func bar() scene.Pen  { return scene.Pen{Ink: scene.Black, Width: 6} }

// Wiring draws the one-line diagram: one line for all conductors of a path.
func Wiring(q *Subject) *scene.Scene {
	w := newWires(q, "")
	y := w.batterySide()
	y = w.ac(y+10, w.runs("feeder"), w.runs("inlet"), w.runs("branch"))
	w.s.H = y + margin
	return w.s
}

// pageHeight is how high a drawing may be that is printed on a page of its own, A4 or Letter.
const pageHeight = 1000.0

// Sheets draws the one-line diagram on as many sheets as it takes for each to fit on a page.
func Sheets(q *Subject) []*scene.Scene {
	whole := Wiring(q)
	if whole.H <= pageHeight {
		return []*scene.Scene{whole}
	}
	w := newWires(q, ", direct current")
	w.s.H = w.batterySide() + margin
	sheets := []*scene.Scene{w.s}
	const most = 8 // circuits a page
	feeder, inlet, branch := w.runs("feeder"), w.runs("inlet"), w.runs("branch")
	parts := slices.Collect(slices.Chunk(branch, most))
	if len(parts) == 0 {
		parts = [][]int{nil} // what feeds the load centre still has its sheet
	}
	for _, part := range parts {
		w := newWires(q, ", alternating current")
		w.s.H = w.ac(w.top, feeder, inlet, part) + margin
		feeder, inlet = nil, nil
		sheets = append(sheets, w.s)
	}
	return sheets
}

// newWires begins a diagram.
func newWires(q *Subject, part string) *wires {
	w := &wires{Subject: q, standard: symbol.IEC, tags: harness.Tags(q.Scenario, q.Plan)}
	if q.Scenario.Rules == scenarios.NEC {
		w.standard = symbol.IEEE
	}
	w.s = &scene.Scene{W: pageWidth, Title: q.Scenario.Name + ": one-line diagram" + part}
	w.top = heading(w.s, w.s.Title, fmt.Sprintf(
		"Symbols of %s. Lengths are one way. Fault: the current that a short circuit behind the fuse or breaker would draw, and what it can break. "+
			"A string's fuse or breaker stands at the battery's terminal. Tags are those of the cut list.", w.standard))
	return w
}

// batterySide draws the battery's side, all that is on direct current, and returns the Y below.
func (w *wires) batterySide() float64 { return w.dc(w.solar(w.top)) }

// runs returns the places of the plan's runs of the given kinds, in order.
func (w *wires) runs(kinds ...string) []int {
	var list []int
	for i := range w.Plan.Runs {
		if slices.Contains(kinds, w.Plan.Runs[i].Run) {
			list = append(list, i)
		}
	}
	return list
}

// line draws a cable from one X to another.
func (w *wires) line(x0, x1, y float64) {
	w.s.Add(scene.Line(scene.Point{X: x0, Y: y}, scene.Point{X: x1, Y: y}, wire()))
}

// strokes draws a short stroke across a cable for each of its conductors.
func (w *wires) strokes(x, y float64, n int) {
	for i := range min(n, 8) {
		at := x + 4*float64(i)
		w.s.Add(scene.Line(scene.Point{X: at - 3, Y: y + 5}, scene.Point{X: at + 3, Y: y - 5}, thin()))
	}
}

// protect draws what protects a path at a place on its line, and writes below it what it is. It returns the
// Y below what it wrote.
func (w *wires) protect(x, y float64, r *plan.Run, width float64) float64 {
	at := scene.Point{X: x, Y: y}
	d := w.device(r.Device)
	switch {
	case d != nil && d.Type == "fuse":
		symbol.Fuse(w.standard).Put(w.s, at)
	case d != nil || r.OwnDevice || r.DeviceA > 0:
		symbol.Breaker(w.standard).Put(w.s, at)
	default:
		w.line(x-symbol.Reach, x+symbol.Reach, y)
	}
	left := x - symbol.Reach
	lines, bold := w.protection(r)
	at.Y = y + 25
	for _, words := range lines {
		for _, l := range scene.Wrap(words, smallSize, bold, width, 2) {
			w.s.Write(scene.Text{At: scene.Point{X: left, Y: at.Y}, Words: l, Size: smallSize, Bold: bold})
			at.Y += scene.Leading(smallSize)
		}
	}
	return at.Y
}

// protection words what protects a path; bold where nothing does.
func (w *wires) protection(r *plan.Run) (lines []string, bold bool) {
	d := w.device(r.Device)
	fault := "fault " + amps(r.FaultA)
	switch {
	case r.OwnDevice:
		return []string{amps(r.DeviceA), "battery's own", fault + ", breaks " + amps(r.InterruptingA)}, false
	case d == nil && r.DeviceA > 0:
		return []string{amps(r.DeviceA), "inverter's own", fault}, false
	case d == nil && r.Device == "" && r.Run == "bond":
		return nil, false
	case d == nil:
		return []string{"NO FUSE OR BREAKER", fault}, true
	}
	kind := d.Type
	if d.Class != "" && d.Type == "fuse" {
		kind = d.Class + " fuse"
	}
	if r.Devices == 2 {
		kind += ", one at each end"
	}
	return []string{amps(r.DeviceA) + " " + kind, d.ID, fault + ", breaks " + amps(r.InterruptingA)}, false
}

// conductors words what a path is made of.
func (w *wires) conductors(i int) []string {
	r := &w.Plan.Runs[i]
	size := func(id string) string {
		if c := w.cable(id); c != nil {
			return strings.Replace(string(c.Size), "mm2", "mm²", 1) + " " + c.Material
		}
		return id
	}
	words := fmt.Sprintf("%d x %s", max(1, r.Conductors), size(r.Cable))
	if r.Sets > 1 {
		words = fmt.Sprintf("%d sets of %s", r.Sets, words)
	}
	lines := []string{words}
	if r.Cable == "" {
		lines = nil // a bond is a grounding conductor alone
	}
	if r.Ground != "" {
		lines = append(lines, harness.Ground(w.Scenario)+" "+size(r.Ground))
	}
	return lines
}

// label writes above a path its tag and conductors, and below it length and drop, between two Xs. It returns
// the Y below.
func (w *wires) label(i int, x0, below, x1, y float64) float64 {
	r := &w.Plan.Runs[i]
	lines := w.conductors(i)
	at := y - 9 - scene.Leading(smallSize)*float64(max(0, len(lines)-1))
	tag := scene.Cut(harness.Span(w.tags[i]), textSize, true, (x1-x0)/2)
	w.s.Write(scene.Text{At: scene.Point{X: x0, Y: at}, Words: tag, Size: textSize, Bold: true})
	x0 += scene.Width(tag, textSize, true) + 8
	for _, l := range lines {
		w.s.Write(scene.Text{At: scene.Point{X: x0, Y: at}, Words: scene.Cut(l, smallSize, false, x1-x0), Size: smallSize})
		at += scene.Leading(smallSize)
	}
	w.strokes(x1-36, y, r.Conductors*max(1, r.Sets))
	under := []string{w.Units.Cut(r.LengthM)}
	if r.Cable != "" {
		under[0] += ", drop " + number(r.DropPct, 2) + " %"
	}
	if r.Links > 0 {
		under = append(under, fmt.Sprintf("%d links of %s", r.Links, w.Units.Cut(r.LinkM)))
	}
	if r.Conduit != "" {
		under = append(under, "in "+r.Conduit)
	}
	under = append(under, cmp.Or(r.Cable, r.Ground))
	at = y + 17
	for _, l := range under {
		for _, part := range scene.Wrap(l, smallSize, false, x1-below, 2) {
			w.s.Write(scene.Text{At: scene.Point{X: below, Y: at}, Words: part, Size: smallSize})
			at += scene.Leading(smallSize)
		}
	}
	return at
}

// above returns how much room a path's label takes above its line.
func (w *wires) above(i int) float64 {
	return 12 + scene.Leading(smallSize)*float64(max(1, len(w.conductors(i))))
}
