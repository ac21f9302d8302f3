package chassis

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

const inchM = 0.0254 // m, the international inch, by definition

func TestShelfCapacity(t *testing.T) {
	shelf := func(length, depth, clear, gap float64) scenarios.Shelf {
		return scenarios.Shelf{LengthM: length, DepthM: depth, Stack: 1, ClearHeightM: clear, GapM: gap}
	}
	module := func(length, width, height float64) catalog.Battery {
		return catalog.Battery{LengthM: length, WidthM: width, HeightM: height}
	}
	clear := 0.2
	for _, c := range []struct {
		name  string
		shelf scenarios.Shelf
		bat   catalog.Battery
		want  int
	}{
		{"one that fills it", shelf(0.5, 0.4, 0.2, 0), module(0.5, 0.4, 0.2), 1},
		{"the gap is between, not at the ends", shelf(0.5, 0.4, 0.2, 0.05), module(0.5, 0.4, 0.2), 1},
		{"two with their gap", shelf(0.52, 0.4, 0.2, 0.02), module(0.25, 0.4, 0.2), 2},
		{"two without room for the gap", shelf(0.51, 0.4, 0.2, 0.02), module(0.25, 0.4, 0.2), 1},
		{"gap in depth too", shelf(0.25, 0.81, 0.2, 0.02), module(0.25, 0.4, 0.2), 1},
		{"rows and columns", shelf(1, 0.6, 0.3, 0), module(0.3, 0.2, 0.2), 10},
		{"better turned", shelf(1, 0.3, 0.3, 0), module(0.3, 0.2, 0.2), 5},
		{"better not turned", shelf(0.3, 1, 0.3, 0), module(0.3, 0.2, 0.2), 5},
		{"only turned", shelf(0.4, 0.5, 0.3, 0), module(0.5, 0.4, 0.2), 1},
		{"too tall", shelf(1, 1, 0.2, 0), module(0.3, 0.3, 0.21), 0},
		{"too long", shelf(0.3, 0.3, 1, 0), module(0.31, 0.2, 0.2), 0},
		{"no height stated as a limit", shelf(0.3, 0.3, math.Inf(1), 0), module(0.3, 0.3, 2), 1},
		{"508 mm in 20 in", shelf(20*inchM, 15*inchM, 8*inchM, 0), module(0.508, 0.381, 0.2032), 1},
		{"20 in in 508 mm", shelf(0.508, 0.381, 0.2032, 0), module(20*inchM, 15*inchM, 8*inchM), 1},
		{"two of 10 in in 508 mm", shelf(0.508, 0.254, 0.3, 0), module(10*inchM, 10*inchM, 0.2), 2},
		{"within the tolerance", shelf(0.5, 0.5, 0.2, 0), module(0.5000000004, 0.5, 0.20000000019), 1},
		{"as tall as the tolerance allows", shelf(0.5, 0.5, clear, 0), module(0.5, 0.5, clear*(1+plan.Tolerance/2)), 1},
		{"longer than the tolerance", shelf(0.5, 0.5, 0.2, 0), module(0.500000001, 0.5, 0.2), 0},
		{"taller than the tolerance", shelf(0.5, 0.5, 0.2, 0), module(0.5, 0.5, 0.200000001), 0},
		{"no length", shelf(0.5, 0.5, 0.2, 0), module(0, 0.5, 0.2), 0},
		{"no width", shelf(0.5, 0.5, 0.2, 0), module(0.5, 0, 0.2), 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := ShelfCapacity(&c.shelf, &c.bat); got != c.want {
				t.Errorf("%d modules, want %d", got, c.want)
			}
		})
	}
}

// Columns of mixed kinds take whole columns; a stack of two halves them, and raises the middle of the mass.
func TestColumns(t *testing.T) {
	sh := scenarios.Shelf{LengthM: 1, DepthM: 0.5, ClearHeightM: 0.45, GapM: 0.02, Stack: 2, ElevationM: 0.3}
	b := catalog.Battery{LengthM: 0.3, WidthM: 0.15, HeightM: 0.2}
	b.MassKg = 10
	ways := Columns(&sh, &b)
	if len(ways) != 2 || ways[0].Modules() != 6 || ways[1].Modules() != 2 || ways[0].Most != 3 || ways[1].Most != 6 {
		t.Fatalf("%+v", ways)
	}
	// Six stand in one column of 0.32 m, seven in two; turned, one or two stand in 0.17 m.
	for n, want := range map[int]float64{0: 0, 1: 0.17, 2: 0.17, 3: 0.32, 6: 0.32, 7: 0.64, 18: 0.96} {
		if got := TakenM(&sh, &b, n); !near(got, want) {
			t.Errorf("%d modules take %v m, want %v", n, got, want)
		}
	}
	if got := ShelfCapacity(&sh, &b); got != 18 {
		t.Errorf("%d modules, want 18", got)
	}
	if got := ModuleBody(&sh, &b).HeightM; !near(got, 0.3+0.2) {
		t.Errorf("the middle is %v m high, want 0.5: two layers", got)
	}
}

// Packing in whole millimetres, module after module, row after row.
func TestShelfCapacityMatchesPacking(t *testing.T) {
	pack := func(space, size, gap int) int {
		n := 0
		for at := 0; at+size <= space; at += size + gap {
			n++
		}
		return n
	}
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(t, name) }
		length, depth, clear, gap := mm("length", 50, 1500), mm("depth", 50, 800), mm("clear", 50, 500), mm("gap", 0, 40)
		l, w, h := mm("l", 20, 600), mm("w", 20, 600), mm("h", 20, 500)
		want := max(pack(length, l, gap)*pack(depth, w, gap), pack(length, w, gap)*pack(depth, l, gap))
		if h > clear {
			want = 0
		}
		m := func(mm int) float64 { return float64(mm) / 1000 }
		shelf := scenarios.Shelf{LengthM: m(length), DepthM: m(depth), Stack: 1, ClearHeightM: m(clear), GapM: m(gap)}
		bat := catalog.Battery{LengthM: m(l), WidthM: m(w), HeightM: m(h)}
		if got := ShelfCapacity(&shelf, &bat); got != want {
			t.Errorf("%d modules, packed %d", got, want)
		}
		turned := bat
		turned.LengthM, turned.WidthM = bat.WidthM, bat.LengthM
		if got := ShelfCapacity(&shelf, &turned); got != want {
			t.Errorf("%d modules with length and width swapped, want %d", got, want)
		}
	})
}

// TestLayers: as many as may be stacked, and no more than stand in the clear height.
func TestLayers(t *testing.T) {
	for _, c := range []struct {
		clearM, heightM float64
		stack, want     int
	}{{0.6, 0.2, 3, 3}, {0.6, 0.2, 2, 2}, {0.6, 0.2, 9, 3}, {0.59, 0.2, 3, 2}, {0.19, 0.2, 3, 0}, {math.Inf(1), 0.2, 4, 4}, {0.6, 0, 3, 0}} {
		sh := &scenarios.Shelf{ClearHeightM: c.clearM, Stack: c.stack, LengthM: 1, DepthM: 1}
		if got := Layers(sh, &catalog.Battery{HeightM: c.heightM}); got != c.want {
			t.Errorf("%+v: %d layers", c, got)
		}
	}
}

// TestMixedKindsCanBeSetDown: kinds whose lengths together are within the room stand side by side in whole columns, as
// laid out from the left with a gap between; one more column of any would not.
func TestMixedKindsCanBeSetDown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string, low, high int) float64 {
			return float64(rapid.IntRange(low, high).Draw(t, name)) / 1000
		}
		sh := &scenarios.Shelf{LengthM: mm("length", 300, 2000), DepthM: mm("depth", 200, 800), ClearHeightM: 1,
			GapM: mm("gap", 0, 40), Stack: rapid.IntRange(1, 3).Draw(t, "stack")}
		taken, at := 0.0, 0.0
		for range rapid.IntRange(1, 3).Draw(t, "kinds") {
			b := &catalog.Battery{LengthM: mm("l", 50, 600), WidthM: mm("w", 50, 400), HeightM: mm("h", 50, 400)}
			n := rapid.IntRange(1, 8).Draw(t, "modules")
			kind := TakenM(sh, b, n)
			if math.IsInf(kind, 1) {
				return
			}
			taken += kind
			// Set down: the better turned way, column after column.
			best := math.Inf(1)
			for _, turned := range [][2]float64{{b.LengthM, b.WidthM}, {b.WidthM, b.LengthM}} {
				rows := int((sh.DepthM+sh.GapM)/(turned[1]+sh.GapM) + 1e-9)
				if rows == 0 || turned[0] > sh.LengthM+1e-9 {
					continue
				}
				layers := min(sh.Stack, int(sh.ClearHeightM/b.HeightM+1e-9))
				columns := (n + rows*layers - 1) / (rows * layers)
				best = min(best, float64(columns)*turned[0]+float64(columns-1)*sh.GapM)
			}
			if at > 0 {
				at += sh.GapM
			}
			at += best
		}
		if fits, stands := plan.AtMost(taken, RoomM(sh)), at <= sh.LengthM+1e-9; fits != stands {
			t.Fatalf("%v m of %v m: fits %v; set down it ends at %v m of %v m", taken, RoomM(sh), fits, at, sh.LengthM)
		}
	})
}

// A module whose length or width is not known stands nowhere.
func TestColumnsNeedLengthAndWidth(t *testing.T) {
	sh := &scenarios.Shelf{LengthM: 1, DepthM: 0.5, ClearHeightM: 0.3, Stack: 1}
	for _, b := range []catalog.Battery{{WidthM: 0.3, HeightM: 0.2}, {LengthM: 0.3, HeightM: 0.2}, {LengthM: 0.3, WidthM: 0.3}} {
		if ways := Columns(sh, &b); ways != nil {
			t.Errorf("%v x %v x %v m: %+v, want no way", b.LengthM, b.WidthM, b.HeightM, ways)
		}
	}
}
