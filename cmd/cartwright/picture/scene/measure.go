package scene

import (
	"sync"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Family is the font that texts are measured in, and those of the same widths that stand in for it where a
// reader's machine lacks it.
const Family = "'Liberation Sans', Arial, Helvetica, sans-serif"

// The fonts that are built in.
var (
	regular = sync.OnceValue(func() *sfnt.Font { return parsed(liberationsansregular.TTF) })
	heavy   = sync.OnceValue(func() *sfnt.Font { return parsed(liberationsansbold.TTF) })
)

func parsed(text []byte) *sfnt.Font {
	f, err := sfnt.Parse(text)
	if err != nil {
		panic("scene: a font that is built in cannot be read: " + err.Error()) // a fault of the build
	}
	return f
}

// Width returns how wide a line of text is. A letter that the font lacks counts as wide as it is high, which
// is what other scripts mostly take.
func Width(words string, size float64, bold bool) float64 {
	f := regular()
	if bold {
		f = heavy()
	}
	var b sfnt.Buffer
	em := fixed.Int26_6(f.UnitsPerEm())
	var width fixed.Int26_6
	var last sfnt.GlyphIndex // 0 is the sign of a letter that is not there
	foreign := 0
	for _, r := range words {
		i, err := f.GlyphIndex(&b, r)
		if err != nil || i == 0 {
			foreign++
			continue
		}
		if last != 0 {
			if kern, err := f.Kern(&b, last, i, em, font.HintingNone); err == nil {
				width += kern
			}
		}
		if advance, err := f.GlyphAdvance(&b, i, em, font.HintingNone); err == nil {
			width += advance
		}
		last = i
	}
	return float64(width)*(size/float64(em)) + float64(foreign)*size
}

// Rise returns how far letters reach above their baseline and below it.
func Rise(size float64) (ascent, descent float64) {
	var b sfnt.Buffer
	em := fixed.Int26_6(regular().UnitsPerEm())
	m, err := regular().Metrics(&b, em, font.HintingNone)
	if err != nil {
		panic("scene: the font that is built in has no metrics: " + err.Error())
	}
	scale := size / float64(em)
	return float64(m.Ascent) * scale, float64(m.Descent) * scale
}

// Leading returns the distance from one line's baseline to that of the next.
func Leading(size float64) float64 { return 1.25 * size }
