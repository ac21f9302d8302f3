package scene

import (
	"bytes"
	"fmt"
	"image/color"
	"math"
	"strings"

	svg "github.com/ajstarks/svgo/float"
)

// SVG returns the scene as a file of its own, for light and dark screens.
func (s *Scene) SVG() []byte {
	var b bytes.Buffer
	out := svg.New(&b)
	out.Start(s.W, s.H, s.view()...)
	out.Title(s.Title)
	out.Style("text/css", CSS())
	out.Rect(0, 0, s.W, s.H, `class="f-paper"`)
	s.draw(out)
	out.End()
	return b.Bytes()
}

// Inline returns the scene as an element of a page that has the rules of CSS; its ground is the page's.
func (s *Scene) Inline() string {
	var b bytes.Buffer
	out := svg.New(&b)
	fmt.Fprintf(&b, "<svg width=\"%.0f\" height=\"%.0f\" %s xmlns=\"http://www.w3.org/2000/svg\">\n", s.W, s.H, strings.Join(s.view(), " "))
	out.Title(s.Title)
	s.draw(out)
	out.End()
	return b.String()
}

// view returns the attributes of the outermost element.
func (s *Scene) view() []string {
	return []string{fmt.Sprintf(`viewBox="0 0 %.2f %.2f"`, s.W, s.H), `role="img"`}
}

// CSS returns the rules for the inks: a class f-ink fills and a class s-ink draws.
func CSS() string {
	var light, dark strings.Builder
	for _, k := range palette() {
		fmt.Fprintf(&light, ".f-%s{fill:%s}.s-%s{stroke:%s}\n", k.ink, hex(k.light), k.ink, hex(k.light))
		fmt.Fprintf(&dark, ".f-%s{fill:%s}.s-%s{stroke:%s}\n", k.ink, hex(k.dark), k.ink, hex(k.dark))
	}
	return "svg text{font-family:" + Family + "}\n" + light.String() +
		"@media screen and (prefers-color-scheme:dark){\n" + dark.String() + "}\n"
}

func hex(c color.RGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

func (s *Scene) draw(out *svg.SVG) {
	for _, m := range s.Paths {
		switch m := m.(type) {
		case Path:
			drawPath(out, m)
		case Disc:
			out.Circle(m.At.X, m.At.Y, m.R, class(m.Pen, m.Fill)...)
		}
	}
	for _, t := range s.Texts {
		if ground, ok := t.ground(); ok {
			drawPath(out, ground)
		}
	}
	for _, t := range s.Texts {
		drawText(out, t)
	}
}

func drawPath(out *svg.SVG, p Path) {
	x, y := make([]float64, len(p.Points)), make([]float64, len(p.Points))
	for i, q := range p.Points {
		x[i], y[i] = q.X, q.Y
	}
	if p.Closed {
		out.Polygon(x, y, class(p.Pen, p.Fill)...)
		return
	}
	out.Polyline(x, y, class(p.Pen, p.Fill)...)
}

// class returns the attributes of an outline and a surface.
func class(pen Pen, fill Ink) []string {
	var names, rest []string
	if fill == None {
		rest = append(rest, `fill="none"`)
	} else {
		names = append(names, "f-"+string(fill))
	}
	if pen.Width > 0 {
		names = append(names, "s-"+string(pen.Ink))
		rest = append(rest, fmt.Sprintf(`stroke-width="%g"`, pen.Width))
		if pen.Dash > 0 {
			rest = append(rest, fmt.Sprintf(`stroke-dasharray="%g"`, pen.Dash))
		}
	}
	if len(names) > 0 {
		rest = append([]string{`class="` + strings.Join(names, " ") + `"`}, rest...)
	}
	return rest
}

// drawText writes a text and how long it was measured to be, so that another font is fitted to the room.
func drawText(out *svg.SVG, t Text) {
	ink, align := t.Ink, t.Align
	if ink == None {
		ink = Black
	}
	if align == "" {
		align = Start
	}
	attributes := []string{
		`class="f-` + string(ink) + `"`,
		fmt.Sprintf(`font-size="%g"`, t.Size),
		`text-anchor="` + string(align) + `"`,
		fmt.Sprintf(`textLength="%.2f"`, math.Max(0.01, Width(t.Words, t.Size, t.Bold))),
		`lengthAdjust="spacingAndGlyphs"`,
	}
	if t.Bold {
		attributes = append(attributes, `font-weight="bold"`)
	}
	if t.Up {
		attributes = append(attributes, fmt.Sprintf(`transform="rotate(-90 %.2f %.2f)"`, t.At.X, t.At.Y))
	}
	out.Text(t.At.X, t.At.Y, t.Words, attributes...)
}
