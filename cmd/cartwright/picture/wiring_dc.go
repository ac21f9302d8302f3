package picture

import (
	"fmt"
	"math"

	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/symbol"
)

// rowGap separates one path's texts from the next.
const rowGap = 4.0

// solar draws the runs of the array, from the modules to the inverter's solar input, and returns the Y below.
func (w *wires) solar(y float64) float64 {
	for _, i := range w.runs("solar") {
		r := &w.Plan.Runs[i]
		y += math.Max(34, w.above(i))
		symbol.Module(w.standard).Put(w.s, scene.Point{X: sourceX, Y: y})
		w.line(sourceX+symbol.Reach, 130, y)
		low := w.sourceWords(y+26, w.arrayWords(r.Count), 88)
		low = math.Max(low, w.protect(150, y, r, 108))
		low = math.Max(low, w.label(i, 176, 246, dcBarX+90, y))
		w.line(170, dcBarX+130, y)
		w.arrow(dcBarX+130, y, "to the inverter's solar input")
		y = low + rowGap
	}
	return y
}

// arrayWords says what modules feed one input.
func (w *wires) arrayWords(inputs int) string {
	if len(w.Plan.Core.Solar) == 0 {
		return ""
	}
	a := w.Plan.Core.Solar[0]
	words := fmt.Sprintf("%d x %s in series", a.Series, a.Part)
	if a.Parallel > 1 {
		words = fmt.Sprintf("%d strings, each %s", a.Parallel, words)
	}
	if inputs > 1 {
		words += fmt.Sprintf(", on each of %d inputs", inputs)
	}
	return words
}

// sourceWords writes what a source is, below its symbol.
func (w *wires) sourceWords(y float64, words string, width float64) float64 {
	for _, l := range scene.Wrap(words, smallSize, false, width, 6) {
		w.s.Write(scene.Text{At: scene.Point{X: margin, Y: y}, Words: l, Size: smallSize})
		y += scene.Leading(smallSize)
	}
	return y
}

// arrow ends a line that goes on elsewhere, and says where.
func (w *wires) arrow(x, y float64, words string) {
	w.s.Add(scene.Path{Points: []scene.Point{{X: x, Y: y - 4}, {X: x + 8, Y: y}, {X: x, Y: y + 4}}, Closed: true, Fill: scene.Black})
	at := y - 4
	for _, l := range scene.Wrap(words, smallSize, false, w.s.W-margin-x-14, 2) {
		at += scene.Leading(smallSize)
		w.s.Write(scene.Text{At: scene.Point{X: x + 14, Y: at - scene.Leading(smallSize)/2}, Words: l, Size: smallSize})
	}
}

// dc draws the bus bars, with the strings at their left and at their right the inverters and what else hangs
// on the bus, and returns the Y below.
func (w *wires) dc(y float64) float64 {
	top := y + 16
	w.s.Write(scene.Text{At: scene.Point{X: dcBarX, Y: y + 10}, Words: w.busWords(), Size: smallSize, Bold: true, Align: scene.Middle})
	y += 14
	left := y
	joined := math.Inf(1) // where the first string joins the others
	for _, i := range w.runs("string") {
		joined = math.Min(joined, left+w.room(i))
		left = w.string(i, left) + rowGap
	}
	if w.joinX() < dcBarX {
		left = w.drawLink(math.Min(joined, left), left)
	}
	right := y
	for _, i := range w.runs("main") {
		right = w.main(i, right) + rowGap
	}
	for _, i := range w.runs("dc") {
		right = w.direct(i, right) + rowGap
	}
	low := math.Max(left, right)
	for _, i := range w.runs("bond") {
		low = w.bond(i, low)
	}
	w.s.Add(scene.Line(scene.Point{X: dcBarX, Y: top}, scene.Point{X: dcBarX, Y: low}, bar()))
	return low + rowGap
}

// busWords names the bus bars.
func (w *wires) busWords() string {
	for _, l := range w.Plan.Bill {
		if l.Kind == "busbar" && l.Quantity > 0 {
			return scene.Cut(fmt.Sprintf("DC bus bars, + and -: %s, %s V", l.Part, number(w.Scenario.Bus.NominalV, 1)), smallSize, true, w.s.W-2*margin)
		}
	}
	return fmt.Sprintf("DC bus bars, + and -, %s V", number(w.Scenario.Bus.NominalV, 1))
}

// string draws the path of strings that are wired alike, from battery to bus bar.
func (w *wires) string(i int, y float64) float64 {
	r := &w.Plan.Runs[i]
	y += w.room(i)
	symbol.Battery(w.standard).Put(w.s, scene.Point{X: sourceX, Y: y})
	w.line(sourceX+symbol.Reach, 130, y)
	words := r.Battery
	for _, b := range w.Plan.Core.Batteries {
		if b.Part == r.Battery && b.Series > 1 {
			words = fmt.Sprintf("%d in series: %s", b.Series, words)
		}
	}
	if r.Count > 1 {
		words = fmt.Sprintf("%d strings alike, each %s", r.Count, words)
	}
	low := w.sourceWords(y+28, words, 88)
	low = math.Max(low, w.protect(150, y, r, 108))
	join := w.joinX()
	end := join - 10
	if r.Devices == 2 {
		end = join - 52
	}
	low = math.Max(low, w.label(i, 176, 246, end, y))
	w.line(170, join, y)
	if r.Devices == 2 {
		w.second(join-28, y, r.Device)
	}
	return low
}

// room returns how far below the path before it a path's line lies.
func (w *wires) room(i int) float64 { return math.Max(22, w.above(i)) }

// second draws the device at a string's other end.
func (w *wires) second(x, y float64, device string) {
	at := scene.Point{X: x, Y: y}
	w.s.Add(scene.Rect(scene.Box{X: x - symbol.Reach, Y: y - 12, W: 2 * symbol.Reach, H: 24}, scene.Pen{}, scene.Paper))
	if d := w.device(device); d != nil && d.Type == "fuse" {
		symbol.Fuse(w.standard).Put(w.s, at)
		return
	}
	symbol.Breaker(w.standard).Put(w.s, at)
}

// main draws the path from bus bar to inverter.
func (w *wires) main(i int, y float64) float64 {
	r := &w.Plan.Runs[i]
	y += math.Max(symbol.InverterHalf+6, w.above(i))
	w.line(dcBarX, 420, y)
	low := w.protect(440, y, r, 96)
	low = math.Max(low, w.label(i, 466, 524, inverterX-symbol.InverterHalf-6, y))
	w.line(460, inverterX-symbol.InverterHalf, y)
	symbol.Inverter(w.standard).Put(w.s, scene.Point{X: inverterX, Y: y})
	core := w.Plan.Core.Inverter
	words := core.Part
	if r.Count > 1 {
		words = fmt.Sprintf("%d x %s, side by side", r.Count, words)
	}
	at := y + symbol.InverterHalf + 18
	if feeders := w.runs("feeder"); len(feeders) > 0 {
		w.s.Add(scene.Line(scene.Point{X: inverterX, Y: y + symbol.InverterHalf}, scene.Point{X: inverterX, Y: at - 8}, wire()),
			scene.Path{Points: []scene.Point{{X: inverterX - 4, Y: at - 8}, {X: inverterX, Y: at}, {X: inverterX + 4, Y: at - 8}}, Closed: true, Fill: scene.Black})
		w.s.Write(scene.Text{At: scene.Point{X: inverterX + 8, Y: at}, Words: w.tags[feeders[0]][0], Size: smallSize, Bold: true})
	}
	low = math.Max(low, at+scene.Leading(smallSize)+2)
	for _, l := range scene.Wrap(words+": "+w.name(core.Part), smallSize, false, 180, 4) {
		w.s.Write(scene.Text{At: scene.Point{X: w.s.W - margin, Y: low}, Words: l, Size: smallSize, Align: scene.End})
		low += scene.Leading(smallSize)
	}
	return low
}

// direct draws a circuit that is fed from the bus bars.
func (w *wires) direct(i int, y float64) float64 {
	r := &w.Plan.Runs[i]
	y += math.Max(22, w.above(i))
	w.line(dcBarX, 420, y)
	low := w.protect(440, y, r, 96)
	low = math.Max(low, w.label(i, 466, 522, 620, y))
	w.line(460, 622, y)
	w.arrow(622, y, "")
	return math.Max(low, w.served(r.Name, 636, y))
}

// bond draws the conductor from the bus to the frame.
func (w *wires) bond(i int, y float64) float64 {
	y += math.Max(22, w.above(i))
	low := w.label(i, 466, 466, 620, y)
	w.line(dcBarX, 640, y)
	symbol.Frame(w.standard).Put(w.s, scene.Point{X: 640, Y: y})
	w.s.Write(scene.Text{At: scene.Point{X: 662, Y: y + 14}, Words: "frame", Size: smallSize})
	return math.Max(low, y+24)
}
