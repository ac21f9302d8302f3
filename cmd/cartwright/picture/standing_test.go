package picture

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

func TestModulesStandApartAndInTheMiddle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(low, high float64, what string) float64 { return rapid.Float64Range(low, high).Draw(t, what) }
		sh := &scenarios.Shelf{LengthM: length(0.3, 2, "long"), DepthM: length(0.2, 1, "deep"), GapM: length(0, 0.05, "gap")}
		b := catalog.Battery{LengthM: length(0.05, 0.5, "l"), WidthM: length(0.05, 0.5, "w"), HeightM: 0.2}
		b.ID, b.MassKg = "b", 20
		c := &catalog.Catalog{Batteries: []catalog.Battery{b}}
		all := stand(c, sh, []plan.ShelfModules{{Part: "b", Modules: rapid.IntRange(1, 12).Draw(t, "modules")}})
		moment := 0.0
		for i, m := range all {
			moment += m.x + m.l/2 - sh.LengthM/2
			for _, other := range all[:i] {
				apartX := math.Max(other.x-(m.x+m.l), m.x-(other.x+other.l))
				apartY := math.Max(other.y-(m.y+m.w), m.y-(other.y+other.w))
				if math.Max(apartX, apartY) < sh.GapM-1e-9 {
					t.Errorf("%+v and %+v are nearer than the gap of %v", m, other, sh.GapM)
				}
			}
		}
		// A column that is not full may keep the weight from the middle, by at most half of the length.
		if fits(c, sh, []plan.ShelfModules{{Part: "b", Modules: len(all)}}) && math.Abs(moment/float64(len(all))) > sh.LengthM/2 {
			t.Errorf("the weight is %v m from the middle", moment/float64(len(all)))
		}
	})
}

func TestOneModuleStandsInTheMiddle(t *testing.T) {
	sh := &scenarios.Shelf{LengthM: 1, DepthM: 0.5, GapM: 0.02}
	b := catalog.Battery{LengthM: 0.4, WidthM: 0.3, HeightM: 0.2}
	b.ID, b.MassKg = "b", 20
	all := stand(&catalog.Catalog{Batteries: []catalog.Battery{b}}, sh, []plan.ShelfModules{{Part: "b", Modules: 1}})
	m := all[0]
	if math.Abs(m.x+m.l/2-0.5) > 1e-12 || math.Abs(m.y+m.w/2-0.25) > 1e-12 {
		t.Errorf("it stands at %+v, want its middle 0.5 m along and 0.25 m deep", m)
	}
}
