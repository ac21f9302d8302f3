package scene

import "image/color"

// Ink names a colour by its part in a drawing. Each has one shade for light paper and one for dark.
type Ink string

// The inks. Black is that of lines and texts, Grey of what stands back, Grid of rules behind a chart,
// Paper of the ground, Shade of surfaces that are no figure. The others tell things apart; no picture
// rests on them alone.
const (
	None      Ink = ""
	Black     Ink = "black"
	Grey      Ink = "grey"
	Grid      Ink = "grid"
	Shade     Ink = "shade"
	Paper     Ink = "paper"
	Blue      Ink = "blue"
	Sky       Ink = "sky"
	Green     Ink = "green"
	Yellow    Ink = "yellow"
	Orange    Ink = "orange"
	Vermilion Ink = "vermilion"
	Purple    Ink = "purple"
)

// PaletteSource is where the colours are published.
const PaletteSource = "M. Okabe, K. Ito, Color Universal Design (2002, modified 2008), set of colours unambiguous to colour-blind and others"

type shades struct {
	ink         Ink
	light, dark color.RGBA
}

func rgb(hex uint32) color.RGBA {
	return color.RGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: 0xff}
}

// palette holds the inks in order. The seven colours are those of PaletteSource. On dark paper its blue
// is too dark for a line, so that the two blues change places with a lighter blue of the same hue.
func palette() []shades {
	return []shades{
		{Black, rgb(0x000000), rgb(0xf2f2f2)},
		{Grey, rgb(0x555555), rgb(0xb4b4b4)},
		{Grid, rgb(0xdddddd), rgb(0x3c3c3c)},
		{Shade, rgb(0xf0f0f0), rgb(0x2a2a2a)},
		{Paper, rgb(0xffffff), rgb(0x161616)},
		{Blue, rgb(0x0072b2), rgb(0x4aa3df)},
		{Sky, rgb(0x56b4e9), rgb(0x56b4e9)},
		{Green, rgb(0x009e73), rgb(0x009e73)},
		{Yellow, rgb(0xf0e442), rgb(0xf0e442)},
		{Orange, rgb(0xe69f00), rgb(0xe69f00)},
		{Vermilion, rgb(0xd55e00), rgb(0xd55e00)},
		{Purple, rgb(0xcc79a7), rgb(0xcc79a7)},
	}
}

// light returns the ink's shade on light paper.
func (k Ink) light() color.RGBA {
	for _, s := range palette() {
		if s.ink == k {
			return s.light
		}
	}
	return palette()[0].light
}
