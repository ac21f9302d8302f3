package catalog

// Casters is a set of casters.
type Casters struct {
	Part
	SetOf    int
	RatingKg float64 // of each caster
	Brakes   int     // how many of the set have brakes
	Swivel   int     // how many of the set swivel
	WheelM   float64 // wheel diameter
}

// Sundry is any other part, found by the role it plays.
type Sundry struct {
	Part
	Role     string
	RatingA  float64 // 0: none stated
	Spaces   int     // breaker spaces of a load centre; 0: none stated
	Mount    string  // of a load centre, the mount of the breakers it takes, in lower case; "": not stated
	VolumeM3 float64 // inside, of a box; 0: not stated
}

// A Shape is the profile of a section.
type Shape string

// The shapes.
const (
	SquareTube Shape = "square-tube"
	Flat       Shape = "flat"
	Angle      Shape = "angle"
	Ply        Shape = "ply"
)

// Section is stock that frames and rails are cut from, by length.
type Section struct {
	Part
	CentsPerM                   float64 // unrounded, as of a Cable; 0: not stated, the stock is not bought
	LowCentsPerM, HighCentsPerM float64
	KgPerM                      float64 // default: of steel
	Shape                       Shape
	// WidthM and HeightM are the outer sides: of a square tube equal, of a flat the thickness and, on its edge,
	// the height; of an angle the level and the upright leg. WallM is the wall of a tube, the thickness of an angle
	// or of ply; 0 of a flat.
	WidthM, HeightM, WallM float64
	YieldPa                float64 // yield strength; default 235 MPa
}
