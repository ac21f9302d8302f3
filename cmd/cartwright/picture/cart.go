package picture

import (
	"math"

	"cartwright/cmd/cartwright/picture/scene"
)

// The pens of the drawing of a cart.
func outline() scene.Pen { return scene.Pen{Ink: scene.Black, Width: 1.4} }
func thin() scene.Pen    { return scene.Pen{Ink: scene.Black, Width: 0.8} }
func faint() scene.Pen   { return scene.Pen{Ink: scene.Grey, Width: 0.7} }
func dashed() scene.Pen  { return scene.Pen{Ink: scene.Grey, Width: 1, Dash: 4} }
func dotted() scene.Pen  { return scene.Pen{Ink: scene.Grey, Width: 1, Dash: 1.5} }
func post() scene.Pen    { return scene.Pen{Ink: scene.Grid, Width: 6} }

// elevation is one view of the cart: from the side, along its length, or from an end, across it.
type elevation struct {
	*Subject
	s     *scene.Scene
	scale float64     // units a metre
	zero  scene.Point // the point on the floor below the middle of the cart
	side  bool        // from the side
	keys  *keys
}

// at returns where a point is drawn that is so far from the middle of the cart and so high above the floor.
func (v *elevation) at(xM, zM float64) scene.Point {
	return scene.Point{X: v.zero.X + xM*v.scale, Y: v.zero.Y - zM*v.scale}
}

// box returns where a rectangle is drawn, by its left and lower side.
func (v *elevation) box(xM, zM, wM, hM float64) scene.Box {
	p := v.at(xM, zM+hM)
	return scene.Box{X: p.X, Y: p.Y, W: wM * v.scale, H: hM * v.scale}
}

// Cart draws the cart from the side and from the end, and each shelf from above, all to one scale.
func Cart(q *Subject) *scene.Scene {
	s := &scene.Scene{W: pageWidth, Title: q.Scenario.Name + ": the cart, from the side, from the end and from above"}
	y := heading(s, q.Scenario.Name+": the cart", "To scale. Dashed: parts whose size is not stated. Grey: the frame's outline. Dotted: how high a shelf is clear.")
	length, width, height := q.extent()
	// Room beside the views for the heights of shelves, between them and at the right for what wheels carry.
	const column, between, right = 96.0, 56.0, 24.0
	scale := math.Min((pageWidth-2*margin-column-between-right)/(length+width), 380/height)
	k := newKeys(q)
	floor := y + 18 + height*scale
	side := &elevation{Subject: q, s: s, scale: scale, side: true, keys: k,
		zero: scene.Point{X: margin + column + length*scale/2, Y: floor}}
	end := &elevation{Subject: q, s: s, scale: scale, keys: k,
		zero: scene.Point{X: margin + column + length*scale + between + width*scale/2, Y: floor}}
	s.Write(scene.Text{At: scene.Point{X: side.zero.X, Y: y + 8}, Words: "from the side", Size: textSize, Bold: true, Align: scene.Middle},
		scene.Text{At: scene.Point{X: end.zero.X, Y: y + 8}, Words: "from the end", Size: textSize, Bold: true, Align: scene.Middle})
	side.heights(margin+column-10, y+14)
	low := floor
	for _, v := range []*elevation{side, end} {
		v.frame()
		v.board()
		v.shelves()
		v.roof()
		v.items()
		low = math.Max(low, v.ground())
		v.balance()
	}
	low = q.fromAbove(s, k, scale, low+26)
	s.H = k.list(s, low+20) + margin
	return s
}

// extent returns the length, width and height that the drawing has to hold, in metres.
func (q *Subject) extent() (length, width, height float64) {
	c := &q.Scenario.Cart
	wheel := q.wheelM()
	length, width = c.WheelbaseM+wheel, c.TrackM+wheel/2
	for i := range c.Shelves {
		sh := &c.Shelves[i]
		length, width = math.Max(length, sh.LengthM), math.Max(width, sh.DepthM)
		height = math.Max(height, sh.ElevationM+sh.ClearHeightM)
	}
	height = math.Max(height, c.Backboard.ElevationM+boardHighM/2)
	height = math.Max(height, q.Plan.Balance.CGHeightMM/1000)
	for _, d := range c.DeckItems {
		height = math.Max(height, d.HeightM+0.05)
		width = math.Max(width, 2*math.Abs(d.OffsetM)+0.1)
	}
	width = math.Max(width, 2*math.Abs(c.Backboard.OffsetM)+0.1)
	if l, w, h, ok := q.array(); ok {
		// A large array is not drawn to its ends: the cart would be too small to see.
		length, width, height = math.Max(length, math.Min(l, mostOver*length)), math.Max(width, math.Min(w, mostOver*width)), math.Max(height, h+0.05)
	}
	return length, width, height
}

// mostOver is how far an array is drawn at the most, in lengths of the cart under it.
const mostOver = 1.5

// wheelM returns the wheels' diameter; a tenth of a metre where the catalogue does not state it.
func (q *Subject) wheelM() float64 {
	if set := q.casters(); set != nil && set.WheelM > 0 {
		return set.WheelM
	}
	return 0.1
}

// heading writes a drawing's title and what to know when reading it, and returns the Y below.
func heading(s *scene.Scene, title, note string) float64 {
	y := margin + 12.0
	s.Write(scene.Text{At: scene.Point{X: margin, Y: y}, Words: scene.Cut(title, titleSize, true, s.W-2*margin), Size: titleSize, Bold: true})
	for _, line := range scene.Wrap(note, smallSize, false, s.W-2*margin, 3) {
		y += scene.Leading(smallSize) + 2
		s.Write(scene.Text{At: scene.Point{X: margin, Y: y}, Words: line, Size: smallSize, Ink: scene.Grey})
	}
	return y + 14
}

// heights writes how high each shelf stands, beside the side view and below top.
func (v *elevation) heights(x, top float64) {
	var notes []scene.Note
	c := &v.Scenario.Cart
	for i := range c.Shelves {
		sh := &c.Shelves[i]
		lines := append(scene.Wrap(sh.Name, smallSize, false, x-margin-6, 2), v.Units.Length(sh.ElevationM)+" up")
		notes = append(notes, scene.Note{Of: v.at(-sh.LengthM/2, sh.ElevationM), Lines: lines})
	}
	v.s.Note(scene.Column{X: x, Top: top, Bottom: v.zero.Y, Size: smallSize, Pen: faint()}, notes)
}
