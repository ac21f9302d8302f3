package frame_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/chassis/frame"

	"pgregory.net/rapid"
)

func tube(b, t float64) *catalog.Section {
	return &catalog.Section{Shape: catalog.SquareTube, WidthM: b, WallM: t, YieldPa: 235e6}
}

// TestTubesOfTheStandard: EN 10219-2 rounds the corners: its tubes weigh and bend a little less than sharp ones.
func TestTubesOfTheStandard(t *testing.T) {
	for _, c := range []struct {
		b, t             float64
		kgPerM, inertia  float64 // kg/m and cm4 of the standard
		heavier, stiffer float64 // at most so much above it
	}{
		{0.040, 0.003, 3.30, 9.32, 0.06, 0.10},
		{0.050, 0.003, 4.25, 19.5, 0.05, 0.07},
	} {
		kg := frame.TubeKgPerM(c.b, c.t)
		b, ok := frame.BendingOf(tube(c.b, c.t))
		if over := kg/c.kgPerM - 1; over < 0.03 || over > c.heavier {
			t.Errorf("%v m: %v kg/m, %.1f %% above the standard", c.b, kg, 100*over)
		}
		if over := 1e8*b.InertiaM4/c.inertia - 1; !ok || over < 0.05 || over > c.stiffer {
			t.Errorf("%v m: %v cm4, %.1f %% above the standard", c.b, 1e8*b.InertiaM4, 100*over)
		}
		if want := b.InertiaM4 / (c.b / 2); b.ModulusM3 != want {
			t.Errorf("%v m: Z %v, want %v", c.b, b.ModulusM3, want)
		}
	}
}

// TestBendingOf: a flat stands on its edge; an equal angle of 50 x 5 has 11.0 cm4 and 3.05 cm3 in EN 10056-1, with its
// corners rounded (from memory); ply is no rail.
func TestBendingOf(t *testing.T) {
	flat, ok := frame.BendingOf(&catalog.Section{Shape: catalog.Flat, WidthM: 0.005, HeightM: 0.050})
	if !ok || math.Abs(1e12*flat.InertiaM4-52083.33) > 0.01 || math.Abs(1e9*flat.ModulusM3-2083.33) > 0.01 {
		t.Errorf("flat: %+v, %v", flat, ok)
	}
	angle, ok := frame.BendingOf(&catalog.Section{Shape: catalog.Angle, WidthM: 0.050, HeightM: 0.050, WallM: 0.005})
	if !ok || math.Abs(1e8*angle.InertiaM4/11.0-1) > 0.03 || math.Abs(1e6*angle.ModulusM3/3.05-1) > 0.04 {
		t.Errorf("angle: %v cm4, %v cm3, %v; want 11.0 and 3.05", 1e8*angle.InertiaM4, 1e6*angle.ModulusM3, ok)
	}
	if b, ok := frame.BendingOf(&catalog.Section{Shape: catalog.Ply, WidthM: 0.3, HeightM: 0.018}); ok {
		t.Errorf("ply: %+v", b)
	}
	// An angle whose legs are nearly all wall is a flat of the same outline.
	solid, _ := frame.BendingOf(&catalog.Section{Shape: catalog.Angle, WidthM: 0.010, HeightM: 0.050, WallM: 0.010})
	if want := 0.010 * math.Pow(0.050, 3) / 12; math.Abs(solid.InertiaM4/want-1) > 1e-9 {
		t.Errorf("solid angle: %v, want %v", solid.InertiaM4, want)
	}
}

// TestAngleBySlices adds up an angle in thin level slices.
func TestAngleBySlices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		level, upright := rapid.Float64Range(0.02, 0.1).Draw(t, "level"), rapid.Float64Range(0.02, 0.1).Draw(t, "upright")
		wall := rapid.Float64Range(0.003, 0.01).Draw(t, "wall")
		const n = 20000
		dh := upright / n
		area, first := 0.0, 0.0
		width := func(k int) float64 {
			if (float64(k)+0.5)*dh < wall {
				return level
			}
			return wall
		}
		for k := range n {
			area += width(k) * dh
			first += width(k) * dh * (float64(k) + 0.5) * dh
		}
		y, inertia := first/area, 0.0
		for k := range n {
			d := (float64(k)+0.5)*dh - y
			inertia += width(k) * dh * d * d
		}
		b, ok := frame.BendingOf(&catalog.Section{Shape: catalog.Angle, WidthM: level, HeightM: upright, WallM: wall})
		if !ok || math.Abs(b.InertiaM4/inertia-1) > 1e-2 || math.Abs(b.ModulusM3/(inertia/max(y, upright-y))-1) > 1e-2 {
			t.Fatalf("%+v; slices have I %v, Z %v", b, inertia, inertia/max(y, upright-y))
		}
	})
}

// TestRailsCarryKg: short rails are limited by stress, 8 Z 0.6 yield / L, long ones by sag, 384 E I / (5 · 240 L²); many
// carry as often, and what is no rail carries nothing.
func TestRailsCarryKg(t *testing.T) {
	const g = 9.80665
	s := tube(0.04, 0.003)
	b, _ := frame.BendingOf(s)
	for _, c := range []struct {
		name  string
		spanM float64
		count int
		want  float64
	}{
		{"short", 0.5, 2, 2 * 0.6 * 235e6 * 8 * b.ModulusM3 / 0.5 / g},
		{"long", 2, 2, 2 * 384 * 210e9 * b.InertiaM4 / (5 * 240 * 4) / g},
		{"three", 2, 3, 3 * 384 * 210e9 * b.InertiaM4 / (5 * 240 * 4) / g},
		{"no span", 0, 2, 0},
		{"none", 1, 0, 0},
	} {
		if got := frame.RailsCarryKg(s, c.spanM, c.count); math.Abs(got-c.want) > 1e-9*c.want {
			t.Errorf("%s: %v kg, want %v", c.name, got, c.want)
		}
	}
	if got := frame.RailsCarryKg(&catalog.Section{Shape: catalog.Ply, WidthM: 0.3, HeightM: 0.018, YieldPa: 30e6}, 1, 2); got != 0 {
		t.Errorf("ply: %v kg", got)
	}
}

func TestSourcesAreComplete(t *testing.T) {
	for _, s := range frame.Sources() {
		if s.Kind == "" || s.Name == "" || s.Source == "" || s.Confidence == "" {
			t.Errorf("incomplete: %+v", s)
		}
	}
	if len(frame.Sources()) != 5 {
		t.Errorf("%d sources, want 5", len(frame.Sources()))
	}
}
