package scenarios

import "cartwright/catalog/problem"

// Shelf is a shelf that battery modules stand on.
type Shelf struct {
	Name         string
	ElevationM   float64 // from the floor
	LengthM      float64
	DepthM       float64
	ClearHeightM float64
	MaxMassKg    float64 // +Inf: not stated
	Rails        *Rails  // nil: not stated; where both are stated the smaller counts
	GapM         float64 // between modules
	Stack        int     // how many modules may stand on each other; default 1
}

// Rails are the beams under a shelf, each on two supports.
type Rails struct {
	Section string  // id of a section of the catalogue
	SpanM   float64 // between the supports
	Count   int     // default 2
	Pos     problem.Pos
}

// Backboard carries the inverters, devices, bus bars, sundries and cable.
type Backboard struct {
	ElevationM, OffsetM float64
}

// Piece is a piece of the frame, cut from a section.
type Piece struct {
	Section string // id of a section of the catalogue
	LengthM float64
	Count   int     // default 1
	HeightM float64 // of its middle, from the floor
	Pos     problem.Pos
}

// Cart is the frame that the parts stand on.
type Cart struct {
	Casters           int
	WheelbaseM        float64
	TrackM            float64
	CasterMassHeightM float64
	Rolling           float64 // rolling resistance, force over weight; default 0.02
	Grip              float64 // friction of a braked wheel on the floor, force over weight; default 0.5
	Frame             Mass    // zero where there are Pieces
	Pieces            []Piece // of the frame, whose mass and height then follow from them
	DeckItems         []Mass
	Shelves           []Shelf
	Backboard         Backboard
}
