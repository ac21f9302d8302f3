//go:build !js

package scene

import (
	"bytes"
	"fmt"
	"math"
	"sync"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/font/liberation"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"
)

// fonts holds the font that is built in, as images are written in it.
var fonts = sync.OnceValue(func() *font.Cache { return font.NewCache(liberation.Collection()) })

// face returns the font at a size.
func face(size float64, bold bool) font.Face {
	f := font.Font{Typeface: "Liberation", Variant: "Sans"}
	if bold {
		f.Weight = xfont.WeightBold
	}
	return fonts().Lookup(f, font.Points(size))
}

// PNG returns the scene as an image on light paper, finer by a number of dots a unit.
func (s *Scene) PNG(dots float64) ([]byte, error) {
	// To the canvas a unit is a point, of which an inch has 72.
	canvas := vgimg.NewWith(vgimg.UseWH(font.Points(s.W), font.Points(s.H)), vgimg.UseDPI(int(math.Round(72*dots))),
		vgimg.UseBackgroundColor(Paper.light()))
	for _, m := range s.Paths {
		switch m := m.(type) {
		case Path:
			s.paint(canvas, s.trace(m), m.Pen, m.Fill)
		case Disc:
			var round vg.Path
			at := s.turned(m.At)
			round.Move(vg.Point{X: at.X + vg.Length(m.R), Y: at.Y})
			round.Arc(at, vg.Length(m.R), 0, 2*math.Pi)
			round.Close()
			s.paint(canvas, round, m.Pen, m.Fill)
		}
	}
	for _, t := range s.Texts {
		if ground, ok := t.ground(); ok {
			s.paint(canvas, s.trace(ground), ground.Pen, ground.Fill)
		}
	}
	for _, t := range s.Texts {
		s.letter(canvas, t)
	}
	var b bytes.Buffer
	if _, err := (vgimg.PngCanvas{Canvas: canvas}).WriteTo(&b); err != nil {
		return nil, fmt.Errorf("cannot draw %q: %w", s.Title, err)
	}
	return b.Bytes(), nil
}

// turned returns a point as the canvas counts: upwards from below.
func (s *Scene) turned(p Point) vg.Point { return vg.Point{X: vg.Length(p.X), Y: vg.Length(s.H - p.Y)} }

func (s *Scene) trace(p Path) vg.Path {
	var line vg.Path
	for i, q := range p.Points {
		if i == 0 {
			line.Move(s.turned(q))
			continue
		}
		line.Line(s.turned(q))
	}
	if p.Closed {
		line.Close()
	}
	return line
}

func (s *Scene) paint(canvas *vgimg.Canvas, line vg.Path, pen Pen, fill Ink) {
	if fill != None {
		canvas.SetColor(fill.light())
		canvas.Fill(line)
	}
	if pen.Width > 0 {
		canvas.SetColor(pen.Ink.light())
		canvas.SetLineWidth(vg.Length(pen.Width))
		var dash []vg.Length
		if pen.Dash > 0 {
			dash = []vg.Length{vg.Length(pen.Dash), vg.Length(pen.Dash)}
		}
		canvas.SetLineDash(dash, 0)
		canvas.Stroke(line)
	}
}

func (s *Scene) letter(canvas *vgimg.Canvas, t Text) {
	ink := t.Ink
	if ink == None {
		ink = Black
	}
	canvas.SetColor(ink.light())
	shift := 0.0
	switch t.Align {
	case Middle:
		shift = Width(t.Words, t.Size, t.Bold) / 2
	case End:
		shift = Width(t.Words, t.Size, t.Bold)
	}
	canvas.Push()
	defer canvas.Pop()
	canvas.Translate(s.turned(t.At))
	if t.Up {
		canvas.Rotate(math.Pi / 2)
	}
	f := face(t.Size, t.Bold)
	canvas.FillString(f, vg.Point{X: vg.Length(-shift)}, t.Words)
}
