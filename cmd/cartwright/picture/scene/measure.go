package scene

import (
	"sync"

	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/font/liberation"
)

// Family is the font that texts are measured in, and those of the same widths that stand in for it where a
// reader's machine lacks it.
const Family = "'Liberation Sans', Arial, Helvetica, sans-serif"

// fonts holds the font that is built in.
var fonts = sync.OnceValue(func() *font.Cache { return font.NewCache(liberation.Collection()) })

// face returns the font at a size.
func face(size float64, bold bool) font.Face {
	f := font.Font{Typeface: "Liberation", Variant: "Sans"}
	if bold {
		f.Weight = xfont.WeightBold
	}
	return fonts().Lookup(f, font.Points(size))
}

// Width returns how wide a line of text is. A letter that the font lacks counts as wide as it is high, which
// is what other scripts mostly take.
func Width(words string, size float64, bold bool) float64 {
	f := face(size, bold)
	var known []rune
	var b sfnt.Buffer
	foreign := 0
	for _, r := range words {
		if i, err := f.Face.GlyphIndex(&b, r); err != nil || i == 0 {
			foreign++
			continue
		}
		known = append(known, r)
	}
	return f.Width(string(known)).Points() + float64(foreign)*size
}

// Rise returns how far letters reach above their baseline and below it.
func Rise(size float64) (ascent, descent float64) {
	f := face(size, false)
	e := f.Extents()
	return e.Ascent.Points(), e.Descent.Points()
}

// Leading returns the distance from one line's baseline to that of the next.
func Leading(size float64) float64 { return 1.25 * size }
