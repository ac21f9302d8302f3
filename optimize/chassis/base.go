package chassis

import (
	"math"

	"cartwright/scenarios"
)

// Edge is a line from wheel to wheel over which the cart can tip.
type Edge struct {
	ReachM float64 // distance from the point on the floor below the middle of the cart
	Lean   float64 // how much nearer to the edge a body is for each metre of its offset sideways
}

// Base is the polygon between the wheels: its edges to the sides, and those to the ends.
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

// Rectangle returns the base of four wheels at the corners, or more along the sides, of track and wheelbase in metres.
func Rectangle(trackM, wheelbaseM float64) Base {
	return Base{
		Side: Edge{ReachM: trackM / 2, Lean: 1},
		End:  Edge{ReachM: wheelbaseM / 2},
	}
}

// Triangle returns the base of three wheels: two of them a track apart at one end, and one in the middle
// of the other, a wheelbase away. Both edges to the single wheel count as sides. Straight across from the middle of
// the cart each is a quarter of the track away; the distance to the line is less, since it runs askew.
//
// Source: plane geometry, the distance of a point from a line.
func Triangle(trackM, wheelbaseM float64) Base {
	askew := wheelbaseM / math.Hypot(wheelbaseM, trackM/2) // cosine of its angle with the cart's length
	return Base{
		Side: Edge{ReachM: trackM / 4 * askew, Lean: askew},
		End:  Edge{ReachM: wheelbaseM / 2},
	}
}
