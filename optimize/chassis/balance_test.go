package chassis

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// within is how far two sums may differ that were added in another order.
const within = 1e-9

func near(a, b float64) bool {
	return a == b || math.Abs(a-b) <= within*(1+min(math.Abs(a), math.Abs(b)))
}

func drawBodies(t *rapid.T, offset *rapid.Generator[float64]) []Body {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Body {
		return Body{
			MassKg:  rapid.Float64Range(0.5, 200).Draw(t, "mass"),
			HeightM: rapid.Float64Range(0.05, 1.5).Draw(t, "height"),
			OffsetM: offset.Draw(t, "offset"),
		}
	}), 1, 8).Draw(t, "bodies")
}

// With all bodies on one side the cart tips when its centre of mass, turned with the cart, stands over
// the wheels of that side: geometry with no sum of moments.
func TestTiltMatchesGeometry(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bodies := drawBodies(t, rapid.Float64Range(0, 0.6))
		track, wheelbase := rapid.Float64Range(0.3, 1.5).Draw(t, "track"), rapid.Float64Range(0.3, 2).Draw(t, "wheelbase")
		var mass, x, y float64
		for _, b := range bodies {
			mass += b.MassKg
			x += b.MassKg * b.OffsetM
			y += b.MassKg * b.HeightM
		}
		x, y = x/mass, y/mass
		h, tilt := Tilt(bodies, Rectangle(track, wheelbase))
		if !near(h, y) {
			t.Errorf("centre of mass %v m up, want %v m", h, y)
		}
		sin, cos := math.Sincos(tilt * math.Pi / 180)
		// Turned toward the side, the centre of mass stands at x cos + y sin, the wheels at half cos.
		side := track/2*cos - (x*cos + y*sin)
		length := wheelbase/2*cos - y*sin
		if math.Abs(min(side, length)) > 1e-9 {
			t.Errorf("at %v degrees the centre of mass stands %v m inside the wheels", tilt, min(side, length))
		}
	})
}

// On three wheels the cart tips when its centre of mass, on a floor that slopes across a side of the
// triangle, stands over that side: vectors, with no formula for a distance. Found by halving.
func TestThreeWheelsMatchGeometry(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bodies := drawBodies(t, rapid.Float64Range(0, 0.2))
		track, wheelbase := rapid.Float64Range(0.5, 1.5).Draw(t, "track"), rapid.Float64Range(0.3, 2).Draw(t, "wheelbase")
		var mass, y, h float64
		for _, b := range bodies {
			mass, y, h = mass+b.MassKg, y+b.MassKg*b.OffsetM, h+b.MassKg*b.HeightM
		}
		y, h = y/mass, h/mass
		wheels := [][2]float64{{0, -track / 2}, {0, track / 2}, {wheelbase, 0}}
		stands := func(deg float64) bool {
			for i, a := range wheels {
				b := wheels[(i+1)%3]
				// The slope falls across the edge, away from the third wheel; the weight's line meets the
				// floor that far from below the centre.
				along := [2]float64{b[0] - a[0], b[1] - a[1]}
				out := [2]float64{along[1], -along[0]}
				if third := wheels[(i+2)%3]; out[0]*(third[0]-a[0])+out[1]*(third[1]-a[1]) > 0 {
					out = [2]float64{-out[0], -out[1]}
				}
				n := math.Hypot(out[0], out[1])
				shift := h * math.Tan(deg*math.Pi/180) / n
				foot := [2]float64{wheelbase/2 + shift*out[0], y + shift*out[1]}
				if out[0]*(foot[0]-a[0])+out[1]*(foot[1]-a[1]) > 0 {
					return false
				}
			}
			return true
		}
		_, tilt := Tilt(bodies, BaseOf(&scenarios.Cart{Casters: 3, TrackM: track, WheelbaseM: wheelbase}))
		if tilt < 0 {
			if stands(0) {
				t.Errorf("%v degrees, and it stands on a level floor", tilt)
			}
			return
		}
		low, high := 0.0, 89.9
		for range 60 {
			if middle := (low + high) / 2; stands(middle) {
				low = middle
			} else {
				high = middle
			}
		}
		if math.Abs(tilt-low) > 1e-6 {
			t.Errorf("%v degrees, the centre of mass stands over a side at %v", tilt, low)
		}
	})
}

// Which side a body is on makes no difference, and to count every offset as if on one side is never
// more than what the centre of mass allows.
func TestTiltErrsToTheSafeSide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bodies := drawBodies(t, rapid.Float64Range(-0.6, 0.6))
		_, tilt := Tilt(bodies, Rectangle(0.7, 2))
		var mass, x, y float64
		mirrored := make([]Body, len(bodies))
		for i, b := range bodies {
			mass, x, y = mass+b.MassKg, x+b.MassKg*b.OffsetM, y+b.MassKg*b.HeightM
			b.OffsetM = -b.OffsetM
			mirrored[i] = b
		}
		if _, other := Tilt(mirrored, Rectangle(0.7, 2)); !near(tilt, other) {
			t.Errorf("%v degrees, mirrored %v degrees", tilt, other)
		}
		exact := math.Atan2(min(0.35-math.Abs(x/mass), 1), y/mass) * 180 / math.Pi
		if tilt > exact+1e-9 {
			t.Errorf("%v degrees, the centre of mass allows %v", tilt, exact)
		}
	})
}

// The margins of the bodies sum to nothing at the tilt, to more below it and to less above it.
func TestTiltMarginsChangeSignAtTheTilt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bodies := drawBodies(t, rapid.Float64Range(-0.2, 0.2))
		base := Rectangle(0.6, 0.5)
		if rapid.Bool().Draw(t, "three wheels") {
			base = Triangle(1.2, 0.5)
		}
		sum := func(deg float64) float64 {
			side, length := 0.0, 0.0
			for _, b := range bodies {
				side += TiltMargin(b, base.Side, deg)
				length += TiltMargin(b, base.End, deg)
			}
			return min(side, length)
		}
		_, tilt := Tilt(bodies, base)
		if at := sum(tilt); math.Abs(at) > 1e-6 {
			t.Errorf("margin %v kg·m at the tilt", at)
		}
		if sum(tilt-0.1) <= 0 || sum(tilt+0.1) >= 0 {
			t.Errorf("margins %v and %v about the tilt of %v degrees", sum(tilt-0.1), sum(tilt+0.1), tilt)
		}
	})
}

func TestTilt(t *testing.T) {
	for _, c := range []struct {
		name             string
		bodies           []Body
		track, wheelbase float64
		height, tilt     float64
	}{
		{"nothing", nil, 1, 1, 0, 90},
		{"no mass", []Body{{0, 1, 3}}, 1, 1, 0, 90},
		{"as high as half the track", []Body{{5, 0.5, 0}}, 1, 4, 0.5, 45},
		{"as high as half the wheelbase", []Body{{5, 0.5, 0}}, 4, 1, 0.5, 45},
		{"on the floor", []Body{{5, 0, 0.2}}, 1, 1, 0, 90},
		{"over the wheels", []Body{{5, 0.5, 0.5}}, 1, 1, 0.5, 0},
		{"outside the wheels", []Body{{5, 0.5, -1}}, 1, 1, 0.5, -45},
		{"to the left", []Body{{5, 0.3, -0.2}}, 1, 4, 0.3, 45},
		{"an offset does not count lengthways", []Body{{5, 0.5, 0.2}}, 4, 1, 0.5, 45},
		{"two heights", []Body{{10, 0.2, 0}, {30, 0.6, 0}}, 1, 4, 0.5, 45},
		{"two sides count as one", []Body{{5, 0.3, -0.2}, {5, 0.3, 0.2}}, 1, 4, 0.3, 45},
		// IEC 62368-1: 10 degrees; tan 10 is 0.17633 (table of tangents).
		{"ten degrees", []Body{{100, 1, 0}}, 2 * 0.17632698, 4, 1, DefaultTiltDeg},
	} {
		t.Run(c.name, func(t *testing.T) {
			h, tilt := Tilt(c.bodies, Rectangle(c.track, c.wheelbase))
			if !near(h, c.height) || math.Abs(tilt-c.tilt) > 1e-6 {
				t.Errorf("%v m, %v degrees; want %v m, %v degrees", h, tilt, c.height, c.tilt)
			}
		})
	}
}

func TestTiltMargin(t *testing.T) {
	for _, c := range []struct {
		name      string
		b         Body
		half, deg float64
		want      float64
	}{
		{"on level ground", Body{10, 3, 0.1}, 0.4, 0, 3},
		{"to the other side", Body{10, 3, -0.1}, 0.4, 0, 3},
		{"at 45 degrees", Body{10, 0.3, 0}, 0.4, 45, 1},
		{"too high", Body{10, 0.5, 0}, 0.4, 45, -1},
		{"no mass", Body{0, 0.5, 0.1}, 0.4, 45, 0},
	} {
		if got := TiltMargin(c.b, Edge{ReachM: c.half, Lean: 1}, c.deg); !near(got, c.want) {
			t.Errorf("%s: %v kg·m, want %v kg·m", c.name, got, c.want)
		}
	}
}

// The triangle of 3, 4 and 5: half a track of 0.3 m, a wheelbase of 0.4 m.
func TestThreeWheels(t *testing.T) {
	base := Triangle(0.6, 0.4)
	for _, c := range []struct {
		name string
		b    Body
		want float64
	}{
		{"in the middle", Body{10, 1, 0}, 1.2},
		{"to the side", Body{10, 1, -0.05}, 0.8},
		{"over the side", Body{10, 1, 0.15}, 0},
	} {
		if got := TiltMargin(c.b, base.Side, 0); !near(got, c.want) {
			t.Errorf("%s: %v kg·m, want %v kg·m", c.name, got, c.want)
		}
	}
	if got := TiltMargin(Body{10, 1, 0.15}, base.End, 0); !near(got, 2) {
		t.Errorf("to the end: %v kg·m, want 2 kg·m", got)
	}
	for wheels, want := range map[int]Base{3: base, 4: Rectangle(0.6, 0.4), 6: Rectangle(0.6, 0.4)} {
		if got := BaseOf(&scenarios.Cart{Casters: wheels, TrackM: 0.6, WheelbaseM: 0.4}); got != want {
			t.Errorf("%d wheels: %+v, want %+v", wheels, got, want)
		}
	}
}

func TestBodies(t *testing.T) {
	s := &scenarios.Scenario{Cart: scenarios.Cart{
		CasterMassHeightM: 0.06, Rolling: 0.02, Grip: 0.5,
		Frame: scenarios.Mass{Name: "frame", MassKg: 40, HeightM: 0.35},
		DeckItems: []scenarios.Mass{
			{Name: "reel", MassKg: 12, HeightM: 0.9, OffsetM: -0.2},
			{Name: "toolbox", MassKg: 8, HeightM: 0.95, OffsetM: 0.1},
		},
		Backboard: scenarios.Backboard{ElevationM: 0.8, OffsetM: 0.25},
	}}
	want := []Body{{40, 0.35, 0}, {12, 0.9, -0.2}, {8, 0.95, 0.1}}
	fixed := FixedBodies(s, &catalog.Catalog{})
	if len(fixed) != len(want) {
		t.Fatalf("%d bodies, want %d", len(fixed), len(want))
	}
	for i := range want {
		if fixed[i] != want[i] {
			t.Errorf("body %d: %+v, want %+v", i, fixed[i], want[i])
		}
	}
	if got := MassKg(fixed); got != 60 {
		t.Errorf("%v kg, want 60 kg", got)
	}
	if got := MassKg(nil); got != 0 {
		t.Errorf("nothing weighs %v kg", got)
	}
	module := &catalog.Battery{Part: catalog.Part{MassKg: 45}, HeightM: 0.2}
	if got, want := ModuleBody(&scenarios.Shelf{ElevationM: 0.5}, module), (Body{45, 0.6, 0}); got != want {
		t.Errorf("module %+v, want %+v", got, want)
	}
	if got, want := BackboardBody(s, 22), (Body{22, 0.8, 0.25}); got != want {
		t.Errorf("on the backboard %+v, want %+v", got, want)
	}
	if got, want := CasterBody(s, 9), (Body{9, 0.06, 0}); got != want {
		t.Errorf("casters %+v, want %+v", got, want)
	}
}

func TestSourcesAreComplete(t *testing.T) {
	for _, s := range Sources() {
		if s.Kind == "" || s.Name == "" || s.Source == "" || s.Confidence == "" {
			t.Errorf("incomplete: %+v", s)
		}
	}
	if len(Sources()) == 0 {
		t.Error("no sources")
	}
}
