package scene

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestOneMoreLetterIsWider(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.StringOf(rapid.RuneFrom([]rune("abcMW019 .-°é"))).Draw(t, "words")
		size := rapid.Float64Range(6, 40).Draw(t, "size")
		if a, b := Width(words, size, false), Width(words+"x", size, false); b <= a {
			t.Errorf("%q is %v wide, with an x %v", words, a, b)
		}
		if a, b := Width(words+"x", size, false), Width(words+"x", size+1, false); b <= a {
			t.Errorf("%q of size %v is %v wide, one larger %v", words, size, a, b)
		}
	})
}

// Helvetica and Arial, whose widths the font has, are 556 units of 1000 wide in a digit and 667 in a
// capital A: the printed metrics of the Adobe Core 14 fonts.
func TestWidthsArePublishedOnes(t *testing.T) {
	for words, want := range map[string]float64{"0": 0.556, "A": 0.667, "WW": 2 * 0.944, "電": 1} {
		if got := Width(words, 1000, false) / 1000; got < want-0.001 || got > want+0.001 {
			t.Errorf("%q is %v em wide, want %v", words, got, want)
		}
	}
}

func TestWrappedLinesFitAndLoseNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.StringOf(rapid.RuneFrom([]rune("abcdeWWW  電\n"))).Draw(t, "words")
		width := rapid.Float64Range(15, 200).Draw(t, "width")
		lines := Wrap(words, 12, false, width, 0)
		for _, l := range lines {
			if Width(l, 12, false) > width && len([]rune(l)) > 1 {
				t.Errorf("%q is wider than %v", l, width)
			}
		}
		if got, want := strings.ReplaceAll(strings.Join(lines, ""), " ", ""), strings.Join(strings.Fields(words), ""); got != want {
			t.Errorf("%q became %q", want, got)
		}
	})
}

func TestWrapCutsWithAnEllipsis(t *testing.T) {
	lines := Wrap("one two three four five six", 12, false, 60, 2)
	if len(lines) != 2 || !strings.HasSuffix(lines[1], "…") || Width(lines[1], 12, false) > 60 {
		t.Errorf("%q", lines)
	}
}

func TestTextsHaveTheirBoxes(t *testing.T) {
	at := Point{X: 100, Y: 100}
	w := Width("hello", 12, false)
	up, down := Rise(12)
	for _, c := range []struct {
		name string
		text Text
		want Box
	}{
		{"from its start", Text{At: at, Words: "hello", Size: 12}, Box{100, 100 - up, w, up + down}},
		{"around its middle", Text{At: at, Words: "hello", Size: 12, Align: Middle}, Box{100 - w/2, 100 - up, w, up + down}},
		{"to its end", Text{At: at, Words: "hello", Size: 12, Align: End}, Box{100 - w, 100 - up, w, up + down}},
		{"upwards", Text{At: at, Words: "hello", Size: 12, Up: true}, Box{100 - up, 100 - w, up + down, w}},
	} {
		if got := c.text.Box(); got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}

func TestNotesDoNotOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := &Scene{W: 300, H: 300}
		var notes []Note
		for range rapid.IntRange(1, 12).Draw(t, "notes") {
			notes = append(notes, Note{Of: Point{X: 150, Y: rapid.Float64Range(0, 300).Draw(t, "y")}, Lines: []string{"first line", "second"}})
		}
		low := s.Note(Column{X: 200, Right: true, Top: 10, Bottom: 290, Size: 10, Pen: Pen{Ink: Black, Width: 1}}, notes)
		for i, a := range s.Texts {
			if b := a.Box(); b.Y < 10-1e-9 || b.Bottom() > low+1e-9 {
				t.Errorf("%q at %+v is not between 10 and %v", a.Words, b, low)
			}
			for _, other := range s.Texts[:i] {
				// Lines of one note may touch: letters reach further than their leading.
				if box := other.Box(); a.Words == other.Words && box.Overlaps(a.Box()) {
					t.Errorf("%+v and %+v overlap", a, other)
				}
			}
		}
	})
}

// sample is a scene with one of everything.
func sample() *Scene {
	s := &Scene{W: 200, H: 100, Title: "a < b & c"}
	s.Add(Rect(Box{10, 10, 50, 30}, Pen{Ink: Black, Width: 1}, Shade), Disc{At: Point{100, 50}, R: 10, Pen: Pen{Ink: Blue, Width: 2, Dash: 3}})
	s.Add(Arc(Point{150, 50}, 20, 0, 180, Pen{Ink: Orange, Width: 1}))
	s.Add(Hatch(Box{10, 10, 50, 30}, Rising, Pen{Ink: Grey, Width: 1})...)
	s.Write(Text{At: Point{20, 80}, Words: `<b>"&'`, Size: 12}, Text{At: Point{190, 90}, Words: "up", Size: 12, Up: true, Bold: true, Framed: true})
	return s
}

func TestSVGIsWellFormedAndSaysWhatItSays(t *testing.T) {
	for name, text := range map[string]string{"file": string(sample().SVG()), "inline": sample().Inline()} {
		d := xml.NewDecoder(strings.NewReader(text))
		var words []string
		for {
			token, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if c, ok := token.(xml.CharData); ok {
				words = append(words, strings.TrimSpace(string(c)))
			}
		}
		all := strings.Join(words, "\n")
		for _, want := range []string{"a < b & c", `<b>"&'`, "up"} {
			if !strings.Contains(all, want) {
				t.Errorf("%s does not say %q", name, want)
			}
		}
	}
}

func TestPNGHasItsSizeAndItsInk(t *testing.T) {
	text, err := sample().PNG(2)
	if err != nil {
		t.Fatal(err)
	}
	image, err := png.Decode(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if size := image.Bounds().Size(); size.X != 400 || size.Y != 200 {
		t.Errorf("%v dots, want 400 by 200", size)
	}
	if r, _, _, _ := image.At(398, 2).RGBA(); r != 0xffff {
		t.Errorf("the corner is not paper: red %x", r)
	}
	dark := 0
	for x := 40; x < 120; x++ {
		for y := 136; y < 170; y++ {
			if r, _, _, _ := image.At(x, y).RGBA(); r < 0x8000 {
				dark++
			}
		}
	}
	if dark < 50 {
		t.Errorf("%d dark dots where a text stands", dark)
	}
}

// A line that crosses a hatched box is no longer than its diagonal, and stays inside.
func TestHatchingStaysInItsBox(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		box := Box{rapid.Float64Range(-50, 50).Draw(t, "x"), 3, rapid.Float64Range(1, 90).Draw(t, "w"), rapid.Float64Range(1, 90).Draw(t, "h")}
		for h := range hatchings {
			for _, m := range Hatch(box, h, Pen{Ink: Black, Width: 1}) {
				if !box.Grow(1e-9).Holds(m.box()) {
					t.Errorf("hatching %d: %+v is outside of %+v", h, m.box(), box)
				}
			}
		}
	})
}

func luminance(k shades, dark bool) float64 {
	c := k.light
	if dark {
		c = k.dark
	}
	return 0.2126*float64(c.R) + 0.7152*float64(c.G) + 0.0722*float64(c.B)
}

// Lines and texts stand out from the paper in both schemes.
func TestInkStandsOutFromPaper(t *testing.T) {
	for _, dark := range []bool{false, true} {
		var paper float64
		for _, k := range palette() {
			if k.ink == Paper {
				paper = luminance(k, dark)
			}
		}
		for _, k := range palette() {
			if k.ink != Black && k.ink != Grey && k.ink != Blue && k.ink != Vermilion {
				continue
			}
			if d := luminance(k, dark) - paper; d > -90 && d < 90 {
				t.Errorf("%s on paper, dark %v: %v apart of 255", k.ink, dark, d)
			}
		}
	}
}
