package audit

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// drawMatching makes up a small matching: a few kinds of path, and ways to wire them from a few parts.
func drawMatching(t *rapid.T) (owned *tally, counts []int, ways [][]wired) {
	owned = &tally{}
	parts := []string{"a", "b", "c"}
	for _, p := range parts {
		owned.add(article{part: p}, float64(rapid.IntRange(0, 5).Draw(t, "owned "+p)))
	}
	for i := range rapid.IntRange(1, 3).Draw(t, "tasks") {
		counts = append(counts, rapid.IntRange(1, 3).Draw(t, "count"))
		ways = append(ways, nil)
		for range rapid.IntRange(0, 3).Draw(t, "ways") {
			var w wired
			for _, p := range parts {
				n := rapid.IntRange(0, 2).Draw(t, fmt.Sprint("takes of ", p, " for ", i))
				w.takes.add(article{part: p}, float64(n))
				w.metal += float64(n)
			}
			ways[i] = append(ways[i], w)
		}
	}
	return owned, counts, ways
}

// move adds a tally, so many times, to this one; below 0 it takes it away.
func (t *tally) move(times float64, other *tally) {
	for _, x := range other.order {
		t.add(x, times*other.quantity[x])
	}
}

// mostByTrial tries every way for every path.
func mostByTrial(ways [][]wired, left *tally) int {
	if len(ways) == 0 {
		return 0
	}
	most := mostByTrial(ways[1:], left) // this path stays without
	for i := range ways[0] {
		w := &ways[0][i]
		if w.takes.within(left) {
			left.move(-1, &w.takes)
			most = max(most, 1+mostByTrial(ways[1:], left))
			left.move(1, &w.takes)
		}
	}
	return most
}

func TestMatchingIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		owned, counts, ways := drawMatching(t)
		var paths [][]wired
		for i, n := range counts {
			for range n {
				paths = append(paths, ways[i])
			}
		}
		want := mostByTrial(paths, owned)
		m := newMatching(owned, counts, make([]bool, len(counts)), ways, mostMatchings)
		m.descend(0, 0, 0)
		if m.most != want || !m.proved() {
			t.Fatalf("%d paths pass (proved: %t), by trial %d", m.most, m.proved(), want)
		}
		var used tally
		got := 0
		for i := range m.best {
			if len(m.best[i]) > counts[i] {
				t.Fatalf("%d of %d paths are wired", len(m.best[i]), counts[i])
			}
			for _, w := range m.best[i] {
				used.move(1, &w.takes)
				got++
			}
		}
		if got != m.most || !used.within(owned) {
			t.Fatalf("%d paths told as %d, taking %v of %v", got, m.most, used.quantity, owned.quantity)
		}
	})
}

func TestThrifty(t *testing.T) {
	way := func(metal, cable, fuse float64) wired {
		w := wired{metal: metal}
		w.takes.add(article{part: "cable"}, cable)
		w.takes.add(article{part: "fuse"}, fuse)
		return w
	}
	kept := thrifty([]wired{way(9, 1, 1), way(8, 4, 1), way(4, 2, 0), way(5, 2, 1), way(4, 2, 0), way(7, 0, 2)})
	var got []float64
	for i := range kept {
		got = append(got, kept[i].metal)
	}
	// The ones of 8 and 5 take what the one of 4 takes and more; of the two of 4 one is enough.
	if want := []float64{4, 7, 9}; !slices.Equal(got, want) {
		t.Errorf("kept those of metal %v, want %v", got, want)
	}
}

// drawPlacing makes up a few kinds of module and shelves.
func drawPlacing(t *rapid.T) *placing {
	in := &installer{mostPlacings: mostPlacings, s: &scenarios.Scenario{}, p: &plan.Plan{}, stock: &stock{batteries: map[string]*catalog.Battery{}}}
	for i := range rapid.IntRange(1, 3).Draw(t, "shelves") {
		in.s.Cart.Shelves = append(in.s.Cart.Shelves, scenarios.Shelf{
			Name: fmt.Sprint("shelf ", i), LengthM: 1, DepthM: 0.5, Stack: 1, ClearHeightM: rapid.Float64Range(0.1, 0.5).Draw(t, "clear"),
			ElevationM: rapid.Float64Range(0, 1).Draw(t, "elevation"),
			MaxMassKg:  rapid.SampledFrom([]float64{1, 20, 45, math.Inf(1)}).Draw(t, "bears"),
		})
	}
	for i := range rapid.IntRange(1, 2).Draw(t, "kinds") {
		b := &catalog.Battery{
			LengthM: rapid.SampledFrom([]float64{0.5, 0.33, 0.2, 1.2}).Draw(t, "length"), WidthM: 0.24,
			HeightM: rapid.SampledFrom([]float64{0.1, 0.2, 0.4}).Draw(t, "height"),
		}
		b.ID, b.MassKg = fmt.Sprint("kind ", i), rapid.SampledFrom([]float64{0, 0.5, 10, 20}).Draw(t, "mass")
		in.stock.batteries[b.ID] = b
		in.p.Core.Batteries = append(in.p.Core.Batteries,
			plan.CoreBattery{Part: b.ID, Strings: rapid.IntRange(1, 3).Draw(t, "strings"), Series: rapid.IntRange(1, 2).Draw(t, "series")})
	}
	return newPlacing(in)
}

// placeByTrial tries every number of every kind on every shelf.
func placeByTrial(p *placing, k, s int, visit func()) {
	switch {
	case k == len(p.kinds):
		visit()
	case s == len(p.shelves):
		placeByTrial(p, k+1, 0, visit)
	default:
		for n := range p.waiting(k) + 1 {
			b, sh := p.kinds[k].battery, p.shelves[s]
			if n > 0 && (math.IsInf(columnsM(sh, b, 1), 1) || b.HeightM > sh.ClearHeightM) {
				break
			}
			p.stand(k, s, n)
			placeByTrial(p, k, s+1, visit)
			p.stand(k, s, -n)
		}
	}
}

func TestPlacingIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlacing(t)
		most, moment := -1, 0.0
		placeByTrial(p, 0, 0, func() {
			for s, sh := range p.shelves {
				if p.room[s] > sh.LengthM+sh.GapM+1e-9 || p.kg[s] > sh.MaxMassKg+1e-9 {
					return
				}
			}
			if p.standing > most || p.standing == most && p.moment < moment {
				most, moment = p.standing, p.moment
			}
		})
		p.descend(0, 0)
		if p.most != most || math.Abs(p.bestMoment-moment) > 1e-9 || p.nodes >= p.bound {
			t.Fatalf("%d stand with a moment of %g kg·m, by trial %d with %g", p.most, p.bestMoment, most, moment)
		}
		got := 0
		for k := range p.best {
			for _, n := range p.best[k] {
				got += n
			}
		}
		if got != most {
			t.Fatalf("%d told as %d", got, most)
		}
	})
}

// A search that is cut short says so, and still has something to show.
func TestSearchesCutShort(t *testing.T) {
	k := newBarn().ownAll()
	in, err := newInstaller(k.s, k.c)
	if err != nil {
		t.Fatal(err)
	}
	in.mostMatchings, in.mostPlacings = 5, 8
	in.installCore()
	in.hangLoads()
	in.installSingles()
	in.installSundries()
	in.installRuns()
	in.installModules()
	r := in.report()
	if len(r.Notes) != 2 || !strings.Contains(r.Notes[0], "cables") || !strings.Contains(r.Notes[1], "modules") {
		t.Errorf("notes are %q, want one of the cables and one of the modules", r.Notes)
	}
	if len(r.Runs) == 0 || len(r.Shelves) == 0 {
		t.Errorf("%d runs and %d shelves, want what was found so far", len(r.Runs), len(r.Shelves))
	}
}

// A drawer in which everything fits everything, and is short: the bound keeps the time.
func BenchmarkMatching(b *testing.B) {
	owned := &tally{}
	var counts []int
	var ways [][]wired
	for i := range 12 {
		owned.add(article{part: fmt.Sprint("cable ", i)}, 7)
		owned.add(article{part: fmt.Sprint("fuse ", i)}, 1)
	}
	for range 12 {
		counts = append(counts, 2)
		var some []wired
		for i := range 12 {
			for j := range 12 {
				var w wired
				w.takes.add(article{part: fmt.Sprint("cable ", i)}, 4)
				w.takes.add(article{part: fmt.Sprint("fuse ", j)}, 1)
				some = append(some, w)
			}
		}
		ways = append(ways, some)
	}
	for b.Loop() {
		newMatching(owned, counts, make([]bool, len(counts)), ways, mostMatchings).descend(0, 0, 0)
	}
}

func TestList(t *testing.T) {
	for _, tt := range []struct {
		said []string
		want string
	}{
		{nil, ""},
		{[]string{"main"}, "main"},
		{[]string{"main", "feeder", "main", "main"}, "3 x main, feeder"},
	} {
		if got := list(tt.said); got != tt.want {
			t.Errorf("list(%q) = %q, want %q", tt.said, got, tt.want)
		}
	}
}
