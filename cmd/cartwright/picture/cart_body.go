package picture

import (
	"fmt"
	"math"
	"slices"

	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/optimize/chassis"
	"cartwright/scenarios"
)

// Sizes that a scenario does not state; what is drawn with them is dashed.
const (
	plankM     = 0.018 // a shelf's thickness
	boardHighM = 0.4   // the board that carries inverter and gear
	boardLongM = 0.6
	boardDeepM = 0.08
)

// frame draws the outline of the frame: posts at the ends of the longest shelf, from the wheels to the
// highest shelf. How the frame is built is not stated, so it is drawn faintly.
func (v *elevation) frame() {
	c := &v.Scenario.Cart
	top, half := 0.0, 0.0
	for i := range c.Shelves {
		sh := &c.Shelves[i]
		top = math.Max(top, sh.ElevationM)
		half = math.Max(half, v.reach(sh)/2)
	}
	top = math.Max(top, c.Backboard.ElevationM)
	low := v.wheelM()
	if top > low {
		for _, x := range []float64{-half, half} {
			v.s.Add(scene.Line(v.at(x, low), v.at(x, top), post()))
		}
		v.s.Add(scene.Line(v.at(-half, low), v.at(half, low), post()))
	}
	kg, height := v.Subject.frame()
	words := fmt.Sprintf("frame, %s, its weight %s above the floor; only its outline is known", v.Units.Mass(kg), v.Units.Length(height))
	if v.side {
		mark(v.s, v.at(half, (low+top)/2), v.keys.add(words))
	}
}

// reach returns how far a shelf reaches in this view: its length from the side, its depth from the end.
func (v *elevation) reach(sh *scenarios.Shelf) float64 {
	if v.side {
		return sh.LengthM
	}
	return sh.DepthM
}

// shelves draws each shelf with the modules on it, and how high they may be.
func (v *elevation) shelves() {
	c := &v.Scenario.Cart
	for i := range c.Shelves {
		sh := &c.Shelves[i]
		w := v.reach(sh)
		v.s.Add(scene.Rect(v.box(-w/2, sh.ElevationM-plankM, w, plankM), thin(), scene.Shade),
			scene.Line(v.at(-w/2, sh.ElevationM+sh.ClearHeightM), v.at(w/2, sh.ElevationM+sh.ClearHeightM), dotted()))
		v.modules(sh, v.standing(sh))
	}
}

// standing returns the modules that stand on a shelf.
func (q *Subject) standing(sh *scenarios.Shelf) []chassis.Standing {
	var sets []chassis.Set
	for _, s := range q.Plan.Shelves {
		for _, m := range s.Batteries {
			if s.Shelf == sh.Name {
				sets = append(sets, chassis.Set{Battery: q.battery(m.Part), Modules: m.Modules})
			}
		}
	}
	return chassis.Stand(sh, sets)
}

// modules draws those modules of a shelf that are seen, each with the letter of its kind.
func (v *elevation) modules(sh *scenarios.Shelf, all []chassis.Standing) {
	var seen []scene.Box
	for _, m := range all {
		x, w := m.AlongM-sh.LengthM/2, m.LengthM
		if !v.side {
			x, w = m.AcrossM-sh.DepthM/2, m.DepthM
		}
		b := v.box(x, sh.ElevationM+m.UpM, w, m.HighM)
		if slices.ContainsFunc(seen, b.Grow(-0.01).Overlaps) {
			continue // another stands before it
		}
		seen = append(seen, b)
		drawModule(v.s, v.keys, m.Battery.ID, b)
	}
}

// drawModule draws a module: a box with the hatching and the letter of its kind.
func drawModule(s *scene.Scene, k *keys, part string, b scene.Box) {
	kind := k.battery(part)
	inks := []scene.Ink{scene.Blue, scene.Orange, scene.Green, scene.Purple, scene.Vermilion}
	pen := scene.Pen{Ink: inks[kind%len(inks)], Width: 1}
	s.Add(scene.Rect(b, outline(), scene.Paper))
	s.Add(scene.Hatch(b, scene.HatchingOf(kind+1), pen)...)
	// Low in a corner: the marks of weights are mostly in the middle.
	t := scene.Text{At: scene.Point{X: b.X + 5, Y: b.Bottom() - 6}, Words: letter(kind), Size: textSize, Bold: true, Clear: true}
	if box := t.Box(); s.Free(box) && b.Holds(box) {
		s.Write(t)
	}
}

// board draws the backboard: seen as a surface from the side, and on its edge from the end.
func (v *elevation) board() {
	c := &v.Scenario.Cart.Backboard
	w, x := boardLongM, 0.0
	if !v.side {
		w, x = boardDeepM, c.OffsetM
	}
	b := v.box(x-w/2, c.ElevationM-boardHighM/2, w, boardHighM)
	v.s.Add(scene.Rect(b, dashed(), scene.None))
	core := v.Plan.Core.Inverter
	words := fmt.Sprintf("board with %d x %s, %s; bus bars, fuses, breakers, load centre, cables: %s, its middle %s above the floor and %s to one side",
		core.Units, core.Part, v.name(core.Part), v.Units.Mass(v.boardKg()), v.Units.Length(c.ElevationM), v.Units.Length(math.Abs(c.OffsetM)))
	if v.side {
		n := max(1, core.Units)
		each := b.W / float64(n)
		for i := range core.Units {
			unit := scene.Box{X: b.X + (float64(i)+0.2)*each, Y: b.Y + b.H*0.2, W: each * 0.6, H: b.H * 0.5}
			v.s.Add(scene.Rect(unit, dashed(), scene.None))
		}
	}
	// At its corner: in its middle there may be the centre of gravity, or what hangs on it.
	mark(v.s, scene.Point{X: b.X, Y: b.Y}, v.keys.add(words))
}

// items draws what else is on the cart, each as its weight where it is.
func (v *elevation) items() {
	for _, d := range v.Scenario.Cart.DeckItems {
		x := 0.0
		if !v.side {
			x = d.OffsetM
		}
		p := v.at(x, d.HeightM)
		v.s.Add(scene.Path{Points: []scene.Point{{X: p.X, Y: p.Y - 5}, {X: p.X + 5, Y: p.Y}, {X: p.X, Y: p.Y + 5}, {X: p.X - 5, Y: p.Y}},
			Closed: true, Pen: outline(), Fill: scene.Paper})
		mark(v.s, scene.Point{X: p.X + 16, Y: p.Y}, v.keys.add(fmt.Sprintf("%s, %s, its weight %s above the floor",
			d.Name, v.Units.Mass(d.MassKg), v.Units.Length(d.HeightM))))
	}
}

// roof draws the array where it is on the cart.
func (v *elevation) roof() {
	l, w, h, ok := v.array()
	if !ok {
		return
	}
	span, most := l, 0.0
	if most, _, _ = v.extent(); !v.side {
		span = w
		_, most, _ = v.extent()
	}
	drawn := math.Min(span, most)
	v.s.Add(scene.Rect(v.box(-drawn/2, h, drawn, 0.035), outline(), scene.Shade))
	if drawn < span { // broken off: two strokes at each end
		for _, x := range []float64{-drawn / 2, drawn / 2} {
			end := v.at(x, h+0.0175)
			for _, by := range []float64{-3, 3} {
				v.s.Add(scene.Line(scene.Point{X: end.X + by - 3, Y: end.Y + 8}, scene.Point{X: end.X + by + 3, Y: end.Y - 8}, outline()))
			}
		}
	}
	if v.side {
		sun := v.Plan.Core.Solar[0]
		n := sun.Series * sun.Parallel * sun.Inputs
		mark(v.s, v.at(-drawn/4, h+0.02), v.keys.add(fmt.Sprintf("%d x %s, %s, %s together, %s above the floor, side by side %s long and %s wide; tie them down against wind",
			n, sun.Part, v.name(sun.Part), v.Units.Mass(v.arrayKg()), v.Units.Length(h), v.Units.Length(l), v.Units.Length(w))))
	}
}

// array returns the length, width and height of an array on the cart, and whether there is one. Its modules lie
// side by side: in the room that is stated as many along it as fit, the better way round; else as nearly in a
// square as they go.
func (q *Subject) array() (lengthM, widthM, heightM float64, ok bool) {
	s := q.Scenario.Sun
	if s == nil || !s.OnCart || len(q.Plan.Core.Solar) == 0 {
		return 0, 0, 0, false
	}
	a := q.Plan.Core.Solar[0]
	n := a.Series * a.Parallel * a.Inputs
	for i := range q.Catalog.Solar {
		m := &q.Catalog.Solar[i]
		if m.ID != a.Part || n == 0 {
			continue
		}
		l, w := m.LengthM, m.WidthM
		if !(l > 0 && w > 0) {
			l, w = 1.7, 1 // not stated: a common module
		}
		along := int(math.Ceil(math.Sqrt(float64(n))))
		if room := s.Room; room != nil {
			if fit(room, w, l) > fit(room, l, w) {
				l, w = w, l
			}
			along = max(1, min(n, int(room.LengthM/l*(1+1e-9))))
		}
		rows := (n + along - 1) / along
		return float64(along) * l, float64(rows) * w, s.HeightM, true
	}
	return 0, 0, 0, false
}

// fit returns how many modules of a length and width lie in a room that way round.
func fit(room *scenarios.Room, l, w float64) int {
	const exact = 1 + 1e-9
	return int(room.LengthM/l*exact) * int(room.WidthM/w*exact)
}
