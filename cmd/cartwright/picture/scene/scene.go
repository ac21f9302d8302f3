package scene

import (
	"math"
	"slices"
)

// Point is a place in the plane.
type Point struct{ X, Y float64 }

// Box is an upright rectangle; X and Y are its upper left corner.
type Box struct{ X, Y, W, H float64 }

// Right returns the X of the right side.
func (b Box) Right() float64 { return b.X + b.W }

// Bottom returns the Y of the lower side.
func (b Box) Bottom() float64 { return b.Y + b.H }

// Middle returns the centre.
func (b Box) Middle() Point { return Point{b.X + b.W/2, b.Y + b.H/2} }

// Grow returns the box with a margin added on each side.
func (b Box) Grow(by float64) Box { return Box{b.X - by, b.Y - by, b.W + 2*by, b.H + 2*by} }

// Overlaps reports whether two boxes share more than an edge.
func (b Box) Overlaps(c Box) bool {
	return b.X < c.Right() && c.X < b.Right() && b.Y < c.Bottom() && c.Y < b.Bottom()
}

// Holds reports whether c lies within the box.
func (b Box) Holds(c Box) bool {
	return c.X >= b.X && c.Y >= b.Y && c.Right() <= b.Right() && c.Bottom() <= b.Bottom()
}

// Pen says how an outline is drawn. A width of 0 draws none.
type Pen struct {
	Ink   Ink
	Width float64
	Dash  float64 // length of a dash and of the gap after it; 0: a full line
}

// Path is a line through points, closed and filled where told. Curves are lines through many points.
type Path struct {
	Points []Point
	Closed bool
	Pen    Pen
	Fill   Ink // None: not filled
}

// Disc is a circle.
type Disc struct {
	At   Point
	R    float64
	Pen  Pen
	Fill Ink
}

// Align says which part of a text stands at its place.
type Align string

// The alignments, named as SVG's text-anchor has them.
const (
	Start  Align = "start"
	Middle Align = "middle"
	End    Align = "end"
)

// Text is one line of text. At is on its baseline.
type Text struct {
	At    Point
	Words string
	Size  float64
	Bold  bool
	Align Align // "" is Start
	Up    bool  // turned by a quarter, read from below upwards
	Ink   Ink   // "" is Black
	// Clear paints the paper behind the text, so that a line that passes below does not cross it.
	Clear bool
	// Framed draws a box around it as well, for a key that stands on a thing.
	Framed bool
}

// frameWidth is the least width of the box around a framed text, and frameGap what is left around it.
const frameWidth, frameGap = 16.0, 1.5

// Box returns the room that the text takes, measured.
func (t Text) Box() Box {
	w := Width(t.Words, t.Size, t.Bold)
	ascent, descent := Rise(t.Size)
	shift := 0.0
	switch t.Align {
	case Middle:
		shift = w / 2
	case End:
		shift = w
	}
	if t.Up {
		return Box{t.At.X - ascent, t.At.Y + shift - w, ascent + descent, w}
	}
	b := Box{t.At.X - shift, t.At.Y - ascent, w, ascent + descent}
	if t.Framed {
		b = b.Grow(frameGap)
		if b.W < frameWidth {
			b.X, b.W = b.X-(frameWidth-b.W)/2, frameWidth
		}
	}
	return b
}

// Scene is a drawing. Marks are drawn in order, then texts above them all.
type Scene struct {
	W, H  float64
	Title string // what it shows, in a few words; read aloud in place of the picture
	Paths []Mark
	Texts []Text // added by Write
	boxes []Box  // of the texts, measured once
}

// Mark is a Path or a Disc.
type Mark interface{ box() Box }

// Add adds marks.
func (s *Scene) Add(marks ...Mark) { s.Paths = append(s.Paths, marks...) }

// Write adds texts; those without words are left out.
func (s *Scene) Write(texts ...Text) {
	for _, t := range texts {
		if t.Words != "" {
			s.Texts, s.boxes = append(s.Texts, t), append(s.boxes, t.Box())
		}
	}
}

// Extent returns the box around everything that is drawn; the zero box where nothing is.
func (s *Scene) Extent() Box {
	var all []Box
	for _, m := range s.Paths {
		all = append(all, m.box())
	}
	all = append(all, s.boxes...)
	if len(all) == 0 {
		return Box{}
	}
	x, y, right, bottom := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, b := range all {
		x, y = math.Min(x, b.X), math.Min(y, b.Y)
		right, bottom = math.Max(right, b.Right()), math.Max(bottom, b.Bottom())
	}
	return Box{x, y, right - x, bottom - y}
}

// Put adds another scene with its origin at a place.
func (s *Scene) Put(other *Scene, at Point) {
	move := func(p Point) Point { return Point{p.X + at.X, p.Y + at.Y} }
	for _, m := range other.Paths {
		switch m := m.(type) {
		case Path:
			moved := make([]Point, len(m.Points))
			for i, p := range m.Points {
				moved[i] = move(p)
			}
			m.Points = moved
			s.Add(m)
		case Disc:
			m.At = move(m.At)
			s.Add(m)
		}
	}
	for _, t := range other.Texts {
		t.At = move(t.At)
		s.Write(t)
	}
}

func (d Disc) box() Box { return Box{d.At.X - d.R, d.At.Y - d.R, 2 * d.R, 2 * d.R} }

func (p Path) box() Box {
	if len(p.Points) == 0 {
		return Box{}
	}
	low, high := p.Points[0], p.Points[0]
	for _, q := range p.Points {
		low.X, low.Y = math.Min(low.X, q.X), math.Min(low.Y, q.Y)
		high.X, high.Y = math.Max(high.X, q.X), math.Max(high.Y, q.Y)
	}
	return Box{low.X, low.Y, high.X - low.X, high.Y - low.Y}
}

// Free reports whether nothing is written in a box yet.
func (s *Scene) Free(b Box) bool {
	return !slices.ContainsFunc(s.boxes, b.Overlaps)
}
