package scenarios

import "cartwright/catalog/quantity"

// Keys of the cart and its parts.
var (
	cartKeys = []string{"casters", "wheelbase", "track", "caster_mass_height", "rolling", "grip", "frame", "deck_items",
		"shelves", "backboard"}
	frameKeys     = []string{"mass", "height", "pieces"}
	pieceKeys     = []string{"section", "length", "count", "height"}
	railKeys      = []string{"section", "span", "count"}
	deckItemKeys  = []string{"name", "mass", "height", "offset"}
	shelfKeys     = []string{"name", "elevation", "length", "depth", "clear_height", "max_mass", "rails", "gap", "stack"}
	backboardKeys = []string{"elevation", "offset"}
)

// maxCasters is the most wheels a cart is read with; no source.
const maxCasters = 16

// cart reads the frame that the parts stand on. All heights and elevations are from the floor.
func (s section) cart() Cart {
	v, ok := s.sub("cart", "the cart", true, cartKeys)
	if !ok {
		return Cart{}
	}
	c := Cart{
		Casters:           v.integer("casters", 3, maxCasters, defaultCasters),
		WheelbaseM:        v.size("wheelbase"),
		TrackM:            v.size("track"),
		CasterMassHeightM: v.quantity("caster_mass_height", quantity.Length, within(0, maxLengthM), defaultCasterMassHeightM),
		Rolling:           v.quantity("rolling", quantity.Ratio, above(0, 1), defaultRolling),
		Grip:              v.number("grip", above(0, 2), "0.5", defaultGrip),
	}
	if f, ok := v.sub("frame", "the frame", true, frameKeys); ok {
		c.frame(f)
	}
	for _, d := range v.items("deck_items", "a deck item", false, deckItemKeys) {
		c.DeckItems = append(c.DeckItems, Mass{
			Name: d.words("name", "tool box"), MassKg: d.mass(), HeightM: d.height("height"), OffsetM: d.offset(),
		})
	}
	c.Shelves = v.shelves()
	if b, ok := v.sub("backboard", "the backboard", true, backboardKeys); ok {
		c.Backboard = Backboard{ElevationM: b.elevation(), OffsetM: b.offset()}
	}
	return c
}

// frame reads the frame: its mass and the height of that, or the pieces it is cut from.
func (c *Cart) frame(f section) {
	c.Frame.Name = "frame"
	if !f.has("pieces") && !f.meant["pieces"] {
		c.Frame.MassKg, c.Frame.HeightM = f.mass(), f.height("height")
		return
	}
	for _, key := range []string{"mass", "height"} {
		if f.has(key) {
			f.wrong(key, key+": a frame of pieces has the mass of its pieces", "leave "+key+" out, or the pieces")
		}
	}
	for _, v := range f.items("pieces", "a piece", true, pieceKeys) {
		c.Pieces = append(c.Pieces, Piece{
			Section: v.words("section", "tube-40"), LengthM: v.size("length"), Count: v.integer("count", 1, maxCount, 1),
			HeightM: v.height("height"), Pos: v.pos,
		})
	}
}

// shelves reads what battery modules stand on; at least one.
func (s section) shelves() []Shelf {
	sections := s.items("shelves", "a shelf", true, shelfKeys)
	distinct(sections, "name")
	var shelves []Shelf
	for _, v := range sections {
		shelves = append(shelves, Shelf{
			Name:         v.words("name", "lower"),
			ElevationM:   v.elevation(),
			LengthM:      v.size("length"),
			DepthM:       v.size("depth"),
			ClearHeightM: v.size("clear_height"),
			MaxMassKg:    v.quantity("max_mass", quantity.Mass, above(0, maxMassKg), unlimited),
			Rails:        v.rails(),
			GapM:         v.quantity("gap", quantity.Length, within(0, maxLengthM), 0),
			Stack:        v.integer("stack", 1, maxStack, 1),
		})
	}
	return shelves
}

// maxStack is the most modules that are read to stand on each other; no source.
const maxStack = 20

// rails reads the beams under a shelf.
func (s section) rails() *Rails {
	v, ok := s.sub("rails", "the rails", false, railKeys)
	if !ok {
		return nil
	}
	return &Rails{Section: v.words("section", "angle-40"), SpanM: v.size("span"),
		Count: v.integer("count", 1, maxCount, defaultRails), Pos: v.pos}
}

func (s section) mass() float64 {
	return s.quantity("mass", quantity.Mass, within(0, maxMassKg))
}

func (s section) size(key string) float64 {
	return s.quantity(key, quantity.Length, above(0, maxLengthM))
}

func (s section) height(key string) float64 {
	return s.quantity(key, quantity.Length, within(0, maxLengthM))
}

// maxElevationM is the highest that batteries and inverters are read to stand or hang at: nobody lifts them higher, no
// door lets them through, and a planner would look for heavy cable to keep such a cart upright. Common practice, no
// source.
const maxElevationM = 2.5

func (s section) elevation() float64 {
	return s.quantity("elevation", quantity.Length, within(0, maxElevationM))
}

// offset reads how far a mass stands from the middle line, to either side.
func (s section) offset() float64 {
	return s.quantity("offset", quantity.Length, within(-maxLengthM, maxLengthM), 0)
}
