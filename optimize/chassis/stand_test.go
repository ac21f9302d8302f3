package chassis

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// apartM returns how far two modules are apart on the widest of three axes; below 0 where they share room.
func apartM(a, b Standing) float64 {
	gap := func(x, l, y, m float64) float64 { return math.Max(y-(x+l), x-(y+m)) }
	return math.Max(gap(a.AlongM, a.LengthM, b.AlongM, b.LengthM),
		math.Max(gap(a.AcrossM, a.DepthM, b.AcrossM, b.DepthM), gap(a.UpM, a.HighM, b.UpM, b.HighM)))
}

func TestModulesStandOnTheirShelfAndApart(t *testing.T) {
	const hair = 1e-9
	rapid.Check(t, func(t *rapid.T) {
		length := func(low, high float64, what string) float64 { return rapid.Float64Range(low, high).Draw(t, what) }
		sh := &scenarios.Shelf{LengthM: length(0.3, 2, "long"), DepthM: length(0.2, 1, "deep"), GapM: length(0, 0.05, "gap"),
			ClearHeightM: length(0.2, 1, "clear"), Stack: rapid.IntRange(1, 3).Draw(t, "stack")}
		var sets []Set
		taken := 0.0
		for range rapid.IntRange(1, 3).Draw(t, "kinds") {
			b := &catalog.Battery{LengthM: length(0.05, 0.5, "l"), WidthM: length(0.05, 0.5, "w"), HeightM: length(0.05, 0.2, "h")}
			b.MassKg = length(1, 100, "kg")
			one := Set{b, rapid.IntRange(1, 12).Draw(t, "modules")}
			l, w, _, columns := columnsOf(b, sh, one.Modules)
			if taken += float64(columns) * (l + sh.GapM); taken <= sh.LengthM+sh.GapM && w <= sh.DepthM {
				sets = append(sets, one)
			} else {
				taken -= float64(columns) * (l + sh.GapM)
			}
		}
		all := Stand(sh, sets)
		wanted := 0
		for _, s := range sets {
			wanted += s.Modules
		}
		if len(all) != wanted {
			t.Errorf("%d modules stand, want %d", len(all), wanted)
		}
		for i, m := range all {
			if m.AlongM < -hair || m.AlongM+m.LengthM > sh.LengthM+hair || m.AcrossM < -hair || m.AcrossM+m.DepthM > sh.DepthM+hair ||
				m.UpM < 0 || m.UpM+m.HighM > sh.ClearHeightM+hair {
				t.Errorf("%+v is beyond the shelf %+v", m, sh)
			}
			for _, other := range all[:i] {
				least := sh.GapM
				if m.UpM != other.UpM {
					least = 0 // one stands on the other
				}
				if apartM(m, other) < least-hair {
					t.Errorf("%+v and %+v are nearer than %v", m, other, least)
				}
			}
		}
	})
}

// One module stands in the middle of its shelf, and two kinds so that their weight does.
func TestWeightStandsInTheMiddle(t *testing.T) {
	sh := &scenarios.Shelf{LengthM: 1, DepthM: 0.5, ClearHeightM: 0.3, GapM: 0.02, Stack: 1}
	light := &catalog.Battery{LengthM: 0.4, WidthM: 0.3, HeightM: 0.2}
	light.MassKg = 20
	heavy := &catalog.Battery{LengthM: 0.3, WidthM: 0.3, HeightM: 0.2}
	heavy.MassKg = 30
	for _, sets := range [][]Set{{{light, 1}}, {{light, 1}, {heavy, 1}}} {
		kg, along, across := 0.0, 0.0, 0.0
		for _, m := range Stand(sh, sets) {
			kg += m.Battery.MassKg
			along += m.Battery.MassKg * (m.AlongM + m.LengthM/2)
			across += m.Battery.MassKg * (m.AcrossM + m.DepthM/2)
		}
		if !near(along/kg, 0.5) || !near(across/kg, 0.25) {
			t.Errorf("%d kinds: their weight is %v m along and %v m deep, want 0.5 and 0.25", len(sets), along/kg, across/kg)
		}
	}
}

func TestStacksAreFilledFromBelow(t *testing.T) {
	sh := &scenarios.Shelf{LengthM: 0.41, DepthM: 0.31, ClearHeightM: 0.5, Stack: 2}
	b := &catalog.Battery{LengthM: 0.4, WidthM: 0.3, HeightM: 0.2}
	all := Stand(sh, []Set{{b, 2}})
	if len(all) != 2 || all[0].UpM != 0 || all[1].UpM != 0.2 {
		t.Errorf("%+v, want one on the other", all)
	}
}

// Five modules of 0.4 x 0.3 m on a shelf 0.7 m deep with gaps of 0.02 m: two columns of two, and the last one of one
// module in the middle of the depth. The columns take 3 * 0.4 + 2 * 0.02 = 1.24 m; their weight is at 10 kg *
// (2 * 0.2 + 2 * 0.62 + 1.04) / 50 kg = 0.536 m of them.
func TestTheLastColumnStandsInTheMiddle(t *testing.T) {
	sh := &scenarios.Shelf{LengthM: 1.4, DepthM: 0.7, ClearHeightM: 0.3, GapM: 0.02, Stack: 1}
	b := &catalog.Battery{LengthM: 0.4, WidthM: 0.3, HeightM: 0.2}
	b.MassKg = 10
	shift := 1.4 - 1.24 // 0.7 - 0.536 = 0.164 m would put the weight in the middle: more than there is room for
	want := [][2]float64{{0, 0.04}, {0, 0.36}, {0.42, 0.04}, {0.42, 0.36}, {0.84, 0.2}}
	for i, m := range Stand(sh, []Set{{b, 5}}) {
		if !near(m.AlongM, want[i][0]+shift) || !near(m.AcrossM, want[i][1]) {
			t.Errorf("module %d stands at %v m along and %v m deep, want %v and %v", i, m.AlongM, m.AcrossM, want[i][0]+shift, want[i][1])
		}
	}
}

// A module is turned so that the columns are shorter: 0.4 x 0.3 m on 0.65 m of depth, one a column if long ways
// across, two if not. Two modules take 0.4 m in one column of two and 0.6 m in two columns of one.
func TestModulesAreTurnedTheShorterWay(t *testing.T) {
	b := &catalog.Battery{LengthM: 0.4, WidthM: 0.3, HeightM: 0.2}
	for modules, want := range map[int]float64{1: 0.3, 2: 0.4} {
		all := Stand(&scenarios.Shelf{LengthM: 2, DepthM: 0.65, ClearHeightM: 0.3, Stack: 1}, []Set{{b, modules}})
		if len(all) != modules || all[0].LengthM != want {
			t.Errorf("%d: %+v, want each %v m along", modules, all, want)
		}
	}
}
