package scene

import "math"

// Line returns a line from one point to another.
func Line(a, b Point, pen Pen) Path { return Path{Points: []Point{a, b}, Pen: pen} }

// Rect returns a box as a path.
func Rect(b Box, pen Pen, fill Ink) Path {
	return Path{
		Points: []Point{{b.X, b.Y}, {b.Right(), b.Y}, {b.Right(), b.Bottom()}, {b.X, b.Bottom()}},
		Closed: true, Pen: pen, Fill: fill,
	}
}

// ground returns what is painted behind a text, and whether anything is.
func (t Text) ground() (Path, bool) {
	switch {
	case t.Framed:
		return Rect(t.Box(), Pen{Ink: Black, Width: 0.8}, Paper), true
	case t.Clear:
		return Rect(t.Box(), Pen{}, Paper), true
	}
	return Path{}, false
}

// Arc returns a part of a circle from one angle to another, in degrees: 0 points right, 90 down.
func Arc(at Point, r, from, to float64, pen Pen) Path {
	const step = 6.0 // degrees; nobody sees the corners of such a curve
	n := max(1, int(math.Ceil(math.Abs(to-from)/step)))
	points := make([]Point, 0, n+1)
	for i := range n + 1 {
		sin, cos := math.Sincos((from + (to-from)*float64(i)/float64(n)) * math.Pi / 180)
		points = append(points, Point{at.X + r*cos, at.Y + r*sin})
	}
	return Path{Points: points, Pen: pen}
}

// Passes reports whether the box around some stretch of the path, from one of its points to the next, overlaps
// b: exact for paths whose lines are level or upright.
func (p Path) Passes(b Box) bool {
	for i := 1; i < len(p.Points); i++ {
		stretch := Path{Points: p.Points[i-1 : i+1]}.box()
		if stretch.Grow(0.5).Overlaps(b) {
			return true
		}
	}
	return false
}

// Hatching is a pattern of lines that tells surfaces apart without colour.
type Hatching int

// The hatchings.
const (
	Plain Hatching = iota
	Rising
	Falling
	Level
	Upright
	hatchings
)

// HatchingOf returns a hatching for the nth kind of something; they repeat.
func HatchingOf(n int) Hatching { return Hatching(n % int(hatchings)) }

// Hatch returns the lines of a hatching within a box.
func Hatch(b Box, h Hatching, pen Pen) []Mark {
	const gap = 6.0
	var marks []Mark
	switch h {
	case Rising, Falling:
		for d := gap; d < b.W+b.H; d += gap {
			// The line x + y = d of the box, its ends on the box's sides.
			x0, y0 := math.Min(d, b.W), math.Max(0, d-b.W)
			x1, y1 := math.Max(0, d-b.H), math.Min(d, b.H)
			if h == Falling {
				y0, y1 = b.H-y0, b.H-y1
			}
			marks = append(marks, Line(Point{b.X + x0, b.Y + y0}, Point{b.X + x1, b.Y + y1}, pen))
		}
	case Level:
		for y := gap; y < b.H; y += gap {
			marks = append(marks, Line(Point{b.X, b.Y + y}, Point{b.Right(), b.Y + y}, pen))
		}
	case Upright:
		for x := gap; x < b.W; x += gap {
			marks = append(marks, Line(Point{b.X + x, b.Y}, Point{b.X + x, b.Bottom()}, pen))
		}
	}
	return marks
}
