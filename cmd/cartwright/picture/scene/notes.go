package scene

import (
	"math"
	"slices"
)

// Note is a few lines of text that say what something is, and the place of that thing.
type Note struct {
	Of    Point
	Lines []string
}

// Column is where notes stand, one below the other beside a drawing.
type Column struct {
	X           float64 // of the side that faces the drawing
	Right       bool    // the column is to the right of the drawing
	Top, Bottom float64
	Size        float64
	Pen         Pen // of the line from a note to its thing
}

// Note puts notes into the column, each as near to its thing as the others let it, joined to it by a line. It
// returns the Y below the last one, which is beyond the column's bottom where they did not fit.
func (s *Scene) Note(c Column, notes []Note) float64 {
	const between = 8.0
	ascent, descent := Rise(c.Size)
	notes = slices.Clone(notes)
	slices.SortStableFunc(notes, func(a, b Note) int {
		switch {
		case a.Of.Y < b.Of.Y:
			return -1
		case a.Of.Y > b.Of.Y:
			return 1
		}
		return 0
	})
	height := func(n Note) float64 { return float64(len(n.Lines)-1)*Leading(c.Size) + ascent + descent }
	tops := make([]float64, len(notes))
	at := c.Top
	for i, n := range notes {
		tops[i] = math.Max(at, n.Of.Y-height(n)/2)
		at = tops[i] + height(n) + between
	}
	// Where they run out below, they are pushed up again, as far as there is room above.
	floor := math.Max(c.Bottom, c.Top+total(notes, height, between))
	for i := len(notes) - 1; i >= 0; i-- {
		tops[i] = math.Min(tops[i], floor-height(notes[i]))
		floor = tops[i] - between
	}
	below := c.Top
	for i, n := range notes {
		align, text, joint := Start, c.X+6, c.X
		if !c.Right {
			align, text = End, c.X-6
		}
		middle := tops[i] + height(n)/2
		s.Add(Line(n.Of, Point{joint, middle}, c.Pen), Disc{At: n.Of, R: 1.8, Fill: Black})
		for k, words := range n.Lines {
			s.Write(Text{At: Point{text, tops[i] + ascent + float64(k)*Leading(c.Size)}, Words: words, Size: c.Size, Align: align})
		}
		below = tops[i] + height(n)
	}
	return below
}

// total returns the room that all notes take, one below the other.
func total(notes []Note, height func(Note) float64, between float64) float64 {
	sum := -between
	for _, n := range notes {
		sum += height(n) + between
	}
	return math.Max(0, sum)
}
