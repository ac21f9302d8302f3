package chassis

import (
	"math"

	"cartwright/scenarios"
)

// Edge is a line from wheel to wheel over which the cart can tip.
type Edge struct {
	ReachM float64 // how far it is from the point on the floor below the middle of the cart
	Lean   float64 // how much nearer to it a body is for each metre that it stands to the side
}

// Base is what the wheels stand on: the edges to the sides, and those to the ends.
type Base struct {
	Side, End Edge
}

// BaseOf returns the base of a cart: three wheels stand on a triangle, more of them on a rectangle.
func BaseOf(c *scenarios.Cart) Base {
	if c.Casters == 3 {
		return Triangle(c.TrackM, c.WheelbaseM)
	}
	return Rectangle(c.TrackM, c.WheelbaseM)
}

// Rectangle returns the base of four wheels or more at the corners, and along the sides, of track and
// wheelbase in metres.
func Rectangle(trackM, wheelbaseM float64) Base {
	return Base{
		Side: Edge{ReachM: trackM / 2, Lean: 1},
		End:  Edge{ReachM: wheelbaseM / 2},
	}
}

// Triangle returns the base of three wheels: two of them a track apart at one end, and one in the middle
// of the other, a wheelbase away. Both edges to the single wheel count as sides. In the middle of the cart
// each is a quarter of the track away, and nearer yet by how far it is askew.
//
// Source: plane geometry, the distance of a point from a line.
func Triangle(trackM, wheelbaseM float64) Base {
	askew := wheelbaseM / math.Hypot(wheelbaseM, trackM/2) // cosine of its angle with the cart's length
	return Base{
		Side: Edge{ReachM: trackM / 4 * askew, Lean: askew},
		End:  Edge{ReachM: wheelbaseM / 2},
	}
}
