package chassis

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/chassis/frame"
	"cartwright/scenarios"

	"pgregory.net/rapid"
)

// TestPushOfTheGuidance: UK HSE guidance L23 has 200 N (men) and 150 N (women) to start or stop, 100 N and 70 N to keep
// a load rolling: on a hard level floor that is rolled at 2 % these are 510 and 357 kg, and on soft ground, at 10 %, 102
// and 71 kg. The guidance's figures in four texts of one origin; the masses computed.
func TestPushOfTheGuidance(t *testing.T) {
	for _, c := range []struct{ rolling, newtons, wantKg float64 }{{0.02, 100, 510}, {0.02, 70, 357}, {0.10, 100, 102}, {0.10, 70, 71}} {
		if at := PushN(c.wantKg, c.rolling, 0); math.Abs(at-c.newtons) > c.newtons/100 {
			t.Errorf("%v kg at %v: %v N, want %v", c.wantKg, c.rolling, at, c.newtons)
		}
	}
	if got := PushN(300, 0.05, 0.08); math.Abs(got-300*0.13*9.80665) > 1e-9 {
		t.Errorf("300 kg on grass up 8 %%: %v N", got)
	}
}

// TestStepN: torques about the step's edge balance; a step as high as the axle is not to be climbed.
func TestStepN(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(0.02, 0.2).Draw(t, "radius")
		h := r * rapid.Float64Range(0, 0.99).Draw(t, "step")
		m := rapid.Float64Range(1, 500).Draw(t, "mass")
		f := StepN(m, r, h)
		// The force acts r - h above the edge; the weight's line passes it at the side of a triangle with hypotenuse r.
		side := math.Sqrt(r*r - (r-h)*(r-h))
		if math.Abs(f*(r-h)-m*9.80665*side) > 1e-6*m {
			t.Fatalf("%v N", f)
		}
	})
	for _, h := range []float64{0.06, 0.07} {
		if got := StepN(1, 0.06, h); !math.IsInf(got, 1) {
			t.Errorf("a step of %v m: %v N", h, got)
		}
	}
}

// TestHeldSlope: grip · braked / casters · cos(slope) = sin(slope) at the slope that is just held.
func TestHeldSlope(t *testing.T) {
	for _, c := range []struct {
		grip            float64
		braked, casters int
	}{{0.5, 2, 4}, {0.5, 0, 4}, {0.7, 4, 4}, {0.3, 2, 6}} {
		angle := math.Atan(HeldSlope(c.grip, c.braked, c.casters))
		if hold := c.grip * float64(c.braked) / float64(c.casters) * math.Cos(angle); math.Abs(hold-math.Sin(angle)) > 1e-12 {
			t.Errorf("%+v: holds %v, pulled by %v", c, hold, math.Sin(angle))
		}
	}
}

func TestTwoCarry(t *testing.T) {
	if got := TwoCarryKg(300); got != 150 {
		t.Errorf("%v kg on each of two wheels, want 150", got)
	}
}

// TestFrameOfPieces: each piece weighs its length, as often as it is there, at its height; without sections the frame is
// as stated.
func TestFrameOfPieces(t *testing.T) {
	c := &catalog.Catalog{Sections: []catalog.Section{
		{Part: catalog.Part{ID: "flat"}, KgPerM: 2},
		{Part: catalog.Part{ID: "tube"}, KgPerM: 3.3},
	}}
	s := &scenarios.Scenario{Cart: scenarios.Cart{Pieces: []scenarios.Piece{
		{Section: "tube", LengthM: 1.5, Count: 4, HeightM: 0.3}, {Section: "flat", LengthM: 0.5, Count: 2, HeightM: 0.7},
	}}}
	got := FixedBodies(s, c)
	if len(got) != 3 || !near(got[1].MassKg, 19.8) || got[1].HeightM != 0.3 || !near(got[2].MassKg, 2) || got[2].HeightM != 0.7 {
		t.Errorf("%+v", got)
	}
}

// TestLightFrame: a frame of light square tube for two rack modules weighs about 50 lb. Common practice, no source.
func TestLightFrame(t *testing.T) {
	const cutM = 8*0.6 + 4*0.7 // eight cross pieces of 0.6 m, four posts of 0.7 m, of 30 x 30 x 3.2
	lb := cutM * frame.TubeKgPerM(0.030, 0.0032) / 0.45359237
	if lb < 40 || lb > 60 {
		t.Errorf("%v lb, want about 50", lb)
	}
}

// TestShelfMaxKg: the smaller of what is stated and what the rails carry.
func TestShelfMaxKg(t *testing.T) {
	c := &catalog.Catalog{Sections: []catalog.Section{
		{Part: catalog.Part{ID: "other"}, Shape: catalog.Flat, WidthM: 0.001, HeightM: 0.01, YieldPa: 235e6},
		{Part: catalog.Part{ID: "flat"}, Shape: catalog.Flat, WidthM: 0.005, HeightM: 0.050, YieldPa: 235e6},
	}}
	rails := frame.RailsCarryKg(&c.Sections[1], 1, 2) // 479 kg
	for _, k := range []struct {
		name     string
		statedKg float64
		section  string
		want     float64
	}{
		{"neither", math.Inf(1), "", math.Inf(1)},
		{"stated", 100, "", 100},
		{"rails", math.Inf(1), "flat", rails},
		{"stated is less", 100, "flat", 100},
		{"rails are less", 500, "flat", rails},
		{"no such section", 500, "gone", 500},
	} {
		sh := &scenarios.Shelf{MaxMassKg: k.statedKg}
		if k.section != "" {
			sh.Rails = &scenarios.Rails{Section: k.section, SpanM: 1, Count: 2}
		}
		if got := ShelfMaxKg(sh, c); got != k.want {
			t.Errorf("%s: %v kg, want %v", k.name, got, k.want)
		}
	}
}

// TestArrayBody: modules that are carried along are at their height in the middle; without sun there are none.
func TestArrayBody(t *testing.T) {
	if got, want := ArrayBody(&scenarios.Scenario{Sun: &scenarios.Sun{HeightM: 1.2}}, 40), (Body{40, 1.2, 0}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	if got := ArrayBody(&scenarios.Scenario{}, 40); got != (Body{}) {
		t.Errorf("no sun: %+v", got)
	}
}
